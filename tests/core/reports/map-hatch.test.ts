import { describe, expect, test } from 'vitest';
import { hatchDots, hatchLines } from '../../../core/reports/map-hatch.ts';
import type { Spot } from '../../../core/reports/map-labels.ts';

const square = (from: number, side: number): readonly Spot[] => [
  [from, from],
  [from + side, from],
  [from + side, from + side],
  [from, from + side],
  [from, from],
];
/** An L of 300 x 200 less 150 x 100 in one corner. */
const BENT: readonly Spot[] = [
  [0, 0],
  [300, 0],
  [300, 100],
  [150, 100],
  [150, 200],
  [0, 200],
];

/** Ends of every line of a path. */
function linesOf(data: string): readonly (readonly [number, number, number, number])[] {
  return [...data.matchAll(/M(-?[\d.]+) (-?[\d.]+)L(-?[\d.]+) (-?[\d.]+)/g)].map(([, a, b, c, d]) => [
    Number(a),
    Number(b),
    Number(c),
    Number(d),
  ]);
}
const lengthOf = (data: string): number =>
  linesOf(data).reduce((sum, [x, y, u, v]) => sum + Math.hypot(u - x, v - y), 0);

describe('hatching', () => {
  test.each([0, 45, -45, 30])('at %d degrees covers an area: length of the lines times their distance', (angle) => {
    // Cavalieri's principle; 45,000 and 40,000 - 10,000 square units, the last few lines apart.
    expect(Math.abs(lengthOf(hatchLines([BENT], 3, angle)) * 3 - 45_000)).toBeLessThan(1_000);
    const ring = hatchLines([square(0, 200), square(50, 100)], 3, angle);
    expect(Math.abs(lengthOf(ring) * 3 - 30_000)).toBeLessThan(1_000);
  });

  test('leaves holes free and stays inside', () => {
    for (const [x, y, u, v] of linesOf(hatchLines([square(0, 200), square(50, 100)], 5, 45))) {
      const [midX, midY] = [(x + u) / 2, (y + v) / 2];
      expect(midX > 50 && midX < 150 && midY > 50 && midY < 150).toBe(false);
      for (const each of [x, y, u, v]) expect(each).toBeGreaterThanOrEqual(-0.1);
      for (const each of [x, y, u, v]) expect(each).toBeLessThanOrEqual(200.1);
    }
  });

  test('dots are as many as squares of the grid fit in', () => {
    const dots = hatchDots([BENT], 5).match(/h0/g)?.length ?? 0;
    expect(Math.abs(dots - 45_000 / 25)).toBeLessThan(120);
  });

  test('an area without width is left blank', () => {
    expect(hatchLines([], 5, 45)).toBe('');
    expect(hatchDots([[]], 5)).toBe('');
    expect(
      lengthOf(
        hatchLines(
          [
            [
              [0, 0],
              [100, 0],
              [0, 0],
            ],
          ],
          5,
          45,
        ),
      ),
    ).toBe(0);
  });
});
