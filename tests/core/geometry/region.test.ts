import { describe, expect, it } from 'vitest';
import { boxesMeet, EMPTY_REGION, isEmpty, regionArea } from '../../../core/geometry/index.ts';
import { boxOf, doubleArea, pathLength, regionOf } from '../../../core/geometry/region.ts';
import { path, squareRegion } from './shapes.ts';

const METRE = 100_000;

describe('regions', () => {
  it('have the shoelace area of their paths, holes taken off', () => {
    const outer = path([0, 0], [10 * METRE, 0], [10 * METRE, 10 * METRE], [0, 10 * METRE]);
    const hole = path([METRE, METRE], [METRE, 3 * METRE], [3 * METRE, 3 * METRE], [3 * METRE, METRE]);
    expect(regionArea(regionOf([outer, hole]))).toBeCloseTo(96, 9);
    expect(doubleArea(outer)).toBeGreaterThan(0);
    expect(doubleArea(hole)).toBeLessThan(0);
    expect(regionArea(EMPTY_REGION)).toBe(0);
    expect(isEmpty(EMPTY_REGION)).toBe(true);
  });

  it('keep the area far from the origin', () => {
    const far = 9_000_000 * 100;
    expect(regionArea(squareRegion(far, far, METRE))).toBeCloseTo(1, 9);
  });

  it('know the length of a path and its box', () => {
    const line = path([0, 0], [3 * METRE, 4 * METRE]);
    expect(pathLength(line)).toBeCloseTo(10, 9);
    expect(boxOf([line])).toEqual({ west: 0, south: 0, east: 3 * METRE, north: 4 * METRE });
  });

  it.each([
    [0, 0, true],
    [10, 0, true],
    [11, 0, false],
    [0, -10, true],
    [0, -11, false],
  ])('boxes moved by %d, %d meet: %s', (east, north, meet) => {
    expect(boxesMeet(squareRegion(0, 0, 10).box, squareRegion(east, north, 10).box)).toBe(meet);
    expect(boxesMeet(EMPTY_REGION.box, squareRegion(east, north, 10).box)).toBe(false);
  });
});
