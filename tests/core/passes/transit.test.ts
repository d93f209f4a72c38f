import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { regionOf } from '../../../core/geometry/index.ts';
import { lengthM, routeBetween, wallsOf } from '../../../core/passes/transit.ts';
import { rectangle } from '../geometry/shapes.ts';
import { circle, groundOf, houseLawn, isOn } from './grounds.ts';

describe('a way between two places on connected ground', () => {
  const yard = groundOf(rectangle(0, 0, 30, 20), [rectangle(10, 5, 20, 12)]);
  const walls = wallsOf(yard);

  it('is straight where nothing is in between', () => {
    expect(routeBetween({ x: 1, y: 1 }, { x: 28, y: 2 }, walls)).toEqual({
      points: [
        { x: 1, y: 1 },
        { x: 28, y: 2 },
      ],
      staysInside: true,
    });
  });

  it('goes the shorter way round a house, from corner to corner', () => {
    const { points, staysInside } = routeBetween({ x: 5, y: 7 }, { x: 25, y: 7 }, walls);
    expect(staysInside).toBe(true);
    // By the lower corners (10, 5) and (20, 5): 2 x sqrt(5^2 + 2^2) + 10.
    expect(lengthM(points)).toBeCloseTo(2 * Math.hypot(5, 2) + 10, 6);
  });

  it('goes round an inner corner of the edge', () => {
    const bent = wallsOf(
      groundOf([
        [0, 0],
        [20, 0],
        [20, 5],
        [5, 5],
        [5, 20],
        [0, 20],
      ]),
    );
    const { points } = routeBetween({ x: 2, y: 18 }, { x: 18, y: 2 }, bent);
    expect(lengthM(points)).toBeCloseTo(2 * Math.hypot(3, 13), 6);
  });

  it('goes round several beds in a row', () => {
    const beds = wallsOf(groundOf(rectangle(0, 0, 60, 20), [circle(15, 10, 4), circle(30, 10, 4), circle(45, 10, 4)]));
    const { points, staysInside } = routeBetween({ x: 2, y: 10 }, { x: 58, y: 10 }, beds);
    expect(staysInside).toBe(true);
    expect(lengthM(points)).toBeGreaterThan(56);
    expect(lengthM(points)).toBeLessThan(60);
  });

  it('keeps to the ground wherever it goes on a lawn round a house', () => {
    const ground = houseLawn();
    const random = createRandom(11);
    const lawn = wallsOf(ground);
    let tried = 0;
    while (tried < 200) {
      const [from, to] = [0, 1].map(() => ({ x: 40 * random.unit(), y: 30 * random.unit() }));
      if (!isOn(ground, from!.x, from!.y) || !isOn(ground, to!.x, to!.y)) continue;
      tried += 1;
      const { points, staysInside } = routeBetween(from!, to!, lawn);
      expect(staysInside).toBe(true);
      for (const [index, end] of points.entries()) {
        const start = points[index - 1];
        if (start === undefined) continue;
        for (const share of [0.25, 0.5, 0.75]) {
          const x = start.x + share * (end.x - start.x);
          const y = start.y + share * (end.y - start.y);
          // A way along an edge lies on it, so a hand's breadth to either side counts.
          const near = [-1, 0, 1].some((east) =>
            [-1, 0, 1].some((north) => isOn(ground, x + east / 1e3, y + north / 1e3)),
          );
          expect(near, `${x}, ${y}`).toBe(true);
        }
      }
    }
  });

  it('says so where it has to leave the ground', () => {
    const apart = wallsOf(regionOf([...yard.paths, ...groundOf(rectangle(40, 0, 50, 10)).paths]));
    expect(routeBetween({ x: 25, y: 3 }, { x: 45, y: 3 }, apart).staysInside).toBe(false);
  });
});
