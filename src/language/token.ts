// A line as the matcher sees it: words, figures and marks, lower case, with the breaks between them.

export interface Token {
  /** Lower case, without accents; of a figure the plain decimal figure ("1,1" is "1.1"). */
  readonly text: string;
  readonly kind: 'word' | 'figure' | 'mark';
  /** What stands before it: nothing but space, a comma or its like, or the end of a sentence. */
  readonly before: 'space' | 'comma' | 'stop';
  /** A question mark follows it. */
  readonly asks: boolean;
  /** An article stood before it. */
  readonly determined: boolean;
  /** A figure that cannot be read in one way ("1.2.3", "1,2345"). */
  readonly garbled: boolean;
  /** Where it stands in the original line. */
  readonly from: number;
  readonly to: number;
}
