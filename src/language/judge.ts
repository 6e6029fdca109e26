// What of a line is kept: all that is clear; where words were left over, what stands beside them is asked about, or the
// line was not for us.
import type { Cover } from './cover.ts';
import type { Language } from './language.ts';
import type { Listener } from './listen.ts';
import type { Match } from './match.ts';
import { isHalfRead } from './half-read.ts';
import { agree, asSaid, once, type Said } from './said.ts';
import type { Token } from './token.ts';

export interface Heard {
  readonly said: readonly Said[];
  /** Words that look like an entry but were not understood. */
  readonly unread?: string;
  /** It begins like entries and is longer than a line that is read: nothing of it is. */
  readonly tooLong?: true;
}

/** An entry with more words beside it that nothing reads is talk. */
const MOST_STRAY = 2;

interface Judged {
  readonly language: Language;
  readonly tokens: readonly Token[];
  readonly text: string;
  readonly covers: readonly Cover[];
  readonly starts: Listener['startsNumber'];
}

/** Keeps what is clear. Where words were left over, what stands beside them is asked about or was not for us. */
export function judge({ language, tokens, text, covers, starts }: Judged): Heard {
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
  for (const match of [...cover.matches, ...cover.matches.toReversed()])
    if (spoils(match)) for (const run of runs.slice(match.from, match.end)) spoilt.add(run);
  const clean = said.filter((each) => each.said.firm && !spoils(each.match));
  const doubtful = said.some(
    ({ match, said: one }) =>
      one.firm && spoils(match) && isEntryLike({ language, tokens, cover, runs, match }),
  );
  const lost = clean.length > 0 && holdsNumber({ language, tokens, cover, starts });
  const half = clean.length === 0 && !doubtful && isHalfRead({ language, tokens, starts });
  if (half) return { said: [], unread: text.trim() };
  const unread = doubtful || lost ? cover.unread.map((at) => tokens[at]?.text ?? '').join(' ') : undefined;
  return { said: clean.map((each) => each.said), ...(unread === undefined ? {} : { unread }) };
}

/** The number of the stretch between commas and stops in which each token stands; a stop between figures ("1. 4") may be a point. */
function commaRuns(tokens: readonly Token[]): readonly number[] {
  let run = 0;
  const parts = (token: Token, last: Token | undefined): boolean =>
    token.before === 'comma' ||
    (token.before === 'stop' && !(token.kind === 'figure' && last?.kind === 'figure'));
  return tokens.map((token, at) => (at > 0 && parts(token, tokens[at - 1]) ? (run += 1) : run));
}

/** A number that nothing reads, beside entries that are read: part of them was not understood, unless people talk. */
function holdsNumber({
  language,
  tokens,
  cover,
  starts,
}: Pick<Judged, 'language' | 'tokens' | 'starts'> & { cover: Cover }): boolean {
  const { numbers } = language;
  const isNumber = (token: Token): boolean =>
    starts(token) && !numbers.one.has(token.text) && !numbers.beside.has(token.text);
  const words = cover.unread.flatMap((at) => tokens[at] ?? []);
  return words.some(isNumber) && !words.some((token) => language.chatter.has(token.text));
}

/** An entry with a few stray words, not talk that happens to hold one. */
function isEntryLike(at: {
  language: Language;
  tokens: readonly Token[];
  cover: Cover;
  runs: readonly number[];
  match: Match;
}): boolean {
  const { language, tokens, cover, runs, match } = at;
  const mine = new Set(runs.slice(match.from, match.end));
  const words = cover.unread.map((place) => tokens[place]?.text ?? '');
  const stray = cover.unread.filter((place) => mine.has(runs[place] ?? -1));
  const named = Object.values(match.slots).some(
    (slot) => typeof slot.value === 'string' && slot.free !== true,
  );
  const talk = words.some(
    (word) => language.chatter.has(word) || (language.neverNames.has(word) && !language.softeners.has(word)),
  );
  return named && match.meaning.ask === undefined && stray.length <= MOST_STRAY && !talk;
}
