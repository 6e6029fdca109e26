// The cards and buttons that stand in the chats.
import type { Action, ButtonChange, CardKey, Meaning } from '../../app/ports/cards.ts';
import { fromPlainJson, toPlainJson } from '../../core/plain-json.ts';
import type { Connection } from './connection.ts';

interface MeaningRow {
  readonly nonce: string;
  readonly chat: number;
  readonly scope: string;
  readonly kitchen: string;
  readonly person: number | null;
  readonly action: string;
}

export function cards(db: Connection) {
  const chats = db
    .prepare<[string, string, number], number>(
      'SELECT chat FROM card WHERE bot = ? AND kitchen = ? AND test = ? ORDER BY chat',
    )
    .pluck();
  const at = db.prepare<[string, number, number], CardKey>(
    'SELECT kitchen, test FROM card WHERE bot = ? AND chat = ? AND message = ?',
  );
  const meaning = db.prepare<[string, string], MeaningRow>(
    'SELECT nonce, chat, scope, kitchen, person, action FROM button WHERE bot = ? AND nonce = ?',
  );
  return {
    chatsWithCard: (bot: string, { kitchen, test }: CardKey) => chats.all(bot, kitchen, test),
    cardAt: (bot: string, chat: number, message: number) => at.get(bot, chat, message),
    meaning: (bot: string, nonce: string): Meaning | undefined => {
      const row = meaning.get(bot, nonce);
      if (row === undefined) return undefined;
      const { person, action, ...rest } = row;
      return {
        ...rest,
        ...(person === null ? {} : { person }),
        action: fromPlainJson(action) as Action,
      };
    },
  };
}

/** Must be called inside a transaction. */
export function buttonWriter(db: Connection): (bot: string, change: ButtonChange) => void {
  const remove = db.prepare('DELETE FROM button WHERE bot = ? AND chat = ? AND scope = ?');
  const insert = db.prepare(
    'INSERT INTO button (bot, nonce, chat, scope, kitchen, person, action) VALUES (?, ?, ?, ?, ?, ?, ?)',
  );
  return (bot, { void: scopes, add }) => {
    for (const { chat, scope } of scopes) remove.run(bot, chat, scope);
    for (const { nonce, chat, scope, kitchen, person, action } of add)
      insert.run(bot, nonce, chat, scope, kitchen, person ?? null, toPlainJson(action));
  };
}
