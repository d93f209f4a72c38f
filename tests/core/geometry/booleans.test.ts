import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { fillNonzero, withoutHairs } from '../../../core/geometry/booleans.ts';
import { difference, grow, intersection, regionArea, union } from '../../../core/geometry/index.ts';
import { doubleArea, type GridPath, type Region, regionOf } from '../../../core/geometry/region.ts';
import { path, random, rectangle, squareRegion, starCorners } from './shapes.ts';

const METRE = 100_000;

type Multi = [number, number][][][];

/** polyclip-ts as the second opinion; its figures in metres. */
const toPolyclip = (region: Region): Multi =>
  region.paths.map((each) => [each.map(({ x, y }) => [x / METRE, y / METRE])]);
/** The same for regions with holes: outer paths united, then holes taken out. */
const asRegions = (region: Region): Multi => {
  const outers = region.paths.filter((each) => doubleArea(each) > 0);
  const holes = region.paths.filter((each) => doubleArea(each) < 0);
  const [first, ...rest] = outers.map((each) => toPolyclip(regionOf([each])));
  if (first === undefined) return [];
  return polyclip.difference(polyclip.union(first, ...rest), ...holes.map((each) => toPolyclip(regionOf([each]))));
};
const polyclipArea = (polygons: Multi): number => {
  let sum = 0;
  for (const rings of polygons) {
    for (const [index, ring] of rings.entries()) {
      let twice = 0;
      for (const [place, [x, y]] of ring.entries()) {
        const [nextX, nextY] = ring[(place + 1) % ring.length]!;
        twice += x * nextY - nextX * y;
      }
      sum += ((index === 0 ? 1 : -1) * Math.abs(twice)) / 2;
    }
  }
  return sum;
};

/** A region of up to three pieces, some with holes. */
function randomPieces(seed: number): Region {
  const pieces = union([randomRegion(seed), randomRegion(seed + 1), randomRegion(seed + 2)]);
  return difference(pieces, [randomRegion(seed + 3)]);
}

function randomRegion(seed: number): Region {
  const { unit, below, ...rest } = random(seed);
  const east = (unit() - 0.5) * 40;
  const north = (unit() - 0.5) * 40;
  const corners = starCorners({ unit, below, ...rest }, 3 + below(20), 5 + 25 * unit());
  const steps: GridPath = corners.map(([x, y]) => ({
    x: Math.round((x + east) * METRE),
    y: Math.round((y + north) * METRE),
  }));
  return fillNonzero([steps]);
}

describe('polygon operations against polyclip-ts', () => {
  it('give the same areas on 150 random pairs', () => {
    for (let seed = 1; seed <= 150; seed += 1) {
      const left = randomRegion(seed);
      const right = randomRegion(seed + 10_000);
      const first = toPolyclip(left);
      const second = toPolyclip(right);
      const tolerance = 0.01;
      expect(regionArea(union([left, right])), `union ${seed}`).toBeCloseTo(
        polyclipArea(polyclip.union(first, second)),
        2,
      );
      const both = polyclipArea(polyclip.intersection(first, second));
      expect(Math.abs(regionArea(intersection(left, right)) - both), `both ${seed}`).toBeLessThan(tolerance);
      const rest = polyclipArea(polyclip.difference(first, second));
      expect(Math.abs(regionArea(difference(left, [right])) - rest), `rest ${seed}`).toBeLessThan(tolerance);
    }
  });

  it('cut several regions at once as polyclip does, free holes and tangled ones mixed', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const lawn = regionOf([path(...rectangle(-40, -40, 40, 40).map(([x, y]) => [x * METRE, y * METRE] as const))]);
      const others = [1, 2, 3, 4, 5].map((each) => randomRegion(seed * 100 + each));
      const [first, ...rest] = others.map(toPolyclip);
      const expected = polyclipArea(polyclip.difference(toPolyclip(lawn), polyclip.union(first!, ...rest)));
      expect(Math.abs(regionArea(difference(lawn, others)) - expected), `seed ${seed}`).toBeLessThan(0.01);
    }
  });

  it('cut regions of several pieces with holes as polyclip does', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const lawn = randomPieces(seed * 10);
      const others = [randomPieces(seed * 10 + 5000), randomPieces(seed * 10 + 9000)];
      const [first, second] = others.map(asRegions);
      const expected = polyclipArea(polyclip.difference(asRegions(lawn), first!, second!));
      expect(Math.abs(regionArea(difference(lawn, others)) - expected), `seed ${seed}`).toBeLessThan(0.02);
    }
  });

  it('obey area(A) = area(A minus B) + area(A and B) and area(A or B) = area(A) + area(B) - area(A and B)', () => {
    for (let seed = 200; seed < 300; seed += 1) {
      const left = randomRegion(seed);
      const right = randomRegion(seed + 500);
      const both = regionArea(intersection(left, right));
      expect(regionArea(difference(left, [right])) + both).toBeCloseTo(regionArea(left), 2);
      expect(regionArea(left) + regionArea(right) - both).toBeCloseTo(regionArea(union([left, right])), 2);
    }
  });
});

