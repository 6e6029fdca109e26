// The Mailbox and Team ports over one SQLite connection.
import type { Mailbox } from '../../app/ports/mailbox.ts';
import type { Cards } from '../../app/ports/cards.ts';
import type { Team } from '../../app/ports/team.ts';
import type { Connection } from './connection.ts';
import { cards } from './cards.ts';
import { interjector, settler } from './delivery.ts';
import { promised } from './faults.ts';
import { inbox } from './inbox.ts';
import { outbox } from './outbox.ts';
import { founder, teamReader } from './team.ts';

type Async<Sync> = {
  readonly [Name in keyof Sync]: Sync[Name] extends (...given: infer Given) => infer Result
    ? (...given: Given) => Promise<Result>
    : never;
};

export function postOn(db: Connection): Mailbox & Team & Cards {
  const all = {
    ...inbox(db),
    settle: settler(db),
    interject: interjector(db),
    ...outbox(db),
    ...cards(db),
    ...teamReader(db),
    ...founder(db),
  };
  return asynchronous(db.name, all);
}

/** The same functions as a port has them, their trouble classed. */
function asynchronous<Sync extends Readonly<Record<string, (...given: never[]) => unknown>>>(
  place: string,
  functions: Sync,
): Async<Sync> {
  const made = Object.entries(functions).map(([name, work]) => [
    name,
    (...given: never[]) => promised(place, () => work(...given)),
  ]);
  return Object.fromEntries(made) as Async<Sync>;
}
