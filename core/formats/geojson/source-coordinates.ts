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

/** Longitude first, latitude second: RFC 7946, section 4. This one has them the other way round. */
const EXCHANGED: Projection = {
  name: 'latitude and longitude, exchanged',
  toDegrees: (x, y) => [y, x],
  fromDegrees: ([longitude, latitude]) => [latitude, longitude],
};

/**
 * Finds out what the numbers mean. A map grid that the file names by its EPSG code is turned into degrees; numbers beyond 180
 * and 90 without one are of an unknown system; numbers that only make sense the other way round are exchanged, with a warning.
 *
 * @param grid the name in the old `crs` member, null where there is none or it means degrees
 */
export function settleCoordinates(features: readonly SourceFeature[], grid: string | null, where: string): Settled {
  if (grid !== null) return settleGrid(features, grid);
  const [west, south, east, north] = extent(features);
  const isEmpty = west > east;
  const fits = isEmpty || (west >= -180 && east <= 180 && south >= -90 && north <= 90);
  const fitsExchanged = west >= -LAST_LAWN && east <= LAST_LAWN && south >= -180 && north <= 180;
  const isPolar = north < -60 || south > LAST_LAWN;
  if (!isEmpty && fitsExchanged && (!fits || isPolar)) return exchange(features, where);
  if (fits) return { features, coordinates: { kind: 'degrees', from: 'longitude and latitude' }, issues: [] };
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

function extent(
  features: readonly SourceFeature[],
): readonly [west: number, south: number, east: number, north: number] {
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
