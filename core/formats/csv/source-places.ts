import type { Geometry, Position } from 'geojson';
import { type Issue, issue } from '../../base/index.ts';
import { positionFault } from '../../geometry/index.ts';
import { eachPosition } from '../coordinates.ts';
import type { SourceCoordinates, SourceFeature } from '../types.ts';
import type { RowReading } from './source-row.ts';

/** The records with their places settled, and what is said of them. */
export type SettledRows = {
  readonly features: readonly SourceFeature[];
  readonly coordinates: SourceCoordinates;
  readonly issues: readonly Issue[];
};

type Fit = 'given' | 'exchanged' | 'neither';
const DEGREES: SourceCoordinates = { kind: 'degrees', from: 'longitude and latitude' };

/**
 * Finds out whether the numbers are degrees, and in which order. Where none make sense as given and some do the other way
 * round, all are exchanged with a warning; where none make sense either way, their system is unknown and they stay as they
 * are; a single row that makes no sense among others is rejected.
 */
export function settleRows(rows: readonly RowReading[], where: string): SettledRows {
  const fits = rows.map(fitOf);
  const count = (fit: Fit): number => fits.filter((each) => each === fit).length;
  const isOpen = rows.some(({ feature, isSettled }) => feature.geometry !== null && !isSettled);
  if (isOpen && count('given') === 0 && count('exchanged') > 0) return exchange(rows, where);
  if (isOpen && count('given') === 0) {
    const why =
      'The numbers are no longitude and latitude, and the table names no system. Say which EPSG code they are in, or export them as longitude and latitude (WGS84).';
    return { features: rows.map((each) => each.feature), coordinates: { kind: 'unknown', why }, issues: [] };
  }
  const features = rows.map(({ feature }, index) => {
    const fit = fits[index];
    return fit === undefined || fit === null || fit === 'given' ? feature : rejected(feature, fit);
  });
  return { features, coordinates: DEGREES, issues: [] };
}

/** How a row's own numbers make sense; null for rows that need no finding out. */
function fitOf({ feature, isSettled }: RowReading): Fit | null {
  if (feature.geometry === null) return null;
  if (isSettled || makesSense(feature.geometry, (position) => position)) return 'given';
  return makesSense(feature.geometry, turned) ? 'exchanged' : 'neither';
}

const turned = ([first = 0, second = 0]: Position): Position => [second, first];

function makesSense(geometry: Geometry, order: (position: Position) => Position): boolean {
  let isSound = true;
  eachPosition(geometry, (position) => {
    const [longitude = 0, latitude = 0] = order(position);
    isSound &&= positionFault([longitude, latitude]) === null;
  });
  return isSound;
}

function rejected(feature: SourceFeature, fit: Fit): SourceFeature {
  const cause =
    fit === 'exchanged' ? 'Latitude and longitude look swapped.' : 'Enter longitude and latitude in degrees (WGS84).';
  const problem = issue(
    'error',
    'geometry-not-lonlat',
    feature.where,
    `No lawn lies at the place of the row. ${cause}`,
  );
  return { ...feature, geometry: null, issues: [...feature.issues, problem] };
}

function exchange(rows: readonly RowReading[], where: string): SettledRows {
  const exchanged = rows.map((row) => {
    const { feature, isSettled } = row;
    const geometry = feature.geometry === null || isSettled ? feature.geometry : exchangeGeometry(feature.geometry);
    return { ...row, feature: { ...feature, geometry } };
  });
  const message =
    'The table gives latitude where longitude should be; they were exchanged. Check on the map that the lawns lie where they should.';
  const features = exchanged.map((row) => (fitOf(row) === 'neither' ? rejected(row.feature, 'neither') : row.feature));
  return { features, coordinates: DEGREES, issues: [issue('warning', 'coordinates-exchanged', where, message)] };
}

function exchangeGeometry(geometry: Geometry): Geometry {
  switch (geometry.type) {
    case 'Point':
      return { ...geometry, coordinates: turned(geometry.coordinates) };
    case 'MultiPoint':
    case 'LineString':
      return { ...geometry, coordinates: geometry.coordinates.map(turned) };
    case 'MultiLineString':
    case 'Polygon':
      return { ...geometry, coordinates: geometry.coordinates.map((line) => line.map(turned)) };
    case 'MultiPolygon':
      return { ...geometry, coordinates: geometry.coordinates.map((rings) => rings.map((ring) => ring.map(turned))) };
    case 'GeometryCollection':
      return { ...geometry, geometries: geometry.geometries.map(exchangeGeometry) };
  }
}
