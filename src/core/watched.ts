// What is watched without a lot, or beside one: warm raw meat, food under its cooking limit, food that cools, the last
// cleaning. Kept in the kitchen's memory, so that an undo restores what stood before and a restart loses nothing.
import type { FactOf, LotId, Recorded } from './facts.ts';
import { type Food, FOODS } from './safety-facts.ts';
import { type Chosen, type Ledger, newest } from './ledger.ts';

export const CLEANED_KEY = 'cleaned';
/** What ground meat of no lot is watched as, in whatever words it was said. */
export const GROUND_MEAT = 'ground meat';
/** Raw meat of a lot, or by its name. */
export const rawKey = (lot: LotId | undefined, what: string): string =>
  `raw:${lot === undefined ? what : `#${lot}`}`;
const cookKey = (what: string): string => `cook:${what}`;
export const coolingKey = (what: string): string => `cooling:${what}`;

type WatchedFact = FactOf<'temperatureRead' | 'coolingBegun' | 'cleaned' | 'binned'>;

export function watched(fact: WatchedFact, recorded: Recorded): readonly (readonly [string, Chosen])[] {
  switch (fact.type) {
    case 'cleaned':
      return fact.before === true ? [] : [[CLEANED_KEY, { text: recorded.at }]];
    case 'coolingBegun':
      return [[coolingKey(fact.what), { text: `none ${recorded.at} ${recorded.entry}` }]];
    // What is thrown away is warm to nobody.
    case 'binned':
      return fact.all === true
        ? [rawKey(undefined, fact.part), cookKey(fact.part)].map((key) => [key, { text: 'binned' }])
        : [];
    case 'temperatureRead':
      return reading(fact, recorded.lot);
  }
}

function reading(
  fact: FactOf<'temperatureRead'>,
  lot: LotId | undefined,
): readonly (readonly [string, Chosen])[] {
  const { stage, food, passed, degreesF, cooling } = fact;
  const what = nameOf(food, fact.what);
  const text = `${passed ? 'kept' : 'missed'} ${degreesF.toString()} ${food ?? ''}`.trimEnd();
  if (stage === 'raw') return [[rawKey(lot, what), { text }]];
  if (stage === 'cook' && lot === undefined) return [[cookKey(what), { text }]];
  if (cooling === undefined) return [];
  const { reached, late } = cooling.now ?? cooling.before;
  return [[coolingKey(what), { text: `${reached} ${cooling.since} ${cooling.begun}${late ? ' late' : ''}` }]];
}

/** Trim is one thing, and ground meat is, in whatever words they were said: a cold reading of one stops its alarm. */
function nameOf(food: Food | undefined, what: string | undefined): string {
  if (food === 'trim') return 'trim';
  return what === undefined || food === 'ground' || food === 'raw' ? GROUND_MEAT : what;
}

/** One thing that is watched, as its newest entry left it. */
export interface Watch {
  readonly is: 'raw' | 'cook' | 'cooling';
  /** A name, or "#" and the number of a lot. */
  readonly of: string;
  readonly entry: string;
  readonly at: string;
  readonly words: readonly string[];
}

/** What kind of food the newest reading was of, where it was said. */
export const foodIn = ({ words }: Watch): Food | undefined => FOODS.find((food) => food === words[2]);

const WATCHES = ['raw', 'cook', 'cooling'] as const;

export function watches(memory: ReadonlyMap<string, Ledger>): readonly Watch[] {
  return [...memory].flatMap(([key, ledger]) => {
    const is = WATCHES.find((each) => key.startsWith(`${each}:`));
    const found = is === undefined ? undefined : newest(ledger);
    if (is === undefined || found === undefined || !('text' in found.value)) return [];
    const { at, entry, value } = found;
    return [{ is, of: key.slice(is.length + 1), entry, at, words: value.text.split(' ') }];
  });
}

/** Whether an alarm waits for another reading of it: warm raw meat, or food under its cooking limit; of no lot. */
export const isWatched = (
  memory: ReadonlyMap<string, Ledger>,
  what: string,
  stages: readonly Watch['is'][] = ['raw', 'cook'],
): boolean =>
  watches(memory).some(({ is, of, words }) => stages.includes(is) && of === what && words[0] === 'missed');

/** Food that cools: since when, and the last step that it has reached. */
export interface Cooling {
  readonly what: string;
  readonly begun: string;
  readonly since: string;
  readonly reached: 'none' | 'seventy';
  readonly late: boolean;
}

export const coolings = (memory: ReadonlyMap<string, Ledger>): readonly Cooling[] =>
  watches(memory).flatMap(({ is, of, words: [reached, since = '', begun = '', late] }) =>
    is === 'cooling' && (reached === 'none' || reached === 'seventy')
      ? [{ what: of, begun, since, reached, late: late === 'late' }]
      : [],
  );

export const cleanedAt = (memory: ReadonlyMap<string, Ledger>): string | undefined => {
  const found = newest(memory.get(CLEANED_KEY) ?? []);
  return found !== undefined && 'text' in found.value ? found.value.text : undefined;
};
