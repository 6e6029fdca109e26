// A table as CSV by RFC 4180: quoted where needed, lines end in CR LF. The mark at the front tells spreadsheets that it is UTF-8.
import type { Cell, Sheet } from '../../app/ports/paper.ts';
import { guarded } from './guard.ts';

const BYTE_ORDER_MARK = '\uFEFF';

export function csv({ columns, rows }: Sheet): Uint8Array {
  const lines = [columns.map((text) => ({ text })), ...rows].map((row) => row.map(written).join(','));
  return new TextEncoder().encode(`${BYTE_ORDER_MARK}${lines.map((line) => `${line}\r\n`).join('')}`);
}

function written(cell: Cell): string {
  if (cell === undefined) return '';
  if ('figure' in cell) return cell.figure;
  const text = guarded(cell.text);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
