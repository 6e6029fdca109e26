// Whole numbers: typed, or spoken as people spell them out ("twenty one", "two hundred and five", "a hundred").
import type { NumberWords } from './number-words.ts';
import { oncePerPlace } from './once.ts';
import { COST, follows } from './reading.ts';
import type { Token } from './token.ts';

export type Form = 'figure' | 'digit' | 'teen' | 'tens' | 'compound' | 'hundreds' | 'thousands';

export interface Whole {
  readonly value: number;
  readonly end: number;
  readonly form: Form;
  readonly cost: number;
}

/** Where a number may stand among words that only sound like one: beside a point, or before what it counts. */
export interface Around {
  readonly counters: ReadonlySet<string>;
}

export interface Numbers {
  readonly words: NumberWords;
  readonly counters: ReadonlySet<string>;
}

/** A spoken digit, "oh" and words that sound like a digit included. */
export function digitAt(
  numbers: Numbers,
  token: Token | undefined,
): { value: number; cost: number } | undefined {
  if (token?.kind !== 'word') return undefined;
  const { single, oh, sure, beside } = numbers.words;
  const word = single.get(token.text);
  if (word?.class === 'digit') return { value: word.value, cost: 0 };
  if (oh.has(token.text)) return { value: 0, cost: 0 };
  const heard = sure.get(token.text) ?? beside.get(token.text);
  return heard === undefined ? undefined : { value: heard, cost: COST.homophone };
}

/** 0 to 99: the one word or two at a place, the longer reading first. */
export const small = oncePerPlace(readSmall);

function readSmall(numbers: Numbers, tokens: readonly Token[], at: number): readonly Whole[] {
  const token = tokens[at];
  if (token?.kind !== 'word') return [];
  const { single, pairs, sure } = numbers.words;
  const found: Whole[] = [];
  const pair = pairs.get(token.text)?.get(follows(tokens, at + 1)?.text ?? '');
  if (pair !== undefined) found.push({ value: pair, end: at + 2, form: 'compound', cost: 0 });
  const word = single.get(token.text);
  if (word !== undefined) found.push({ value: word.value, end: at + 1, form: word.class, cost: 0 });
  const heard = sure.get(token.text) ?? besideCounter(numbers, tokens, at);
  if (heard !== undefined) found.push({ value: heard, end: at + 1, form: 'digit', cost: COST.homophone });
  return found;
}

/** "for portions", "to pounds", "to point five": a common word is a digit only where what follows makes it one. */
function besideCounter(numbers: Numbers, tokens: readonly Token[], at: number): number | undefined {
  const heard = numbers.words.beside.get(tokens[at]?.text ?? '');
  const next = follows(tokens, at + 1)?.text ?? '';
  return heard !== undefined && (numbers.counters.has(next) || numbers.words.point.has(next))
    ? heard
    : undefined;
}

/** Every way to read a whole number at a place, the longest first. */
export const wholes = oncePerPlace(readWholes);

function readWholes(numbers: Numbers, tokens: readonly Token[], at: number): readonly Whole[] {
  const token = tokens[at];
  if (token === undefined) return [];
  if (token.kind === 'figure')
    return token.garbled || !/^-?\d{1,12}$/.test(token.text)
      ? []
      : [{ value: Number(token.text), end: at + 1, form: 'figure', cost: 0 }];
  if (token.kind !== 'word') return [];
  const smalls = small(numbers, tokens, at);
  const large = [...scaled(numbers, tokens, at, smalls)];
  return [...large, ...smalls].sort((a, b) => b.end - a.end);
}

/** Hundreds and thousands, "a hundred" included. */
function* scaled(
  numbers: Numbers,
  tokens: readonly Token[],
  at: number,
  smalls: readonly Whole[],
): Generator<Whole> {
  const { one, hundred, thousand } = numbers.words;
  const article = one.has(tokens[at]?.text ?? '')
    ? [{ value: 1, end: at + 1, form: 'digit' as const, cost: 0 }]
    : [];
  for (const lead of [...smalls, ...article]) {
    const word = follows(tokens, lead.end)?.text ?? '';
    if (hundred.has(word))
      yield* withRest(numbers, tokens, {
        ...lead,
        value: lead.value * 100,
        end: lead.end + 1,
        form: 'hundreds',
      });
    if (thousand.has(word))
      yield* withRest(numbers, tokens, {
        ...lead,
        value: lead.value * 1000,
        end: lead.end + 1,
        form: 'thousands',
      });
  }
}

/** "two hundred", then "[and] eleven"; after a thousand its hundreds too. */
function* withRest(numbers: Numbers, tokens: readonly Token[], lead: Whole): Generator<Whole> {
  const next = follows(tokens, lead.end);
  const from = next !== undefined && numbers.words.and.has(next.text) ? lead.end + 1 : lead.end;
  if (follows(tokens, from) !== undefined) {
    const rest = small(numbers, tokens, from);
    if (lead.form === 'thousands') {
      for (const more of scaled(numbers, tokens, from, rest))
        if (more.form === 'hundreds') yield { ...more, value: lead.value + more.value, form: 'thousands' };
    }
    for (const more of rest)
      if (more.value > 0)
        yield { ...more, value: lead.value + more.value, form: lead.form, cost: lead.cost + more.cost };
  }
  yield lead;
}
