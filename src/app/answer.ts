// What an answer makes of a standing question.
import type { BareNumber, Entry, EntryOf, Kind } from '../core/entry.ts';
import { measuredAs } from '../core/measured-as.ts';
import { entryJson } from '../core/entry-json.ts';
import type { TestId } from '../core/facts.ts';
import type { Question, Wanted } from '../core/question.ts';
import { isHeardAsk } from '../intents/doubt.ts';

/** The entry that the answer completes, a repetition of the question, its end, or nothing: the entry is no answer. */
export type Answer =
  | { readonly is: 'entry'; readonly entry: Entry }
  | { readonly is: 'repeat' }
  | { readonly is: 'drop' }
  | { readonly is: 'none' };

const NONE: Answer = { is: 'none' };
const DROP: Answer = { is: 'drop' };

/** `itemOf` tells the item of a test, so that the same entry is known with and without it. */
export function answerTo(
  question: Question,
  entry: Entry,
  itemOf: (test: TestId) => string | undefined,
): Answer {
  if (isSaidAgain(question, entry, itemOf)) return accepted(question);
  const answer = ANSWERS[entry.kind] as ((question: Question, entry: Entry) => Answer) | undefined;
  return answer?.(question, entry) ?? NONE;
}

/** What can answer a question; any other entry stands for itself. */
const ANSWERS: { readonly [K in Kind]?: (question: Question, entry: EntryOf<K>) => Answer } = {
  yes: (question) => chosen(question, 'yes'),
  choice: (question, { option }) => chosen(question, option),
  no: () => DROP,
  amount: (question, { number }) => filled(question, number),
  name: (question, entry) =>
    isChoice(question, entry.part) ? chosen(question, entry.part) : named(question.wants, entry),
  moment: (question, entry) => momentTold(question, entry),
  undo: ({ recorded }) => (recorded ? NONE : DROP),
  correct: (question, entry) => corrected(question, entry),
  tare: (question, entry) => tareTold(question, entry),
};

function chosen(question: Question, option: string): Answer {
  const entry = Object.hasOwn(question.choices, option) ? question.choices[option] : undefined;
  return entry === undefined ? { is: 'repeat' } : { is: 'entry', entry };
}

/** A part that is one of the answers ("trim" to where the rest goes). */
const isChoice = ({ choices }: Question, part: string | undefined): part is string =>
  part !== undefined && Object.hasOwn(choices, part);

const accepted = ({ again }: Question): Answer =>
  again === undefined ? NONE : { is: 'entry', entry: again.accepts };

/** As the outside sees it, in whatever order it was said. */
const textOf = (entry: Entry): string => JSON.stringify(Object.entries(entryJson(entry) ?? {}).sort());

function isSaidAgain(
  { again }: Question,
  entry: Entry,
  itemOf: (test: TestId) => string | undefined,
): boolean {
  if (again === undefined || again.said.kind !== entry.kind) return false;
  const { said, accepts } = again;
  if (textOf(said) === textOf(entry)) return true;
  const item = itemIn(said) ?? (accepts.test === undefined ? undefined : itemOf(accepts.test));
  const isOther = itemIn(entry) !== undefined && itemIn(entry) !== item;
  return !isOther && item !== undefined && textOf(withItem(said, item)) === textOf(withItem(entry, item));
}

const itemIn = (entry: Entry): string | undefined => ('item' in entry ? entry.item : undefined);

const withItem = (entry: Entry, item: string): Entry => ({ ...entry, item }) as Entry;

/** The held entry with the number in its slot, if the number can be what the slot measures. */
function filled({ wants, again }: Question, number: BareNumber): Answer {
  const value = wants && measuredAs(number, wants.slot);
  return wants === undefined || value === undefined ? { is: 'repeat' } : completed(wants, value, again);
}

/** "no, 0.8" to a question about what was not recorded is the amount that it asks for. */
function corrected({ asked, wants, again, recorded }: Question, entry: EntryOf<'correct'>): Answer {
  // Heard with several figures: the one that is put right can't be told, and it is not one of an earlier entry.
  if (wants === undefined && isHeardAsk(asked)) return { is: 'repeat' };
  if (wants === undefined || recorded || entry.newItem !== undefined || entry.newPart !== undefined)
    return NONE;
  // "make the trim 6.1" is all of it, not what was added.
  if (entry.part !== undefined && (entry.part !== wants.held['part'] || wants.held['mode'] === 'add'))
    return NONE;
  const slot = wants.slot as keyof typeof entry;
  const value = entry.number === undefined ? entry[slot] : measuredAs(entry.number, wants.slot);
  return value === undefined ? NONE : completed(wants, value, again);
}

/** A time for what is to be told; or minutes of work, where it is a length: to a choice only the number that was said. */
function momentTold(
  { wants, choices }: Question,
  { when, instant, repeat, minutes }: EntryOf<'moment'>,
): Answer {
  if (wants?.slot === 'when') {
    const { day: _, ...held } = wants.held;
    return { is: 'entry', entry: { ...held, when, instant, repeat } as unknown as Entry };
  }
  if (wants !== undefined && wantsClock(wants)) return completed(wants, when.slice(-'HH:MM'.length));
  if (minutes === undefined) return NONE;
  if (wants?.slot === 'minutes') return completed(wants, minutes);
  const meant = choices['minutes'];
  if (meant?.kind !== 'labor') return NONE;
  return meant.minutes?.eq(minutes) === true ? { is: 'entry', entry: meant } : { is: 'repeat' };
}

/** The summary's time lacks its half of the day. */
export const wantsClock = (wants: Wanted | undefined): boolean =>
  wants?.slot === 'value' && wants.held['setting'] === 'summaryAt';

/** "the tub weighs half a pound" to the question what the tub weighs. */
function tareTold({ wants }: Question, { container, weight }: EntryOf<'tare'>): Answer {
  return wants?.slot === 'tare' && wants.held['container'] === container ? completed(wants, weight) : NONE;
}

function named(wants: Wanted | undefined, entry: { readonly item?: string; readonly part?: string }): Answer {
  const wantsItem = wants?.slot === 'item' || wants?.slot === 'newItem';
  const wantsPart = wants?.slot === 'part' || wants?.slot === 'newPart';
  const value = wantsItem ? entry.item : wantsPart ? entry.part : undefined;
  return wants === undefined || value === undefined ? NONE : completed(wants, value);
}

/** The amount that was in doubt, said once more, is accepted like the same entry said again. */
function completed({ held, slot }: Wanted, value: unknown, again?: Question['again']): Answer {
  const entry = { ...held, [slot]: value } as unknown as Entry;
  const isSame =
    again !== undefined && Object.hasOwn(again.said, slot) && textOf(entry) === textOf(again.said);
  return { is: 'entry', entry: isSame ? again.accepts : entry };
}
