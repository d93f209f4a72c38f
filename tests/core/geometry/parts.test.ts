import { describe, expect, it } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import {
  difference,
  EMPTY_REGION,
  joinParts,
  localPlane,
  partArea,
  partsOf,
  regionArea,
  toGeometry,
  union,
} from '../../../core/geometry/index.ts';
import { regionOf } from '../../../core/geometry/region.ts';
import { karneyArea, path, squareRegion } from './shapes.ts';

const METRE = 100_000;
const lawn = difference(squareRegion(0, 0, 100 * METRE), [squareRegion(10 * METRE, 10 * METRE, 50 * METRE)]);
const island = squareRegion(20 * METRE, 20 * METRE, 10 * METRE);
const apart = difference(squareRegion(200 * METRE, 0, 40 * METRE), [squareRegion(210 * METRE, 10 * METRE, 5 * METRE)]);
const region = union([lawn, island, apart]);

describe('partsOf', () => {
  it('gives every hole to the piece that it lies in', () => {
    const parts = partsOf(region);
    expect(parts.map((each) => each.holes.length)).toEqual([1, 1, 0]);
    expect(parts.map((each) => partArea(each) / 2 / METRE ** 2)).toEqual([7500, 1575, 100]);
  });

  it('finds the outer path of a hole whose corner lies a step outside it', () => {
    // As the clipper leaves it where a hole ends on a slanting side.
    const outer = path(
      [2561793, 3331044],
      [232891, -302802],
      [284653, -370106],
      [121975, -475868],
      [-640456, -1665512],
      [512365, -666193],
      [2561816, -3331035],
    );
    const hole = path([284653, -370106], [2561801, 1110351], [512365, -666193]);
    const crumb = path([-1707876, -3331035], [-2561816, -3331035], [-1707877, -3331037]);
    const parts = partsOf(regionOf([outer, hole, crumb]));
    expect(parts.map((each) => each.holes.length)).toEqual([1, 0]);
  });

  it('loses nothing on the way there and back', () => {
    expect(regionArea(joinParts(partsOf(region)))).toBeCloseTo(regionArea(region), 9);
    expect(partsOf(EMPTY_REGION)).toEqual([]);
  });
});

describe('toGeometry', () => {
  const plane = localPlane([-83, 40]);

  it('writes closed rings, outer ones anticlockwise, whose ellipsoidal area is the region', () => {
    const geometry = toGeometry(region, plane);
    if (geometry.type !== 'MultiPolygon') throw new Error('not several polygons');
    let sum = 0;
    for (const [shell, ...holes] of geometry.coordinates) {
      for (const ring of [shell!, ...holes]) expect(ring[0]).toEqual(ring.at(-1));
      expect(runsAnticlockwise(shell!)).toBe(true);
      for (const hole of holes) expect(runsAnticlockwise(hole)).toBe(false);
      sum += karneyArea(shell!) - holes.reduce((total, hole) => total + karneyArea(hole), 0);
    }
    // Corners are written to 0.1 mm.
    expect(Math.abs(sum - regionArea(region))).toBeLessThan(0.02);
  });

  it('writes one piece as a polygon and nothing as an empty multi-polygon', () => {
    expect(toGeometry(lawn, plane).type).toBe('Polygon');
    expect(toGeometry(EMPTY_REGION, plane)).toEqual({ type: 'MultiPolygon', coordinates: [] });
  });
});

function runsAnticlockwise(ring: readonly Position[]): boolean {
  let twice = 0;
  for (const [index, [x, y]] of ring.slice(0, -1).entries()) {
    const [nextX, nextY] = ring[index + 1]!;
    twice += (x + 83) * (nextY - 40) - (nextX + 83) * (y - 40);
  }
  return twice > 0;
}
