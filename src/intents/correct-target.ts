// Which fact a correction is about.
import type { EntryOf } from '../core/entry.ts';
import type { PlainFact, TestId } from '../core/facts.ts';
import { standingFacts, type Test } from '../core/test.ts';
import type { Scene } from './intent.ts';

/** A fact that can be corrected: the entry that it came from, and how it stands now. */
export interface Correctable {
  readonly target: string;
  readonly fact: PlainFact;
  readonly test?: TestId;
  readonly item?: string;
}

type Quantity = Extract<PlainFact['type'], 'received' | 'weighed' | 'portioned' | 'priced' | 'readyCutPriced' | 'credited' | 'labored' | 'packed' | 'tared'>;
const QUANTITIES: readonly string[] = ['received', 'weighed', 'portioned', 'priced', 'readyCutPriced', 'credited', 'labored', 'packed', 'tared'] satisfies Quantity[];

/** The speaker's own last entry that has a quantity, as it stands with its corrections. */
export function ownLast(scene: Scene): Correctable | undefined {
  return ownNewest(scene, (fact) => QUANTITIES.includes(fact.type), 1);
}

/** Of the speaker's last entries the newest whose fact has all that the correction says. */
export function lastOf(scene: Scene, entry: EntryOf<'correct'>): Correctable | undefined {
  return ownNewest(scene, (fact) => takes(fact, entry), 8);
}

function ownNewest(scene: Scene, fits: (fact: PlainFact) => boolean, depth: number): Correctable | undefined {
  const recent = scene.kitchen.speakers.get(scene.speaker)?.recent ?? [];
  for (const { entry, facts } of recent.slice(-depth).toReversed()) {
    for (const { fact, test, item } of facts.toReversed()) {
      const plain = fact.type === 'corrected' ? fact.by : fact;
      const target = fact.type === 'corrected' ? fact.target : entry;
      if (fits(plain)) return { target, fact: plain, test, item };
    }
  }
  return undefined;
}

function takes(fact: PlainFact, entry: EntryOf<'correct'>): boolean {
  switch (fact.type) {
    case 'received':
      return entry.price !== undefined || entry.cost !== undefined || entry.pieces !== undefined;
    case 'weighed':
      return entry.credit !== undefined;
    case 'credited':
      return entry.credit !== undefined;
    case 'portioned':
      return entry.count !== undefined || entry.each !== undefined;
    case 'priced':
      return entry.price !== undefined;
    case 'readyCutPriced':
      return entry.price !== undefined || entry.priceEach !== undefined || entry.costEach !== undefined;
    case 'labored':
      return entry.minutes !== undefined || entry.rate !== undefined;
    case 'packed':
      return entry.costEach !== undefined;
    default:
      return false;
  }
}

/** The newest standing fact of a type in a test, whoever said it. */
export function newestWith(test: Test, type: PlainFact['type'], part?: string): Correctable | undefined {
  const found = standingFacts(test.facts).findLast(({ fact }) => fact.type === type && (part === undefined || (fact.type === 'weighed' && fact.part === part)));
  return found && { target: found.recorded.entry, fact: found.fact, test: test.id, item: test.item };
}
