import { type Issue, issue } from '../../base/index.ts';
import { type Projection, projectionFromEpsg } from '../../geometry/index.ts';
import { eachPosition, turnFeatures } from '../coordinates.ts';
import type { SourceCoordinates, SourceFeature } from '../types.ts';

/** The records in degrees where that can be settled, and what is said about it. */
export type Settled = {
  readonly features: readonly SourceFeature[];
  readonly coordinates: SourceCoordinates;
  readonly issues: readonly Issue[];
};

/** Nobody treats lawns nearer to a pole than this, degrees. */
const LAST_LAWN = 72;
const SOUTHERNMOST_LAWN = -60;

type Extent = readonly [west: number, south: number, east: number, north: number];

/** Longitude first, latitude second: RFC 7946, section 4. This one has them the other way round. */
const EXCHANGED: Projection = {
  name: 'latitude and longitude, exchanged',
  toDegrees: (x, y) => [y, x],
  fromDegrees: ([longitude, latitude]) => [latitude, longitude],
};

/** What the numbers of one record can be: `degrees` are so as they stand, `either` make sense both ways round. */
type Likeness = 'none' | 'degrees' | 'exchanged' | 'either' | 'beyond';

/**
 * Finds out what the numbers mean. A map grid that the file names by its EPSG code is turned into degrees. Without one the
 * records are counted: where most lie beyond 180 and 90 the system is unknown; where more make sense only the other way round
 * than only as they stand, all are exchanged, with a warning; else they are degrees, and the records that cannot be so are left
 * for whoever reads them to reject one by one.
 *
 * @param grid the name in the old `crs` member, null where there is none or it means degrees
 */
export function settleCoordinates(features: readonly SourceFeature[], grid: string | null, where: string): Settled {
  if (grid !== null) return settleGrid(features, grid);
  const counts = { none: 0, degrees: 0, exchanged: 0, either: 0, beyond: 0 };
  for (const feature of features) counts[likenessOf(extent([feature]))] += 1;
  if (counts.beyond > counts.degrees + counts.exchanged + counts.either) return unknownSystem(features);
  if (counts.exchanged > counts.degrees) return exchange(features, where);
  return { features, coordinates: { kind: 'degrees', from: 'longitude and latitude' }, issues: [] };
}

function likenessOf([west, south, east, north]: Extent): Likeness {
  if (west > east) return 'none';
  const fits = west >= -180 && east <= 180 && south >= -90 && north <= 90;
  const fitsExchanged = west >= -LAST_LAWN && east <= LAST_LAWN && south >= -180 && north <= 180;
  const isPolar = north < SOUTHERNMOST_LAWN || south > LAST_LAWN;
  if (fitsExchanged && (!fits || isPolar)) return 'exchanged';
  if (!fits) return 'beyond';
  return fitsExchanged && west >= SOUTHERNMOST_LAWN ? 'either' : 'degrees';
}

function unknownSystem(features: readonly SourceFeature[]): Settled {
  const [west, south, east, north] = extent(features);
  const why = `The numbers reach from ${round(west)}, ${round(south)} to ${round(east)}, ${round(north)}, which is no longitude and latitude, and the file names no system. Say which EPSG code they are in, or export the file again as longitude and latitude (WGS84).`;
  return { features, coordinates: { kind: 'unknown', why }, issues: [] };
}

function settleGrid(features: readonly SourceFeature[], grid: string): Settled {
  const code = /EPSG:{1,2}[\d.]*:?(\d{4,6})$/i.exec(grid)?.[1];
  const reading = code === undefined ? null : projectionFromEpsg(Number(code));
  if (reading?.kind === 'known') {
    const { projection } = reading;
    const turned = turnFeatures(features, projection);
    return { features: turned, coordinates: { kind: 'degrees', from: projection.name }, issues: [] };
  }
  const because = reading === null ? 'which is not known here.' : reading.why;
  const why = `The file says that its coordinates are in "${grid.slice(0, 80)}": ${because} Export it again as longitude and latitude (WGS84).`;
  return { features, coordinates: { kind: 'unknown', why }, issues: [] };
}

function exchange(features: readonly SourceFeature[], where: string): Settled {
  const message =
    'The file gives latitude before longitude; they were exchanged. Check on the map that the lawns lie where they should.';
  return {
    features: turnFeatures(features, EXCHANGED),
    coordinates: { kind: 'degrees', from: EXCHANGED.name },
    issues: [issue('warning', 'coordinates-exchanged', where, message)],
  };
}

function extent(features: readonly SourceFeature[]): Extent {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry } of features) {
    if (geometry === null) continue;
    eachPosition(geometry, ([x = 0, y = 0]) => {
      west = Math.min(west, x);
      east = Math.max(east, x);
      south = Math.min(south, y);
      north = Math.max(north, y);
    });
  }
  return [west, south, east, north];
}

function round(value: number): string {
  return String(Number(value.toPrecision(6)));
}
