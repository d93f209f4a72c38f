import sqlite3 from 'sqlite3';
import { type Issue, issue } from '../../../core/base/index.ts';
import type {
  GeoPackageCell,
  GeoPackageContent,
  GeoPackageSystem,
  GeoPackageTable,
  GroundReadOptions,
} from '../../../core/formats/index.ts';

type Row = Readonly<Record<string, GeoPackageCell>>;
type Limits = GroundReadOptions['limits'];

/** A database that is only looked at. */
type Rows = { readonly all: (sql: string, values?: readonly (string | number)[]) => Promise<readonly Row[]> };

/** The longest text or blob, and the longest statement that SQLite takes while a foreign file is open. */
const LONGEST_VALUE = 64 * 1024 * 1024;
const MOST_TABLES = 200;
const MOST_SYSTEMS = 2000;

/**
 * Reads the tables with outlines out of a GeoPackage (OGC 12-128r18) without writing a byte to it or beside it. Statements of
 * the file's own (views, triggers, computed columns of other tables) are not run. A table that cannot be read is an issue.
 * Rejects with SQLite's error where the file as a whole cannot be read.
 */
export async function readGeopackageRows(
  file: string,
  limits: Limits,
  signal: AbortSignal,
): Promise<GeoPackageContent> {
  const database = await open(file);
  const interrupt = (): void => database.interrupt();
  signal.addEventListener('abort', interrupt, { once: true });
  try {
    return await readContent(rowsOf(database), limits);
  } finally {
    signal.removeEventListener('abort', interrupt);
    await new Promise<void>((done) => database.close(() => done()));
  }
}

function open(file: string): Promise<sqlite3.Database> {
  const name = `file:${encodeURI(file).replaceAll('?', '%3f').replaceAll('#', '%23')}?immutable=1`;
  const flags = sqlite3.OPEN_READONLY | sqlite3.OPEN_URI | sqlite3.OPEN_FULLMUTEX;
  return new Promise((done, fail) => {
    const database = new sqlite3.Database(name, flags, (error) => {
      if (error) return fail(error);
      database.configure('limit', sqlite3.LIMIT_LENGTH, LONGEST_VALUE);
      done(database);
    });
  });
}

function rowsOf(database: sqlite3.Database): Rows {
  return {
    all: (sql, values = []) =>
      new Promise((done, fail) => {
        database.all(sql, [...values], (error: Error | null, rows: Row[]) => (error ? fail(error) : done(rows)));
      }),
  };
}

async function readContent(rows: Rows, limits: Limits): Promise<GeoPackageContent> {
  await rows.all('PRAGMA trusted_schema = OFF');
  const listed = await rows.all(
    `SELECT g.table_name, g.column_name, g.srs_id, c.identifier, m.type FROM gpkg_geometry_columns AS g
     LEFT JOIN gpkg_contents AS c ON c.table_name = g.table_name
     LEFT JOIN sqlite_master AS m ON lower(m.name) = lower(g.table_name) ORDER BY g.rowid LIMIT ${MOST_TABLES}`,
  );
  const tables: GeoPackageTable[] = [];
  const issues: Issue[] = [];
  let left = limits.features;
  for (const entry of listed) {
    const read = await readTable(rows, entry, left);
    if ('table' in read) {
      tables.push(read.table);
      left -= read.table.rows.length;
    } else issues.push(read.issue);
  }
  return { tables, systems: await readSystems(rows), issues };
}

type TableReading = { readonly table: GeoPackageTable } | { readonly issue: Issue };

async function readTable(rows: Rows, entry: Row, left: number): Promise<TableReading> {
  const [tableName, geometryColumn] = [String(entry.table_name ?? ''), String(entry.column_name ?? '')];
  const name = typeof entry.identifier === 'string' && entry.identifier !== '' ? entry.identifier : tableName;
  const refuse = (why: string): TableReading => ({
    issue: issue('error', 'layer-not-read', `layer ${name.slice(0, 80)}`, why),
  });
  if (entry.type === 'view') return refuse('The layer is a view, whose statement is not run. Export it as a table.');
  if (entry.type !== 'table') return refuse('The file names the layer but does not hold it.');
  const described = await rows.all('SELECT name, pk FROM pragma_table_info(?)', [tableName]);
  const columns = described.map((each) => String(each.name));
  if (!columns.includes(geometryColumn)) return refuse('The layer has no column with outlines.');
  const keys = described.filter((each) => each.pk === 1).map((each) => String(each.name));
  // One row more than may be read shows that there are too many.
  const sql = `SELECT ${columns.map(quote).join(', ')} FROM ${quote(tableName)} LIMIT ${left + 1}`;
  const found = await rows.all(sql);
  const table = {
    name,
    geometryColumn,
    keyColumn: keys.length === 1 ? (keys[0] ?? null) : null,
    systemId: Number(entry.srs_id ?? 0),
    columns,
    rows: found.map((row) => columns.map((column) => plainCell(row[column] ?? null))),
  };
  return { table };
}

/** A plain byte array instead of Node's, which a thread would not get as such. */
function plainCell(cell: GeoPackageCell): GeoPackageCell {
  return cell instanceof Uint8Array ? new Uint8Array(cell) : cell;
}

async function readSystems(rows: Rows): Promise<readonly GeoPackageSystem[]> {
  const found = await rows.all(
    `SELECT srs_id, organization, organization_coordsys_id, definition FROM gpkg_spatial_ref_sys LIMIT ${MOST_SYSTEMS}`,
  );
  return found.map((row) => ({
    id: Number(row.srs_id),
    organization: String(row.organization ?? ''),
    code: Number(row.organization_coordsys_id),
    definition: String(row.definition ?? ''),
  }));
}

function quote(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}
