import { err, type Issue, issue, ok, type Result } from '../../base/index.ts';
import type { MatrixPreview } from '../types.ts';
import { findColumn, readTable, type TableRow } from './table.ts';

type MatrixColumns = {
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
  readonly metres: number;
};
type Leg = { readonly from: string; readonly to: string; readonly seconds: number; readonly metres: number | null };

const SECONDS = ['seconds', 'sec', 'durationsec', 'duration', 'time', 'timesec'];
const METRES = ['metres', 'meters', 'm', 'distancem', 'distance'];
/** Longer than this is taken for a mistake: four days of driving. */
const MOST_SECONDS = 4 * 86_400;
const MOST_METRES = 20_000_000;
/** A table of this many places squared is as large as is read. */
const MOST_PLACES = 2500;

/**
 * Reads travel times from rows of from, to, seconds, metres (metres may be missing). Pairs without a row are unknown; from a
 * place to itself is nothing. A second row for a pair is rejected.
 * Errors: `format-invalid` without header, columns or usable rows; `file-too-large` above 2,500 places.
 */
export function previewMatrix(text: string, where: string): Result<MatrixPreview> {
  const table = readTable(text, where);
  if (!table.ok) return table;
  const columns = findMatrixColumns(table.value.columns, where);
  if (!columns.ok) return columns;
  const legs = new Map<string, Leg>();
  const issues: Issue[] = [];
  for (const row of table.value.rows) {
    const place = `${where}, row ${row.number}`;
    const leg = readLeg(row, columns.value);
    const key = typeof leg === 'string' ? '' : JSON.stringify([leg.from, leg.to]);
    if (typeof leg === 'string') issues.push(issue('error', 'row-malformed', place, leg));
    else if (legs.has(key)) issues.push(issue('error', 'duplicate-pair', place, twice(leg)));
    else legs.set(key, leg);
  }
  if (legs.size === 0) {
    const detail = issues[0]?.message ?? 'The table has no rows.';
    return err('format-invalid', where, detail, 'Give rows of from, to, seconds, metres.');
  }
  const found = table.value.rows.length;
  const placeIds = [...new Set([...legs.values()].flatMap((leg) => [leg.from, leg.to]))];
  if (placeIds.length > MOST_PLACES) {
    const detail = `The table names ${placeIds.length} places; up to ${MOST_PLACES} are read.`;
    return err('file-too-large', where, detail, 'Leave out places that no round needs.');
  }
  const cells = (pick: (leg: Leg) => number | null) =>
    placeIds.map((from) => placeIds.map((to) => cell(legs.get(JSON.stringify([from, to])), from === to, pick)));
  return ok({
    matrix: {
      source: where,
      placeIds,
      durationSec: cells((leg) => leg.seconds),
      distanceM: cells((leg) => leg.metres),
    },
    found,
    accepted: legs.size,
    rejected: found - legs.size,
    issues,
  });
}

/** A quick look at a table: true where its header has columns from and to. */
export function looksLikeTimes(text: string): boolean {
  const [header = ''] = text
    .slice(0, 4000)
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/, 1);
  const names = header.split(/[,;\t]/).map((each) => each.replace(/["']/g, '').trim().toLowerCase());
  return names.includes('from') && names.includes('to');
}

function cell(leg: Leg | undefined, isSame: boolean, pick: (leg: Leg) => number | null): number | null {
  if (leg !== undefined) return pick(leg);
  return isSame ? 0 : null;
}

function findMatrixColumns(names: readonly string[], where: string): Result<MatrixColumns> {
  const from = findColumn(names, ['from', 'fromid', 'origin']);
  const to = findColumn(names, ['to', 'toid', 'destination']);
  const seconds = findColumn(names, SECONDS);
  const missing = from < 0 ? 'from' : to < 0 ? 'to' : seconds < 0 ? 'seconds' : null;
  if (missing === null) return ok({ from, to, seconds, metres: findColumn(names, METRES) });
  const detail = `No column named ${missing}; the columns are: ${names.join(', ').slice(0, 300)}.`;
  return err(
    'format-invalid',
    `${where}, row 1`,
    detail,
    'Name the columns from, to, seconds, metres in the first row.',
  );
}

/** One row as a leg, or what is wrong with it. */
function readLeg(row: TableRow, columns: MatrixColumns): Leg | string {
  if (row.fault !== null) return `The row cannot be read: ${row.fault}.`;
  const at = (column: number): string => (column < 0 ? '' : (row.cells[column] ?? ''));
  const from = at(columns.from);
  const to = at(columns.to);
  if (from === '' || to === '') return 'A place is missing. Give the ids of both places.';
  if (from.length > 120 || to.length > 120) return 'An id is longer than 120 characters.';
  const seconds = readAmount(at(columns.seconds), MOST_SECONDS);
  if (seconds === null)
    return `The seconds "${at(columns.seconds).slice(0, 40)}" are no number from 0 to ${MOST_SECONDS}.`;
  const metresText = at(columns.metres);
  const metres = metresText === '' ? null : readAmount(metresText, MOST_METRES);
  if (metres === null && metresText !== '') {
    return `The metres "${metresText.slice(0, 40)}" are no number from 0 to ${MOST_METRES}.`;
  }
  return { from, to, seconds, metres };
}

function readAmount(text: string, most: number): number | null {
  if (!/^\d{1,12}(?:\.\d+)?$/.test(text)) return null;
  const value = Number(text);
  return value <= most ? value : null;
}

function twice(leg: Leg): string {
  return `From ${leg.from} to ${leg.to} is there before. Keep one row for each pair.`;
}
