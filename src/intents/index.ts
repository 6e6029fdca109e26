// The catalogue of intents: every kind of entry and the file that decides it. A kind without one does not compile.
import type { Entry, Kind } from '../core/entry.ts';
import { acknowledge } from './acknowledge.ts';
import { amount, choice, help, name, no, yes } from './answers.ts';
import { askCost } from './ask-cost.ts';
import { askFoodCost } from './ask-food-cost.ts';
import { askHeavy } from './ask-heavy.ts';
import { askHistory } from './ask-history.ts';
import { askGrind } from './ask-grind.ts';
import { askGrindLog } from './ask-grind-log.ts';
import { askMenuPrice } from './ask-menu-price.ts';
import { askOrder } from './ask-order.ts';
import { askPlan } from './ask-plan.ts';
import { askPrices } from './ask-prices.ts';
import { askProducts } from './ask-products.ts';
import { askStorage } from './ask-storage.ts';
import { askSummary } from './ask-summary.ts';
import { askTemperature } from './ask-temperature.ts';
import { askSettings } from './ask-settings.ts';
import { askReadings } from './ask-readings.ts';
import { askThermometerLog } from './ask-thermometer-log.ts';
import { askVerdict } from './ask-verdict.ts';
import { askYield } from './ask-yield.ts';
import { askYieldBy } from './ask-yield-by.ts';
import { cooling } from './cooling.ts';
import { cooked, served } from './cooked.ts';
import { correct } from './correct.ts';
import { credit } from './credit.ts';
import { discard } from './discard.ts';
import { drop } from './drop.ts';
import { endPiece } from './end-piece.ts';
import { exportTests } from './export.ts';
import { finish } from './finish.ts';
import { grindSource } from './grind-source.ts';
import { grind } from './grind.ts';
import { inPlaceOf } from './instead.ts';
import { type Becomes, type Decision, type Intent, type Scene, showing } from './intent.ts';
import { labor } from './labor.ts';
import { batch, carryOver, cleaned, endBatch, endLot } from './lot-facts.ts';
import { note } from './note.ts';
import { packing } from './packing.ts';
import { picture } from './picture.ts';
import { portionWeights } from './portion-weights.ts';
import { piecePrice } from './piece-price.ts';
import { portions } from './portions.ts';
import { price } from './price.ts';
import { product } from './product.ts';
import { readyCut } from './ready-cut.ts';
import { receive } from './receive.ts';
import { askReminders, cancelReminder, moment, remind } from './remind.ts';
import { remove } from './remove.ts';
import { readBack } from './read-back.ts';
import { rename } from './rename.ts';
import { setting } from './setting.ts';
import { speaking } from './speaking.ts';
import { status } from './status.ts';
import { tare } from './tare.ts';
import { temperature } from './temperature.ts';
import { thermometer } from './thermometer.ts';
import { undo } from './undo.ts';
import { weigh } from './weigh.ts';
import { say } from '../core/reply.ts';

export const intents: { readonly [K in Kind]: Intent<K> } = {
  receive, weigh, portions, portionWeights, price, readyCut, credit, labor, packing, tare, finish, status, undo, yes, no, help,
  correct, remove, drop, rename, note, setting, askCost, askYield, askYieldBy, askPrices, askHistory, askVerdict, askOrder, askPlan, askMenuPrice, name, amount, choice,
  grind, grindSource, carryOver, cleaned, batch, endBatch, endLot, discard, temperature, thermometer, cooling, askTemperature, askGrindLog,
  askThermometerLog,
  askGrind,
  askReadings,
  askStorage,
  askSettings,
  askFoodCost, askHeavy, askProducts, product, piecePrice, endPiece, cooked, served,
  remind, moment, askReminders, cancelReminder, acknowledge, askSummary,
  export: exportTests, picture, speaking, readBack,
}; // prettier-ignore

interface AnyIntent extends Omit<Intent<Kind>, 'decide' | 'settle'> {
  readonly decide: (scene: Scene, entry: Entry) => Decision | Becomes;
  readonly settle?: (entry: Entry) => Entry;
}
const intentOf = (kind: Kind): AnyIntent => intents[kind] as unknown as AnyIntent;

/** What an entry comes to in a scene. Never throws for what a person can say. */
export function decide(scene: Scene, entry: Entry): Decision {
  const intent = intentOf(entry.kind);
  if (intent.costs === true && !scene.seesCosts) return { is: 'refused', say: [say('costs-hidden')] };
  const decided = (at: Scene): Decision => {
    const decision = intent.decide(at, entry);
    return decision.is === 'becomes' ? showing(decide(at, decision.entry), entry) : decision;
  };
  return entry.instead === undefined ? decided(scene) : inPlaceOf(scene, entry.instead, decided);
}

/** The entry as its own words settle it, without a scene. */
export const settle = (entry: Entry): Entry => intentOf(entry.kind).settle?.(entry) ?? entry;

const QUESTIONS: ReadonlySet<Kind> = new Set(['status', 'readBack', 'help', 'export', 'picture']);

/** Questions of the person: they record nothing, and leave a standing question of ours alone. */
export const isQuestion = (kind: Kind): boolean => QUESTIONS.has(kind) || kind.startsWith('ask');
