// The contract of the store, on a real file.
import { join } from 'node:path';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { storeContract } from '../app/ports/store.contract.ts';
import { newFolder, removeFolder } from './scratch.ts';

storeContract('sqlite in a file', () => {
  const folder = newFolder();
  return Promise.resolve({
    open: () => openSqlite(join(folder, 'data', 'kitchen.db')),
    remove: () => {
      removeFolder(folder);
      return Promise.resolve();
    },
  });
});
