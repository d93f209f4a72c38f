import { type Issue, issue, ok, type Result } from '../../base/index.ts';
import type { Property } from '../../book/index.ts';
import type { GroundPreview } from '../types.ts';
import { type Columns, findColumns } from './columns.ts';
import { readLawn } from './lawn-row.ts';
import { readTable } from './table.ts';

/**
 * Reads a table of lawns as properties with stated areas. Columns: id, name, address, lat, lon, area, gate width, slope, in
 * any order; only lat and lon must be there. Figures may carry units; a unit in the column's name counts for bare numbers.
 * Every row is either accepted or rejected with an error that names the row.
 * Errors: `format-invalid` where there is no header, or no column for latitude or longitude.
 */
export function previewLawns(text: string, where: string): Result<GroundPreview> {
  const table = readTable(text, where);
  if (!table.ok) return table;
  const columns = findColumns(table.value.columns, where);
  if (!columns.ok) return columns;
  return ok(readRows(table.value.rows, columns.value, where));
}

function readRows(
  rows: readonly { readonly number: number; readonly cells: readonly string[]; readonly fault: string | null }[],
  columns: Columns,
  file: string,
): GroundPreview {
  const properties: Property[] = [];
  const issues: Issue[] = [];
  const rowOfId = new Map<string, number>();
  let rejected = 0;
  for (const row of rows) {
    const where = `${file}, row ${row.number}`;
    const lawn = readLawn(row, columns, where);
    const earlier = lawn.property === null ? undefined : rowOfId.get(lawn.property.id);
    issues.push(...lawn.issues);
    if (lawn.property === null) {
      rejected += 1;
    } else if (earlier !== undefined) {
      rejected += 1;
      const message = `The id ${lawn.property.id} is in row ${earlier} already. Give every lawn its own id.`;
      issues.push(issue('error', 'duplicate-id', where, message));
    } else {
      rowOfId.set(lawn.property.id, row.number);
      properties.push(lawn.property);
    }
  }
  if (rows.length === 0) {
    issues.push(issue('error', 'nothing-to-read', file, 'The table has a header but no rows.'));
  }
  return { properties, parkingAssumed: [], found: rows.length, accepted: properties.length, rejected, issues };
}
