// From a line to what was said: the cheapest way to cover it with sentences, what was left over, and what is unclear.
import type { Language } from './language.ts';
import { type Listener, readOnce } from './listen.ts';
import { type Match, matchAt } from './match.ts';
import { spellKeywords } from './misspelt.ts';
import { COST } from './reading.ts';
import type { SlotReading, SlotValue } from './slots.ts';
import type { Token } from './token.ts';
import { tokenise } from './tokenise.ts';

/** Why something said cannot be taken as it is: the slot in question, or the words that nothing reads. */
export interface Doubt {
  readonly code: string;
  readonly slot?: string;
  /** The words in question, as said. */
  readonly words?: string;
}

/** One thing that was said. With a doubt it is not to be recorded; its slots are those that are clear. */
export interface Said {
  readonly kind: string;
  readonly slots: Readonly<Record<string, SlotValue | boolean>>;
  readonly doubt?: Doubt;
  /** Fair readings of a sentence that is always asked about: the answer, and the intent that it makes. */
  readonly readings?: Readonly<Record<string, string>>;
  /** Whether a number, and not only a word of command, was said. */
  readonly firm: boolean;
}

export interface Heard {
  readonly said: readonly Said[];
  /** Words that look like an entry but were not understood. */
  readonly unread?: string;
}

interface Cover {
  readonly cost: number;
  readonly matches: readonly Match[];
  readonly unread: readonly number[];
}

const TIES = 4;
/** An entry with more words beside it that nothing reads is talk. */
const MOST_STRAY = 2;

/** Reads one line. `answering`: a question stands, so that its answers are read too. */
export function parse(listener: Listener, line: string, options: { answering: boolean }): Heard {
  const { language } = listener;
  const { written: text, tokens: all } = tokenise(line, language.decimalMark, language.abbreviations);
  const tokens = spellKeywords(language, withoutFillers(language, all));
  if (tokens.length === 0) return { said: [] };
  return judge({ language, tokens, text, covers: cheapestCovers(listener, tokens, options), starts: listener.startsNumber });
}

/** Drops the words that say nothing; what they stood between keeps its breaks and its question mark. */
function withoutFillers(language: Language, tokens: readonly Token[]): readonly Token[] {
  const kept: Token[] = [];
  let before: Token['before'] | undefined;
  let determined = false;
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at];
    if (token === undefined) break;
    const length = token.kind === 'word' ? fillerAt(language, tokens, at) : 0;
    const stronger = strongest(before, token.before);
    if (length === 0) kept.push({ ...token, before: stronger, determined });
    before = length === 0 ? undefined : stronger;
    determined = length === 1 && language.articles.has(token.text);
    const last = kept.at(-1);
    if (length > 0 && tokens[at + length - 1]?.asks === true && last !== undefined) kept[kept.length - 1] = { ...last, asks: true };
    at += Math.max(1, length);
  }
  return kept;
}

const strongest = (a: Token['before'] | undefined, b: Token['before']): Token['before'] =>
  a === 'stop' || b === 'stop' ? 'stop' : a === 'comma' || b === 'comma' ? 'comma' : 'space';

function fillerAt(language: Language, tokens: readonly Token[], at: number): number {
  const first = tokens[at]?.text ?? '';
  for (const phrase of language.fillers)
    if (phrase[0] === first && phrase.every((word, index) => tokens[at + index]?.text === word)) return phrase.length;
  return 0;
}

interface Reading {
  readonly language: Language;
  readonly tokens: readonly Token[];
  /** The sentences that begin at a place and apply there; found once. */
  readonly matches: (at: number) => readonly Match[];
}

function readingOf(listener: Listener, tokens: readonly Token[], options: { answering: boolean }): Reading {
  const { language } = listener;
  const read = readOnce(listener, tokens);
  const found: (readonly Match[] | undefined)[] = [];
  const matches = (at: number): readonly Match[] =>
    (found[at] ??= matchAt(language.start, tokens, at, read).filter((match) => applies(match, tokens, options)));
  return { language, tokens, matches };
}

