import proj4 from 'proj4';
import type { Position } from '../book/index.ts';

/** A system of map coordinates that can be turned into longitude and latitude and back. */
export type Projection = {
  /** In words for people, "EPSG:2249 (State Plane, Massachusetts Mainland, US survey feet)". */
  readonly name: string;
  /** Longitude and latitude in degrees (WGS84) of map coordinates in the system's own unit; null outside what it can show. */
  readonly toDegrees: (x: number, y: number) => Position | null;
  /** Map coordinates of a position in degrees; null outside what the system can show. */
  readonly fromDegrees: (position: Position) => readonly [x: number, y: number] | null;
};

/** What stands for plain longitude and latitude among the definitions. */
export const DEGREES = 'degrees';

/**
 * A projection by proj4 from PROJ's words or a well-known text that has been looked over; null where proj4 does not know it.
 * In plain degrees nothing is turned, so numbers stay as they are to the last digit.
 */
export function projectionOf(name: string, definition: string): Projection | null {
  if (definition === DEGREES) {
    return { name, toDegrees: (x, y) => onEarth([x, y]), fromDegrees: (position) => position };
  }
  try {
    const { forward, inverse } = proj4(definition, '+proj=longlat +datum=WGS84 +no_defs');
    return {
      name,
      toDegrees: (x, y) => onEarth(turn(forward, x, y)),
      fromDegrees: ([longitude, latitude]) => turn(inverse, longitude, latitude),
    };
  } catch {
    // proj4 throws plain strings and errors of several kinds where it cannot make sense of a definition.
    return null;
  }
}

/** Null where a corner has no image; proj4 throws there or gives what is no number. */
function turn(convert: (pair: [number, number]) => number[], first: number, second: number): Position | null {
  try {
    const [x = Number.NaN, y = Number.NaN] = convert([first, second]);
    return Number.isFinite(x) && Number.isFinite(y) ? [x, y] : null;
  } catch {
    return null;
  }
}

function onEarth(position: Position | null): Position | null {
  if (position === null) return null;
  const [longitude, latitude] = position;
  return Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90 ? position : null;
}
