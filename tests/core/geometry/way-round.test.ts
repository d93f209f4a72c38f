import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillNonzero } from '../../../core/geometry/booleans.ts';
import { obstaclesOf, type Region, waysRound } from '../../../core/geometry/index.ts';
import { type Corner, rectangle } from './shapes.ts';

const region = (corners: readonly Corner[]): Region =>
  fillNonzero([corners.map(([x, y]) => ({ x: Math.round(x * 100_000), y: Math.round(y * 100_000) }))]);
const way = (from: Corner, to: Corner, ...obstacles: readonly (readonly Corner[])[]): number =>
  waysRound({ x: from[0], y: from[1] }, [{ x: to[0], y: to[1] }], obstaclesOf(obstacles.map(region)))[0] ?? Number.NaN;

describe('the shortest way round', () => {
  test('is straight where nothing is in between, also along a wall', () => {
    expect(way([0, 0], [3, 4])).toBe(5);
    expect(way([0, 0], [30, 0], rectangle(10, 5, 20, 15))).toBe(30);
    expect(way([0, 5], [30, 5], rectangle(10, 5, 20, 15))).toBe(30);
  });

  test('goes by the corners of the nearer side of a house', () => {
    // From (0, 8) to (30, 8) past a house from 10 to 20 that reaches from 0 to 10: over its upper corners.
    const over = Math.hypot(10, 2) + 10 + Math.hypot(10, 2);
    expect(way([0, 8], [30, 8], rectangle(10, 0, 20, 10))).toBeCloseTo(over, 1);
    // From below its middle the way down is the shorter one.
    const under = Math.hypot(10, 3) + 10 + Math.hypot(10, 3);
    expect(way([0, 3], [30, 3], rectangle(10, 0, 20, 10))).toBeCloseTo(under, 1);
  });

  test('leads out of a court, and round two houses', () => {
    const court: Corner[] = [
      [0, 0],
      [20, 0],
      [20, 15],
      [15, 15],
      [15, 5],
      [5, 5],
      [5, 15],
      [0, 15],
    ];
    // Out of the court over (5, 15) and (0, 15), down to (-1, 0) beside it.
    // Obstacles are taken to be 4 cm smaller, so that a way may touch them: three bends save some centimetres.
    const out = Math.hypot(5, 9) + 5 + Math.hypot(1, 15);
    expect(Math.abs(way([10, 6], [-1, 0], court) - out)).toBeLessThan(0.2);
    const both = way([0, 5], [60, 5], rectangle(10, 0, 20, 8), rectangle(40, 2, 50, 20));
    expect(Math.abs(both - (Math.hypot(10, 3) + 10 + Math.hypot(20, 6) + 10 + Math.hypot(10, 3)))).toBeLessThan(0.2);
  });

  test('is none where an obstacle encloses one end', () => {
    expect(way([15, 5], [30, 5], rectangle(10, 0, 20, 10))).toBe(Number.POSITIVE_INFINITY);
  });

  test('is the same there and back, and no shorter than the straight line', () => {
    const place = fc.tuple(fc.double({ min: 0, max: 60, noNaN: true }), fc.double({ min: 21, max: 40, noNaN: true }));
    const below = fc.tuple(fc.double({ min: 0, max: 60, noNaN: true }), fc.double({ min: -20, max: -1, noNaN: true }));
    const houses = [rectangle(10, 0, 20, 8), rectangle(25, 2, 50, 20)];
    fc.assert(
      fc.property(place, below, (from, to) => {
        const there = way(from, to, ...houses);
        expect(there).toBeCloseTo(way(to, from, ...houses), 6);
        expect(there).toBeGreaterThanOrEqual(Math.hypot(to[0] - from[0], to[1] - from[1]) - 1e-9);
      }),
      { numRuns: 100 },
    );
  });
});
