import papaparse from 'papaparse';
import { err, ok, type Result } from '../../base/index.ts';
import { plainCell } from './formula-cell.ts';
import { joinOutlines } from './join-outlines.ts';

/** A table with named columns. */
export type Table = {
  readonly columns: readonly string[];
  readonly rows: readonly TableRow[];
};
export type TableRow = {
  /** Counted from 1 with the header as row 1; blank rows count. */
  readonly number: number;
  readonly cells: readonly string[];
  /** What is wrong with the row's form, or null. */
  readonly fault: string | null;
};

/**
 * Reads comma-, semicolon- or tab-separated text with a header row (RFC 4180, by papaparse). Blank rows are passed over.
 * An apostrophe before what a spreadsheet could take for a formula is taken off. Rows with more cells than the header, or with a
 * quotation mark that is not closed, carry a fault.
 * Error `format-invalid`: no header.
 */
export function readTable(text: string, where: string): Result<Table> {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const parsed = papaparse.parse(body, { delimiter: '', skipEmptyLines: false });
  const [header, ...rest] = parsed.data;
  const columns = header?.map((cell) => cell.trim()) ?? [];
  if (columns.every((cell) => cell === '')) {
    return err(
      'format-invalid',
      where,
      'The file has no header row.',
      'Put the names of the columns into the first row.',
    );
  }
  const quoted = new Set(parsed.errors.flatMap((each) => (each.type === 'Quotes' ? [each.row ?? 0] : [])));
  const rows = rest.flatMap((parts, index): TableRow[] => {
    const cells = joinOutlines(parts, columns.length, parsed.meta.delimiter);
    if (cells.every((cell) => cell.trim() === '')) return [];
    const fault = quoted.has(index + 1) ? 'a quotation mark is not closed' : extraCells(cells, columns.length);
    return [{ number: index + 2, cells: cells.map((cell) => plainCell(cell.trim()).trim()), fault }];
  });
  return ok({ columns, rows });
}

function extraCells(cells: readonly string[], count: number): string | null {
  const extra = cells.slice(count).some((cell) => cell.trim() !== '');
  return extra ? `it has ${cells.length} cells where the header has ${count}` : null;
}

/** The place of the first column whose name, in small letters and digits only, is one of `names`; -1 where there is none. */
export function findColumn(columns: readonly string[], names: readonly string[]): number {
  return columns.findIndex((column) => names.includes(plain(column)));
}

/** A column's name without unit in brackets, spaces, marks and capitals: "Gate width (in)" gives "gatewidth". */
export function plain(column: string): string {
  return column
    .replace(/[([].*$/, '')
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '');
}
