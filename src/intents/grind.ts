// "grinding the trim": opens a lot, with the cutting tests that the trim came from.
import type { EntryOf } from '../core/entry.ts';
import { holdsLabel, type Label } from '../core/label.ts';
import type { FactOf } from '../core/facts.ts';
import { type Lot, openLots } from '../core/lots.ts';
import { list, name, type Reply, say, weight } from '../core/reply.ts';
import { cleanedAt } from '../core/watched.ts';
import {
  answered,
  confirm,
  type Decision,
  type Intent,
  type NewFact,
  recorded,
  type Scene,
} from './intent.ts';
import { sourceWords } from './safety-words.ts';
import { toGrind } from './to-grind.ts';

type Grind = EntryOf<'grind'>;

export const grind: Intent<'grind'> = {
  slots: ['weight', 'part', 'item', 'supplierLot', 'establishment', 'supplier', 'produced', 'another'],
  decide: (scene, entry) => beside(scene, entry) ?? open(scene, entry),
};

const DEFAULT_PART = 'trim';
/** Assumption: within half an hour the same words are the same grind, said again. */
const SAME_MS = 30 * 60 * 1000;
/** Assumption: later than this, what is ground of the same part is a lot of its own. */
const SHIFT_MS = 12 * 60 * 60 * 1000;

/** What is said while a lot of the same part is open: a repeat, its weight, or another lot, which is asked. */
function beside(scene: Scene, entry: Grind): Decision | undefined {
  const { weight: grams, part = DEFAULT_PART } = entry;
  if (entry.another === true || entry.sure === true) return undefined;
  const lot = openLots(scene.kitchen.lots).findLast(
    (each) => each.part === part && age(scene, each) < SHIFT_MS,
  );
  if (lot === undefined) return undefined;
  if (lot.grams === undefined && grams !== undefined) return weighNow(lot, { ...entry, weight: grams });
  const isSame = grams === undefined || lot.grams?.eq(grams) === true;
  if (isSame && age(scene, lot) < SAME_MS && labelOf(entry) === undefined)
    return answered(say('already', { of: list([lotWords(lot)]) }));
  return confirm(say('ask-another-lot', { lot: lot.id, part: name(part) }), entry);
}

const age = ({ at }: Scene, { openedAt }: Lot): number => Date.parse(at) - Date.parse(openedAt);

/** The grind, its part and what it weighs. */
export const lotWords = ({ id, part, grams }: Lot): Reply =>
  grams === undefined
    ? say('grind-of', { lot: id, part: name(part) })
    : say('grind-weighed', { lot: id, part: name(part), weight: weight(grams) });

/** The weight of a lot that had none. */
function weighNow(lot: Lot, entry: Grind): Decision {
  const by: FactOf<'ground'> = {
    type: 'ground',
    part: lot.part,
    grams: entry.weight,
    from: [...lot.from],
    cleanedAt: lot.cleanedBefore,
  };
  const facts: readonly NewFact[] = [{ lot: lot.id, fact: { type: 'corrected', target: lot.entry, by } }];
  return recorded(facts, ({ kitchen }) => ({ say: [lotWords(kitchen.lots.get(lot.id) ?? lot)] }));
}

function open(scene: Scene, entry: Grind): Decision {
  const { kitchen } = scene;
  const { part = DEFAULT_PART, weight: grams } = entry;
  const from = sourcesOf(scene, part, entry.item);
  const fact: FactOf<'ground'> = {
    type: 'ground',
    part,
    grams,
    from: [...from],
    cleanedAt: cleanedAt(kitchen.memory),
  };
  const lot = kitchen.nextLot;
  const facts: readonly NewFact[] = [
    { lot, fact },
    ...labelsOf(scene, entry, from).map((label) => ({ lot, fact: { type: 'sourced' as const, ...label } })),
  ];
  return recorded(facts, ({ kitchen: now }) => ({ say: opened(now.lots.get(lot)) }));
}

/** Those of the pieces that the trim is from, and what was said now. */
function labelsOf({ kitchen }: Scene, entry: Grind, from: From): readonly Label[] {
  const said = labelOf(entry);
  const known = from.flatMap(({ test }) => kitchen.tests.get(test)?.labels ?? []);
  const isKnown = said !== undefined && holdsLabel(known, said);
  return said === undefined || isKnown ? known : [...known, said];
}

export const labelOf = ({ supplierLot, establishment, supplier, produced }: Label): Label | undefined =>
  supplierLot === undefined && establishment === undefined && supplier === undefined && produced === undefined
    ? undefined
    : { supplierLot, establishment, supplier, produced };

type From = Readonly<FactOf<'ground'>['from']>;

const sourcesOf = (scene: Scene, part: string, item: string | undefined): From =>
  toGrind(scene, part, item).map(({ test, grams }) => ({
    test: test.id,
    item: test.item,
    grams,
    supplier: test.received.supplier,
  }));

function opened(lot: Lot | undefined): readonly Reply[] {
  if (lot === undefined) return [];
  const { from, sources, cleanedBefore } = lot;
  const of = from.map(({ item, grams }) =>
    grams === undefined
      ? say('item', { item: name(item) })
      : say('part-weight', { part: name(item), weight: weight(grams) }),
  );
  const lines = [
    lotWords(lot),
    ...(of.length === 0 ? [say('grind-from-nothing')] : [say('grind-from', { of: list(of) })]),
    ...sources.map(sourceWords),
    ...(cleanedBefore === undefined ? [say('grind-not-cleaned')] : []),
  ];
  return [say('line', { of: list(lines) }), say('grind-next'), say('grind-keeps'), say('check-code')];
}
