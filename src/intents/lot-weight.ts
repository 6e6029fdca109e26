// "grind is 1.9 lb" while a grind is open: what the lot weighs, where no piece is on the table or the speaker has just ground it.
import { sum } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { type Lot, openLots } from '../core/lots.ts';
import { name, say, weight as weightOf } from '../core/reply.ts';
import { saidBy } from '../core/speakers.ts';
import { asks, becomes, type Becomes, type Decision, type Scene } from './intent.ts';
import { ownLot } from './lot-route.ts';
import { openTestFor } from './route.ts';

type Weigh = EntryOf<'weigh'>;

const GRIND = 'grind';
/** Assumption: so many times what is known to have gone in is a temperature, or a slip. */
const TOO_MUCH = 2;

/** Undefined where it is a part of a piece. */
export function asLotWeight(
  scene: Scene,
  { part, weight, item, test, mode }: Weigh,
): Becomes | Decision | undefined {
  if (part !== GRIND || item !== undefined || test !== undefined || mode === 'add') return undefined;
  const lot = lotMeant(scene);
  if (lot === undefined) return undefined;
  const entry: EntryOf<'grind'> = { kind: 'grind', part: lot.part, weight };
  const known = sum(lot.from.flatMap(({ grams }) => grams ?? []));
  if (!known.gt(0) || weight.lte(known.times(TOO_MUCH))) return becomes(entry);
  const args = { lot: lot.id, weight: weightOf(weight), known: weightOf(known), part: name(lot.part) };
  return asks(say('ask-lot-weight', args), { choices: { yes: entry } });
}

function lotMeant(scene: Scene): Lot | undefined {
  const open = openLots(scene.kitchen.lots);
  const mine = ownLot(scene, open);
  if (mine !== undefined && mine.grams === undefined && isLast(scene, mine)) return mine;
  return openTestFor(scene, undefined) === undefined ? (mine ?? open.at(-1)) : undefined;
}

/** The lot is what the speaker has last spoken of. */
const isLast = ({ kitchen, speaker }: Scene, { id }: Lot): boolean =>
  saidBy(kitchen.speakers, speaker).at(-1)?.facts.at(-1)?.lot === id;
