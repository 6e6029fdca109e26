// How an update ends: within the transaction of the turn where it made facts, else in one of its own.
import type { Delivery, NewLetter } from '../../app/ports/mailbox.ts';
import type { Connection } from './connection.ts';
import { buttonWriter } from './cards.ts';
import { againSender } from './doubts.ts';
import { letterWriter } from './letters.ts';
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
  const changeButtons = buttonWriter(db);
  const sendAgain = againSender(db);
  return ({ bot, update, end: state, at, letters, change, buttons, again, fromStranger }) => {
    if (end.run(state, state, bot, update).changes === 0) return false;
    if (fromStranger) count.run(bot);
    if (change !== undefined) changeTeam(bot, change, at);
    if (buttons !== undefined) changeButtons(bot, buttons);
    if (again !== undefined) sendAgain(bot, again);
    for (const letter of letters) post(bot, letter, at);
    return true;
  };
}

/** What goes before the answer, once. */
export function interjector(
  db: Connection,
): (bot: string, update: number, letters: readonly NewLetter[], at: string) => void {
  const mark = db.prepare(
    `UPDATE inbox SET is_told_of = 1 WHERE bot = ? AND update_id = ? AND state = 'waiting' AND is_told_of = 0`,
  );
  const post = letterWriter(db);
  const transaction = db.transaction(
    (bot: string, update: number, letters: readonly NewLetter[], at: string): void => {
      if (mark.run(bot, update).changes > 0) for (const letter of letters) post(bot, letter, at);
    },
  );
  return (bot, update, letters, at) => {
    transaction.immediate(bot, update, letters, at);
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
