// Letters that may not have arrived. They are never sent again unasked: what goes to the chat next says so and offers them.
import { randomBytes } from 'node:crypto';
import type { Action, ButtonRow } from '../../app/ports/cards.ts';
import type { LetterKind, Notices } from '../../app/ports/mailbox.ts';
import type { Connection } from './connection.ts';
import { letterWriter } from './letters.ts';

const AGAIN = 'again';
const ACTION: Action = { is: 'again' };

/** So long an offer stands on each new form of a card. */
const OFFERED_MS = 3600 * 1000;

interface Doubtful {
  readonly bot: string;
  readonly chat: number;
}

interface CardRow {
  readonly kitchen: string;
  readonly test: number;
  readonly text: string;
  readonly buttons: string | null;
  readonly is_open: number;
}

/** A card that stands in the chat is edited once more, so that it says so at once. Must be called inside a transaction. */
export function doubtShower(db: Connection): (doubtful: Doubtful, at: string) => void {
  const newest = db.prepare<[string, number], CardRow>(
    `SELECT kitchen, test, text, buttons, is_open FROM card
     WHERE bot = ? AND chat = ? AND message IS NOT NULL AND is_open = 1 ORDER BY test DESC LIMIT 1`,
  );
  const write = letterWriter(db);
  return ({ bot, chat }, at) => {
    const card = newest.get(bot, chat);
    if (card === undefined) return;
    const { kitchen, test, text, is_open } = card;
    const buttons = card.buttons === null ? undefined : (JSON.parse(card.buttons) as readonly ButtonRow[]);
    const letter = { chat, kind: 'card', text, card: { kitchen, test, isOpen: is_open === 1 } } as const;
    write(bot, { ...letter, ...(buttons === undefined ? {} : { buttons }) }, at);
  };
}

/** A card that went unheard of is nothing to send again where a later one stands. */
const SUPERSEDED = `DELETE FROM outbox WHERE bot = ? AND chat = ? AND state IN ('unknown', 'offered') AND kind = 'card' AND EXISTS
  (SELECT 1 FROM card WHERE card.bot = outbox.bot AND card.chat = outbox.chat AND card.kitchen = outbox.kitchen
   AND card.test = outbox.test AND card.message IS NOT NULL)`;

/** Words stand in it, and buttons may: what goes with it is seen. */
export const carriesNotice = (kind: LetterKind): kind is 'card' | 'message' | 'file' =>
  kind === 'card' || kind === 'message' || kind === 'file';

interface Offer {
  readonly text: string;
  readonly button: ButtonRow;
}

/**
 * What goes with the next letter to the chat. On a card it stays while the offer stands, since each edit takes the place of the
 * words before. Must be called inside a transaction.
 */
export function offerer(
  db: Connection,
): (doubtful: Doubtful, kind: 'card' | 'message' | 'file', notices: Notices) => Offer | undefined {
  const old = db.prepare(
    `DELETE FROM outbox WHERE bot = ? AND chat = ? AND state = 'offered' AND created_at < ?`,
  );
  const superseded = db.prepare(SUPERSEDED);
  const fresh = db.prepare(
    `UPDATE outbox SET state = 'offered', created_at = ? WHERE bot = ? AND chat = ? AND state = 'unknown'`,
  );
  const standing = db
    .prepare<[string, number], number>(
      `SELECT 1 FROM outbox WHERE bot = ? AND chat = ? AND state = 'offered' LIMIT 1`,
    )
    .pluck();
  const nonceOf = againNonce(db);
  return ({ bot, chat }, kind, notices) => {
    const nowMs = Date.now();
    old.run(bot, chat, new Date(nowMs - OFFERED_MS).toISOString());
    superseded.run(bot, chat);
    const isFresh = fresh.run(new Date(nowMs).toISOString(), bot, chat).changes > 0;
    if (!isFresh && (kind !== 'card' || standing.get(bot, chat) === undefined)) return undefined;
    const nonce = nonceOf(bot, chat);
    return { text: notices.unknown, button: nonce === undefined ? [] : [{ label: notices.again, nonce }] };
  };
}

/** The letter that said so did not arrive: the next one says it. Must be called inside a transaction. */
export function offerWithdrawer(db: Connection): (letter: Doubtful & { readonly kind: LetterKind }) => void {
  const withdraw = db.prepare(
    `UPDATE outbox SET state = 'unknown' WHERE bot = ? AND chat = ? AND state = 'offered'`,
  );
  return ({ bot, chat, kind }) => {
    if (carriesNotice(kind)) withdraw.run(bot, chat);
  };
}

/** The one button of a chat that has them sent again; undefined in a chat that is of no kitchen. */
function againNonce(db: Connection): (bot: string, chat: number) => string | undefined {
  const find = db
    .prepare<[string, number, string], string>(
      'SELECT nonce FROM button WHERE bot = ? AND chat = ? AND scope = ?',
    )
    .pluck();
  const kitchenOf = db
    .prepare<[string, number, number], string>(
      'SELECT kitchen FROM group_chat WHERE bot = ? AND chat = ? UNION SELECT kitchen FROM member WHERE person = ?',
    )
    .pluck();
  const add = db.prepare(
    'INSERT INTO button (bot, nonce, chat, scope, kitchen, action) VALUES (?, ?, ?, ?, ?, ?)',
  );
  return (bot, chat) => {
    const found = find.get(bot, chat, AGAIN);
    const kitchen = kitchenOf.get(bot, chat, chat);
    if (found !== undefined || kitchen === undefined) return found;
    const nonce = randomBytes(16).toString('base64url');
    add.run(bot, nonce, chat, AGAIN, kitchen, JSON.stringify(ACTION));
    return nonce;
  };
}

/** Somebody asked for them. Must be called inside a transaction. */
export function againSender(db: Connection): (bot: string, chat: number) => void {
  const send = db.prepare(
    `UPDATE outbox SET state = 'waiting' WHERE bot = ? AND chat = ? AND state IN ('unknown', 'offered')`,
  );
  const spend = db.prepare('DELETE FROM button WHERE bot = ? AND chat = ? AND scope = ?');
  const superseded = db.prepare(SUPERSEDED);
  return (bot, chat) => {
    superseded.run(bot, chat);
    send.run(bot, chat);
    spend.run(bot, chat, AGAIN);
  };
}
