import { describe, expect, it } from 'vitest';
import { groundUnder, intervalsIn, type Lanes, lanesOver } from '../../../core/passes/lanes.ts';
import { sidesOf, turnBack, turnSides } from '../../../core/passes/sides.ts';
import { rectangle } from '../geometry/shapes.ts';
import { groundOf } from './grounds.ts';

const sides = (...args: Parameters<typeof groundOf>) => sidesOf(groundOf(...args));

describe('lanes over ground', () => {
  it('are as few as reach across, evenly spaced and flush with both ends', () => {
    // 10 m by swaths of 2 m that share 0.5 m: 6 reach 5 x 1.5 + 2 = 9.5 m, 7 reach 11 m.
    const lanes = lanesOver(sides(rectangle(0, 3, 20, 13)), 2, 0.5);
    expect(lanes.count).toBe(7);
    expect(lanes.firstM).toBeCloseTo(4, 9);
    expect(lanes.firstM + 6 * lanes.stepM).toBeCloseTo(12, 9);
  });

  it('are not one more where rounding says so', () => {
    expect(lanesOver(sides(rectangle(0, 0, 20, 10.00001)), 2, 0).count).toBe(5);
  });

  it('are one in the middle where the ground is narrower', () => {
    expect(lanesOver(sides(rectangle(0, 0, 20, 1)), 2, 0.5)).toMatchObject({ count: 1, firstM: 0.5 });
  });
});

describe('ground under lanes', () => {
  const under = (lanes: Lanes, ground: Float64Array) => {
    const { full, any } = groundUnder(lanes, ground);
    return Array.from({ length: lanes.count }, (_, lane) => ({
      full: intervalsIn(full, lane),
      any: intervalsIn(any, lane),
    }));
  };

  it('is full between slanted ends and touched up to their tips', () => {
    // A parallelogram that leans 1 m for each metre up; lane 0 reaches from y = 0 to 2.
    const leaning = sides([
      [0, 0],
      [20, 0],
      [24, 4],
      [4, 4],
    ]);
    const [first] = under({ count: 2, firstM: 1, stepM: 2, widthM: 2 }, leaning);
    expect(first!.full).toHaveLength(1);
    expect(first!.full[0]![0]).toBeCloseTo(2, 2);
    expect(first!.full[0]![1]).toBeCloseTo(20, 2);
    expect(first!.any[0]![0]).toBeCloseTo(0, 2);
    expect(first!.any[0]![1]).toBeCloseTo(22, 2);
  });

  it('is broken by a hole that stands in the lane, and only in that lane', () => {
    const holed = sides(rectangle(0, 0, 20, 4), [rectangle(8, 2.5, 11, 3.5)]);
    const [below, above] = under({ count: 2, firstM: 1, stepM: 2, widthM: 2 }, holed);
    expect(below!.full).toEqual([[0, 20]]);
    expect(above!.full).toEqual([
      [0, 8],
      [11, 20],
    ]);
    // Part of the lane beside the hole is ground, so it is touched all along.
    expect(above!.any).toEqual([[0, 20]]);
  });

  it('is nothing beside the ground', () => {
    const [, beyond] = under({ count: 2, firstM: 1, stepM: 30, widthM: 2 }, sides(rectangle(0, 0, 20, 4)));
    expect(beyond).toEqual({ full: [], any: [] });
  });
});

describe('a turned frame', () => {
  it('turns back to where a point was', () => {
    const pivot = { x: 3, y: -2 };
    const [x, y] = turnSides(new Float64Array([7, 5]), 0.7, pivot);
    const back = turnBack({ x: x!, y: y! }, 0.7, pivot);
    expect(back.x).toBeCloseTo(7, 12);
    expect(back.y).toBeCloseTo(5, 12);
  });

  it('has its first axis along the angle', () => {
    const [x, y] = turnSides(new Float64Array([Math.cos(0.7), Math.sin(0.7)]), 0.7, { x: 0, y: 0 });
    expect(x).toBeCloseTo(1, 12);
    expect(y).toBeCloseTo(0, 12);
  });
});
