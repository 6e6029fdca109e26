// The contract of the mailbox and the team, on a real file.
import { join } from 'node:path';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { mailboxContract } from '../app/ports/mailbox.contract.ts';
import { newFolder, removeFolder } from './scratch.ts';

mailboxContract('sqlite in a file', () => {
  const folder = newFolder();
  return Promise.resolve({
    open: () => openSqlite(join(folder, 'kitchen.db')),
    remove: () => {
      removeFolder(folder);
      return Promise.resolve();
    },
  });
});
