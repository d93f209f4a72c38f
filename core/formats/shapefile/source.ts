import { type Issue, issue, ok, type Result } from '../../base/index.ts';
import { projectionFromWkt } from '../../geometry/index.ts';
import { turnFeatures } from '../coordinates.ts';
import { createTally, type Tally } from '../tally.ts';
import { decodeLatin } from '../text/index.ts';
import type {
  GroundReader,
  GroundReadOptions,
  GroundSource,
  SourceCoordinates,
  SourceFeature,
  SourceLayer,
} from '../types.ts';
import { isZip, openZip, type ZipEntry } from '../zip/index.ts';
import { type DbfTable, languageDriver, readDbf } from './dbf.ts';
import { encodingName, tableText } from './encoding.ts';
import { findLayers, type LayerFiles, refuseLoose } from './files.ts';
import { readShape } from './shapes.ts';
import { isShp, readShp, type ShpFile } from './shp.ts';

/** Enough to list any archive; nothing is unpacked for a look. */
const GLANCE = { entries: 2000, unpackedBytes: 0 };

/** Shapefiles in a ZIP archive, one layer for each .shp inside. */
export const shapefileReader: GroundReader = {
  id: 'shapefile',
  title: 'Shapefile (ZIP of .shp, .dbf, .prj)',
  extensions: ['zip', 'shp', 'dbf', 'shx'],
  looksLike: (bytes, fileName) => {
    if (isShp(bytes)) return true;
    if (!isZip(bytes)) return false;
    const archive = openZip(bytes, fileName, GLANCE);
    return archive.ok && archive.value.entries.some((each) => /\.shp$/i.test(each.name));
  },
  read: async (bytes, fileName, options) => readShapefile(bytes, fileName, options),
};

type LayerReading = { readonly layer: SourceLayer; readonly issues: readonly Issue[] };

/**
 * Every layer of the archive with all its records: null shapes, rows without a shape and rows marked as deleted are records
 * without an outline and with the reason. A layer whose .prj is missing or not understood is of unknown coordinates.
 */
function readShapefile(bytes: Uint8Array, fileName: string, options: GroundReadOptions): Result<GroundSource> {
  if (!isZip(bytes)) return refuseLoose(fileName);
  const found = findLayers(bytes, fileName, options.limits);
  if (!found.ok) return found;
  const tally = createTally(options, fileName, 0);
  const layers: SourceLayer[] = [];
  const issues: Issue[] = [];
  for (const files of found.value) {
    const reading = readLayer(files, `${fileName}, layer ${files.name}`, options, tally);
    if (!reading.ok) return reading;
    layers.push(reading.value.layer);
    issues.push(...reading.value.issues);
  }
  return ok({ formatId: shapefileReader.id, layers, issues });
}

function readLayer(files: LayerFiles, where: string, options: GroundReadOptions, tally: Tally): Result<LayerReading> {
  const shpBytes = files.shp.unpack();
  if (!shpBytes.ok) return shpBytes;
  const shp = readShp(shpBytes.value, where);
  if (!shp.ok) return shp;
  const table = readTable(files, where, options);
  if (!table.ok) return table;
  const prj = readWords(files.prj);
  if (!prj.ok) return prj;
  const read = readRecords(shp.value, table.value.table, where, tally);
  if (!read.ok) return read;
  const { coordinates, features } = settle(read.value, prj.value);
  const fields = table.value.table?.fields ?? [];
  const issues = [...layerIssues(shp.value, where), ...table.value.issues()];
  return ok({ layer: { name: files.name, coordinates, fields, features }, issues });
}

type TableReading = { readonly table: DbfTable | null; readonly issues: () => readonly Issue[] };

