// When the summaries of the kitchen are due: each local date once, whatever the clock or the zone does meanwhile.
import type { Due } from './due.ts';
import type { Kitchen } from './kitchen.ts';
import { addDays, dateOf, type LocalDate, localOf, msOf, weekdayOf } from './local-time.ts';
import { date, say } from './reply.ts';

/** How long a summary looks back: its own day, or the seven days that end with it. */
export type Span = 'day' | 'week';

export const summaryToldKey = (span: Span): string => `summaryTold:${span}`;
const keyOf = (span: Span, date: LocalDate): string => `summary:${span}:${date}`;

export function summaryOfKey(key: string): { readonly span: Span; readonly date: LocalDate } | undefined {
  const found = /^summary:(day|week):(.+)$/.exec(key);
  return found === null ? undefined : { span: found[1] as Span, date: found[2] ?? '' };
}

/** Yesterday's, today's and tomorrow's; of a night that was slept through, the newest two. What it says is made when it is told. */
export function summaryDues(kitchen: Kitchen, now: number): readonly Due[] {
  const { summaryAt, weekSummaryOn, timezone, openedAt, summaryTo } = kitchen.settings;
  if (summaryAt === undefined) return [];
  const today = dateOf(localOf(now, timezone));
  const wanted = Math.max(openedAt === undefined ? 0 : Date.parse(openedAt), chosenAt(kitchen));
  return [-1, 0, 1].flatMap((days) => {
    const day = addDays(today, days);
    const at = msOf(`${day}T${summaryAt}`, timezone);
    const spans: readonly Span[] = weekdayOf(day) === weekSummaryOn ? ['day', 'week'] : ['day'];
    return at < wanted
      ? []
      : spans
          .filter((span) => !wasTold(kitchen, span, day))
          .map((span) => ({
            key: keyOf(span, day),
            at,
            to: summaryTo === undefined ? 'team' : { speaker: summaryTo },
            say: [say(`summary-of-${span}`, { date: date(new Date(at).toISOString()) })],
            alarm: false,
          }));
  });
}

/** When somebody last set the time: nothing before it was wanted. */
const chosenAt = ({ memory }: Kitchen): number =>
  Date.parse(memory.get('setting:summaryAt')?.at(-1)?.at ?? '1970-01-01');

const wasTold = ({ memory }: Kitchen, span: Span, date: LocalDate): boolean =>
  (memory.get(summaryToldKey(span)) ?? []).some(
    ({ value }) => value !== undefined && 'text' in value && value.text === date,
  );
