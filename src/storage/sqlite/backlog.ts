// How far behind the handling and the sending are.
import type { Backlog } from '../../app/ports/mailbox.ts';
import type { Connection } from './connection.ts';

export function backlogReader(db: Connection): (bot: string) => Backlog {
  const update = db
    .prepare<[string], string | null>(
      `SELECT min(received_at) FROM inbox WHERE bot = ? AND state = 'waiting'`,
    )
    .pluck();
  const letter = db
    .prepare<[string], string | null>(
      `SELECT min(created_at) FROM outbox WHERE bot = ? AND state IN ('waiting', 'sending')`,
    )
    .pluck();
  const strangers = db.prepare<[string], number>('SELECT updates FROM stranger_count WHERE bot = ?').pluck();
  return (bot) => {
    const oldestUpdateAt = update.get(bot);
    const oldestLetterAt = letter.get(bot);
    return {
      ...(oldestUpdateAt == null ? {} : { oldestUpdateAt }),
      ...(oldestLetterAt == null ? {} : { oldestLetterAt }),
      strangers: strangers.get(bot) ?? 0,
    };
  };
}
