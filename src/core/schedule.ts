// Everything that may be due in a kitchen. Whoever has something to tell at its time adds a function to the list.
import { ringsOf } from './alarm.ts';
import type { Due } from './due.ts';
import type { Kitchen } from './kitchen.ts';
import { lotDues } from './lot-dues.ts';
import { reminderDues } from './reminder.ts';
import { summaryDues } from './summary-due.ts';

/** Pure. `now`, in milliseconds, only picks which occurrences of what repeats are near; what was told already is left out or known by its key. */
export type DuesOf = (kitchen: Kitchen, now: number) => readonly Due[];

export const DUES: readonly DuesOf[] = [reminderDues, summaryDues, lotDues];

export function dues(kitchen: Kitchen, now: number, sources: readonly DuesOf[] = DUES): readonly Due[] {
  const first = sources.flatMap((source) => source(kitchen, now));
  return [...first, ...ringsOf(kitchen, first, now)].sort((a, b) => a.at - b.at);
}
