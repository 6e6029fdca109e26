// Opens the store, says "opened" or the fault, and holds it for as long as it lives, or with "once" closes it.
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { say, sayFault } from './scripts-say.ts';

const [path = '', once] = process.argv.slice(2);
try {
  const store = await openSqlite(path);
  say('opened');
  if (once === undefined) setInterval(() => store, 1000);
  else await store.close();
} catch (error) {
  sayFault(error);
}
