// Which fact a correction is about.
import type { EntryOf } from '../core/entry.ts';
import type { LotId, PlainFact, Recorded, TestId } from '../core/facts.ts';
import { saidBy } from '../core/speakers.ts';
import { standingFacts, type Test } from '../core/test.ts';
import { aboutOf, type Scene } from './intent.ts';

/** A fact that can be corrected: the entry that it came from, and how it stands now. */
export interface Correctable {
  readonly target: string;
  readonly fact: PlainFact;
  readonly test?: TestId;
  readonly lot?: LotId;
  readonly item?: string;
  /** The entry that made it so: the first one, or a correction of it. */
  readonly saidIn: string;
}

export type Field =
  | 'weight'
  | 'price'
  | 'cost'
  | 'credit'
  | 'priceEach'
  | 'count'
  | 'each'
  | 'pieces'
  | 'minutes'
  | 'rate'
  | 'costEach'
  | 'degrees';

/** What each fact can be corrected in. */
export function fieldsOf(type: PlainFact['type']): readonly Field[] {
  switch (type) {
    case 'received':
      return ['weight', 'price', 'cost', 'pieces'];
    case 'weighed':
      return ['weight', 'credit'];
    case 'portioned':
      return ['count', 'each', 'weight'];
    case 'priced':
      return ['price'];
    case 'readyCutPriced':
      return ['price', 'priceEach', 'costEach'];
    case 'credited':
      return ['credit'];
    case 'labored':
      return ['minutes', 'rate'];
    case 'packed':
      return ['costEach'];
    case 'ended':
      return ['each'];
    case 'tared':
    case 'ground':
    case 'cooked':
    case 'served':
      return ['weight'];
    case 'temperatureRead':
    case 'thermometerChecked':
      return ['degrees'];
    case 'listed':
    case 'sourced':
    case 'carriedOver':
    case 'cleaned':
    case 'batchBegun':
    case 'coolingBegun':
    case 'lotEnded':
    case 'batchEnded':
    case 'binned':
    case 'removed':
    case 'noted':
    case 'turned':
    case 'reminderSet':
    case 'reminderCancelled':
    case 'fired':
    case 'acknowledged':
    case 'chosen':
    case 'voiceChosen':
    case 'closed':
    case 'dropped':
    case 'undone':
    case 'sold':
      return [];
  }
}

/** The fields that a correction says. */
export const saidFields = (entry: EntryOf<'correct'>): readonly Field[] =>
  ALL_FIELDS.filter((field) => entry[field] !== undefined);

const ALL_FIELDS: readonly Field[] = [
  'weight', 'price', 'cost', 'credit', 'priceEach', 'count', 'each', 'pieces', 'minutes', 'rate', 'costEach', 'degrees',
]; // prettier-ignore

/** Whether the fact has all that the correction says. */
export const takes = (type: PlainFact['type'], entry: EntryOf<'correct'>): boolean =>
  saidFields(entry).every((field) => fieldsOf(type).includes(field));

/** The speaker's own last entry, where it has a quantity, as it stands with its corrections. */
export const ownLast = (scene: Scene): Correctable | undefined =>
  ownNewest(scene, (fact) => fieldsOf(fact.type).length > 0, 1);

/** How far back an entry may lie that only its field tells. */
const FAR_BACK = 8;

/** Of the speaker's last entries in the same test the newest whose fact has all that the correction says. */
export const lastOf = (scene: Scene, entry: EntryOf<'correct'>): Correctable | undefined =>
  ownNewest(scene, (fact) => takes(fact.type, entry), FAR_BACK);

const ownNewest = (
  scene: Scene,
  fits: (fact: PlainFact) => boolean,
  depth: number,
): Correctable | undefined => ownEntries(scene, depth).find(({ fact }) => fits(fact));

/** What the speaker's last entries in the same test said, as it stands now, the newest first. */
export function ownEntries(scene: Scene, depth = FAR_BACK): readonly Correctable[] {
  const facts = saidBy(scene.kitchen.speakers, scene.speaker)
    .slice(-depth)
    .flatMap((each) => each.facts);
  const inTest = facts.findLast(({ test }) => test !== undefined)?.test;
  return facts
    .toReversed()
    .filter(({ test }) => test === undefined || test === inTest)
    .flatMap((recorded) => correctable(scene, recorded) ?? []);
}

/** The fact as it stands now; undefined where another entry has taken its place. */
function correctable(
  scene: Scene,
  { entry, fact: any, test: id, lot, item }: Recorded,
): Correctable | undefined {
  const [target, fact] = any.type === 'corrected' ? [any.target, any.by] : [entry, any];
  const of = aboutOf(scene, { test: id, lot });
  if (of === undefined) return { target, fact, test: id, lot, item, saidIn: entry };
  const now = standingFacts(of.facts).findLast(
    (each) => each.recorded.entry === target && each.fact.type === fact.type,
  );
  return now && { target, fact: now.fact, test: id, lot, item, saidIn: entry };
}

/** The newest standing fact of a type in a test, whoever said it. */
export function newestWith(test: Test, type: PlainFact['type'], part?: string): Correctable | undefined {
  const found = standingFacts(test.facts).findLast(
    ({ fact }) =>
      fact.type === type && (part === undefined || (fact.type === 'weighed' && fact.part === part)),
  );
  const target = found?.recorded.entry;
  return target === undefined
    ? undefined
    : { target, fact: found?.fact as PlainFact, test: test.id, item: test.item, saidIn: target };
}
