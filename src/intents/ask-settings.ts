// "settings": how the kitchen is set, one line for each thing that can be set by word.
import { USUAL_MINUTES } from '../core/alarm.ts';
import { COLD_F, GROUND_HOUSE_F } from '../core/heat.ts';
import { clock, type Reply, say, size, temperature } from '../core/reply.ts';
import type { Settings } from '../core/settings.ts';
import { WEEKDAYS } from '../core/setting.ts';
import { answered, type Intent } from './intent.ts';

const lines: readonly ((settings: Settings) => Reply | undefined)[] = [
  ({ unit, currency, timezone }) => say('set-counts', { unit, currency, timezone }),
  ({ summaryAt, summaryTo = 'team' }) =>
    summaryAt === undefined
      ? say('set-no-summary')
      : say('set-summary', { time: clock(`2000-01-01T${summaryAt}`, 'daily'), to: summaryTo }),
  ({ weekSummaryOn: day }) =>
    day === undefined ? undefined : say('setting-weekSummaryOn', { value: WEEKDAYS[day - 1] ?? '' }),
  ({ tellsEmptyDay = true, summaryAt }) =>
    summaryAt === undefined
      ? undefined
      : say('setting-tellsEmptyDay', { value: tellsEmptyDay ? 'yes' : 'no' }),
  ({ groundCookF = GROUND_HOUSE_F, coldF = COLD_F }) =>
    say('set-limits', { ground: temperature(groundCookF), cold: temperature(coldF) }),
  ({ escalateMinutes = USUAL_MINUTES, secondPerson = 'nobody' }) =>
    say('set-alarms', { minutes: escalateMinutes, to: secondPerson }),
  ({ cookAgainMinutes: minutes }) =>
    minutes === undefined ? undefined : say('setting-cookAgainMinutes', { value: String(minutes) }),
  ({ cuttersSeeCosts = false, laborAvoidable }) =>
    say('set-costs', { seen: cuttersSeeCosts ? 'all' : 'some', labor: laborAvoidable ? 'counts' : 'fixed' }),
  ({ portionTolerance: off }) => (off === undefined ? undefined : say('set-tolerance', { off: size(off) })),
  ({ keepsRecordings: days }) => say('set-recordings', { days: days ?? 0 }),
];

export const askSettings: Intent<'askSettings'> = {
  slots: [],
  decide: ({ kitchen: { settings } }) =>
    answered(...lines.flatMap((line) => line(settings) ?? []), say('set-change'), say('check-code')),
};
