// What is to be sent. A letter is marked before it is handed to the service, so that a crash in between is known of.
import type { Ending, Letter, LetterEnd, LetterKind, NewLetter, Notices } from '../../app/ports/mailbox.ts'; // prettier-ignore
import { backlogReader } from './backlog.ts';
import type { Connection } from './connection.ts';
import { carriesNotice, doubtShower, offerer, offerWithdrawer } from './doubts.ts';
import { LETTER_COLUMNS, LETTER_SOURCE, letterOf, type LetterRow, letterWriter } from './letters.ts';

export function outbox(db: Connection) {
  const chats = db
    .prepare<[string], number>(`SELECT DISTINCT chat FROM outbox WHERE bot = ? AND state = 'waiting'`)
    .pluck();
  const take = taker(db);
  const transaction = db.transaction(take);
  return {
    chatsWithLetters: (bot: string) => chats.all(bot),
    noteInterrupted: interruptedNoter(db),
    takeLetter: (...at: Parameters<Take>) => transaction.immediate(...at),
    endLetter: ender(db, take),
    backlog: backlogReader(db),
  };
}

interface SentRow {
  readonly seq: number;
  readonly bot: string;
  readonly chat: number;
  readonly kind: LetterKind;
  readonly alarm: number;
  readonly created_at: string;
  readonly fleeting: number;
  readonly stands: number | null;
}

const SENT_COLUMNS = 'seq, outbox.bot, outbox.chat, kind, alarm, created_at, fleeting, message AS stands';

/** What a second arrival changes nothing of. */
function isHarmless({ kind, stands }: Pick<SentRow, 'kind' | 'stands'>): boolean {
  switch (kind) {
    case 'reaction':
    case 'toast':
    case 'bare':
    case 'leave':
      return true;
    case 'card':
      return stands !== null;
    case 'message':
    case 'file':
      return false;
  }
}

function interruptedNoter(db: Connection): (bot: string) => number {
  const underway = db.prepare<[string], SentRow>(
    `SELECT ${SENT_COLUMNS} FROM ${LETTER_SOURCE} WHERE outbox.bot = ? AND state = 'sending'`,
  );
  const doubt = doubter(db);
  const transaction = db.transaction(
    (bot: string): number => underway.all(bot).filter((row) => doubt(row) === 'doubtful').length,
  );
  return (bot) => transaction.immediate(bot);
}

/** What becomes of a letter that may have arrived. */
function doubter(db: Connection): (row: SentRow) => 'repeated' | 'doubtful' {
  const again = db.prepare(`UPDATE outbox SET state = 'waiting' WHERE seq = ?`);
  const repeat = db.prepare(`UPDATE outbox SET state = 'waiting', alarm = 2 WHERE seq = ?`);
  const withdraw = offerWithdrawer(db);
  const forget = db.prepare('DELETE FROM outbox WHERE seq = ?');
  const mark = db.prepare(`UPDATE outbox SET state = 'unknown' WHERE seq = ?`);
  const show = doubtShower(db);
  return (row) => {
    if (row.alarm > 0) {
      withdraw(row);
      repeat.run(row.seq);
    } else if (isHarmless(row)) again.run(row.seq);
    else if (row.fleeting === 1) forget.run(row.seq);
    else {
      mark.run(row.seq);
      show(row, row.created_at);
    }
    return row.alarm > 0 || isHarmless(row) ? 'repeated' : 'doubtful';
  };
}

type Take = (bot: string, chat: number, notices: Notices) => Letter | undefined;

