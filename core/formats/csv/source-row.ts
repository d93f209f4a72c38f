import type { Geometry } from 'geojson';
import { type Issue, issue } from '../../base/index.ts';
import { projectGeometry, projectionFromEpsg } from '../../geometry/index.ts';
import { geometryIssues } from '../geojson/index.ts';
import type { AttributeValue, SourceFeature } from '../types.ts';
import { readDegrees } from './degrees.ts';
import type { SourceColumns } from './source-columns.ts';
import type { TableRow } from './table.ts';
import { readWkt } from './wkt.ts';

/** A row as a record. */
export type RowReading = {
  readonly feature: SourceFeature;
  readonly positions: number;
  /** True where the geometry is known to be in degrees, since its system is named. */
  readonly isSettled: boolean;
};

const DEGREES_CODES = [4326, 4269, 4979];
const LONGEST_TEXT = 4000;

/**
 * Reads one row: its outline, else its point, else no place at all. A row without a place is a record all the same; one whose
 * place or outline cannot be read has an error.
 */
export function readSourceRow(row: TableRow, columns: SourceColumns, where: string): RowReading {
  if (row.fault !== null) {
    const message = `The row cannot be read: ${row.fault}. Put texts with commas into quotation marks.`;
    return finish(where, {}, null, 0, [issue('error', 'row-malformed', where, message)], false);
  }
  const cell = (column: number): string => (column < 0 ? '' : (row.cells[column] ?? ''));
  const attributes = readAttributes(columns, cell);
  if (cell(columns.wkt) !== '') return readOutline(cell(columns.wkt), where, attributes);
  return readPoint(cell(columns.longitude), cell(columns.latitude), where, attributes);
}

type Attributes = Readonly<Record<string, AttributeValue>>;

function readAttributes({ others }: SourceColumns, cell: (column: number) => string): Attributes {
  return Object.fromEntries(
    others.map(({ column, name }) => [name, cell(column) === '' ? null : cell(column).slice(0, LONGEST_TEXT)]),
  );
}

function finish(
  where: string,
  attributes: Attributes,
  geometry: Geometry | null,
  positions: number,
  issues: readonly Issue[],
  isSettled: boolean,
): RowReading {
  return { feature: { where, id: null, geometry, attributes, issues }, positions, isSettled };
}

function readOutline(text: string, where: string, attributes: Attributes): RowReading {
  const { reading, epsg } = readWkt(text);
  const issues = geometryIssues(reading, where);
  if (reading.kind !== 'geometry') return finish(where, attributes, null, 0, issues, false);
  const { geometry, positions } = reading;
  if (epsg === null || epsg === 0) return finish(where, attributes, geometry, positions, issues, false);
  if (DEGREES_CODES.includes(epsg)) return finish(where, attributes, geometry, positions, issues, true);
  const system = projectionFromEpsg(epsg);
  const turned = system.kind === 'known' ? projectGeometry(geometry, system.projection) : null;
  if (turned !== null) return finish(where, attributes, turned, positions, issues, true);
  const why = system.kind === 'known' ? `Its corners lie outside of ${system.projection.name}.` : system.why;
  const problem = issue('error', 'coordinates-off-map', where, `${why} Export it again as longitude and latitude.`);
  return finish(where, attributes, null, 0, [...issues, problem], false);
}

function readPoint(longitudeText: string, latitudeText: string, where: string, attributes: Attributes): RowReading {
  if (longitudeText === '' && latitudeText === '') return finish(where, attributes, null, 0, [], false);
  const longitude = readDegrees(longitudeText);
  const latitude = readDegrees(latitudeText);
  if (longitude !== null && latitude !== null && !(longitude === 0 && latitude === 0)) {
    return finish(where, attributes, { type: 'Point', coordinates: [longitude, latitude] }, 1, [], false);
  }
  const message = `${placeFault(longitudeText, latitudeText, longitude, latitude)} Enter degrees, for instance 39.9612 and -82.9988.`;
  return finish(where, attributes, null, 0, [issue('error', 'place-unreadable', where, message)], false);
}

function placeFault(
  longitudeText: string,
  latitudeText: string,
  longitude: number | null,
  latitude: number | null,
): string {
  if (longitude === 0 && latitude === 0) return 'Latitude and longitude are both 0.';
  const [name, text] = latitude === null ? ['latitude', latitudeText] : ['longitude', longitudeText];
  return text === '' ? `The ${name} is missing.` : `The ${name} "${text.slice(0, 40)}" is no number.`;
}
