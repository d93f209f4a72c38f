import { describe, expect, it } from 'vitest';
import { grow, regionArea } from '../../../core/geometry/index.ts';
import { movePath, movePathTrimmed } from '../../../core/geometry/offset.ts';
import { regionOf, STEPS_PER_METRE } from '../../../core/geometry/region.ts';
import { sweep } from '../../../core/geometry/sweep.ts';
import { path, random, rectangle, starCorners } from './shapes.ts';

const metres = (corners: readonly (readonly [number, number])[]) =>
  path(...corners.map(([x, y]) => [Math.round(x * STEPS_PER_METRE), Math.round(y * STEPS_PER_METRE)] as const));
const ell = metres([
  [0, 0],
  [20, 0],
  [20, 10],
  [10, 10],
  [10, 20],
  [0, 20],
]);

describe('moving the edge', () => {
  it('of an L by r adds its length times r, five quarter circles, and takes a square off the inner corner', () => {
    // The inner corner loses the r x r square that both moved sides cover.
    const wanted = 300 + 80 * 2 + (5 / 4) * Math.PI * 4 - 4;
    expect(regionArea(grow(regionOf([ell]), 2))).toBeCloseTo(wanted, 1);
  });

  it('gives the same ground trimmed and swept, on 200 uneven outlines', () => {
    let trimmed = 0;
    for (let seed = 1; seed <= 200; seed += 1) {
      const star = metres(starCorners(random(seed), 4 + (seed % 12), 12));
      const short = movePathTrimmed(star, 0.3 * STEPS_PER_METRE);
      if (short === null) continue;
      const swept = sweep('positive', [movePath(star, 0.3 * STEPS_PER_METRE, 'round')]);
      const plain = sweep('union', [short]);
      expect(Math.abs(regionArea(plain) - regionArea(swept)), `seed ${seed}`).toBeLessThan(0.002);
      trimmed += 1;
    }
    expect(trimmed).toBeGreaterThan(100);
  });

  it('is not trimmed where a side is too short for it', () => {
    const notched = metres([
      [0, 0],
      [20, 0],
      [20, 10],
      [10.5, 10],
      [10.5, 9],
      [9.5, 9],
      [9.5, 10],
      [0, 10],
    ]);
    expect(movePathTrimmed(notched, 2 * STEPS_PER_METRE)).toBeNull();
    expect(regionArea(grow(regionOf([notched]), 2))).toBeCloseTo(200 + 60 * 2 + Math.PI * 4, 1);
  });

  it('grows a spike all round', () => {
    const spike = metres([
      [0, 0],
      [10, 0],
      [10, 10],
      [5.0001, 10],
      [5, 20],
      [4.9999, 10],
      [0, 10],
    ]);
    const wanted = regionArea(grow(regionOf([metres(rectangle(0, 0, 10, 10))]), 1)) + 2 * 9 + Math.PI / 2;
    expect(regionArea(grow(regionOf([spike]), 1))).toBeCloseTo(wanted, 1);
  });
});
