// Which lot an entry belongs to: the one said, else the speaker's own, else the only open one, else it is asked.
import type { Entry } from '../core/entry.ts';
import type { Fact, LotId } from '../core/facts.ts';
import { type Lot, openLots } from '../core/lots.ts';
import { list, name, say } from '../core/reply.ts';
import { asks, type Decision, lacking, refused, type Scene } from './intent.ts';

type ForLot = Entry & { readonly lot?: LotId };

/** Decides with the open lot that the entry belongs to; undefined where none is open. */
export function withLot(scene: Scene, entry: ForLot, decide: (lot: Lot | undefined) => Decision): Decision {
  const open = openLots(scene.kitchen.lots);
  if (entry.lot !== undefined) {
    const said = open.find(({ id }) => id === entry.lot);
    return said === undefined ? refused(say('no-such-lot', { lot: entry.lot })) : decide(said);
  }
  const [only, other] = open;
  const mine = ownLot(scene, open);
  if (mine !== undefined || other === undefined) return decide(mine ?? only);
  const lots = list(open.map(({ id, part }) => say('grind-of', { lot: id, part: name(part) })));
  return asks(say('ask-which-lot', { lots }), { wants: lacking(entry, 'lot') });
}

/** The same for what makes no sense without a lot. */
export const withOpenLot = (scene: Scene, entry: ForLot, decide: (lot: Lot) => Decision): Decision =>
  withLot(scene, entry, (lot) => (lot === undefined ? refused(say('no-lot-open')) : decide(lot)));

/** The lot that what is said of the kitchen goes to the record of: the speaker's own, else the newest open one. */
export function lotAtHand(scene: Scene): Lot | undefined {
  const open = openLots(scene.kitchen.lots);
  return ownLot(scene, open) ?? open.at(-1);
}

/** Noted with a lot, and no word about that lot. */
const OF_THE_KITCHEN: ReadonlySet<Fact['type']> = new Set(['cleaned', 'thermometerChecked']);

/** The open lot that the speaker has last spoken of. */
export function ownLot({ kitchen, speaker }: Scene, open: readonly Lot[]): Lot | undefined {
  const facts = kitchen.speakers.get(speaker)?.recent.flatMap((each) => each.facts) ?? [];
  const last = facts.findLast(
    ({ lot, fact }) => !OF_THE_KITCHEN.has(fact.type) && open.some(({ id }) => id === lot),
  )?.lot;
  return open.find(({ id }) => id === last);
}
