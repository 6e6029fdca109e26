// Says "begun" and makes a backup.
import { backupSqlite } from '../../src/storage/sqlite/backup.ts';
import { say } from './scripts-say.ts';

const [source = '', target = ''] = process.argv.slice(2);
say('begun');
await backupSqlite(source, target);
