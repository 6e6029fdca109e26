// A program that looks once at what is due in the kitchen "home": says the key of all that it told, "looked", or the fault. Then it
// holds the file for as long as it lives, or with "once" closes it.
import { openTable } from '../../src/app/turn.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { english } from '../language/english.ts';
import { say, sayFault } from './scripts-say.ts';

const [path = '', at = '', once] = process.argv.slice(2);
try {
  const store = await openSqlite(path);
  say('opened');
  const table = await openTable({ store, id: 'home', ...english });
  for (const { key } of await table.tellDue({ at })) say(key);
  say('looked');
  if (once === undefined) setInterval(() => store, 1000);
  else await store.close();
} catch (error) {
  sayFault(error);
}