/**
 * Every cover of the line with the least cost. First without words left over, from the places that entries lead to; only
 * where there is no such cover, and some number could be part of an entry, with them.
 */
function cheapestCovers(listener: Listener, tokens: readonly Token[], options: { answering: boolean }): readonly Cover[] {
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
function covers({ language, tokens, matches }: Reading, mayBegin: (at: number) => boolean, leaving: boolean): readonly Cover[] {
  const best: (readonly Cover[])[] = [];
  best[tokens.length] = [{ cost: 0, matches: [], unread: [] }];
  for (let at = tokens.length - 1; at >= 0; at -= 1) {
    if (!mayBegin(at)) continue;
    const joint = language.joints.has(tokens[at]?.text ?? '');
    const found: Cover[] = joint || leaving ? (best[at + 1] ?? []).map((rest) => skip(rest, at, joint)) : [];
    for (const match of matches(at)) {
      const cost = match.cost + COST.entry + (match.meaning.ask === undefined ? 0 : COST.asked);
      for (const rest of best[match.end] ?? []) found.push({ cost: rest.cost + cost, matches: [match, ...rest.matches], unread: rest.unread });
    }
    best[at] = cheapest(found);
  }
  return best[0] ?? [];
}

/** A word that joins entries is skipped for little; any other is unread. */
const skip = (rest: Cover, at: number, joint: boolean): Cover =>
  joint ? { ...rest, cost: rest.cost + COST.entry } : { ...rest, cost: rest.cost + COST.unread, unread: [at, ...rest.unread] };

function cheapest(found: readonly Cover[]): readonly Cover[] {
  const least = found.reduce((cost, cover) => Math.min(cost, cover.cost), Infinity);
  return found.filter((cover) => cover.cost === least).slice(0, TIES);
}

function applies({ meaning, from, end }: Match, tokens: readonly Token[], { answering }: { answering: boolean }): boolean {
  const asks = tokens[end - 1]?.asks === true;
  return meaning.when.every((when) => {
    switch (when) {
      case 'question':
        return asks;
      case 'statement':
        return !asks;
      case 'answer':
        return answering;
      case 'ends':
        return end === tokens.length || tokens[end]?.before === 'stop';
      case 'undetermined':
        return tokens[from]?.determined !== true;
      case 'alone':
        return from === 0 && end === tokens.length;
    }
  });
}

interface Judged {
  readonly language: Language;
  readonly tokens: readonly Token[];
  readonly text: string;
  readonly covers: readonly Cover[];
  readonly starts: Listener['startsNumber'];
}

/** Keeps what is clear. Where words were left over, what stands beside them is asked about or was not for us. */
function judge({ language, tokens, text, covers, starts }: Judged): Heard {
  const [cover, ...others] = covers;
  if (cover === undefined) return { said: [] };
  const said = cover.matches.map((match) => ({ match, said: asSaid(match, text, tokens) }));
  if (cover.unread.length === 0) {
    const first: readonly Said[] = said.map((each) => each.said);
    return { said: once(others.reduce((kept, other) => agree(kept, other, { text, tokens }), first)) };
  }
  const runs = commaRuns(tokens);
  const spoilt = new Set(cover.unread.map((at) => runs[at]));
  const spoils = ({ from, end }: Match): boolean => runs.slice(from, end).some((run) => spoilt.has(run));
  for (const match of [...cover.matches, ...cover.matches.toReversed()]) if (spoils(match)) for (const run of runs.slice(match.from, match.end)) spoilt.add(run);
  const clean = said.filter((each) => each.said.firm && !spoils(each.match));
  const doubtful = said.some(({ match, said: one }) => one.firm && spoils(match) && isEntryLike({ language, tokens, cover, runs, match }));
  const lost = clean.length > 0 && holdsNumber({ language, tokens, cover, starts });
  const unread = doubtful || lost ? cover.unread.map((at) => tokens[at]?.text ?? '').join(' ') : undefined;
  return { said: clean.map((each) => each.said), ...(unread === undefined ? {} : { unread }) };
}

/** The number of the stretch between commas and stops in which each token stands. */
function commaRuns(tokens: readonly Token[]): readonly number[] {
  let run = 0;
  return tokens.map((token, at) => (token.before !== 'space' && at > 0 ? (run += 1) : run));
}

/** A number that nothing reads, beside entries that are read: part of them was not understood, unless people talk. */
function holdsNumber({ language, tokens, cover, starts }: Pick<Judged, 'language' | 'tokens' | 'starts'> & { cover: Cover }): boolean {
  const { numbers } = language;
  const isNumber = (token: Token): boolean => starts(token) && !numbers.one.has(token.text) && !numbers.beside.has(token.text);
  const words = cover.unread.flatMap((at) => tokens[at] ?? []);
  return words.some(isNumber) && !words.some((token) => language.chatter.has(token.text));
}

/** An entry with a few stray words, not talk that happens to hold one. */
function isEntryLike(at: { language: Language; tokens: readonly Token[]; cover: Cover; runs: readonly number[]; match: Match }): boolean {
  const { language, tokens, cover, runs, match } = at;
  const mine = new Set(runs.slice(match.from, match.end));
  const words = cover.unread.map((place) => tokens[place]?.text ?? '');
  const stray = cover.unread.filter((place) => mine.has(runs[place] ?? -1));
  const named = Object.values(match.slots).some((slot) => typeof slot.value === 'string' && slot.free !== true);
  const talk = words.some((word) => language.chatter.has(word) || (language.neverNames.has(word) && !language.softeners.has(word)));
  return named && match.meaning.ask === undefined && stray.length <= MOST_STRAY && !talk;
}

/** "yes, correct" is one yes. */
const once = (said: readonly Said[]): readonly Said[] =>
  said.filter((each, at) => each.firm || each.doubt !== undefined || JSON.stringify(each) !== JSON.stringify(said[at - 1]));

function asSaid(match: Match, text: string, tokens: readonly Token[]): Said {
  const { meaning, slots } = match;
  const values: Record<string, SlotValue | boolean> = { ...meaning.set };
  let doubt: Doubt | undefined = meaning.ask === undefined ? undefined : { code: meaning.ask };
  for (const [name, reading] of Object.entries(slots)) {
    if (reading.doubt === undefined) values[name] = reading.value === '' ? rawFrom(reading, text, tokens) : reading.value;
    else doubt = { code: reading.doubt, slot: name, words: wordsOf(match, text, tokens) };
  }
  doubt ??= unitDoubt(slots);
  return {
    kind: meaning.intent,
    slots: values,
    ...(doubt === undefined ? {} : { doubt }),
    ...(meaning.readings === undefined ? {} : { readings: meaning.readings }),
    firm: Object.values(slots).some((reading) => typeof reading.value !== 'string'),
  };
}

/** A price without a unit beside a weight in the other unit: per which of the two? */
function unitDoubt(slots: Match['slots']): Doubt | undefined {
  const { weight, price } = slots;
  if (weight?.unit === undefined || price === undefined || price.per !== undefined) return undefined;
  return price.bareOther?.includes(weight.unit) === true ? { code: 'priceUnit', slot: 'price' } : undefined;
}

const rawFrom = (reading: SlotReading, text: string, tokens: readonly Token[]): string => {
  if (reading.from === undefined) return '';
  const before = tokens[reading.from - 1]?.to ?? 0;
  return text.slice(before).replace(/^[\s:,-]+/, '').trim();
};

const wordsOf = ({ from, end }: Match, text: string, tokens: readonly Token[]): string =>
  text.slice(tokens[from]?.from ?? 0, tokens[end - 1]?.to ?? text.length);

/** Where two equally good readings of the line differ, what differs is asked about. */
function agree(kept: readonly Said[], other: Cover, line: { text: string; tokens: readonly Token[] }): readonly Said[] {
  const rest = other.matches.map((match) => JSON.stringify(asSaid(match, line.text, line.tokens)));
  return kept.map((said) => {
    if (said.doubt !== undefined || rest.includes(JSON.stringify(said))) return said;
    return { ...said, doubt: { code: 'twoReadings', words: line.text.trim() } };
  });
}
