import { describe, expect, it } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import { localPlane, unwrapLongitude, wrapLongitude } from '../../../core/geometry/index.ts';
import { karneyArea, placeAt, random, ringAt, starCorners } from './shapes.ts';

const ORIGINS: readonly Position[] = [
  [-83, 40],
  [-71.1, 42.4],
  [-97, 25],
  [12, 0],
  [179.9999, -17],
  [-150, 64],
  [170, -46],
];

describe('localPlane', () => {
  it.each(ORIGINS)(
    'brings places near %d, %d into the plane and back to within a micrometre',
    (longitude, latitude) => {
      const plane = localPlane([longitude, latitude]);
      const { unit } = random(7);
      for (let count = 0; count < 200; count += 1) {
        const point = { x: (unit() - 0.5) * 10_000, y: (unit() - 0.5) * 10_000 };
        const back = plane.toPlane(plane.toDegrees(point));
        expect(Math.hypot(back.x - point.x, back.y - point.y)).toBeLessThan(1e-6);
      }
    },
  );

  it('puts east on x and north on y, as far as the geodesic says', () => {
    const origin: Position = [-83, 40];
    const plane = localPlane(origin);
    for (const corner of [
      [100, 0],
      [0, 100],
      [-60, 80],
      [30, -40],
    ] as const) {
      const { x, y } = plane.toPlane(placeAt(origin, corner));
      expect(x).toBeCloseTo(corner[0], 4);
      expect(y).toBeCloseTo(corner[1], 4);
    }
  });

  it('is the origin at the origin, and straight at the poles', () => {
    const { x, y } = localPlane([5, 50]).toPlane([5, 50]);
    expect([Math.abs(x), Math.abs(y)]).toEqual([0, 0]);
    const polar = localPlane([0, 90]);
    expect(polar.toPlane([90, 89.999]).x).toBeGreaterThan(100);
  });

  it('keeps area within 0.00003 % of the ellipsoid up to 5 km from the origin', () => {
    for (const origin of ORIGINS) {
      const ring = ringAt(origin, starCorners(random(11), 40, 5000));
      const plane = localPlane(origin);
      const points = ring.map(plane.toPlane);
      let twice = 0;
      for (const [index, point] of points.slice(0, -1).entries()) {
        const next = points[index + 1]!;
        twice += point.x * next.y - next.x * point.y;
      }
      expect(Math.abs(Math.abs(twice) / 2 / karneyArea(ring) - 1), String(origin)).toBeLessThan(3e-7);
    }
  });
});

describe('longitudes', () => {
  it.each([
    [181, -179],
    [-181, 179],
    [540, -180],
    [180, 180],
    [-180, -180],
    [12.5, 12.5],
  ])('wrap %d to %d', (longitude, wrapped) => expect(wrapLongitude(longitude)).toBeCloseTo(wrapped, 12));

  it.each([
    [-179, 179, 181],
    [179, -179, -181],
    [10, 11, 10],
  ])('unwrap %d beside %d to %d', (longitude, reference, unwrapped) =>
    expect(unwrapLongitude(longitude, reference)).toBeCloseTo(unwrapped, 12),
  );
});
