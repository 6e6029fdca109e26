// What a chat service brought.
import type { StoredUpdate, Update } from '../../app/ports/mailbox.ts';
import type { Connection } from './connection.ts';

/**
 * How long the number of a handled update is kept. A service brings an update again for a day at most, and may begin a
 * new numbering after a quiet week: an old number must be gone by then.
 */
const KEPT_MS = 3 * 24 * 3600 * 1000;

export function inbox(db: Connection) {
  const fail = db.prepare('UPDATE inbox SET failures = failures + 1 WHERE bot = ? AND update_id = ?');
  return {
    receive: receiver(db),
    unhandled: unhandledReader(db),
    noteFailure: (bot: string, update: number): void => void fail.run(bot, update),
  };
}

type Row = StoredUpdate & { readonly seq: number };

/** How many of one chat are handled before the others have their turn. */
const IN_A_ROW = 4;

/** One chat that says a thousand things keeps no other waiting. */
function unhandledReader(db: Connection): (bot: string, limit: number) => readonly StoredUpdate[] {
  const chats = db
    .prepare<[string], number>(`SELECT DISTINCT chat FROM inbox WHERE bot = ? AND state = 'waiting'`)
    .pluck();
  const oldest = db.prepare<[string, number, number], Row>(
    `SELECT seq, update_id AS id, chat, body, failures FROM inbox
     WHERE bot = ? AND chat = ? AND state = 'waiting' ORDER BY seq LIMIT ?`,
  );
  return (bot, limit) => {
    const waiting = chats.all(bot);
    const share = waiting.length === 1 ? limit : IN_A_ROW;
    const rows = waiting.flatMap((chat) => oldest.all(bot, chat, share)).sort((a, b) => a.seq - b.seq);
    return rows.slice(0, limit).map(({ id, chat, body, failures }) => ({ id, chat, body, failures }));
  };
}

function receiver(db: Connection): (bot: string, updates: readonly Update[], at: string) => void {
  const forget = db.prepare(`DELETE FROM inbox WHERE received_at < ? AND state <> 'waiting'`);
  const insert = db.prepare(
    `INSERT INTO inbox (bot, update_id, chat, received_at, state, body) VALUES (?, ?, ?, ?, 'waiting', ?)
     ON CONFLICT (bot, update_id) DO NOTHING`,
  );
  const transaction = db.transaction((bot: string, updates: readonly Update[], at: string): void => {
    forget.run(new Date(Date.parse(at) - KEPT_MS).toISOString());
    for (const { id, chat, body } of updates) insert.run(bot, id, chat, at, body);
  });
  return (bot, updates, at) => {
    transaction.immediate(bot, updates, at);
  };
}
