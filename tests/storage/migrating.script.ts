// Opens a store with one version more than ours, and is killed in the middle of making it.
import { type Migration, MIGRATIONS } from '../../src/storage/sqlite/migrations.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { say } from './scripts-say.ts';

const [path = ''] = process.argv.slice(2);
const killedHalfWay: Migration = (db) => {
  db.exec(`CREATE TABLE half (id INTEGER) STRICT; UPDATE test_row SET item = 'half'`);
  say('half-way');
  process.kill(process.pid, 'SIGKILL');
};
await openSqlite(path, { migrations: [...MIGRATIONS, killedHalfWay] });
