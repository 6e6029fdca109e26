// The facts of grinding, cooking and cooling. A lot is what was ground at once; its facts carry its number beside them.
// Temperatures are degrees Fahrenheit: a Celsius figure is a finite decimal of it.
import { z } from 'zod';
import { figure, instant, name, whole } from './fact-values.ts';

/** Opens a lot. `from` is the trim that went into it, as the cutting tests told at that moment. */
export const ground = z.strictObject({
  type: z.literal('ground'),
  part: name,
  grams: figure.optional(),
  from: z.array(
    z.strictObject({ test: whole, item: name, grams: figure.optional(), supplier: name.optional() }),
  ),
  /** The last cleaning of the grinder before it, where one was said. */
  cleanedAt: instant.optional(),
});

/** What the label of a supplied material says; said again it is another material. */
export const sourced = z.strictObject({
  type: z.literal('sourced'),
  supplierLot: name.optional(),
  establishment: name.optional(),
  supplier: name.optional(),
  /** As said. */
  produced: name.optional(),
});

/** What was left in the grinder of an earlier lot and went into this one; `none` where somebody said that nothing was. */
export const carriedOver = z.strictObject({
  type: z.literal('carriedOver'),
  none: z.boolean(),
  grams: figure.optional(),
});

/** The grinder and what touches the meat were cleaned and sanitized. */
export const cleaned = z.strictObject({
  type: z.literal('cleaned'),
  /** Before the lot was ground, told afterwards: when it was is not known. */
  before: z.literal(true).optional(),
});

/** A batch of the lot went on the heat. */
export const batchBegun = z.strictObject({ type: z.literal('batchBegun') });

/** The newest batch of the lot was thrown away: nobody eats it, so it needs no temperature any more. */
export const batchEnded = z.strictObject({ type: z.literal('batchEnded') });

/**
 * A part was thrown away before anybody ground it: so much of what was weighed in a cutting test, or what nobody had weighed. `all`
 * where nothing of the part is left here.
 */
export const binned = z.strictObject({
  type: z.literal('binned'),
  part: name,
  grams: figure.optional(),
  all: z.literal(true).optional(),
});

export const FOODS = ['ground', 'needled', 'poultry', 'whole', 'trim', 'raw', 'cooked'] as const;
export const STAGES = ['cook', 'raw', 'cooling', 'held'] as const;

const coolingStep = z.strictObject({
  reached: z.enum(['none', 'seventy', 'cold']),
  /** A step was reached after its time: it stays so. */
  late: z.boolean(),
});

export const temperatureRead = z.strictObject({
  type: z.literal('temperatureRead'),
  degreesF: figure,
  what: name.optional(),
  food: z.enum(FOODS).optional(),
  stage: z.enum(STAGES),
  /** The batch of the lot that was named, from 1; the one after the last begins with it. */
  batch: whole.optional(),
  /** The limit that was in force, and whether the reading kept it. */
  limitF: figure.optional(),
  passed: z.boolean(),
  /** Of cooling food: the entry and the instant that it began with, and how far it was before and is with this reading. */
  cooling: z
    .strictObject({ begun: name, since: instant, before: coolingStep, now: coolingStep.optional() })
    .optional(),
});

export const thermometerChecked = z.strictObject({
  type: z.literal('thermometerChecked'),
  point: z.enum(['ice', 'boiling']),
  degreesF: figure,
});

export const coolingBegun = z.strictObject({ type: z.literal('coolingBegun'), what: name });

/** By word only: a passing burger closes nothing. */
export const lotEnded = z.strictObject({ type: z.literal('lotEnded'), how: z.enum(['used', 'thrown']) });

export type Food = (typeof FOODS)[number];
export type Stage = (typeof STAGES)[number];
