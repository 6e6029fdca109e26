// What is to be sent. A letter is marked before it is handed to the service, so that a crash in between is known of.
import type { Backlog, Letter, LetterEnd, NewLetter } from '../../app/ports/mailbox.ts';
import type { Connection } from './connection.ts';
import { letterWriter } from './delivery.ts';

export function outbox(db: Connection) {
  const chats = db
    .prepare<[string], number>(`SELECT DISTINCT chat FROM outbox WHERE bot = ? AND state = 'waiting'`)
    .pluck();
  return {
    chatsWithLetters: (bot: string) => chats.all(bot),
    noteInterrupted: interruptedNoter(db),
    takeLetter: taker(db),
    endLetter: ender(db),
    backlog: backlogReader(db),
  };
}

function interruptedNoter(db: Connection): (bot: string) => number {
  const again = db.prepare(
    `UPDATE outbox SET state = 'waiting' WHERE bot = ? AND state = 'sending' AND kind = 'leave'`,
  );
  const forget = db.prepare(`DELETE FROM outbox WHERE bot = ? AND state = 'sending' AND fleeting = 1`);
  const doubt = db.prepare(
    `UPDATE outbox SET state = 'unknown', text = '' WHERE bot = ? AND state = 'sending'`,
  );
  const transaction = db.transaction((bot: string): number => {
    again.run(bot);
    return forget.run(bot).changes + doubt.run(bot).changes;
  });
  return (bot) => transaction.immediate(bot);
}

type LetterRow = Pick<Letter, 'seq' | 'chat' | 'kind' | 'text'>;

function taker(db: Connection): (bot: string, chat: number, notice: string) => Letter | undefined {
  const oldest = db.prepare<[string, number], LetterRow>(
    `SELECT seq, chat, kind, text FROM outbox WHERE bot = ? AND state = 'waiting' AND chat = ? ORDER BY seq LIMIT 1`,
  );
  const forgetDoubts = db.prepare(`DELETE FROM outbox WHERE bot = ? AND state = 'unknown' AND chat = ?`);
  const mark = db.prepare(`UPDATE outbox SET state = 'sending', text = ? WHERE seq = ?`);
  const transaction = db.transaction((bot: string, chat: number, notice: string): Letter | undefined => {
    const letter = oldest.get(bot, chat);
    if (letter === undefined) return undefined;
    const doubts = letter.kind === 'message' ? forgetDoubts.run(bot, chat).changes : 0;
    const text = doubts > 0 ? `${notice}\n${letter.text}` : letter.text;
    mark.run(text, letter.seq);
    return { ...letter, text };
  });
  return (bot, chat, notice) => transaction.immediate(bot, chat, notice);
}

interface EndedRow {
  readonly bot: string;
  readonly chat: number;
  readonly created_at: string;
  readonly fleeting: number;
}

function ender(db: Connection): (seq: number, end: LetterEnd, tell?: readonly NewLetter[]) => void {
  const find = db.prepare<[number], EndedRow>(
    'SELECT bot, chat, created_at, fleeting FROM outbox WHERE seq = ?',
  );
  const remove = db.prepare('DELETE FROM outbox WHERE seq = ?');
  const again = db.prepare(`UPDATE outbox SET state = 'waiting' WHERE seq = ?`);
  const doubt = db.prepare(`UPDATE outbox SET state = 'unknown', text = '' WHERE seq = ?`);
  const park = parker(db);
  const transaction = db.transaction((seq: number, end: LetterEnd, tell: readonly NewLetter[]): void => {
    const letter = find.get(seq);
    if (letter === undefined) return;
    if (end === 'again') again.run(seq);
    else if (end === 'sent' || letter.fleeting === 1) remove.run(seq);
    else if (end === 'unknown') doubt.run(seq);
    else park(seq, letter, tell);
  });
  return (seq, end, tell = []) => {
    transaction.immediate(seq, end, tell);
  };
}

function parker(db: Connection): (seq: number, letter: EndedRow, tell: readonly NewLetter[]) => void {
  const parked = db.prepare(`SELECT 1 FROM outbox WHERE bot = ? AND state = 'parked' AND chat = ? LIMIT 1`);
  const park = db.prepare(`UPDATE outbox SET state = 'parked' WHERE seq = ?`);
  const post = letterWriter(db);
  return (seq, { bot, chat, created_at: at }, tell) => {
    if (parked.get(bot, chat) === undefined) for (const letter of tell) post(bot, letter, at);
    park.run(seq);
  };
}

function backlogReader(db: Connection): (bot: string) => Backlog {
  const update = db
    .prepare<[string], string>(
      `SELECT received_at FROM inbox WHERE bot = ? AND state = 'waiting' ORDER BY seq LIMIT 1`,
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
      ...(oldestUpdateAt === undefined ? {} : { oldestUpdateAt }),
      ...(oldestLetterAt == null ? {} : { oldestLetterAt }),
      strangers: strangers.get(bot) ?? 0,
    };
  };
}
