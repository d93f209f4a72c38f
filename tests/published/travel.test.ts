import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { Position } from '../../core/book/index.ts';
import { estimatePort } from '../../core/travel/index.ts';

/** Circuity 1: the estimate's distance is the straight line, rounded up to whole metres. */
const port = estimatePort({ circuity: 1, speeds: [{ upToMiles: null, mph: 30 }] });

function straightM(from: Position, to: Position): number {
  return port.between({ id: 'from', at: from }, { id: 'to', at: to }).distanceM;
}

/** Oracle: C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013), by its author's GeographicLib. */
function geodesicM(from: Position, to: Position): number {
  return geodesic.Geodesic.WGS84.Inverse(from[1], from[0], to[1], to[0]).s12 ?? Number.NaN;
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

  it.each([100, 10_000, 100_000, 200_000])(
    'legs of %i m are right to the metre that they are rounded up to',
    (length) => {
      for (const start of starts) {
        for (const bearing of bearings) {
          const end = geodesic.Geodesic.WGS84.Direct(start[1], start[0], bearing, length);
          const to: Position = [end.lon2 ?? 0, end.lat2 ?? 0];
          const over = straightM(start, to) - geodesicM(start, to);
          expect(over, `${start} ${bearing} deg`).toBeGreaterThan(-0.1);
          expect(over, `${start} ${bearing} deg`).toBeLessThan(1.1);
        }
      }
    },
  );

  it('takes the short way across the 180th meridian', () => {
    const from: Position = [179.999, -17];
    const to: Position = [-179.999, -17];
    expect(Math.abs(straightM(from, to) - geodesicM(from, to))).toBeLessThan(1.01);
  });
});
