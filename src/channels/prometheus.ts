// The figures of the running program in the text format that collectors of figures read.
import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client';
import type { Count, Levels, Metrics, Page, Timing } from '../app/ports/metrics.ts';

export interface Prometheus extends Metrics {
  /** Without levels: what was counted only. */
  readonly page: (levels?: () => Promise<Levels>) => Promise<Page>;
}

/** Series of one name differ in one label with a fixed value. */
const COUNTS: Readonly<Record<Count, readonly [name: string, label?: string, value?: string]>> = {
  updatesReceived: ['updates_received_total'],
  updatesHandled: ['updates_ended_total', 'end', 'handled'],
  updatesParked: ['updates_ended_total', 'end', 'parked'],
  repliesSent: ['replies_total', 'end', 'sent'],
  repliesFailed: ['replies_total', 'end', 'failed'],
  repliesUnknown: ['replies_total', 'end', 'unknown'],
  pollsOk: ['polls_total', 'end', 'ok'],
  pollsFailed: ['polls_total', 'end', 'failed'],
  webhookTaken: ['webhook_requests_total', 'end', 'taken'],
  webhookRefused: ['webhook_requests_total', 'end', 'refused'],
  webhookForged: ['webhook_requests_total', 'end', 'forged'],
  storeFailures: ['store_commit_failures_total'],
};

const TIMINGS: Readonly<Record<Timing, string>> = {
  turn: 'turn_seconds',
  acknowledgement: 'acknowledgement_seconds',
};

const LEVELS: Readonly<Record<keyof Levels, string>> = {
  ready: 'ready',
  contactAge: 'contact_age_seconds',
  oldestUnhandled: 'oldest_unhandled_seconds',
  oldestUnsent: 'oldest_unsent_seconds',
  webhookWaiting: 'webhook_waiting_updates',
  strangers: 'stranger_updates',
};

/** From what a cook does not notice to what is a fault. */
const BUCKETS = [0.001, 0.005, 0.01, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60, 300];

const named = (name: string): { readonly name: string; readonly help: string } => ({
  name: `blockhand_${name}`,
  help: name.replaceAll('_', ' '),
});

/** A registry of its own: what another part of the program may register is not told. */
export function newPrometheus(): Prometheus {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  const counters = countersOn(registry);
  const timers = Object.fromEntries(
    Object.entries(TIMINGS).map(([what, name]) => [
      what,
      new Histogram({ ...named(name), buckets: BUCKETS, registers }),
    ]),
  ) as Record<Timing, Histogram>;
  const gauges = Object.entries(LEVELS).map(
    ([what, name]) => [what as keyof Levels, new Gauge({ ...named(name), registers })] as const,
  );
  return {
    count: (what, by = 1) => {
      counters[what](by);
    },
    observe: (what, seconds) => {
      timers[what].observe(seconds);
    },
    page: async (levels) => {
      const found: Partial<Levels> = (await levels?.()) ?? {};
      // What is not there to be told must not stand with its last figure.
      for (const [what, gauge] of gauges) {
        gauge.remove();
        if (found[what] !== undefined) gauge.set(Number(found[what]));
      }
      const text = await registry.metrics();
      // The library writes what the format does not know.
      return { type: registry.contentType, text: text.replace(/ Nan$/gm, ' NaN') };
    },
  };
}

/** Each begins with 0, so that the first of a kind shows as an increase. */
function countersOn(registry: Registry): Record<Count, (by: number) => void> {
  const byName = new Map<string, Counter>();
  const entries = Object.entries(COUNTS).map(([what, [name, label, value]]) => {
    const labelNames = label === undefined ? [] : [label];
    const counter = byName.get(name) ?? new Counter({ ...named(name), labelNames, registers: [registry] });
    byName.set(name, counter);
    const labels: Record<string, string> =
      label === undefined || value === undefined ? {} : { [label]: value };
    counter.inc(labels, 0);
    return [what, (by: number) => { counter.inc(labels, by); }]; // prettier-ignore
  });
  return Object.fromEntries(entries) as Record<Count, (by: number) => void>;
}
