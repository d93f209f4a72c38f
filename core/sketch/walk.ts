import type { Position } from '../book/index.ts';
import { lineLengthMetres } from '../geometry/index.ts';
import { type Feet, metresToFeet, quantity } from '../units/index.ts';
import { between, feetPlane, lengthOf, sum, vectorOf } from './feet-plane.ts';
import type { Corners } from './types.ts';

/**
 * One side as it is wheeled or paced: how far (ft), and which way: by compass, or turned clockwise from the side before
 * (degrees).
 */
export type WalkedSide =
  | { readonly lengthFt: number; readonly bearingDeg: number }
  | { readonly lengthFt: number; readonly turnDeg: number };

/** A walk round a lawn as corners, and how far it misses its start. */
export type Walk = {
  /** The start and the end of every side. A walk round a lawn ends beside its start. */
  readonly corners: Corners;
  /** From the end of the last side to the start, ft. */
  readonly closingErrorFt: Feet;
};

/** A walk ends at its start where the gap is at most this share of the way, or this many feet. Common practice, no source. */
const GAP_SHARE = 0.05;
const GAP_FT = 3;

/** The corners of a walk from typed sides. The first side's turn counts from north. */
export function cornersFromSides(start: Position, sides: readonly WalkedSide[]): Walk {
  const plane = feetPlane(start);
  let point = { x: 0, y: 0 };
  let bearingDeg = 0;
  const corners: Position[] = [start];
  for (const side of sides) {
    bearingDeg = 'bearingDeg' in side ? side.bearingDeg : bearingDeg + side.turnDeg;
    point = sum(point, vectorOf(side.lengthFt, bearingDeg));
    corners.push(plane.toDegrees(point));
  }
  return { corners, closingErrorFt: quantity<'ft'>(lengthOf(point)) };
}

/** True where a line of four or more places comes back to its start, or nearly. */
export function isWalkedRound(corners: Corners): boolean {
  const gap = gapFt(corners);
  return corners.length > 3 && gap <= Math.max(GAP_FT, GAP_SHARE * metresToFeet(lineLengthMetres(corners)));
}

/**
 * Closes a walk that ends beside its start: the last place falls on the first, and every corner is moved back by the share
 * of the gap that the way up to it is of the whole (the compass rule of N. Bowditch, from memory).
 * @returns the outline without the last place, and the gap that was spread, ft
 */
export function closeWalk(corners: Corners): Walk {
  const [start] = corners;
  if (start === undefined || corners.length < 2) return { corners, closingErrorFt: quantity<'ft'>(0) };
  const plane = feetPlane(start);
  const points = corners.map(plane.toFeet);
  const gap = points.at(-1) ?? { x: 0, y: 0 };
  const way = distancesAlong(points);
  const whole = way.at(-1) ?? 0;
  const closed = points.slice(0, -1).map((point, index) => {
    const share = whole > 0 ? (way[index] ?? 0) / whole : 0;
    return index === 0 ? start : plane.toDegrees({ x: point.x - gap.x * share, y: point.y - gap.y * share });
  });
  return { corners: closed, closingErrorFt: quantity<'ft'>(lengthOf(gap)) };
}

function distancesAlong(points: readonly { readonly x: number; readonly y: number }[]): readonly number[] {
  let way = 0;
  return points.map((point, index) => {
    const before = points[index - 1];
    if (before !== undefined) way += lengthOf(between(before, point));
    return way;
  });
}

function gapFt(corners: Corners): number {
  const first = corners[0];
  const last = corners.at(-1);
  return first === undefined || last === undefined ? 0 : metresToFeet(lineLengthMetres([last, first]));
}