/** Must be called inside a transaction. */
function taker(db: Connection): Take {
  const oldest = db.prepare<[string, number], LetterRow>(
    `SELECT ${LETTER_COLUMNS} FROM ${LETTER_SOURCE}
     WHERE outbox.bot = ? AND state = 'waiting' AND outbox.chat = ? ORDER BY seq LIMIT 1`,
  );
  const mark = db.prepare(`UPDATE outbox SET state = 'sending' WHERE seq = ?`);
  const offer = offerer(db);
  return (bot, chat, notices) => {
    const row = oldest.get(bot, chat);
    if (row === undefined) return undefined;
    mark.run(row.seq);
    const letter = letterOf(row);
    const said = row.alarm > 1 ? { ...letter, text: `${notices.repeat} ${letter.text}` } : letter;
    const { kind } = letter;
    const offered = carriesNotice(kind) ? offer({ bot, chat }, kind, notices) : undefined;
    if (offered === undefined) return said;
    const rows = offered.button.length === 0 ? [] : [offered.button];
    return { ...said, text: `${offered.text}\n${said.text}`, buttons: [...(said.buttons ?? []), ...rows] };
  };
}

type End = (seq: number, end: LetterEnd, ending?: Ending) => Letter | undefined;

function ender(db: Connection, take: Take): End {
  const find = db.prepare<[number], SentRow>(`SELECT ${SENT_COLUMNS} FROM ${LETTER_SOURCE} WHERE seq = ?`);
  const remove = db.prepare('DELETE FROM outbox WHERE seq = ?');
  const back = db.prepare(`UPDATE outbox SET state = 'waiting' WHERE seq = ?`);
  const withdraw = offerWithdrawer(db);
  const again = (letter: SentRow): void => {
    withdraw(letter);
    back.run(letter.seq);
  };
  const doubt = doubter(db);
  const cards = cardKeeper(db);
  const park = parker(db);
  const write = (letter: SentRow, end: LetterEnd, { tell = [], message }: Ending): void => {
    const { seq } = letter;
    switch (end) {
      case 'again':
        return again(letter);
      case 'gone':
        cards.forgetMessage(seq);
        return again(letter);
      case 'unknown':
        return void doubt(letter);
      case 'sent':
        cards.noteSent(seq, message);
        return void remove.run(seq);
      case 'failed':
        withdraw(letter);
        if (letter.fleeting === 1) return void remove.run(seq);
        return park(letter, tell);
    }
  };
  const transaction = db.transaction((seq: number, end: LetterEnd, ending: Ending): Letter | undefined => {
    const letter = find.get(seq);
    if (letter === undefined) return undefined;
    write(letter, end, ending);
    return ending.next && take(letter.bot, letter.chat, ending.next);
  });
  return (seq, end, ending = {}) => transaction.immediate(seq, end, ending);
}

/** Which message stands for a card. The card of a test that is over is forgotten when it was shown for the last time. */
function cardKeeper(db: Connection) {
  const of = `WHERE (bot, chat, kitchen, test) = (SELECT bot, chat, kitchen, test FROM outbox WHERE seq = ? AND kind = 'card')`;
  const note = db.prepare(`UPDATE card SET message = ? ${of}`);
  // What is sent may be older than the end of the test: then its last form still waits, and must find its message.
  const over = db.prepare(
    `DELETE FROM card ${of} AND is_open = 0 AND NOT EXISTS
     (SELECT 1 FROM outbox WHERE outbox.bot = card.bot AND outbox.state = 'waiting' AND outbox.chat = card.chat
      AND outbox.kind = 'card' AND outbox.kitchen = card.kitchen AND outbox.test = card.test)`,
  );
  const forget = db.prepare(`UPDATE card SET message = NULL ${of}`);
  return {
    noteSent: (seq: number, message: number | undefined): void => {
      if (message !== undefined) note.run(message, seq);
      over.run(seq);
    },
    forgetMessage: (seq: number): void => void forget.run(seq),
  };
}

function parker(db: Connection): (letter: SentRow, tell: readonly NewLetter[]) => void {
  const parked = db.prepare(`SELECT 1 FROM outbox WHERE bot = ? AND state = 'parked' AND chat = ? LIMIT 1`);
  const park = db.prepare(`UPDATE outbox SET state = 'parked' WHERE seq = ?`);
  const post = letterWriter(db);
  return ({ seq, bot, chat, created_at: at }, tell) => {
    if (parked.get(bot, chat) === undefined) for (const letter of tell) post(bot, letter, at);
    park.run(seq);
  };
}