describe('difference', () => {
  const lawn = squareRegion(0, 0, 100 * METRE);

  it('returns the very region where nothing meets it', () => {
    expect(difference(lawn, [])).toBe(lawn);
    expect(difference(lawn, [squareRegion(200 * METRE, 0, METRE)])).toBe(lawn);
  });

  it.each([
    ['free inside', [squareRegion(10 * METRE, 10 * METRE, 10 * METRE)], 9900],
    [
      'two free inside',
      [squareRegion(10 * METRE, 10 * METRE, 10 * METRE), squareRegion(30 * METRE, 10 * METRE, 10 * METRE)],
      9800,
    ],
    [
      'one inside another',
      [squareRegion(10 * METRE, 10 * METRE, 20 * METRE), squareRegion(12 * METRE, 12 * METRE, 5 * METRE)],
      9600,
    ],
    [
      'the same one twice',
      [squareRegion(10 * METRE, 10 * METRE, 10 * METRE), squareRegion(10 * METRE, 10 * METRE, 10 * METRE)],
      9900,
    ],
    ['over the edge', [squareRegion(-10 * METRE, 10 * METRE, 20 * METRE)], 9800],
    ['along the edge inside', [squareRegion(0, 10 * METRE, 20 * METRE)], 9600],
    ['along the edge outside', [squareRegion(-20 * METRE, 10 * METRE, 20 * METRE)], 10_000],
    ['all of it', [squareRegion(-1, -1, 100 * METRE + 2)], 0],
    ['itself', [lawn], 0],
    ['touching at a corner', [squareRegion(100 * METRE, 100 * METRE, METRE)], 10_000],
    [
      'overlapping pair, both inside',
      [squareRegion(10 * METRE, 10 * METRE, 10 * METRE), squareRegion(15 * METRE, 15 * METRE, 10 * METRE)],
      9825,
    ],
  ])('cuts what is %s', (_, others, area) => expect(regionArea(difference(lawn, others))).toBeCloseTo(area, 6));

  it('cuts of a region in several pieces only those that lie inside', () => {
    const pieces = union([
      squareRegion(10 * METRE, 10 * METRE, 10 * METRE),
      squareRegion(99 * METRE, 200 * METRE, 10 * METRE),
    ]);
    const wide = union([pieces, squareRegion(-50 * METRE, 50 * METRE, 10 * METRE)]);
    expect(regionArea(difference(lawn, [pieces]))).toBeCloseTo(9900, 6);
    expect(regionArea(difference(lawn, [wide]))).toBeCloseTo(9900, 6);
  });

  it('leaves what lies in the hole of a ring that is cut', () => {
    const ring = difference(squareRegion(10 * METRE, 10 * METRE, 50 * METRE), [
      squareRegion(20 * METRE, 20 * METRE, 30 * METRE),
    ]);
    expect(regionArea(ring)).toBeCloseTo(1600, 6);
    expect(regionArea(difference(lawn, [ring]))).toBeCloseTo(8400, 6);
    const within = squareRegion(25 * METRE, 25 * METRE, 10 * METRE);
    expect(regionArea(difference(lawn, [ring, within]))).toBeCloseTo(8300, 6);
  });
});

describe('grow', () => {
  it('adds sides and round corners: a square of side s grown by r has s2 + 4 s r + pi r2', () => {
    const square = squareRegion(0, 0, 10 * METRE);
    for (const metres of [0.1, 1, 3]) {
      const exact = 100 + 40 * metres + Math.PI * metres * metres;
      const grown = regionArea(grow(square, metres));
      expect(grown).toBeLessThanOrEqual(exact);
      expect(grown / exact).toBeGreaterThan(1 - 2e-4);
    }
  });

  it('closes a hole narrower than twice the distance', () => {
    const ring = difference(squareRegion(0, 0, 10 * METRE), [squareRegion(4 * METRE, 4 * METRE, 2 * METRE)]);
    expect(regionArea(grow(ring, 1.5))).toBeCloseTo(100 + 60 + Math.PI * 2.25, 1);
  });

  it.each([0, -3, Number.NaN])('leaves a region alone for %d', (metres) => {
    const square = squareRegion(0, 0, METRE);
    expect(grow(square, metres)).toBe(square);
  });
});

describe('withoutHairs', () => {
  it('takes off what is narrower than 1 cm and leaves all else where it was', () => {
    const lawn = union([squareRegion(0, 0, 10 * METRE), squareRegion(10 * METRE, 0, METRE)]);
    const hairy = union([lawn, regionOf([path(...rectangle(5 * METRE, 10 * METRE, 5 * METRE + 20, 30 * METRE))])]);
    expect(regionArea(hairy) - regionArea(lawn)).toBeCloseTo(0.004, 9);
    const clean = withoutHairs(hairy);
    expect(clean.box).toEqual(lawn.box);
    expect(regionArea(clean)).toBeCloseTo(regionArea(lawn), 3);
    expect(regionArea(withoutHairs(regionOf([])))).toBe(0);
  });

  it('keeps sharp corners and holes', () => {
    const wedge = fillNonzero([path([0, 0], [20 * METRE, -2 * METRE], [20 * METRE, 2 * METRE])]);
    const holed = difference(wedge, [squareRegion(15 * METRE, 0, METRE)]);
    expect(Math.abs(withoutHairs(holed).box.west)).toBeLessThan(20);
    expect(regionArea(withoutHairs(holed))).toBeCloseTo(39, 2);
  });
});

describe('fillNonzero', () => {
  it('counts the middle of a pentagram and the two wings of a bow-tie', () => {
    const wings = fillNonzero([path([0, 0], [10 * METRE, 10 * METRE], [10 * METRE, 0], [0, 10 * METRE])]);
    expect(regionArea(wings)).toBeCloseTo(50, 6);
  });
});
