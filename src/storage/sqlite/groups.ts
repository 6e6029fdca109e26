// Groups that the bot is in. One that it left keeps its row: a group that becomes another one may say so afterwards.
import type { Connection } from './connection.ts';

/** Must be called inside a transaction. */
export function groupWriter(db: Connection) {
  const join = db.prepare(
    `INSERT INTO group_chat (bot, chat, kitchen) VALUES (?, ?, ?)
     ON CONFLICT (bot, chat) DO UPDATE SET kitchen = excluded.kitchen, is_left = 0`,
  );
  const leave = db.prepare('UPDATE group_chat SET is_left = 1 WHERE bot = ? AND chat = ?');
  return {
    join: (bot: string, kitchen: string, chat: number): void => void join.run(bot, chat, kitchen),
    leave: (bot: string, chat: number): void => void leave.run(bot, chat),
    move: mover(db),
  };
}

/** Messages of the old group can't be edited any more: its cards are sent anew. */
function mover(db: Connection): (bot: string, from: number, to: number) => void {
  const group = db.prepare(
    `INSERT INTO group_chat (bot, chat, kitchen) SELECT bot, ?, kitchen FROM group_chat WHERE bot = ? AND chat = ?
     ON CONFLICT (bot, chat) DO NOTHING`,
  );
  const old = db.prepare('DELETE FROM group_chat WHERE bot = ? AND chat = ?');
  const letters = db.prepare(
    `UPDATE outbox SET chat = ?, state = CASE state WHEN 'parked' THEN 'waiting' ELSE state END, about = NULL
     WHERE bot = ? AND chat = ? AND kind NOT IN ('reaction', 'bare')`,
  );
  const rest = db.prepare(`DELETE FROM outbox WHERE bot = ? AND chat = ? AND kind IN ('reaction', 'bare')`);
  const cards = db.prepare('UPDATE OR IGNORE card SET chat = ?, message = NULL WHERE bot = ? AND chat = ?');
  const buttons = db.prepare('UPDATE button SET chat = ? WHERE bot = ? AND chat = ?');
  return (bot, from, to) => {
    if (group.run(to, bot, from).changes === 0 && from === to) return;
    old.run(bot, from);
    rest.run(bot, from);
    for (const moved of [letters, cards, buttons]) moved.run(to, bot, from);
  };
}
