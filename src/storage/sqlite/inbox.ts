// What a chat service brought.
import type { StoredUpdate, Update } from '../../app/ports/mailbox.ts';
import type { Connection } from './connection.ts';

/**
 * How long the number of a handled update is kept. A service brings an update again for a day at most, and may begin a
 * new numbering after a quiet week: an old number must be gone by then.
 */
const KEPT_MS = 3 * 24 * 3600 * 1000;

export function inbox(db: Connection) {
  const unhandled = db.prepare<[string, number], StoredUpdate>(
    `SELECT update_id AS id, body, failures FROM inbox WHERE bot = ? AND state = 'waiting' ORDER BY seq LIMIT ?`,
  );
  const fail = db.prepare('UPDATE inbox SET failures = failures + 1 WHERE bot = ? AND update_id = ?');
  return {
    receive: receiver(db),
    unhandled: (bot: string, limit: number) => unhandled.all(bot, limit),
    noteFailure: (bot: string, update: number): void => void fail.run(bot, update),
  };
}

function receiver(db: Connection): (bot: string, updates: readonly Update[], at: string) => void {
  const forget = db.prepare(`DELETE FROM inbox WHERE received_at < ? AND state <> 'waiting'`);
  const insert = db.prepare(
    `INSERT INTO inbox (bot, update_id, received_at, state, body) VALUES (?, ?, ?, 'waiting', ?)
     ON CONFLICT (bot, update_id) DO NOTHING`,
  );
  const transaction = db.transaction((bot: string, updates: readonly Update[], at: string): void => {
    forget.run(new Date(Date.parse(at) - KEPT_MS).toISOString());
    for (const { id, body } of updates) insert.run(bot, id, at, body);
  });
  return (bot, updates, at) => {
    transaction.immediate(bot, updates, at);
  };
}
