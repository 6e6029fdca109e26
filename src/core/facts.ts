// The facts of a kitchen: past tense, appended, never edited. Everything else is computed from them.
// Weights are grams, prices are per pound; in the log a Decimal is written as its plain figure.
import { z } from 'zod';
import { figure, name, whole } from './fact-values.ts';
import { ALOUD } from './aloud.ts';
import * as safety from './safety-facts.ts';
import { isSetting, SETTING_NAMES } from './setting.ts';

const received = z.strictObject({
  type: z.literal('received'),
  item: name,
  grams: figure,
  /** Price per pound, or the sum paid for the whole weight; neither where no price was said. */
  perLb: figure.optional(),
  cost: figure.optional(),
  pieces: whole.optional(),
  supplier: name.optional(),
});
const weighed = z.strictObject({
  type: z.literal('weighed'),
  part: name,
  /** Without the container. */
  grams: figure,
  mode: z.enum(['set', 'add']),
  /** What it was weighed in, and what that weighed empty. */
  container: name.optional(),
  tareGrams: figure.optional(),
  creditPerLb: figure.optional(),
});
const portioned = z.strictObject({
  type: z.literal('portioned'),
  /** `set` lays what was said over what is there, `add` counts it on top. */
  mode: z.enum(['set', 'add']),
  count: whole.optional(),
  eachGrams: figure.optional(),
  grams: figure.optional(),
});
const listed = z.strictObject({ type: z.literal('listed'), eachGrams: z.array(figure).min(1) });
/** UTC instant from which a price or rate holds, where that is later than when it was said. */
const from = z.string().optional();
const priced = z.strictObject({
  type: z.literal('priced'),
  item: name,
  perLb: figure,
  supplier: name.optional(),
  from,
});
const readyCutPriced = z.strictObject({
  type: z.literal('readyCutPriced'),
  item: name,
  perLb: figure,
  /** Where it was said by the portion, its price. */
  each: figure.optional(),
  /** The size of the portions, where it was said; a price by the portion was turned into one per pound with it. */
  eachGrams: figure.optional(),
  supplier: name.optional(),
});
const credited = z.strictObject({ type: z.literal('credited'), item: name, part: name, perLb: figure });
const labored = z.strictObject({
  type: z.literal('labored'),
  minutes: figure.optional(),
  ratePerHour: figure.optional(),
  from,
});
const packed = z.strictObject({ type: z.literal('packed'), costEach: figure });
const tared = z.strictObject({ type: z.literal('tared'), container: name, grams: figure });
const removed = z.strictObject({ type: z.literal('removed'), part: name });
/** The part is a product that is sold, and shares the cost of the piece by its value. */
const sold = z.strictObject({ type: z.literal('sold'), part: name });
/** An end piece was weighed; the portions and the trim that it made are facts of the same entry. */
const ended = z.strictObject({
  type: z.literal('ended'),
  grams: figure,
  rest: z.enum(['trim', 'portion']).optional(),
});
/** What the portions weigh out of the oven, and what of it goes on the plate. */
const cooked = z.strictObject({ type: z.literal('cooked'), grams: figure });
const served = z.strictObject({ type: z.literal('served'), grams: figure });
const noted = z.strictObject({ type: z.literal('noted'), text: z.string() });
/** The speaker turned to a test, by its bare name: later entries of theirs go to it. */
const turned = z.strictObject({ type: z.literal('turned') });
/** The kitchen's own choice ("cutters may see costs"); `value` as the setting writes it. */
const chosen = z
  .strictObject({ type: z.literal('chosen'), setting: z.enum(SETTING_NAMES), value: z.string() })
  .refine(({ setting, value }) => isSetting(setting, value), 'unknown value');
/** When the speaker's answers are read out to them. */
const voiceChosen = z.strictObject({ type: z.literal('voiceChosen'), when: z.enum(ALOUD) });
const localTime = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/);
/** `number`: under which it stands until it is told or cancelled. `instant`: where it was said as a length of time. */
const reminderSet = z.strictObject({
  type: z.literal('reminderSet'),
  number: whole,
  when: localTime,
  instant: z.number().int().optional(),
  text: name.optional(),
  repeat: z.enum(['daily', 'weekly']).optional(),
  /** For nobody in particular. */
  team: z.literal(true).optional(),
});
const reminderCancelled = z.strictObject({ type: z.literal('reminderCancelled'), number: whole });
/** Something due was told, once for ever for its key (see core/due.ts). By no person. */
const fired = z.strictObject({
  type: z.literal('fired'),
  key: name,
  dueAt: z.string(),
  alarm: z.boolean(),
});
/** A person has heard alarms. */
const acknowledged = z.strictObject({ type: z.literal('acknowledged'), keys: z.array(name).min(1) });
const closed = z.strictObject({ type: z.literal('closed'), flagged: z.boolean() });
const dropped = z.strictObject({ type: z.literal('dropped') });
/**
 * An earlier entry and all its facts are void. `bare` where the speaker took it back, which is no entry of its own;
 * else it is part of an entry (one that moves a weight to another test), and undoing that makes the target stand again.
 */
const undone = z.strictObject({ type: z.literal('undone'), target: name, bare: z.boolean() });

const plain = z.discriminatedUnion('type', [
  received, weighed, portioned, listed, priced, readyCutPriced, credited, labored, packed, tared, removed,
  noted, turned, chosen, voiceChosen, reminderSet, reminderCancelled, fired, acknowledged, closed, dropped, undone, safety.ground, safety.sourced, safety.carriedOver, safety.cleaned, safety.batchBegun,
  safety.temperatureRead, safety.thermometerChecked, safety.coolingBegun, safety.lotEnded, safety.batchEnded, safety.binned,
  sold, ended, cooked, served,
]); // prettier-ignore

/** In the place of an earlier entry's fact of the same type, this one holds. */
const corrected = z.strictObject({ type: z.literal('corrected'), target: name, by: plain });

const fact = z.discriminatedUnion('type', [...plain.options, corrected]);

/** A fact that can stand by itself or as the new content of a correction. */
export type PlainFact = z.infer<typeof plain>;
export type Fact = z.infer<typeof fact>;
export type FactOf<Type extends Fact['type']> = Extract<Fact, { type: Type }>;

/** The number of a cutting test in its kitchen, from 1 in the order of opening. */
export type TestId = number;

/** The number of a lot of ground meat in its kitchen, from 1 in the order of grinding. */
export type LotId = number;

/** A fact with who, when, where: one row of the log. */
export interface Recorded {
  /** The entry (one spoken or typed thing) that the fact came from; undo takes back a whole entry. */
  readonly entry: string;
  readonly speaker: string;
  /** UTC instant, ISO 8601. */
  readonly at: string;
  readonly test?: TestId;
  readonly lot?: LotId;
  /** The item it is about: of the test, or of the price. */
  readonly item?: string;
  readonly fact: Fact;
}

/** A fact as it is written to the log. */
export const encodeFact = (value: Fact): string => JSON.stringify(value);

/** A fact as it was written. Throws on anything that this version does not know: an unknown fact is never skipped. */
export const decodeFact = (text: string): Fact => fact.parse(JSON.parse(text));
