import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AreaGeometry } from '../../core/book/index.ts';
import {
  difference,
  intersection,
  localPlane,
  type Region,
  readOutline,
  regionArea,
  union,
} from '../../core/geometry/index.ts';
import { polygonOf } from '../../core/sketch/index.ts';
import { type Corner, karneyArea } from '../core/geometry/shapes.ts';
import {
  areaSqM,
  cornersOf,
  edgeMetres,
  HOME,
  latitudes,
  lawnOf,
  lawnSeeds,
  longitudes,
  placed,
  shifted,
} from './lawns.ts';

const plane = localPlane(HOME);
function regionOf(geometry: AreaGeometry): Region {
  const outline = readOutline(geometry, plane);
  if (outline.kind === 'refused') throw new Error(JSON.stringify(outline.faults));
  return outline.net;
}

/** A second lawn put so that it overlaps the first, holds it, lies in it or misses it. */
const pairs = fc.tuple(
  lawnSeeds,
  lawnSeeds,
  fc.double({ min: -200, max: 200, noNaN: true }),
  fc.double({ min: -200, max: 200, noNaN: true }),
);
const pairOf = ([first, second, east, north]: typeof pairs extends fc.Arbitrary<infer Pair> ? Pair : never) =>
  [lawnOf(first), polygonOf(placed(shifted(cornersOf(second), east, north)))] as const;

/**
 * Every crossing is rounded to a whole step of 10 micrometres, 7.1 micrometres at most, and so bends the side it lies on
 * into a triangle of half that times the side. All sides together: half of 7.1 micrometres times the length of the edges.
 */
const crossingTolerance = (...geometries: readonly AreaGeometry[]): number =>
  Math.max(1e-9, ...geometries.map((each) => edgeMetres(each) * 7.1e-6));

describe('the area of any outline', () => {
  it('is above zero and within 0.01 % of GeographicLib from 100 to 100,000 m2, anywhere', () => {
    let [least, most] = [Number.POSITIVE_INFINITY, 0];
    fc.assert(
      fc.property(lawnSeeds, longitudes, latitudes, (seed, longitude, latitude) => {
        const geometry = lawnOf(seed, [longitude, latitude]);
        const oracle = karneyArea(geometry.coordinates[0] as never);
        fc.pre(oracle >= 100 && oracle <= 100_000);
        least = Math.min(least, oracle);
        most = Math.max(most, oracle);
        const area = areaSqM(geometry);
        expect(area).toBeGreaterThan(0);
        expect(Math.abs(area / oracle - 1)).toBeLessThan(1e-4);
      }),
      { numRuns: 150 },
    );
    expect(least).toBeLessThan(1000);
    expect(most).toBeGreaterThan(30_000);
  });

  it('does not depend on the first corner or the direction', () => {
    fc.assert(
      fc.property(lawnSeeds, fc.nat(), (seed, turn) => {
        const corners = placed(cornersOf(seed));
        const start = turn % corners.length;
        const area = areaSqM(polygonOf(corners));
        for (const same of [[...corners.slice(start), ...corners.slice(0, start)], corners.toReversed()]) {
          expect(Math.abs(areaSqM(polygonOf(same)) / area - 1)).toBeLessThan(1e-12);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('grows with the square of the scale', () => {
    fc.assert(
      fc.property(lawnSeeds, fc.double({ min: 0.3, max: 5, noNaN: true }), (seed, scale) => {
        const corners = cornersOf(seed);
        const scaled = polygonOf(placed(corners.map(([x, y]): Corner => [x * scale, y * scale])));
        const ratio = areaSqM(scaled) / areaSqM(polygonOf(placed(corners)));
        expect(Math.abs(ratio / scale ** 2 - 1)).toBeLessThan(1e-5);
      }),
      { numRuns: 100 },
    );
  });

  it('is that of its shell less what its holes cover of it', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const [shell, hole] = pairOf(pair);
        const holed = { type: 'Polygon', coordinates: [...shell.coordinates, ...hole.coordinates] } as AreaGeometry;
        const cut = regionArea(intersection(regionOf(shell), regionOf(hole)));
        const left = regionArea(regionOf(shell)) - cut;
        fc.pre(left > 0.1);
        expect(Math.abs(regionArea(regionOf(holed)) - left)).toBeLessThan(crossingTolerance(shell, hole));
      }),
      { numRuns: 100 },
    );
  });
});

describe('the areas of any two outlines', () => {
  it('add up: A = (A without B) + (A and B), to 1e-9 or what rounding crossings to 10 micrometres can do', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const [first, second] = pairOf(pair);
        const [left, right] = [regionOf(first), regionOf(second)];
        const parts = regionArea(difference(left, [right])) + regionArea(intersection(left, right));
        const tolerance = Math.max(1e-9 * regionArea(left), crossingTolerance(first));
        expect(Math.abs(parts - regionArea(left))).toBeLessThan(tolerance);
      }),
      { numRuns: 150 },
    );
  });

  it('on whole metres add up to 1e-9: where sides cross at right angles nothing is rounded', () => {
    const metre = 100_000;
    const block = fc.tuple(...[0, 0, 1, 1].map((least) => fc.integer({ min: least, max: 40 })));
    const blockOf = ([west, south, width, height]: readonly number[]): Region => {
      const [x, y] = [(west ?? 0) * metre, (south ?? 0) * metre];
      const [east, north] = [x + (width ?? 1) * metre, y + (height ?? 1) * metre];
      const path = [
        [x, y],
        [east, y],
        [east, north],
        [x, north],
      ].map((each) => ({ x: each[0] ?? 0, y: each[1] ?? 0 }));
      return { paths: [path], box: { west: x, south: y, east, north } };
    };
    fc.assert(
      fc.property(
        fc.array(block, { minLength: 1, maxLength: 4 }),
        fc.array(block, { maxLength: 4 }),
        (some, others) => {
          const left = union(some.map(blockOf));
          const right = union(others.map(blockOf));
          const parts = regionArea(difference(left, [right])) + regionArea(intersection(left, right));
          expect(Math.abs(parts / regionArea(left) - 1)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('give the union whatever its order, and no more than both', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const [first, second] = pairOf(pair);
        const [left, right] = [regionOf(first), regionOf(second)];
        const both = regionArea(union([left, right]));
        const tolerance = crossingTolerance(first, second);
        expect(Math.abs(both - regionArea(union([right, left])))).toBeLessThan(tolerance);
        const wanted = regionArea(left) + regionArea(right) - regionArea(intersection(left, right));
        expect(Math.abs(both - wanted)).toBeLessThan(2 * tolerance);
      }),
      { numRuns: 100 },
    );
  });
});
