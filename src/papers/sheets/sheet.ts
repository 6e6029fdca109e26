// A table in the format asked for. What writes workbooks is loaded only once one is wanted.
import type { Sheet } from '../../app/ports/paper.ts';
import { csv } from './csv.ts';

export async function sheet(table: Sheet): Promise<Uint8Array> {
  switch (table.format) {
    case 'csv':
      return csv(table);
    case 'xlsx': {
      const { xlsx } = await import('./xlsx.ts');
      return await xlsx(table);
    }
  }
}
