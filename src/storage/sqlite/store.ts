// The ports to what is kept, over one SQLite connection. SQLite is synchronous, so nothing can come between two statements here.
import type { Mailbox } from '../../app/ports/mailbox.ts';
import type { Store } from '../../app/ports/store.ts';
import type { Cards } from '../../app/ports/cards.ts';
import type { Team } from '../../app/ports/team.ts';
import { toPlainJson } from '../../core/plain-json.ts';
import { appender } from './append.ts';
import type { Connection } from './connection.ts';
import { factReader } from './fact-reader.ts';
import { promised } from './faults.ts';
import { kitchenReader } from './kitchen-reader.ts';
import { postOn } from './post.ts';
import { viewReader } from './view-reader.ts';
import { viewReplacer } from './view-writer.ts';

export interface StoreOptions {
  /** The UTC instant, ISO 8601, that a kitchen is created at. */
  readonly clock: () => string;
  /** Called when all is closed. */
  readonly release: () => void;
}

export type SqliteStore = Store & Mailbox & Team & Cards;

/** The connection must be migrated and its pragmas set. */
export function storeOn(db: Connection, options: StoreOptions): SqliteStore {
  const trying = <Result>(work: () => Result): Promise<Result> => promised(db.name, work);
  const append = appender(db);
  const replace = viewReplacer(db);
  const load = kitchenReader(db);
  const facts = factReader(db);
  const views = viewReader(db);
  const { insertKitchen, reply, kitchens } = statements(db);
  return {
    ...postOn(db),
    load: (kitchen) => trying(() => load(kitchen)),
    create: (kitchen, settings) =>
      trying(() => void insertKitchen.run(kitchen, toPlainJson(settings), options.clock())),
    append: (turn) => trying(() => append(turn)),
    replyTo: (kitchen, message) => trying(() => reply.get(kitchen, message)?.reply),
    testFacts: (kitchen, test) => trying(() => facts.ofTest(kitchen, test)),
    lotFacts: (kitchen, lot) => trying(() => facts.ofLot(kitchen, lot)),
    newestLots: (kitchen, limit) => trying(() => views.newestLots(kitchen, limit)),
    closedSince: (kitchen, at, limit) => trying(() => views.closedSince(kitchen, at, limit)),
    speakerFacts: (kitchen, speaker, limit) => trying(() => facts.ofSpeaker(kitchen, speaker, limit)),
    closedTests: (kitchen, item, limit) => trying(() => views.closed(kitchen, item, limit)),
    kitchens: () => trying(() => kitchens.all().map(({ id }) => id)),
    facts: facts.all,
    views: (kitchen) => trying(() => allViews(views, kitchen)),
    replaceViews: (kitchen, rows) => trying(() => { replace(kitchen, rows); }), // prettier-ignore
    close: () => trying(() => { db.close(); options.release(); }), // prettier-ignore
  };
}

const statements = (db: Connection) => ({
  insertKitchen: db.prepare<string[]>('INSERT INTO kitchen (id, settings, created_at) VALUES (?, ?, ?)'),
  reply: db.prepare<string[], { reply: string }>('SELECT reply FROM message WHERE kitchen = ? AND id = ?'),
  kitchens: db.prepare<[], { id: string }>('SELECT id FROM kitchen ORDER BY id'),
});

const allViews = ({ tests, lots, memory, pools, names }: ReturnType<typeof viewReader>, kitchen: string) => ({
  tests: tests(kitchen),
  lots: lots(kitchen),
  memory: memory(kitchen),
  pools: pools(kitchen),
  names: names(kitchen),
});
