// How an update ends: within the transaction of the turn where it made facts, else in one of its own.
import type { Delivery, NewLetter } from '../../app/ports/mailbox.ts';
import type { Connection } from './connection.ts';
import { teamWriter } from './team.ts';

/** Must be called inside a transaction. False where the update was ended before: then nothing is written. */
export function deliveryWriter(db: Connection): (delivery: Delivery) => boolean {
  const end = db.prepare(
    `UPDATE inbox SET state = ?, body = CASE ? WHEN 'done' THEN NULL ELSE body END
     WHERE bot = ? AND update_id = ? AND state = 'waiting'`,
  );
  const count = db.prepare(
    `INSERT INTO stranger_count (bot, updates) VALUES (?, 1) ON CONFLICT (bot) DO UPDATE SET updates = updates + 1`,
  );
  const post = letterWriter(db);
  const changeTeam = teamWriter(db);
  return ({ bot, update, end: state, at, letters, change, fromStranger }) => {
    if (end.run(state, state, bot, update).changes === 0) return false;
    if (fromStranger) count.run(bot);
    if (change !== undefined) changeTeam(bot, change, at);
    for (const letter of letters) post(bot, letter, at);
    return true;
  };
}

/** For what has no facts. */
export function settler(db: Connection): (delivery: Delivery) => void {
  const write = deliveryWriter(db);
  const transaction = db.transaction(write);
  return (delivery) => {
    transaction.immediate(delivery);
  };
}

export function letterWriter(db: Connection): (bot: string, letter: NewLetter, at: string) => void {
  const insert = db.prepare(
    `INSERT INTO outbox (bot, chat, kind, text, fleeting, created_at, state) VALUES (?, ?, ?, ?, ?, ?, 'waiting')`,
  );
  return (bot, { chat, kind, text, fleeting }, at) => {
    insert.run(bot, chat, kind, text, fleeting ? 1 : 0, at);
  };
}
