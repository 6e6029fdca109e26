// What goes with a reply as a file, as data: a table or a picture. Labels are replies, worded at the end like all others;
// what tells money is marked, and falls out for those who may not see costs.
import type { Decimal } from './decimal.ts';
import type { Reply, ReplyValue } from './reply.ts';

export type SheetFormat = 'csv' | 'xlsx';

export interface Column {
  readonly label: Reply;
  readonly cost?: true;
}

/** A figure, a name, words, or nothing. */
export type Value = ReplyValue | Reply | undefined;

export interface TablePaper {
  readonly is: 'table';
  /** Of the file, without its ending. */
  readonly name: string;
  readonly format: SheetFormat;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Value[])[];
}

/** What a bar stands for: the colour follows it. */
export type Tone = 'portions' | 'byproduct' | 'waste' | 'loss' | 'plain' | 'other';

export interface Bar {
  readonly label: Reply;
  readonly text: Reply;
  readonly value: Decimal;
  readonly tone: Tone;
}

export interface Point {
  readonly label: Reply;
  readonly value: Decimal;
}

export type Panel = { readonly title: Reply; readonly cost?: true } &
  /** `of`: the whole that the bars are shares of; else the longest fills the width. */
  (
    | { readonly is: 'bars'; readonly bars: readonly Bar[]; readonly of?: Decimal }
    | {
        readonly is: 'trend';
        readonly points: readonly Point[];
        /** Where the mean lies with 90 % confidence, and how that is said. */
        readonly band?: { readonly low: Decimal; readonly high: Decimal; readonly text: Reply };
        /** A value that they are held against; the notes below say what it is. */
        readonly mark?: Decimal;
        readonly notes?: readonly Reply[];
        /** How a value is written at the axis. */
        readonly tick: (value: Decimal) => Reply;
      }
  );

export interface PicturePaper {
  readonly is: 'picture';
  readonly name: string;
  readonly title: Reply;
  readonly panels: readonly Panel[];
}

export type Paper = TablePaper | PicturePaper;

const LONGEST = 60;

/** A name that any file system takes: letters and figures of any script, the rest made hyphens. */
export const fileName = (...words: readonly string[]): string =>
  words
    .join(' ')
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-/, '')
    .slice(0, LONGEST)
    .replace(/-$/, '');

export const fullName = (paper: Paper): string =>
  `${paper.name}.${paper.is === 'table' ? paper.format : 'png'}`;
