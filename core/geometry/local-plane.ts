import type { Position } from '../book/index.ts';
import { degrees, ECCENTRICITY_SQUARED, EQUATOR_RADIUS_M, meridianPoint, POLE_RADIUS_M, radians } from './ellipsoid.ts';

/** A place in a local plane: metres east (`x`) and north (`y`) of its origin. */
export type PlanePoint = { readonly x: number; readonly y: number };

/**
 * A plane that touches the ellipsoid at `origin` (east, north, up frame; "up" is dropped). Areas measured in it are within
 * 0.00003 % of the ellipsoid's up to 5 km from the origin, since the scale only falls with the cosine of the angle.
 */
export type LocalPlane = {
  readonly origin: Position;
  readonly toPlane: (position: Position) => PlanePoint;
  /** The place of the ellipsoid over (or under) a point of the plane; longitude in [-180, 180]. */
  readonly toDegrees: (point: PlanePoint) => Position;
};

/**
 * Geodetic to east-north-up coordinates by way of earth-centred ones, without approximation; the way back solves the
 * quadratic for the height over the plane (both are the textbook formulas, see B. Hofmann-Wellenhof et al., GPS Theory and
 * Practice, from memory).
 */
export function localPlane(origin: Position): LocalPlane {
  const [originLongitude, originLatitude] = origin;
  const sine = Math.sin(radians(originLatitude));
  const cosine = Math.cos(radians(originLatitude));
  const foot = meridianPoint(originLatitude);

  const toPlane = ([longitude, latitude]: Position): PlanePoint => {
    const place = meridianPoint(latitude);
    const turn = radians(longitude - originLongitude);
    const half = Math.sin(turn / 2);
    const x = place.axis * Math.sin(turn);
    // axis * cos(turn) - foot.axis, written so that close places lose no digits
    const outward = place.axis - foot.axis - 2 * place.axis * half * half;
    return { x, y: cosine * (place.height - foot.height) - sine * outward };
  };

  const toDegrees = ({ x, y }: PlanePoint): Position => {
    const outward = foot.axis - sine * y;
    const height = foot.height + cosine * y;
    const up = heightOverPlane(outward, x, height, cosine, sine);
    const axisPart = outward + cosine * up;
    const latitude = Math.atan2(height + sine * up, Math.hypot(axisPart, x) * (1 - ECCENTRICITY_SQUARED));
    const longitude = originLongitude + degrees(Math.atan2(x, axisPart));
    return [wrapLongitude(longitude), degrees(latitude)];
  };

  return { origin, toPlane, toDegrees };
}

/** Root nearest zero of the quadratic that puts (outward + cosine u, x, height + sine u) on the ellipsoid. */
function heightOverPlane(outward: number, x: number, height: number, cosine: number, sine: number): number {
  const equator = EQUATOR_RADIUS_M * EQUATOR_RADIUS_M;
  const pole = POLE_RADIUS_M * POLE_RADIUS_M;
  const quadratic = (cosine * cosine) / equator + (sine * sine) / pole;
  const half = (outward * cosine) / equator + (height * sine) / pole;
  const constant = (outward * outward + x * x) / equator + (height * height) / pole - 1;
  return -constant / (half + Math.sqrt(Math.max(0, half * half - quadratic * constant)));
}

/** Brings a longitude into [-180, 180], degrees. */
export function wrapLongitude(longitude: number): number {
  if (longitude >= -180 && longitude <= 180) return longitude;
  return longitude - 360 * Math.floor((longitude + 180) / 360);
}

/** The longitude, degrees, that means the same meridian and lies within half a turn of `reference`. */
export function unwrapLongitude(longitude: number, reference: number): number {
  return longitude - 360 * Math.round((longitude - reference) / 360);
}
