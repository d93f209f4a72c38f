import { describe, expect, it } from 'vitest';
import {
  circleAround,
  circleThrough,
  polygonOf,
  rectangleBySides,
  sidesOf,
  squareUp,
  straighten,
} from '../../../core/sketch/index.ts';
import { areaSqFt, block, cornersInFeet, feetAt, good, HOME, refusalOf } from './feet.ts';

describe('rectangle', () => {
  it('of 60 by 40 ft from two corners and a depth is 2,400 ft2', () => {
    const corners = good(rectangleBySides(HOME, feetAt(60, 0), { kind: 'depth', depthFt: 40 }));
    expect(areaSqFt(polygonOf(corners))).toBeCloseTo(2400, 1);
    expect(corners[2]![1]).toBeGreaterThan(HOME[1]);
  });

  it('reaches through a point on either side, wherever along it the point lies', () => {
    const up = good(rectangleBySides(HOME, feetAt(60, 0), { kind: 'through', point: feetAt(200, 25) }));
    const down = good(rectangleBySides(HOME, feetAt(60, 0), { kind: 'through', point: feetAt(-30, -25) }));
    expect(areaSqFt(polygonOf(up))).toBeCloseTo(1500, 1);
    expect(areaSqFt(polygonOf(down))).toBeCloseTo(1500, 1);
    expect(down[2]![1]).toBeLessThan(HOME[1]);
  });

  it('has right angles when it is turned', () => {
    // a 3-4-5 triangle: the side runs 30 ft east and 40 ft north
    const turned = good(rectangleBySides(HOME, feetAt(30, 40), { kind: 'depth', depthFt: -20 }));
    expect(areaSqFt(polygonOf(turned))).toBeCloseTo(1000, 1);
    for (const side of sidesOf(turned)) expect(Math.abs(side.turnDeg!)).toBeCloseTo(90, 3);
  });

  it('is refused without length or depth', () => {
    expect(refusalOf(rectangleBySides(HOME, HOME, { kind: 'depth', depthFt: 9 })).code).toBe('geometry-invalid');
    expect(refusalOf(rectangleBySides(HOME, feetAt(9, 0), { kind: 'through', point: feetAt(5, 0) })).code).toBe(
      'geometry-invalid',
    );
    expect(refusalOf(rectangleBySides(HOME, feetAt(9, 0), { kind: 'depth', depthFt: Number.NaN })).code).toBe(
      'geometry-invalid',
    );
  });
});

describe('circle', () => {
  it.each([5, 30, 150, 1000])('of %i ft has the area pi r2', (radius) => {
    const corners = good(circleAround(HOME, radius));
    // places are rounded to 0.1 mm, 0.0003 ft, all round
    const tolerance = 2 * Math.PI * radius * 0.0003;
    expect(Math.abs(areaSqFt(polygonOf(corners)) - Math.PI * radius * radius)).toBeLessThan(tolerance);
  });

  it('has more corners for a finer tolerance, within bounds', () => {
    expect(good(circleAround(HOME, 1)).length).toBe(12);
    // sagitta 0.05 ft at 50 ft: pi / acos(1 - 0.001) = 70.2
    expect(good(circleAround(HOME, 50)).length).toBe(71);
    expect(good(circleAround(HOME, 50, 1e-6)).length).toBe(360);
  });

  it('goes through a point on its rim, within the tolerance', () => {
    const corners = good(circleThrough(HOME, feetAt(30, 40)));
    expect(areaSqFt(polygonOf(corners))).toBeCloseTo(Math.PI * 2500, 1);
  });

  it('is refused without a radius', () => {
    expect(refusalOf(circleThrough(HOME, HOME)).code).toBe('geometry-invalid');
    expect(refusalOf(circleAround(HOME, Number.POSITIVE_INFINITY)).code).toBe('geometry-invalid');
  });
});

describe('square up', () => {
  it('turns a crooked quadrilateral into a rectangle and moves its corners little', () => {
    const crooked = cornersInFeet([
      [0, 0],
      [100, 2],
      [99, 61],
      [-1, 60],
    ]);
    const { corners, movedFt } = good(squareUp(crooked));
    for (const side of sidesOf(corners)) expect(Math.abs(side.turnDeg!)).toBeCloseTo(90, 3);
    expect(movedFt).toBeLessThan(2);
    expect(movedFt).toBeGreaterThan(0.1);
  });

  it('levels an upright outline by means: corners at y = 0 and 1 both come to 0.5', () => {
    // an L of right angles but for its lower side; the other five sides, 500 ft long, hold the direction near east
    const bent = cornersInFeet([
      [0, 0],
      [100, 1],
      [100, 200],
      [50, 200],
      [50, 100],
      [0, 100],
    ]);
    const { corners } = good(squareUp(bent));
    for (const side of sidesOf(corners)) expect(Math.abs(side.turnDeg!)).toBeCloseTo(90, 3);
  });

  it('leaves a slanting side free', () => {
    const bay = cornersInFeet([
      [0, 0],
      [100, 1],
      [100, 60],
      [60, 100],
      [0, 100],
    ]);
    const turns = sidesOf(good(squareUp(bay, 10)).corners).map((side) => Math.round(side.turnDeg!));
    expect(turns.filter((each) => each === -90)).toHaveLength(3);
    expect(turns.reduce((sum, each) => sum + each, 0)).toBe(-360);
  });

  it('says why not', () => {
    expect(refusalOf(squareUp(block(0, 0, 50, 30)))).toEqual({
      code: 'nothing-to-do',
      detail: 'The outline is square already.',
    });
    const triangle = cornersInFeet([
      [0, 0],
      [100, 0],
      [50, 86.6],
    ]);
    expect(refusalOf(squareUp(triangle, 10)).detail).toContain('within 10 degrees of a right angle');
    // two slanting sides close above each other: levelled, the lower comes to 22 ft and the upper to 17 ft
    const folded = cornersInFeet([
      [0, 0],
      [100, 0],
      [100, 30],
      [60, 14],
      [60, 15],
      [70, 19],
      [100, 60],
      [0, 60],
    ]);
    expect(refusalOf(squareUp(folded, 30)).detail).toContain('would cross itself');
    expect(refusalOf(squareUp(triangle.slice(0, 2))).code).toBe('geometry-invalid');
  });
});

describe('straighten', () => {
  const wobbly = cornersInFeet([
    [0, 0],
    [30, 0.3],
    [60, -0.2],
    [100, 0],
    [100, 100],
    [50, 100.4],
    [0, 100],
  ]);

  it('leaves out corners that lie within the tolerance of a straight side', () => {
    const { corners, movedFt } = good(straighten(wobbly, 0.5));
    expect(corners).toEqual([0, 3, 4, 6].map((index) => wobbly[index]));
    expect(movedFt).toBeCloseTo(0.4, 3);
  });

  it('keeps those that stray farther', () => {
    expect(good(straighten(wobbly, 0.35)).corners).toEqual([0, 3, 4, 5, 6].map((index) => wobbly[index]));
    expect(refusalOf(straighten(wobbly, 0.05)).code).toBe('nothing-to-do');
    expect(refusalOf(straighten(wobbly, 500)).code).toBe('nothing-to-do');
    expect(refusalOf(straighten([], 1)).code).toBe('geometry-invalid');
  });
});
