// A store that counts what passes through it, so that neither the store nor those who use it know of figures.
import { newAcknowledgements } from './acknowledgements.ts';
import type { Delivery, Mailbox } from './ports/mailbox.ts';
import type { Metrics } from './ports/metrics.ts';
import { type Store, StoreError } from './ports/store.ts';
import type { Table } from './ports/table.ts';

export function measuredStore<Kept extends Store & Mailbox>(store: Kept, metrics: Metrics): Kept {
  const acknowledgements = newAcknowledgements(metrics);
  const commit = <Result>(work: Promise<Result>): Promise<Result> =>
    work.catch((error: unknown) => {
      if (error instanceof StoreError) metrics.count('storeFailures');
      throw error;
    });
  const ended = (delivery: Delivery): void => {
    metrics.count(delivery.end === 'done' ? 'updatesHandled' : 'updatesParked');
    acknowledgements.answered(delivery);
  };
  const measured: Partial<Store & Mailbox> = {
    receive: async (bot, updates, at) => {
      await commit(store.receive(bot, updates, at));
      metrics.count('updatesReceived', updates.length);
      acknowledgements.arrived(updates);
    },
    append: async (turn) => {
      const outcome = await commit(store.append(turn));
      if (turn.delivery !== undefined) ended(turn.delivery);
      return outcome;
    },
    settle: async (delivery) => {
      await commit(store.settle(delivery));
      ended(delivery);
    },
    takeLetter: async (bot, chat, notices) => {
      const letter = await commit(store.takeLetter(bot, chat, notices));
      if (letter !== undefined) acknowledgements.taken(letter);
      return letter;
    },
    endLetter: async (seq, end, ending) => {
      const next = await commit(store.endLetter(seq, end, ending));
      acknowledgements.ended(seq, end);
      if (next !== undefined) acknowledgements.taken(next);
      const count = COUNTS[end];
      if (count !== undefined) metrics.count(count);
      return next;
    },
  };
  return { ...store, ...measured };
}

const COUNTS = {
  sent: 'repliesSent',
  failed: 'repliesFailed',
  unknown: 'repliesUnknown',
  again: undefined,
  gone: undefined,
} as const;

export const measuredTable = (table: Table, metrics: Metrics): Table => ({
  ...table,
  take: async (message) => {
    const begun = performance.now();
    try {
      return await table.take(message);
    } finally {
      metrics.observe('turn', (performance.now() - begun) / 1000);
    }
  },
});
