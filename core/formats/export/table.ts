import { harmlessCell } from '../csv/index.ts';
import { cleanText } from './clean-text.ts';

/**
 * A table as RFC 4180 has it: commas, CRLF, cells in quotes where they need it. Cells that a spreadsheet would take for a formula begin
 * with an apostrophe, which the readers of this program take off again.
 */
export function tableText(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => `${cells.map((cell) => quoted(harmlessCell(cleanText(cell)))).join(',')}\r\n`).join('');
}

function quoted(cell: string): string {
  return /[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** Up to so many decimals, without zeros at the end; empty where there is no figure. */
export function plainFigure(value: number | null, decimals = 3): string {
  if (value === null) return '';
  const text = value.toFixed(decimals);
  const plain = decimals > 0 ? text.replace(/\.?0+$/, '') : text;
  return plain === '-0' ? '0' : plain;
}
