import { err, type Issue, issue, ok, type Result } from '../../base/index.ts';
import { createTally } from '../tally.ts';
import { readPlainText } from '../text/index.ts';
import type { GroundReader, GroundReadOptions, GroundSource } from '../types.ts';
import { sourceColumns } from './source-columns.ts';
import { settleRows } from './source-places.ts';
import { type RowReading, readSourceRow } from './source-row.ts';
import { findColumn, readTable } from './table.ts';

const GLANCE_BYTES = 4000;
const MOST_BYTES = 16 * 1024 * 1024;
const MOST_COLUMNS = 1000;
/** Rows times columns; each cell becomes an attribute of its record. */
const MOST_CELLS = 3_000_000;
/** One of these in the first row tells a table of ground. */
const KNOWN_COLUMNS = [
  'lat',
  'latitude',
  'lon',
  'lng',
  'longitude',
  'wkt',
  'thegeom',
  'geom',
  'geometry',
  'address',
  'street',
];
const AREA_COLUMNS = ['area', 'lawnarea', 'turfarea', 'areasqft', 'sqft', 'acres', 'squarefeet'];

/** Tables with outlines, places, areas or only addresses. */
export const csvReader: GroundReader = {
  id: 'csv',
  title: 'Lists of lawns (CSV)',
  extensions: ['csv', 'tsv', 'txt'],
  looksLike: (bytes, fileName) => {
    if (bytes.subarray(0, GLANCE_BYTES).includes(0) && bytes[0] !== 0xff && bytes[0] !== 0xfe) return false;
    const table = readTable(readPlainText(bytes.subarray(0, GLANCE_BYTES)).text.split(/\r?\n/, 1)[0] ?? '', fileName);
    if (!table.ok) return false;
    const { columns } = table.value;
    const isMatrix = findColumn(columns, ['from', 'fromid']) >= 0 && findColumn(columns, ['to', 'toid']) >= 0;
    return !isMatrix && findColumn(columns, [...KNOWN_COLUMNS, ...AREA_COLUMNS]) >= 0;
  },
  read: async (bytes, fileName, options) => readCsvSource(bytes, fileName, options),
};

/**
 * Every row of a table with a header as a record: with the outline of a column in well-known text, else the point of its
 * latitude and longitude, else without a place. Cells stay texts; empty ones are null. Errors: `format-invalid` without a
 * header, `file-too-large`, `cancelled`.
 */
function readCsvSource(bytes: Uint8Array, where: string, options: GroundReadOptions): Result<GroundSource> {
  if (bytes.length > MOST_BYTES) {
    const detail = `The table has ${Math.ceil(bytes.length / 1048576)} MB; up to 16 MB are read.`;
    return err('file-too-large', where, detail, 'Split it into several files.');
  }
  const { text, encoding } = readPlainText(bytes);
  if (text.includes('\0')) {
    return err('format-invalid', where, 'The file is no text.', 'Save the table as CSV (UTF-8), and choose that file.');
  }
  const table = readTable(text, where);
  if (!table.ok) return table;
  const isWide = table.value.columns.length > MOST_COLUMNS;
  if (isWide || table.value.columns.length * table.value.rows.length > MOST_CELLS) {
    const size = `${table.value.rows.length} rows of ${table.value.columns.length} columns`;
    return err('file-too-large', where, `The table has ${size}.`, 'Leave out columns that nobody needs, or split it.');
  }
  const columns = sourceColumns(table.value);
  const tally = createTally(options, where, table.value.rows.length);
  const rows: RowReading[] = [];
  for (const row of table.value.rows) {
    const reading = readSourceRow(row, columns, `${where}, row ${row.number}`);
    const ended = tally.add(reading.positions);
    if (ended !== null) return ended;
    rows.push(reading);
  }
  const { features, coordinates, issues } = settleRows(rows, where);
  const fields = columns.others.map((each) => each.name);
  const layer = { name: where.replace(/\.[^.]*$/, ''), coordinates, fields, features };
  return ok({
    formatId: csvReader.id,
    layers: [layer],
    issues: [...issues, ...fileIssues(rows.length, encoding, where)],
  });
}

function fileIssues(count: number, encoding: string, where: string): readonly Issue[] {
  const issues: Issue[] = [];
  if (encoding === 'windows-1252') {
    const message = 'The file is not in UTF-8; its letters were read as windows-1252. Check names with accents.';
    issues.push(issue('warning', 'encoding-assumed', where, message));
  }
  if (count === 0) issues.push(issue('warning', 'file-empty', where, 'The table has a header but no rows.'));
  return issues;
}