function readTable(files: LayerFiles, where: string, options: GroundReadOptions): Result<TableReading> {
  if (files.dbf === null) {
    const message = 'The archive has no .dbf file for this layer, so its outlines have no names.';
    return ok({ table: null, issues: () => [issue('warning', 'attributes-missing', where, message)] });
  }
  const bytes = files.dbf.unpack();
  if (!bytes.ok) return bytes;
  const cpg = readWords(files.cpg);
  if (!cpg.ok) return cpg;
  const text = tableText(encodingName(cpg.value, languageDriver(bytes.value)), options.decode);
  const table = readDbf(bytes.value, where, text.decode);
  if (!table.ok) return table;
  const issues = () => {
    const doubt = text.doubt();
    return doubt === null ? [] : [issue('warning', 'encoding-assumed', where, doubt)];
  };
  return ok({ table: table.value, issues });
}

function readWords(entry: ZipEntry | null): Result<string | null> {
  if (entry === null) return ok(null);
  const bytes = entry.unpack();
  return bytes.ok ? ok(decodeLatin(bytes.value).replace(/^\u00ef\u00bb\u00bf/, '')) : bytes;
}

/** As many records as there are shapes or rows, whichever are more. */
function readRecords(
  shp: ShpFile,
  table: DbfTable | null,
  where: string,
  tally: Tally,
): Result<readonly SourceFeature[]> {
  const features: SourceFeature[] = [];
  const count = Math.max(shp.records.length, table?.rowCount ?? 0);
  for (let index = 0; index < count; index += 1) {
    const { feature, positions } = readRecord(shp.records[index], table, index, where);
    const ended = tally.add(positions);
    if (ended !== null) return ended;
    features.push(feature);
  }
  return ok(features);
}

function readRecord(view: DataView | undefined, table: DbfTable | null, index: number, layerPlace: string) {
  const where = `${layerPlace}, record ${index + 1}`;
  const row = table !== null && index < table.rowCount ? table.row(index) : null;
  const shape = view === undefined ? null : readShape(view);
  const issues: Issue[] = [];
  const refuse = (code: string, message: string) => issues.push(issue('error', code, where, message));
  if (row?.isDeleted === true) refuse('record-deleted', 'The row is marked as deleted in the table.');
  else if (shape === null || shape.kind === 'none') {
    refuse('geometry-missing', 'The record has no outline. Draw it, or leave the record out.');
  } else if (shape.kind === 'bad') {
    refuse('geometry-invalid', `The record holds ${shape.what}. Draw the outline again or export it once more.`);
  }
  if (table !== null && row === null) {
    issues.push(issue('warning', 'attributes-missing', where, 'The table has no row for this outline.'));
  }
  const isGood = shape?.kind === 'geometry' && issues.every((each) => each.severity !== 'error');
  const geometry = isGood ? shape.geometry : null;
  const feature: SourceFeature = { where, id: null, geometry, attributes: row?.attributes ?? {}, issues };
  return { feature, positions: shape?.kind === 'geometry' ? shape.positions : 0 };
}

function settle(
  features: readonly SourceFeature[],
  prj: string | null,
): { readonly coordinates: SourceCoordinates; readonly features: readonly SourceFeature[] } {
  if (prj === null) {
    const why =
      'The archive has no .prj file, which says what the coordinates are. Ask for it where the file is from, or say the EPSG code.';
    return { coordinates: { kind: 'unknown', why }, features };
  }
  const reading = projectionFromWkt(prj);
  if (reading.kind === 'unknown') {
    const why = `The .prj file cannot be used. ${reading.why} Say the EPSG code, or export the file again as longitude and latitude (WGS84).`;
    return { coordinates: { kind: 'unknown', why }, features };
  }
  const { projection } = reading;
  return { coordinates: { kind: 'degrees', from: projection.name }, features: turnFeatures(features, projection) };
}

function layerIssues(shp: ShpFile, where: string): readonly Issue[] {
  if (shp.brokenOff === null) return [];
  return [issue('error', 'file-broken-off', where, `${shp.brokenOff} Download or export it again.`)];
}
