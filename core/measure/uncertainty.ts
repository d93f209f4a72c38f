import type { Zone } from '../book/index.ts';
import { pathLength, type Region, withoutHairs } from '../geometry/index.ts';
import { metresToFeet, quantity, type SquareFeet } from '../units/index.ts';
import { groundArea } from './slope.ts';
import type { ZoneMeasure } from './types.ts';

/**
 * How much an area is off where its outline lies too far out, or too far in, by the same distance all round: distance times
 * the length of the edge. Only the first order: the corners add less than a hundredth of it on any lawn.
 * @param outlineErrorFt distance of the drawn edge from the true one, ft
 * @param edgeFt length of every edge of what is treated, ft
 */
export function outlineErrorArea(outlineErrorFt: number, edgeFt: number): SquareFeet {
  return quantity<'ft2'>(outlineErrorFt * edgeFt);
}

/**
 * Standard deviation of an area whose corners are each off on their own, by `cornerErrorFt` (standard deviation) east and
 * north. From the shoelace formula: half the error times the root of the summed squares of the distances between the two
 * neighbours of each corner.
 * @param ring corners in ft, the first one not repeated
 */
export function cornerNoiseArea(
  cornerErrorFt: number,
  ring: readonly { readonly x: number; readonly y: number }[],
): SquareFeet {
  let sum = 0;
  for (const [index] of ring.entries()) {
    const before = ring.at(index - 1);
    const after = ring[(index + 1) % ring.length];
    if (before !== undefined && after !== undefined) sum += (after.x - before.x) ** 2 + (after.y - before.y) ** 2;
  }
  return quantity<'ft2'>((cornerErrorFt / 2) * Math.sqrt(sum));
}

/**
 * Share by which areas of a drawing scaled by two points are off where each click is off by `clickError` in each direction:
 * about 2 root 2 times the click's error over the distance between the points. Both in the same unit.
 */
export function twoPointScaleShare(clickError: number, base: number): number {
  return (2 * Math.SQRT2 * clickError) / base;
}

/** Likely error of a drawn zone on the ground, ft2; null where nobody said how far its outline may be off. */
export function zoneErrorSqFt(zone: Zone, treatable: Region): SquareFeet | null {
  if (zone.shape.kind !== 'drawn' || zone.shape.outlineErrorFt === undefined) return null;
  const { outlineErrorFt } = zone.shape;
  return groundArea(outlineErrorArea(outlineErrorFt, edgeFt(treatable)), zone.slopeDeg);
}

/** Length of all edges of a region, those of its holes as well, ft. */
function edgeFt(region: Region): number {
  const metres = withoutHairs(region).paths.reduce((sum, path) => sum + pathLength(path), 0);
  return metresToFeet(quantity<'m'>(metres));
}

/**
 * Likely error of a property's total, ft2: the plain sum of its zones' errors, since one hand drew all of them over one
 * picture and is off the same way everywhere. Null where the error of a measured zone is not known.
 */
export function totalErrorSqFt(zones: readonly Pick<ZoneMeasure, 'areaSqFt' | 'errorSqFt'>[]): SquareFeet | null {
  const measured = zones.filter((each) => each.areaSqFt !== null);
  if (measured.length === 0) return null;
  let sum = 0;
  for (const { errorSqFt } of measured) {
    if (errorSqFt === null) return null;
    sum += errorSqFt;
  }
  return quantity<'ft2'>(sum);
}
