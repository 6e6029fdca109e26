// What falls due in a kitchen is told once: the fact that it was told, and the letters that tell it, are stored together under a
// message of its own, whose number is the key. Whoever comes second, after a restart or from another process, finds it there.
import type { Due } from '../core/due.ts';
import type { Recorded } from '../core/facts.ts';
import { evolve, type Kitchen } from '../core/kitchen.ts';
import { lengthOfTime } from '../core/length-of-time.ts';
import { type Reply, say } from '../core/reply.ts';
import type { Role } from '../core/role.ts';
import { seesCosts } from '../core/role.ts';
import { dues, type DuesOf } from '../core/schedule.ts';
import { summaryOfKey } from '../core/summary-due.ts';
import { spanStretch } from '../core/period.ts';
import type { Render } from '../language/render.ts';
import { summaryLines } from '../intents/summary-lines.ts';
import type { KitchenId, Store } from './ports/store.ts';
import type { Telling, Told } from './ports/table.ts';
import { pastDays } from './past-days.ts';
import { changedViews } from './views.ts';

export interface DueParts {
  readonly store: Pick<Store, 'append' | 'replyTo' | 'testsClosed' | 'closedTests' | 'testFacts'>;
  readonly id: KitchenId;
  readonly render: Render;
  /** What may be due; the kitchen's own where it is not given. */
  readonly duesOf?: DuesOf;
}

export interface Agenda {
  /** What is due and not known to be told; cheap to ask each second. */
  readonly waiting: (kitchen: Kitchen, now: number) => readonly Due[];
  readonly noteTold: (key: string) => void;
}

/** Occurrences near now are looked for again after so long; between, nothing is computed unless the kitchen or the clock has changed. */
const FRESH_MS = 30_000;

export function newAgenda(duesOf: DuesOf = dues): Agenda {
  const told = new Set<string>();
  let last: { kitchen: Kitchen; at: number; all: readonly Due[] } | undefined;
  const pins = new Map<string, number>();
  /** What follows a time that is not yet, because the clock was ahead, keeps the time that was reckoned first. */
  const pinned = (due: Due): Due => {
    if (due.isAhead === undefined) return due;
    const at = pins.get(due.key) ?? due.at;
    pins.set(due.key, at);
    return { ...due, at };
  };
  const all = (kitchen: Kitchen, now: number): readonly Due[] => {
    const fresh = last?.kitchen === kitchen && now >= last.at && now < last.at + FRESH_MS;
    if (last === undefined || !fresh) {
      last = { kitchen, at: now, all: duesOf(kitchen, now).map(pinned) };
      const keys = new Set(last.all.map(({ key }) => key));
      for (const key of told) if (!keys.has(key)) told.delete(key);
      for (const key of pins.keys()) if (!keys.has(key)) pins.delete(key);
    }
    return last.all;
  };
  return {
    waiting: (kitchen, now) => all(kitchen, now).filter(({ key }) => !told.has(key)),
    noteTold: (key) => void told.add(key),
  };
}

const messageOf = (key: string): string => `due:${key}`;

interface Step {
  readonly kitchen: Kitchen;
  readonly told?: Told;
}

/** Tells the first that is due; undefined where nothing is. The kitchen that comes back has the fact in it. */
export async function tellFirst(
  parts: DueParts,
  agenda: Agenda,
  { kitchen, telling }: { kitchen: Kitchen; telling: Telling },
): Promise<Step | undefined> {
  const now = Date.parse(telling.at);
  const due = agenda.waiting(kitchen, now).find(({ at }) => at <= now);
  if (due === undefined) return undefined;
  const recorded = firedFact(due, telling.at);
  const after = evolve(kitchen, recorded);
  const known = await parts.store.replyTo(parts.id, messageOf(due.key));
  if (known !== undefined) {
    agenda.noteTold(due.key);
    return { kitchen };
  }
  const lines = await linesOf(parts, kitchen, { due, now });
  const told = toldOf(parts, kitchen, { due, telling, lines });
  const stored = await parts.store.append({
    kitchen: parts.id,
    message: messageOf(due.key),
    speaker: recorded.speaker,
    at: telling.at,
    text: '',
    outcome: 'answered',
    reply: told.words('owner'),
    facts: [recorded],
    views: changedViews(kitchen, after),
    ...(telling.post === undefined || lines.length === 0 ? {} : { post: await telling.post(told) }),
  });
  agenda.noteTold(due.key);
  return stored === 'seen' || lines.length === 0 ? { kitchen: after } : { kitchen: after, told };
}

function firedFact({ key, at, alarm }: Due, now: string): Recorded {
  const dueAt = new Date(at).toISOString();
  return {
    entry: `${messageOf(key)}.0`,
    speaker: CLOCK,
    at: now,
    fact: { type: 'fired', key, dueAt, alarm },
  };
}

/** Nobody's name: no channel gives a speaker this one. */
const CLOCK = ' clock';

/** Later than that is told: a scanner that is on time is within seconds. */
const LATE_MS = 60_000;

async function linesOf(
  parts: DueParts,
  kitchen: Kitchen,
  { due, now }: { due: Due; now: number },
): Promise<readonly Reply[]> {
  const late = lateness(now - due.at);
  const summary = summaryOfKey(due.key);
  if (summary === undefined) return [...due.say, ...late];
  const stretch = spanStretch(summary.span, summary.date, kitchen.settings.timezone);
  const past = await pastDays({ ...parts, kitchen, stretch, at: new Date(now).toISOString() });
  const lines = summaryLines(kitchen, past, parts.duesOf);
  const isEmpty = past.tests.length === 0 && lines.length === 1;
  return isEmpty && kitchen.settings.tellsEmptyDay === false ? [] : [...due.say, ...lines, ...late];
}

function lateness(ms: number): readonly Reply[] {
  return ms < LATE_MS ? [] : [say('late', { length: lengthOfTime(ms) })];
}

function toldOf(
  { render }: DueParts,
  { settings }: Kitchen,
  { due, telling, lines }: { due: Due; telling: Telling; lines: readonly Reply[] },
): Told {
  const { key, to, alarm } = due;
  const words = (role: Role): string => render(lines, { ...settings, seesCosts: seesCosts(role, settings) });
  return { key, to, alarm, dueAt: new Date(due.at).toISOString(), at: telling.at, words };
}
