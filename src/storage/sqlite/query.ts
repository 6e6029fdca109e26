// A prepared query whose rows are read back as values.
import type { Statement } from 'better-sqlite3';
import { readBack } from './faults.ts';

export type Query<Given extends unknown[], Row> = (...given: Given) => readonly Row[];

export function query<Given extends unknown[], Stored, Row>(
  statement: Statement<Given, Stored>,
  decode: (row: Stored) => Row,
): Query<Given, Row> {
  const place = statement.database.name;
  return (...given) => {
    const rows = statement.all(...given);
    return readBack(place, () => rows.map(decode));
  };
}
