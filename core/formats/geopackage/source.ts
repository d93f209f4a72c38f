import { err, ok, type Result } from '../../base/index.ts';
import { type ProjectionReading, projectionFromEpsg, projectionFromWkt } from '../../geometry/index.ts';
import { turnFeatures } from '../coordinates.ts';
import { geometryIssues } from '../geojson/index.ts';
import { createTally, type Tally } from '../tally.ts';
import { decodeLatin } from '../text/index.ts';
import type {
  AttributeValue,
  GeoPackageCell,
  GeoPackageSystem,
  GeoPackageTable,
  GroundReader,
  GroundReadOptions,
  GroundSource,
  SourceFeature,
  SourceLayer,
} from '../types.ts';
import { readBlob } from './blob.ts';

/** The first bytes of every SQLite file, and where it says which program's file it is. */
const SQLITE = 'SQLite format 3\0';
const APPLICATION_AT = 68;

/** GeoPackages: the host opens the database and hands its rows in. */
export const geopackageReader: GroundReader = {
  id: 'geopackage',
  title: 'GeoPackage',
  extensions: ['gpkg'],
  looksLike: (bytes, fileName) => {
    if (decodeLatin(bytes.subarray(0, SQLITE.length)) !== SQLITE) return false;
    // "GPKG" since version 1.2, "GP10" and "GP11" before it.
    const application = decodeLatin(bytes.subarray(APPLICATION_AT, APPLICATION_AT + 4));
    return /^GP(?:KG|1[01])$/.test(application) || /\.gpkg$/i.test(fileName);
  },
  read: async (_bytes, fileName, options) => readGeopackage(fileName, options),
};

/**
 * The layers of a GeoPackage, one for each table with a geometry. Errors: `not-available` where no host opened the database,
 * `format-invalid` without layers, `file-too-large`, `cancelled`.
 */
function readGeopackage(fileName: string, options: GroundReadOptions): Result<GroundSource> {
  const content = options.geopackage;
  if (content === undefined) {
    const hint = 'Choose the file in the program, or convert it to GeoJSON.';
    return err('not-available', fileName, 'A GeoPackage is a database, which cannot be opened here.', hint);
  }
  if (content.tables.length === 0 && content.issues.length === 0) {
    const hint = 'Export the outlines as a vector layer, or as GeoJSON.';
    return err('format-invalid', fileName, 'The GeoPackage has no table with outlines.', hint);
  }
  const total = content.tables.reduce((sum, table) => sum + table.rows.length, 0);
  const tally = createTally(options, fileName, total);
  const layers: SourceLayer[] = [];
  for (const table of content.tables) {
    const layer = readTable(table, content.systems, `${fileName}, layer ${table.name}`, tally);
    if (!layer.ok) return layer;
    layers.push(layer.value);
  }
  const issues = content.issues.map((each) => ({ ...each, where: `${fileName}, ${each.where}` }));
  return ok({ formatId: geopackageReader.id, layers, issues });
}

function readTable(
  table: GeoPackageTable,
  systems: readonly GeoPackageSystem[],
  where: string,
  tally: Tally,
): Result<SourceLayer> {
  const columns = columnsOf(table);
  const features: SourceFeature[] = [];
  for (const [index, row] of table.rows.entries()) {
    const { feature, positions } = readRow(row, columns, `${where}, record ${index + 1}`);
    const ended = tally.add(positions);
    if (ended !== null) return ended;
    features.push(feature);
  }
  const layer = { name: table.name, fields: columns.fields.map((each) => each.name) };
  const reading = systemOf(table.systemId, systems);
  if (reading.kind === 'unknown') {
    const why = `${reading.why} Say the EPSG code, or export the layer again as longitude and latitude (WGS84).`;
    return ok({ ...layer, coordinates: { kind: 'unknown', why }, features });
  }
  const { projection } = reading;
  const coordinates = { kind: 'degrees', from: projection.name } as const;
  return ok({ ...layer, coordinates, features: turnFeatures(features, projection) });
}

type Columns = {
  readonly geometry: number;
  readonly key: number;
  readonly fields: readonly { readonly name: string; readonly index: number }[];
};

function columnsOf({ columns, geometryColumn, keyColumn }: GeoPackageTable): Columns {
  const geometry = columns.indexOf(geometryColumn);
  const key = keyColumn === null ? -1 : columns.indexOf(keyColumn);
  const fields = columns.map((name, index) => ({ name, index }));
  return { geometry, key, fields: fields.filter(({ index }) => index !== geometry && index !== key) };
}

function readRow(row: readonly GeoPackageCell[], columns: Columns, where: string) {
  const reading = readBlob(row[columns.geometry] ?? null);
  const key = row[columns.key] ?? null;
  const feature: SourceFeature = {
    where,
    id: typeof key === 'number' || typeof key === 'string' ? String(key) : null,
    geometry: reading.kind === 'geometry' ? reading.geometry : null,
    attributes: Object.fromEntries(columns.fields.map(({ name, index }) => [name, readCell(row[index] ?? null)])),
    issues: geometryIssues(reading, where),
  };
  return { feature, positions: reading.kind === 'geometry' ? reading.positions : 0 };
}

/** Bytes say nothing to people. */
function readCell(cell: GeoPackageCell): AttributeValue {
  return cell instanceof Uint8Array ? null : cell;
}

/** By the well-known text that the file gives; where that cannot be used, by its EPSG code. */
function systemOf(id: number, systems: readonly GeoPackageSystem[]): ProjectionReading {
  if (id === 0 || id === -1) {
    return { kind: 'unknown', why: 'The layer says that the system of its coordinates is not known.' };
  }
  const system = systems.find((each) => each.id === id);
  if (system === undefined)
    return { kind: 'unknown', why: `The file does not describe its system of coordinates (${id}).` };
  const byText = projectionFromWkt(system.definition);
  if (byText.kind === 'known' || system.organization.toUpperCase() !== 'EPSG') return byText;
  const byCode = projectionFromEpsg(system.code);
  return byCode.kind === 'known' ? byCode : byText;
}
