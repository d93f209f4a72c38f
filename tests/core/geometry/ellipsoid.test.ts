import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import { distanceMetres } from '../../../core/geometry/index.ts';
import { random } from './shapes.ts';

const geodesicM = (from: Position, to: Position) =>
  geodesic.Geodesic.WGS84.Inverse(from[1], from[0], to[1], to[0]).s12 ?? Number.NaN;

describe('distanceMetres against the geodesic of GeographicLib', () => {
  it.each([
    [1, 1e-6],
    [100, 1e-6],
    [10_000, 1e-4],
    [100_000, 0.1],
  ])('legs of %d m are right to %d m', (length, tolerance) => {
    const { unit } = random(3);
    for (let count = 0; count < 200; count += 1) {
      const from: Position = [360 * unit() - 180, 130 * unit() - 60];
      const end = geodesic.Geodesic.WGS84.Direct(from[1], from[0], 360 * unit(), length);
      const to: Position = [end.lon2 ?? 0, end.lat2 ?? 0];
      expect(Math.abs(distanceMetres(from, to) - geodesicM(from, to)), `${from} to ${to}`).toBeLessThan(tolerance);
    }
  });

  it('takes the short way over the 180th meridian', () => {
    const from: Position = [179.9995, 10];
    const to: Position = [-179.9995, 10];
    expect(distanceMetres(from, to)).toBeCloseTo(geodesicM(from, to), 6);
  });

  it('is half way round at most, whatever the places', () => {
    expect(distanceMetres([0, 0], [180, 0])).toBeLessThan(20_100_000);
    expect(distanceMetres([0, 90], [0, -90])).toBeGreaterThan(19_000_000);
  });
});
