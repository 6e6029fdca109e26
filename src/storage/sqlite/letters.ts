// How a letter is written to the outbox. A card that waits there is written anew in its place.
import type { Letter, LetterKind, NewLetter } from '../../app/ports/mailbox.ts';
import type { ButtonRow } from '../../app/ports/cards.ts';
import type { Connection } from './connection.ts';

type Write = (bot: string, letter: NewLetter, at: string) => void;

/** Must be called inside a transaction. */
export function letterWriter(db: Connection): Write {
  const insert = db.prepare(
    `INSERT INTO outbox (bot, chat, kind, text, about, buttons, kitchen, test, press, file_name, file_type, file_bytes, alarm, fleeting, created_at, state)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 'waiting')`,
  );
  const renew = db.prepare(
    `UPDATE outbox SET text = ?, buttons = ?
     WHERE bot = ? AND chat = ? AND state = 'waiting' AND kind = 'card' AND kitchen = ? AND test = ?`,
  );
  const writeCard = cardWriter(db);
  return (bot, letter, at) => {
    const { chat, kind, text, about, card, press, file, alarm, fleeting } = letter;
    const buttons = letter.buttons === undefined ? null : JSON.stringify(letter.buttons);
    if (card !== undefined) {
      writeCard(bot, letter, buttons);
      if (renew.run(text, buttons, bot, chat, card.kitchen, card.test).changes > 0) return;
    }
    const { kitchen = null, test = null } = card ?? {};
    insert.run(
      ...[bot, chat, kind, text, about ?? null, buttons, kitchen, test, press ?? null],
      ...[file?.name ?? null, file?.type ?? null, file === undefined ? null : Buffer.from(file.bytes)],
      ...[alarm ? 1 : 0, fleeting ? 1 : 0, at],
    );
  };
}

function cardWriter(db: Connection): (bot: string, letter: NewLetter, buttons: string | null) => void {
  const upsert = db.prepare(
    `INSERT INTO card (bot, chat, kitchen, test, text, buttons, is_open) VALUES (?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (bot, chat, kitchen, test)
     DO UPDATE SET text = excluded.text, buttons = excluded.buttons, is_open = excluded.is_open`,
  );
  return (bot, { chat, text, card }, buttons) => {
    if (card !== undefined)
      upsert.run(bot, chat, card.kitchen, card.test, text, buttons, card.isOpen ? 1 : 0);
  };
}

export interface LetterRow {
  readonly seq: number;
  readonly chat: number;
  readonly kind: LetterKind;
  readonly text: string;
  readonly about: number | null;
  readonly buttons: string | null;
  readonly kitchen: string | null;
  readonly test: number | null;
  readonly press: string | null;
  readonly file_name: string | null;
  readonly file_type: string | null;
  readonly file_bytes: Uint8Array | null;
  readonly alarm: number;
  /** Of the card that it is, the message and whether the test is open. */
  readonly stands: number | null;
  readonly is_open: number | null;
}

export const LETTER_COLUMNS =
  'seq, outbox.chat, kind, outbox.text, about, outbox.buttons, outbox.kitchen, outbox.test, press, file_name, file_type, file_bytes, alarm, message AS stands, is_open';
export const LETTER_SOURCE = 'outbox LEFT JOIN card USING (bot, chat, kitchen, test)';

export const buttonsIn = (text: string | null): readonly ButtonRow[] | undefined =>
  text === null ? undefined : (JSON.parse(text) as readonly ButtonRow[]);

export function letterOf(row: LetterRow): Letter {
  const { seq, chat, kind, text, about, kitchen, test, press, stands } = row;
  const buttons = buttonsIn(row.buttons);
  return {
    ...{ seq, chat, kind, text },
    ...(about === null ? {} : { about }),
    ...(buttons === undefined ? {} : { buttons }),
    ...(kitchen === null || test === null ? {} : { card: { kitchen, test, isOpen: row.is_open === 1 } }),
    ...(press === null ? {} : { press }),
    ...(row.file_bytes === null
      ? {}
      : { file: { name: row.file_name ?? '', type: row.file_type ?? '', bytes: row.file_bytes } }),
    ...(row.alarm === 0 ? {} : { alarm: true as const }),
    ...(stands === null ? {} : { stands }),
  };
}
