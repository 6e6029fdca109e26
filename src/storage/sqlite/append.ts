// What is written: one turn, one transaction, statements prepared once. A row that is there already as it should
// be is not written again: each page that changes costs time in the commit.
import type { Delivery } from '../../app/ports/mailbox.ts';
import type { Turn } from '../../app/ports/store.ts';
import { encodeFact, type Recorded } from '../../core/facts.ts';
import { toPlainJson } from '../../core/plain-json.ts';
import type { Question } from '../../core/question.ts';
import type { Connection } from './connection.ts';
import { deliveryWriter } from './delivery.ts';
import { viewWriter } from './view-writer.ts';

/** Stores a turn, all or nothing. It must stay synchronous: past an await it would run outside of the transaction. */
export function appender(db: Connection): (turn: Turn) => 'stored' | 'seen' {
  const isNew = messageWriter(db);
  const writeFact = factWriter(db);
  const writeViews = viewWriter(db);
  const writeQuestion = questionWriter(db);
  const endUpdate = deliveryWriter(db);
  const transaction = db.transaction((turn: Turn): 'stored' | 'seen' => {
    const { delivery } = turn;
    if (!isNew(turn)) {
      // It was answered when it came first.
      if (delivery !== undefined) endUpdate(withoutLetters(delivery));
      return 'seen';
    }
    for (const recorded of turn.facts) writeFact(turn, recorded);
    writeViews(turn.kitchen, turn.views);
    if (turn.question !== undefined) writeQuestion(turn, turn.question);
    if (delivery !== undefined) endUpdate(delivery);
    return 'stored';
  });
  return (turn) => transaction.immediate(turn);
}

/** What was answered before is not answered again. */
function withoutLetters(delivery: Delivery): Delivery {
  const { buttons: _, ...rest } = delivery;
  return { ...rest, letters: [] };
}

/** Writes the message; false where it was there. */
function messageWriter(db: Connection): (turn: Turn) => boolean {
  const insert = db.prepare<string[]>(
    `INSERT INTO message (kitchen, id, speaker, at, text, outcome, reply) VALUES (?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (kitchen, id) DO NOTHING`,
  );
  return ({ kitchen, message, speaker, at, text, outcome, reply }) =>
    insert.run(kitchen, message, speaker, at, text, outcome, reply).changes === 1;
}

function factWriter(db: Connection): (turn: Turn, recorded: Recorded) => void {
  const insert = db.prepare(
    `INSERT INTO fact (kitchen, message, entry, speaker, at, test, lot, item, type, body)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  return ({ kitchen, message }, { entry, speaker, at, test, lot, item, fact }) => {
    insert.run(
      kitchen,
      message,
      entry,
      speaker,
      at,
      test ?? null,
      lot ?? null,
      item ?? null,
      fact.type,
      encodeFact(fact),
    );
  };
}

function questionWriter(db: Connection): (turn: Turn, question: Question | null) => void {
  const clear = db.prepare<string[]>('DELETE FROM question WHERE kitchen = ? AND speaker = ?');
  const upsert = db.prepare<string[]>(
    `INSERT INTO question (kitchen, speaker, body) VALUES (?, ?, ?)
     ON CONFLICT (kitchen, speaker) DO UPDATE SET body = excluded.body WHERE body IS NOT excluded.body`,
  );
  return ({ kitchen, speaker }, question) => {
    if (question === null) clear.run(kitchen, speaker);
    else upsert.run(kitchen, speaker, toPlainJson(question));
  };
}
