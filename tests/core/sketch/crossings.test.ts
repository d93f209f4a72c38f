import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import { crossingsOf, crossingsOfSide } from '../../../core/sketch/index.ts';
import { starCorners } from '../geometry/shapes.ts';
import { block, cornersInFeet, feetAt, HOME } from './feet.ts';

const BOW_TIE = cornersInFeet([
  [0, 0],
  [100, 100],
  [100, 0],
  [0, 100],
]);

describe('crossings', () => {
  it('are none in a square, a line or nothing', () => {
    expect(crossingsOf(block(0, 0, 50, 50), true)).toEqual([]);
    expect(crossingsOf(block(0, 0, 50, 50).slice(0, 2), true)).toEqual([]);
    expect(crossingsOf([], true)).toEqual([]);
  });

  it('of a bow tie: one, in the middle, of the first and the third side', () => {
    const [crossing, ...others] = crossingsOf(BOW_TIE, false);
    expect(others).toEqual([]);
    expect(crossing).toMatchObject({ kind: 'crosses', sides: [0, 2] });
    const middle = feetAt(50, 50);
    expect(crossing!.at[0]).toBeCloseTo(middle[0], 8);
    expect(crossing!.at[1]).toBeCloseTo(middle[1], 8);
  });

  it('of the closing side count only where the outline is closed', () => {
    const corners = cornersInFeet([
      [0, 0],
      [100, 0],
      [100, 100],
      [50, -20],
    ]);
    // (100, 100)-(50, -20) cuts the first side where y = 0: x = 50 + 50 x 20 / 120
    expect(crossingsOf(corners, false).map((each) => each.sides)).toEqual([[0, 2]]);
    const hooked = [...block(0, 0, 100, 100), feetAt(50, 50), feetAt(50, 120)];
    expect(crossingsOf(hooked, false).map((each) => each.sides)).toEqual([[2, 4]]);
    // the closing side y = 2.4 x meets the upper side at x = 41.7 and y = 100 - x at x = 29.4
    expect(crossingsOf(hooked, true).map((each) => each.sides)).toEqual([
      [2, 4],
      [2, 5],
      [3, 5],
    ]);
    const behind = [...block(0, 0, 100, 100), feetAt(50, 50), feetAt(150, 50)];
    expect(crossingsOf(behind, true).map((each) => each.sides)).toContainEqual([1, 4]);
  });

  /** A place on the meridian of home, where the plane's x is zero to the last digit. */
  const north = (feet: number): Position => [HOME[0], feetAt(0, feet)[1]];

  it('tell a touch from a crossing: a corner on another side', () => {
    const touching = [north(0), north(100), feetAt(-50, 100), north(50), feetAt(-50, 0)];
    const found = crossingsOf(touching, true);
    expect(found.map(({ kind, sides }) => [kind, sides])).toEqual([
      ['touches', [0, 2]],
      ['touches', [0, 3]],
    ]);
    expect(found[0]!.at[1]).toBeCloseTo(north(50)[1], 9);
  });

  it('show a side that runs back over the one before it, also across the start', () => {
    const spike = [north(0), north(100), north(50), feetAt(50, 50)];
    expect(crossingsOf(spike, false)).toMatchObject([
      { kind: 'touches', sides: [0, 1] },
      { kind: 'touches', sides: [0, 2] },
    ]);
    const atStart = [north(0), north(100), feetAt(80, 100), north(50)];
    expect(crossingsOf(atStart, true).map((each) => each.sides)).toContainEqual([0, 3]);
    expect(crossingsOf(atStart, false).map((each) => each.sides)).not.toContainEqual([0, 3]);
  });

  it('of one side are those of all that it takes part in', () => {
    const random = createRandom(5);
    for (let round = 0; round < 100; round += 1) {
      const corners = cornersInFeet(Array.from({ length: 12 }, () => [random.unit() * 200, random.unit() * 200]));
      const all = crossingsOf(corners, false).filter(({ sides }) => sides[1] === 10);
      expect(crossingsOfSide(corners, false, 10)).toEqual(all);
    }
    expect(crossingsOfSide(BOW_TIE, false, 9)).toEqual([]);
  });

  it('of 400 corners take less than 2 ms', () => {
    const corners = cornersInFeet(starCorners(createRandom(3), 400, 200));
    const times = Array.from({ length: 30 }, () => {
      const start = performance.now();
      expect(crossingsOf(corners, true)).toEqual([]);
      return performance.now() - start;
    });
    // the best of thirty, so that a busy machine does not fail it
    expect(Math.min(...times)).toBeLessThan(2);
  });
});
