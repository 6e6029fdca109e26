// What the fields of facts are made of.
import { z } from 'zod';
import { decimal, type Decimal } from './decimal.ts';

/** A Decimal, in the log its plain figure. */
export const figure = z.string().transform((text, context): Decimal => {
  try {
    return decimal(text);
  } catch {
    context.addIssue({ code: 'custom', message: 'no plain figure' });
    return z.NEVER;
  }
});
export const name = z.string().min(1);
export const whole = z.number().int().nonnegative();
/** A UTC instant, ISO 8601. */
export const instant = z.iso.datetime();
