// From a line to what was said: cut into tokens, covered with sentences, judged.
import { cheapestCovers, type Listening } from './cover.ts';
import { withoutFillers } from './fillers.ts';
import { isHalfReading } from './half-reading.ts';
import { type Heard, judge } from './judge.ts';
import type { Language } from './language.ts';
import type { Listener } from './listen.ts';
import { spellKeywords } from './misspelt.ts';
import type { Said } from './said.ts';
import type { Token } from './token.ts';
import { LONGEST_LINE, tokenise } from './tokenise.ts';

export type { Heard } from './judge.ts';
export type { Said } from './said.ts';

/** Reads one line. */
export function parse(listener: Listener, line: string, options: Listening): Heard {
  if (line.length <= LONGEST_LINE) return read(listener, line, options);
  const beginning = read(listener, line.slice(0, line.lastIndexOf(' ', LONGEST_LINE) + 1), options);
  const isForUs = beginning.said.some((each) => each.firm) || beginning.unread !== undefined;
  return isForUs ? { said: [], tooLong: true } : { said: [] };
}

function read(listener: Listener, line: string, options: Listening): Heard {
  const { language } = listener;
  const { written: text, tokens: all } = tokenise(line, language.decimalMark, language.abbreviations);
  const tokens = spellKeywords(language, withoutFillers(language, all));
  if (tokens.length === 0) return { said: ofFillers(language, all) };
  return judge({
    language,
    tokens,
    text,
    covers: cheapestCovers(listener, tokens, options),
    starts: listener.startsNumber,
  });
}

/** What looks like a temperature of what is cooked and is none that any sentence reads. */
export function halfReading(listener: Listener, line: string): Heard | undefined {
  const { language } = listener;
  if (line.length > LONGEST_LINE) return undefined;
  const { tokens } = tokenise(line, language.decimalMark, language.abbreviations);
  return isHalfReading(listener, withoutFillers(language, tokens))
    ? { said: [], unread: line.trim() }
    : undefined;
}

/** "ok" by itself. */
function ofFillers({ alone }: Language, tokens: readonly Token[]): readonly Said[] {
  const kinds = tokens.flatMap(({ text }) => (Object.hasOwn(alone, text) ? (alone[text] ?? []) : []));
  const [kind] = kinds;
  return kind === undefined ? [] : [{ kind, slots: {}, firm: false }];
}
