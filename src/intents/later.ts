// "from monday": when a price or a rate that was said with a day comes into force.
import { startOfDay } from '../core/local-time.ts';
import type { Scene } from './intent.ts';

/** The beginning of the day where the kitchen is; undefined without a day, and where that is past: it holds at once. */
export function laterStart({ at, kitchen }: Scene, day: string | undefined): string | undefined {
  const start = day === undefined ? undefined : startOfDay(day, at, kitchen.settings.timezone);
  return start !== undefined && start > at ? start : undefined;
}
