import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { Position } from '../../core/book/index.ts';
import { straightLineM } from '../../core/travel/index.ts';

/** Oracle: C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013), by its author's GeographicLib. */
function geodesicM(from: Position, to: Position): number {
  const inverse = geodesic.Geodesic.WGS84.Inverse(from[1], from[0], to[1], to[0]);
  return inverse.s12 ?? Number.NaN;
}

describe('straight lines against the geodesic of GeographicLib', () => {
  const starts: readonly Position[] = [
    [-83, 40],
    [-71.1, 42.4],
    [-97, 30],
    [-149.9, 61.2],
    [-157.8, 21.3],
    [174.8, -41.3],
    [0, 0],
  ];
  const bearings = Array.from({ length: 12 }, (_, index) => index * 30);

  it.each([
    [100, 2e-6],
    [10_000, 2e-6],
    [100_000, 3e-5],
    [200_000, 1e-4],
  ])('legs of %i m are right to a share of %d', (length, tolerance) => {
    for (const start of starts) {
      for (const bearing of bearings) {
        const end = geodesic.Geodesic.WGS84.Direct(start[1], start[0], bearing, length);
        const to: Position = [end.lon2 ?? 0, end.lat2 ?? 0];
        const off = Math.abs(straightLineM(start, to) / geodesicM(start, to) - 1);
        expect(off, `${start} ${bearing} deg`).toBeLessThan(tolerance);
      }
    }
  });

  it('takes the short way across the 180th meridian', () => {
    const from: Position = [179.999, -17];
    const to: Position = [-179.999, -17];
    expect(straightLineM(from, to) / geodesicM(from, to)).toBeCloseTo(1, 6);
  });
});
