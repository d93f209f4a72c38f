import type { Position } from '../book/index.ts';
import { type Metres, quantity } from '../units/index.ts';

/** WGS84: half the equatorial axis in metres, flattening, and the square of the first eccentricity (NIMA TR8350.2, from memory). */
const EQUATORIAL_RADIUS_M = 6_378_137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);
const RADIANS = Math.PI / 180;

/**
 * Length of the straight line over the ground between two positions: the haversine formula with the two radii that the
 * ellipsoid has at the mean latitude (meridian radius for the way north, radius of the prime vertical for the way east).
 * Against the geodesic it is right to 0.01 % up to 200 km in latitudes where people mow lawns; travel times on roads are far
 * less sure than that. The short way round is taken across the 180th meridian.
 */
export function straightLineM(from: Position, to: Position): Metres {
  const middle = ((from[1] + to[1]) / 2) * RADIANS;
  const halfNorth = ((to[1] - from[1]) / 2) * RADIANS;
  const halfEast = (shortWay(to[0] - from[0]) / 2) * RADIANS;
  const sine = Math.sin(middle);
  const curvature = 1 - ECCENTRICITY_SQUARED * sine * sine;
  const primeVertical = EQUATORIAL_RADIUS_M / Math.sqrt(curvature);
  const meridian = (primeVertical * (1 - ECCENTRICITY_SQUARED)) / curvature;
  const halfChord = Math.hypot(
    meridian * Math.sin(halfNorth) * Math.cos(halfEast),
    primeVertical * Math.cos(middle) * Math.sin(halfEast),
  );
  const mean = Math.sqrt(meridian * primeVertical);
  return quantity<'m'>(2 * mean * Math.asin(Math.min(1, halfChord / mean)));
}

/** A difference of longitudes, degrees, in (-180, 180]. */
function shortWay(degrees: number): number {
  if (degrees > 180) return degrees - 360;
  return degrees <= -180 ? degrees + 360 : degrees;
}
