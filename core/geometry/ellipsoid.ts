import type { Position } from '../book/index.ts';
import { type Metres, quantity } from '../units/index.ts';

/** The WGS84 ellipsoid: equatorial radius in metres and flattening (NIMA TR8350.2, third edition, table 3.1). */
export const EQUATOR_RADIUS_M = 6_378_137;
export const FLATTENING = 1 / 298.257_223_563;
/** First eccentricity squared. */
export const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);
/** Polar radius, metres. */
export const POLE_RADIUS_M = EQUATOR_RADIUS_M * (1 - FLATTENING);

const MEAN_RADIUS_M = 6_371_008.8;

export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

export function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}

/** Distance of a point of the ellipsoid from the axis of rotation (`axis`) and from the equator's plane (`height`), metres. */
export function meridianPoint(latitude: number): { readonly axis: number; readonly height: number } {
  const sine = Math.sin(radians(latitude));
  const normal = EQUATOR_RADIUS_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * sine * sine);
  return { axis: normal * Math.cos(radians(latitude)), height: normal * (1 - ECCENTRICITY_SQUARED) * sine };
}

/**
 * Distance between two places along the ground, metres: the straight chord through the ellipsoid, lengthened to its arc
 * (chord * (1 + chord^2 / (24 R^2))). Within 0.01 m of the geodesic up to 100 km; longitudes may lie on both sides of
 * the 180th meridian.
 */
export function distanceMetres(from: Position, to: Position): Metres {
  const start = meridianPoint(from[1]);
  const end = meridianPoint(to[1]);
  const turn = radians(to[0] - from[0]);
  const half = Math.sin(turn / 2);
  const across = 4 * start.axis * end.axis * half * half;
  const chord = Math.sqrt((start.axis - end.axis) ** 2 + (start.height - end.height) ** 2 + across);
  const angle = Math.min(1, chord / (2 * MEAN_RADIUS_M));
  return quantity<'m'>(2 * MEAN_RADIUS_M * Math.asin(angle));
}
