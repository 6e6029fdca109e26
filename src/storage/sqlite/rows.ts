// Rows of the tables as the port's values. What goes the other way stands with the statements in append.ts.
import type { LotRow, TestRow, Views } from '../../app/ports/store.ts';
import { decodeFact, type Recorded } from '../../core/facts.ts';
import type { Settings } from '../../core/kitchen.ts';
import type { Ledger } from '../../core/ledger.ts';
import { fromPlainJson } from '../../core/plain-json.ts';
import { decodePool, type StoredPool } from '../../core/pool.ts';
import type { Question } from '../../core/question.ts';

export interface FactRow {
  readonly seq: number;
  readonly entry: string;
  readonly speaker: string;
  readonly at: string;
  readonly test: number | null;
  readonly lot: number | null;
  readonly item: string | null;
  readonly body: string;
}

export interface TestRowRow {
  readonly id: number;
  readonly item: string;
  readonly status: TestRow['status'];
  readonly opened_at: string;
  readonly closed_at: string | null;
  readonly figures: string | null;
}

export interface LotRowRow {
  readonly id: number;
  readonly status: LotRow['status'];
  readonly opened_at: string;
}

export interface NameRow {
  readonly kind: 'item' | 'part';
  readonly name: string;
}

/** A row of the tables that keep one JSON text under one key. */
export interface KeyedRow {
  readonly key: string;
  readonly body: string;
}

export const recordedOf = ({ entry, speaker, at, test, lot, item, body }: FactRow): Recorded => ({
  entry,
  speaker,
  at,
  ...(test === null ? {} : { test }),
  ...(lot === null ? {} : { lot }),
  ...(item === null ? {} : { item }),
  fact: decodeFact(body),
});

export const testRowOf = (row: TestRowRow): TestRow => ({
  id: row.id,
  item: row.item,
  status: row.status,
  openedAt: row.opened_at,
  ...(row.closed_at === null ? {} : { closedAt: row.closed_at }),
  ...(row.figures === null ? {} : { figures: fromPlainJson(row.figures) as Record<string, string> }),
});

export const lotRowOf = ({ id, status, opened_at: openedAt }: LotRowRow): LotRow => ({
  id,
  status,
  openedAt,
});

export const nameOf = ({ kind, name }: NameRow): Views['names'][number] => [kind, name];

// The casts below are the word of the one writer of these columns, append.ts.
export const memoryOf = ({ key, body }: KeyedRow): Views['memory'][number] => [
  key,
  fromPlainJson(body) as Ledger,
];
export const poolOf = ({ key, body }: KeyedRow): Views['pools'][number] => [
  key,
  decodePool(fromPlainJson(body) as StoredPool),
];
export const questionOf = ({ key, body }: KeyedRow): readonly [string, Question] => [
  key,
  fromPlainJson(body) as Question,
];
export const settingsOf = (text: string): Settings => fromPlainJson(text) as Settings;
