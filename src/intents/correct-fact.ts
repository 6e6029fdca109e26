// A fact with what the correction says in its place.
import type { EntryOf } from '../core/entry.ts';
import type { FactOf, PlainFact } from '../core/facts.ts';
import { toPlainJson } from '../core/plain-json.ts';
import { list, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf, overweightAsk, receivedLine } from './card.ts';
import { changedFact } from './changed-fact.ts';
import { correctDoubt, isCooked } from './correct-doubt.ts';
import type { Correctable } from './correct-target.ts';
import { respondCooked } from './cooked.ts';
import { endPiece } from './end-piece.ts';
import { factWords } from './fact-words.ts';
import { respondCredit } from './credit.ts';
import {
  answered,
  asks,
  type Decision,
  lacking,
  recorded,
  refused,
  type Response,
  type Scene,
} from './intent.ts';
import { inPlaceOf } from './instead.ts';
import { respondLabor } from './labor.ts';
import { respondPacking } from './packing.ts';
import { respondPortions } from './portions-reply.ts';
import { respondPrice } from './price.ts';
import { costLines } from './result.ts';
import { testVerdictLines, verdictLines } from './verdict-lines.ts';
import { readingResponse } from './reading.ts';
import { checkWords } from './thermometer.ts';
import { belowTare, respond as respondWeigh } from './weigh.ts';

type Correct = EntryOf<'correct'>;

/** Puts the said fields into the fact, unless what comes out would be asked about. */
export function applyCorrection(scene: Scene, entry: Correct, target: Correctable): Decision {
  const { fact: said } = target;
  const below = belowContainer(entry, said);
  if (below !== undefined) return below;
  if (said.type === 'ended') return anotherEnd(scene, entry, { ...target, fact: said });
  const by = changedFact(scene, said, entry);
  if (by === undefined) return refused(say('nothing-to-correct'));
  if (toPlainJson(by) === toPlainJson(target.fact)) {
    const there = list(factWords({ fact: by, item: target.item }));
    return answered(say('already', { of: there }));
  }
  const after = { ...target, fact: by };
  return correctDoubt(scene, entry, { after, before: target.fact }) ?? recordCorrection(after);
}

/** With a container on the scale it can't have shown so little. */
function belowContainer(entry: Correct, fact: PlainFact): Decision | undefined {
  if (fact.type !== 'weighed' || fact.tareGrams === undefined || entry.weight?.gt(fact.tareGrams) !== false)
    return undefined;
  return asks(belowTare({ ...fact, tare: fact.tareGrams }), { wants: lacking(entry, 'weight') });
}

/** An end piece of another weight gives other portions and another rest: the whole entry is made anew. */
function anotherEnd(
  scene: Scene,
  { each }: Correct,
  target: Correctable & { readonly fact: FactOf<'ended'> },
): Decision {
  if (each === undefined) return refused(say('nothing-to-correct'));
  const { rest } = target.fact;
  return inPlaceOf(scene, target.target, (without) =>
    endPiece.decide(without, { kind: 'endPiece', each, rest, test: target.test }),
  );
}

/** Records that the fact holds in the place of the target's. */
export function recordCorrection({ target, fact, test, lot, item }: Correctable): Decision {
  const about =
    fact.type === 'received' || fact.type === 'priced' || fact.type === 'readyCutPriced' ? fact.item : item;
  return recorded([{ test, lot, item: about, fact: { type: 'corrected', target, by: fact } }], (now) =>
    respond(now, { target, fact, test, lot, item: about, saidIn: target }),
  );
}

function respond(scene: Scene, { target, fact, test: id, lot, item }: Correctable): Response {
  if (fact.type === 'temperatureRead') return readingResponse(scene, { fact, lot, entry: target });
  if (fact.type === 'thermometerChecked') return { say: checkWords(fact) };
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  const response = factResponse(scene, { fact, item, test });
  if (test?.status !== 'closed' || isCooked(fact)) return response;
  return { say: [...response.say, ...costLines(figuresOf(scene, test)), ...testVerdictLines(scene, test)] };
}

/** As the entry itself would have been read back. */
function factResponse(
  scene: Scene,
  { fact, item, test }: { fact: PlainFact; item?: string; test?: Test },
): Response {
  const read: Response = { say: [say('corrected', { what: list(factWords({ fact, item })) })] };
  if (fact.type === 'priced') return respondPrice(scene, { ...fact, price: fact.perLb }, test);
  if (fact.type === 'readyCutPriced') return { say: [...read.say, ...verdictLines(scene, fact.item)] };
  if (fact.type === 'credited') return respondCredit(scene, { ...fact, credit: fact.perLb, test: test?.id });
  if (test === undefined) return read;
  if (isCooked(fact)) return respondCooked(scene, test, { kind: fact.type, weight: fact.grams });
  if (fact.type === 'weighed')
    return respondWeigh(scene, test, { part: fact.part, container: fact.container });
  if (fact.type === 'portioned') return respondPortions(scene, test);
  if (fact.type === 'labored') return respondLabor(scene, test);
  if (fact.type === 'packed') return respondPacking(scene, test);
  if (fact.type === 'received')
    return { say: [receivedLine(test, figuresOf(scene, test))], ask: overweightAsk(scene, test) };
  return read;
}
