// The cheapest ways to cover a line with sentences.
import type { Language } from './language.ts';
import { type Listener, readOnce } from './listen.ts';
import { type Match, matchAt } from './match.ts';
import { COST } from './reading.ts';
import type { Token } from './token.ts';

/** Sentences, in the order of the line, and the places of the words that none of them reads. */
export interface Cover {
  readonly cost: number;
  readonly matches: readonly Match[];
  readonly unread: readonly number[];
}

/** What is read beside what anybody may say at any time. */
export interface Listening {
  /** A question stands: its answers. */
  readonly answering: boolean;
  /** An alarm has just asked for a temperature: the name of what it is of, and the number. */
  readonly reading?: boolean;
}

/** How many covers of the same cost are looked at: two that differ are enough to ask. */
const TIES = 4;

interface Reading {
  readonly language: Language;
  readonly tokens: readonly Token[];
  /** The sentences that begin at a place and apply there; found once. */
  readonly matches: (at: number) => readonly Match[];
}

function readingOf(listener: Listener, tokens: readonly Token[], options: Listening): Reading {
  const { language } = listener;
  const read = readOnce(listener, tokens);
  const found: (readonly Match[] | undefined)[] = [];
  const matches = (at: number): readonly Match[] =>
    (found[at] ??= matchAt(language.start, tokens, at, read).filter((match) =>
      applies(match, tokens, options),
    ));
  return { language, tokens, matches };
}

/**
 * Every cover of the line with the least cost. First without words left over, from the places that entries lead to; only
 * where there is no such cover, and some number could be part of an entry, with them.
 */
export function cheapestCovers(
  listener: Listener,
  tokens: readonly Token[],
  options: Listening,
): readonly Cover[] {
  const reading = readingOf(listener, tokens, options);
  const whole = covers(reading, reachable(reading), false);
  if (whole.length > 0) return whole;
  if (!tokens.some((token) => listener.startsNumber(token))) return [];
  return covers(reading, () => true, true);
}

/** The places at which an entry may begin when the entries before it leave no word unread. */
function reachable({ tokens, matches, language }: Reading): (at: number) => boolean {
  const reached = new Set([0]);
  for (let at = 0; at < tokens.length; at += 1) {
    if (!reached.has(at)) continue;
    if (language.joints.has(tokens[at]?.text ?? '')) reached.add(at + 1);
    for (const match of matches(at)) reached.add(match.end);
  }
  return (at) => reached.has(at);
}

/** The cheapest covers, from the end to the beginning. */
function covers(
  { language, tokens, matches }: Reading,
  mayBegin: (at: number) => boolean,
  leaving: boolean,
): readonly Cover[] {
  const best: (readonly Cover[])[] = [];
  best[tokens.length] = [{ cost: 0, matches: [], unread: [] }];
  for (let at = tokens.length - 1; at >= 0; at -= 1) {
    if (!mayBegin(at)) continue;
    const joint = language.joints.has(tokens[at]?.text ?? '');
    const found: Cover[] = joint || leaving ? (best[at + 1] ?? []).map((rest) => skip(rest, at, joint)) : [];
    for (const match of matches(at)) {
      const cost = match.cost + COST.entry + (match.meaning.ask === undefined ? 0 : COST.asked);
      for (const rest of best[match.end] ?? [])
        found.push({ cost: rest.cost + cost, matches: [match, ...rest.matches], unread: rest.unread });
    }
    best[at] = cheapest(found);
  }
  return best[0] ?? [];
}

/** A word that joins entries is skipped for little; any other is unread. */
const skip = (rest: Cover, at: number, joint: boolean): Cover =>
  joint
    ? { ...rest, cost: rest.cost + COST.entry }
    : { ...rest, cost: rest.cost + COST.unread, unread: [at, ...rest.unread] };

function cheapest(found: readonly Cover[]): readonly Cover[] {
  const least = found.reduce((cost, cover) => Math.min(cost, cover.cost), Infinity);
  return found.filter((cover) => cover.cost === least).slice(0, TIES);
}

const isBreak = (tokens: readonly Token[], at: number): boolean => at === 0 || tokens[at]?.before !== 'space';

function applies(
  { meaning, from, end }: Match,
  tokens: readonly Token[],
  { answering, reading }: Listening,
): boolean {
  const asks = tokens[end - 1]?.asks === true;
  return meaning.when.every((when) => {
    switch (when) {
      case 'question':
        return asks;
      case 'statement':
        return !asks;
      case 'answer':
        return answering;
      case 'reading':
        return reading === true;
      case 'ends':
        return end === tokens.length || tokens[end]?.before === 'stop';
      case 'apart':
        return isBreak(tokens, from) && isBreak(tokens, end);
      case 'undetermined':
        return tokens[from]?.determined !== true;
      case 'alone':
        return from === 0 && end === tokens.length;
    }
  });
}
