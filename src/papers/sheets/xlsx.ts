// A table as a workbook of one sheet. Figures are numbers there; a spreadsheet holds 15 digits of them, we write fewer.
import writeExcelFile from 'write-excel-file/node';
import type { Cell, Sheet } from '../../app/ports/paper.ts';
import { guarded } from './guard.ts';

export async function xlsx({ columns, rows }: Sheet): Promise<Uint8Array> {
  const head = columns.map((text) => ({ type: String, value: guarded(text), fontWeight: 'bold' as const }));
  const data = [head, ...rows.map((row) => row.map(written))];
  const widths = columns.map((text) => ({ width: Math.max(NARROWEST, text.length + 2) }));
  return new Uint8Array(await writeExcelFile(data, { columns: widths, stickyRowsCount: 1 }).toBuffer());
}

const NARROWEST = 12;

function written(cell: Cell) {
  if (cell === undefined) return null;
  return 'figure' in cell
    ? { type: Number, value: Number(cell.figure) }
    : { type: String, value: guarded(cell.text) };
}
