// What one entry of a cook can say, slot by slot. Weights are grams, prices are per pound; a slot that was not said
// is absent. The names outside (weightLb, eachOz …) are made at the border by entry-json.ts.
import type { Aloud } from './aloud.ts';
import type { Decimal } from './decimal.ts';
import type { TestId } from './facts.ts';
import type { Period } from './period.ts';
import type { Grouping } from './pools.ts';
import type { Grams } from './quantity.ts';
import type { Wish } from './reminder.ts';
import type { DegreesF, SafetySlots } from './safety-entry.ts';
import type { SettingName } from './setting.ts';

export type { DegreesF } from './safety-entry.ts';

interface Slots extends SafetySlots {
  receive: {
    item?: string;
    weight: Grams;
    price?: Decimal;
    cost?: Decimal;
    pieces?: number;
    supplier?: string;
    /** The words said that it is another piece beside an open one. */
    told?: boolean;
    /** Without a word for what the price is: it may be what all of it cost. */
    loose?: boolean;
  };
  weigh: {
    part: string;
    weight: Grams;
    mode: 'set' | 'add';
    credit?: Decimal;
    item?: string;
    /** The container it was weighed in; its weight comes off. */
    container?: string;
    /** What the empty container weighs, where it had to be asked. */
    tare?: Grams;
    /** The words said whether it replaces or adds. */
    told?: boolean;
    /** It is a product for sale. */
    sold?: boolean;
    /** The credit was said with "at": it may be what the piece costs. */
    at?: boolean;
  };
  portions: {
    count?: number;
    each?: Grams;
    weight?: Grams;
    mode?: 'add';
    told?: boolean;
    item?: string;
    /** "they weigh 11.2": of the portions only if those were the speaker's last words. */
    backward?: boolean;
    /** The words said that the size is one portion's, however heavy. */
    single?: boolean;
    /** In the place of all that was said of portions before, the list of single weights too. */
    anew?: boolean;
  };
  /** `counted`: how many there are in all, where that was asked. `loose`: only the table tells what the figures are. */
  portionWeights: { eachList: readonly Grams[]; item?: string; counted?: number; loose?: boolean };
  /** `day`: from when it holds, as the sentence files write it ("monday"). */
  price: { item: string; price: Decimal; supplier?: string; day?: string };
  readyCut: { item?: string; price?: Decimal; priceEach?: Decimal; each?: Grams; supplier?: string };
  credit: { part: string; credit: Decimal; item?: string };
  labor: { minutes?: Decimal; rate?: Decimal; item?: string; day?: string };
  packing: { costEach: Decimal; item?: string };
  tare: { container: string; weight: Grams };
  finish: { item?: string };
  status: { item?: string };
  /** `target`: this entry and no other, where it still stands. */
  undo: { target?: string };
  yes: object;
  no: object;
  help: object;
  correct: {
    part?: string;
    item?: string;
    weight?: Grams;
    price?: Decimal;
    cost?: Decimal;
    credit?: Decimal;
    priceEach?: Decimal;
    count?: number;
    each?: Grams;
    pieces?: number;
    minutes?: Decimal;
    rate?: Decimal;
    costEach?: Decimal;
    degrees?: DegreesF;
    newItem?: string;
    newPart?: string;
    /** Said as what is ("it's 158"), not that something was wrong: it may answer an alarm. */
    readonly plain?: true;
    /** With "at": the number is a price where it answers no alarm. */
    readonly priced?: true;
    /** A bare number after "no": what it measures shows only in the entry that it corrects. */
    number?: BareNumber;
    /** "not 7.40": what it was put down as. */
    before?: BareNumber;
  };
  remove: { part: string; item?: string };
  drop: { item?: string };
  rename: { item?: string; newItem: string };
  note: { text: string };
  /** The kitchen's own choice; `value` as the setting writes it. */
  setting: {
    setting: SettingName;
    value: string;
    degrees?: DegreesF;
    /** A setting that is a weight. */
    each?: Grams;
  };
  askSettings: object;
  /** When the speaker's answers are read out. */
  speaking: { when: Aloud };
  /** The state of the speaker's test, read out whatever was chosen. */
  readBack: object;
  remind: Wish & {
    /** For nobody in particular. */
    team?: boolean;
  };
  /** Words of time by themselves: answer a question. `minutes` where they are a length. */
  moment: Wish & { minutes?: Decimal };
  askReminders: object;
  /** By number, by its words, or all of one's own. */
  cancelReminder: { count?: number; text?: string; all?: boolean };
  /** A person has heard the alarms that ring. */
  acknowledge: object;
  askSummary: { period: Period };
  /** `perPortion`: of a portion was asked, of the size `each` where one was said. */
  askCost: { item?: string; price?: Decimal; perPortion?: boolean; each?: Grams };
  askYield: { item?: string };
  /** Told apart by supplier, or by who cut. */
  askYieldBy: { item?: string; by: Grouping };
  askPrices: { item?: string; all?: boolean };
  askHistory: { item?: string };
  askVerdict: { item?: string; price?: Decimal };
  askOrder: { item?: string; count: number; each?: Grams };
  /** Without a weight: out of what is left on the table. */
  askPlan: { weight?: Grams; each: Grams; item?: string };
  /** The closed tests of an item as a table. */
  export: { item?: string; format?: 'csv' | 'xlsx' };
  /** Of the newest test of an item, or of its history. */
  picture: { item?: string; view?: 'history' };
  askMenuPrice: { item?: string; foodCostPct?: Decimal; each?: Grams };
  /** The share of a menu price that a portion takes. */
  askFoodCost: { item?: string; priceEach: Decimal };
  /** Whether the portions of the last weeks were on weight. */
  askHeavy: { item?: string };
  /** A part that is sold: weighed, with its market value. */
  product: { part: string; weight: Grams; credit?: Decimal; item?: string };
  /** The cost of a piece shared among its products. */
  askProducts: { item?: string };
  /** What the piece on the table costs. */
  piecePrice: { price: Decimal };
  /** The end of a piece; `rest` says where what is over goes. */
  endPiece: { each: Grams; rest?: 'trim' | 'portion'; item?: string };
  /** The portions out of the oven, and as served. */
  cooked: { weight: Grams; item?: string };
  served: { weight: Grams; item?: string };
  /** A name by itself: answers a question, or turns to the test of that item. */
  name: { item?: string; part?: string };
  /** An amount by itself: answers a question. */
  amount: { number: BareNumber };
  /** The words of an either-or question. */
  choice: { option: string };
}

/** A number as it may be read where no sentence tells what it measures: each reading that is fair. */
export interface BareNumber {
  readonly weight?: Grams;
  readonly each?: Grams;
  readonly price?: Decimal;
  readonly money?: Decimal;
  readonly count?: number;
  readonly minutes?: Decimal;
  readonly degrees?: DegreesF;
}

export type Kind = keyof Slots;

/** What an entry has beside what was said; the outside sees none of it. */
type Known = {
  /** It was said again, or a yes was said to it. */
  readonly sure?: true;
  /** The test that it is about, where a question about it was asked before. */
  readonly test?: TestId;
  /** The earlier entry in whose place it stands. */
  readonly instead?: string;
};

/** An entry with every slot that its kind needs. */
export type EntryOf<K extends Kind> = { readonly kind: K } & Known & Readonly<Slots[K]>;
export type Entry = { [K in Kind]: EntryOf<K> }[Kind];
