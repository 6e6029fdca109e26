// The part of the JSpeech Grammar Format (W3C note of 2000-06-05) that the ear writes: rules, words, rows, choices with
// weights, and what may be left out.

export type Form =
  | { readonly is: 'word'; readonly word: string }
  | { readonly is: 'rule'; readonly name: string }
  | { readonly is: 'row'; readonly forms: readonly Form[] }
  | { readonly is: 'choice'; readonly options: readonly Option[] };

interface Option {
  readonly weight: number;
  readonly form: Form;
}

export interface Rules {
  readonly rules: ReadonlyMap<string, Form>;
  /** The one that is public. */
  readonly said: Form;
}

const MARK = /<[^>]*>|\/[\d.e+-]+\/|[()[\]|]|[^\s()[\]|<>/]+/g;
const NOTHING: Form = { is: 'row', forms: [] };

export function readGrammar(text: string): Rules {
  const rules = new Map<string, Form>();
  let said: Form | undefined;
  for (const [, isPublic, name = '', form = ''] of text.matchAll(/^(public )?<(\w+)> = (.*);$/gm)) {
    const read = readForm(form.match(MARK) ?? []);
    rules.set(name, read);
    if (isPublic !== undefined) said = read;
  }
  if (said === undefined) throw new Error('the grammar has no public rule');
  return { rules, said };
}

function readForm(marks: readonly string[]): Form {
  let at = 0;
  const choice = (): readonly Option[] => {
    const options: Option[] = [];
    let forms: Form[] = [];
    let weight = 1;
    for (; at < marks.length; at += 1) {
      const mark = marks[at] ?? '';
      if (mark === ')' || mark === ']') break;
      if (mark === '|') {
        options.push({ weight, form: { is: 'row', forms } });
        [forms, weight] = [[], 1];
      } else if (mark.startsWith('/')) weight = Number(mark.slice(1, -1));
      else forms.push(one(mark));
    }
    return [...options, { weight, form: { is: 'row', forms } }];
  };
  const one = (mark: string): Form => {
    if (mark.startsWith('<')) return { is: 'rule', name: mark.slice(1, -1) };
    if (mark !== '(' && mark !== '[') return { is: 'word', word: mark };
    at += 1;
    const options = choice();
    const inner: Form = { is: 'choice', options };
    return mark === '('
      ? inner
      : {
          is: 'choice',
          options: [
            { weight: 1, form: inner },
            { weight: 1, form: NOTHING },
          ],
        };
  };
  return { is: 'choice', options: choice() };
}
