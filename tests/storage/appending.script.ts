// Stores numbered turns without end, from the number given on, and says each number once its turn is stored.
// Ends at the first fault, and says it.
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import { numberedTurn } from './numbered-turns.ts';
import { say, sayFault } from './scripts-say.ts';

const [path = '', first = '1'] = process.argv.slice(2);
try {
  const store = await openSqlite(path);
  if ((await store.load('home')) === undefined) await store.create('home', SETTINGS);
  for (let number = Number(first); ; number += 1) {
    await store.append(numberedTurn(number));
    say(number);
  }
} catch (error) {
  sayFault(error);
}
