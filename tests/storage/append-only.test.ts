// The log is append-only also for whoever gets hold of the connection, and rows that did not change are not written.
import { expect, it } from 'vitest';
import type { Connection } from '../../src/storage/sqlite/connection.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import type { Store } from '../../src/app/ports/store.ts';
import { LEDGER, opening, POOL, QUESTION, SETTINGS, turn } from '../app/ports/store/samples.ts';

async function inMemory(): Promise<{ store: Store; db: Connection }> {
  let db: Connection | undefined;
  const store = await openSqlite(':memory:', { onOpen: (opened) => (db = opened) });
  if (db === undefined) throw new Error('not opened');
  await store.create('home', SETTINGS);
  return { store, db };
}

it.each([
  `UPDATE fact SET body = '{}'`,
  'DELETE FROM fact',
  `INSERT OR REPLACE INTO fact SELECT seq, kitchen, message, entry, speaker, at, test, item, type, '{}', lot FROM fact`,
  `UPDATE message SET reply = ''`,
  'DELETE FROM message',
  `INSERT OR REPLACE INTO message SELECT kitchen, id, speaker, at, text, outcome, '' FROM message`,
])('refuses to edit the log: %s', async (statement) => {
  const { store, db } = await inMemory();
  await store.append(opening('m1', 1));
  expect(() => db.exec(statement)).toThrow('append-only');
  expect((await store.testFacts('home', 1)).map(({ fact }) => fact.type)).toEqual(['received']);
  expect(await store.replyTo('home', 'm1')).toBe('trim 1.1 lb');
});

it('keeps figures as the text that they were written as', async () => {
  const { store, db } = await inMemory();
  await store.append(
    turn('m1', { views: { ...opening('m1', 1).views, memory: [['price:ribeye', LEDGER]] } }),
  );
  const types = db.prepare('SELECT typeof(ledger) AS type, ledger FROM memory_row').get() as {
    ledger: string;
  };
  expect(types).toMatchObject({ type: 'text' });
  expect(types.ledger).toContain('{"$d":"7.4"}');
});

it('writes only the message where everything else is as it was', async () => {
  const { store, db } = await inMemory();
  const changes = (): unknown => db.prepare('SELECT total_changes()').pluck().get();
  const views = {
    ...opening('m1', 1).views,
    memory: [['price:ribeye', LEDGER]],
    pools: [['ribeye', POOL]],
    names: [['item', 'ribeye']],
  } as const;
  await store.append(turn('m1', { views, question: QUESTION }));
  const before = changes();
  await store.append(turn('m2', { views, question: QUESTION }));
  expect(changes()).toBe(Number(before) + 1);
});
