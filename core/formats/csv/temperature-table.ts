import { err, ok, type Result } from '../../base/index.ts';
import { readDate } from './dates.ts';
import { readTable, type Table } from './table.ts';
import { looksLikeTemperatures } from './temperature-columns.ts';

/** The header is looked for in so many lines: files of stations begin with words about the station. */
const MOST_LINES_BEFORE = 60;

/**
 * A table of temperatures with its header, which may stand below some lines of words. Rows keep the numbers that they have in the file.
 * Errors: `format-invalid` where there is no header; a first row of figures is none, and is not lost as one.
 */
export function readTemperatureTable(text: string, where: string): Result<Table> {
  const skipped = linesBefore(text);
  const rest = text.split('\n').slice(skipped).join('\n');
  const read = readTable(skipped === 0 ? text : rest, where);
  if (!read.ok) return read;
  const { columns, rows } = read.value;
  if (columns.some((name) => readDate(name, 'mdy') !== null || readDate(name, 'dmy') !== null)) {
    const detail = `The first row has figures and no names: ${columns.join(', ').slice(0, 120)}.`;
    return err(
      'format-invalid',
      `${where}, row ${skipped + 1}`,
      detail,
      'Put the names of the columns into the first row.',
    );
  }
  return ok({ columns, rows: rows.map((row) => ({ ...row, number: row.number + skipped })) });
}

/** How many lines stand before the first one that reads like a header; 0 where none does. */
function linesBefore(text: string): number {
  const lines = text.split('\n', MOST_LINES_BEFORE);
  const found = lines.findIndex((line) => {
    const header = readTable(line, '');
    return header.ok && looksLikeTemperatures(header.value.columns);
  });
  return Math.max(0, found);
}
