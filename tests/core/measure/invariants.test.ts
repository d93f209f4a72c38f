import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { SQUARE_METRES_PER_SQUARE_FOOT } from '../../../core/units/index.ts';
import { type Corner, karneyArea, ringAt, starCorners } from '../geometry/shapes.ts';
import { exclusion, HOME, property, zone } from './lawns.ts';

const draw = (corners: readonly Corner[], centre: Position = HOME): AreaGeometry => ({
  type: 'Polygon',
  coordinates: [ringAt(centre, corners)],
});
const treatable = (geometry: AreaGeometry, ...cut: AreaGeometry[]) =>
  measureProperty(
    property(
      [zone('lawn', geometry)],
      cut.map((each, index) => exclusion(`cut-${index}`, each)),
    ),
  ).treatableSqFt ?? Number.NaN;

/** Digits of ft2 that cutting keeps: crossings are rounded to 10 um, on sides of up to 300 m. */
const ROUNDING = 1;

/** A star, its corner count, seed and place drawn by fast-check. */
const stars = fc.record({
  seed: fc.integer(),
  count: fc.integer({ min: 3, max: 30 }),
  radius: fc.double({ min: 5, max: 150, noNaN: true }),
});
const starOf = ({ seed, count, radius }: { seed: number; count: number; radius: number }) =>
  starCorners(createRandom(seed), count, radius);

describe('what must hold for any lawn', () => {
  it('agrees with GeographicLib to 0.0005 % or 2 cm2 at any latitude', () => {
    fc.assert(
      fc.property(
        stars,
        fc.double({ min: -55, max: 70, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (star, latitude, longitude) => {
          const ring = ringAt([longitude, latitude], starOf(star));
          const ours = treatable({ type: 'Polygon', coordinates: [ring] }) * SQUARE_METRES_PER_SQUARE_FOOT;
          const theirs = karneyArea(ring);
          fc.pre(theirs > 2);
          expect(Math.abs(ours - theirs)).toBeLessThan(Math.max(0.002, 5e-6 * theirs));
        },
      ),
      { numRuns: 200 },
    );
  });

  it('does not depend on the first corner or the direction', () => {
    fc.assert(
      fc.property(stars, fc.nat(), (star, shift) => {
        const corners = starOf(star);
        const turned = [...corners.slice(shift % corners.length), ...corners.slice(0, shift % corners.length)];
        const area = treatable(draw(corners));
        expect(treatable(draw(turned))).toBeCloseTo(area, 2);
        expect(treatable(draw(corners.toReversed()))).toBeCloseTo(area, 2);
      }),
      { numRuns: 60 },
    );
  });

  it('grows with the square of the scale', () => {
    fc.assert(
      fc.property(stars, fc.double({ min: 0.5, max: 4, noNaN: true }), (star, scale) => {
        const corners = starOf(star);
        const larger = corners.map(([east, north]): Corner => [east * scale, north * scale]);
        fc.pre(treatable(draw(corners)) > 100 && treatable(draw(larger)) > 100);
        expect(treatable(draw(larger)) / treatable(draw(corners)) / scale ** 2).toBeCloseTo(1, 4);
      }),
      { numRuns: 60 },
    );
  });

  it('cuts an exclusion and a hole of the same shape alike, and never more than there is', () => {
    fc.assert(
      fc.property(stars, fc.integer(), fc.double({ min: 0, max: 60, noNaN: true }), (star, seed, east) => {
        const shell = draw(starOf({ ...star, radius: star.radius + 10 }));
        const cut = draw(starCorners(createRandom(seed), 7, 8).map(([x, y]): Corner => [x + east, y]));
        const holed: AreaGeometry = {
          type: 'Polygon',
          coordinates: [...shell.coordinates, ...cut.coordinates] as never,
        };
        const left = treatable(shell, cut);
        expect(treatable(holed)).toBeCloseTo(left, ROUNDING);
        expect(left).toBeLessThanOrEqual(treatable(shell) + 0.05);
        expect(left).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 100 },
    );
  });

  it('splits area(A) = treatable(A minus B) + lost, and counts the union of two zones once', () => {
    fc.assert(
      fc.property(stars, stars, (first, second) => {
        const left = draw(starOf(first));
        const right = draw(starOf(second).map(([x, y]): Corner => [x + 20, y]));
        const cut = measureProperty(property([zone('a', left)], [exclusion('b', right)]));
        expect((cut.treatableSqFt ?? 0) + cut.exclusionsSqFt).toBeCloseTo(cut.zones[0]?.planAreaSqFt ?? -1, ROUNDING);
        const both = measureProperty(property([zone('a', left), zone('b', right)]));
        const swapped = measureProperty(property([zone('b', right), zone('a', left)]));
        const whole = (both.treatableSqFt ?? 0) + both.exclusionsSqFt;
        expect(whole).toBeCloseTo((swapped.treatableSqFt ?? 0) + swapped.exclusionsSqFt, ROUNDING);
        expect(both.treatableSqFt).toBeLessThanOrEqual(
          both.zones.reduce((sum, each) => sum + (each.planAreaSqFt ?? 0), 0) + 0.01,
        );
      }),
      { numRuns: 100 },
    );
  });

  it('a wider keep-away never leaves more turf', () => {
    fc.assert(
      fc.property(
        stars,
        fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 2, maxLength: 5 }),
        (star, widths) => {
          const shell = draw(starOf({ ...star, radius: star.radius + 20 }));
          const bed = draw(starCorners(createRandom(star.seed ^ 5), 6, 6));
          const areas = widths
            .toSorted((left, right) => left - right)
            .map(
              (keepAwayFt) =>
                measureProperty(property([zone('a', shell)], [exclusion('b', bed, { keepAwayFt })])).treatableSqFt ?? 0,
            );
          for (const [index, area] of areas.entries())
            expect(area).toBeLessThanOrEqual((areas[index - 1] ?? Infinity) + 0.05);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('whatever comes in', () => {
  const number = fc.oneof(
    fc.double(),
    fc.double({ min: -0.001, max: 0.001, noNaN: true }).map((each) => each - 83),
    fc.integer({ min: -5, max: 5 }).map((each) => 40 + each * 1e-4),
    fc.constantFrom(0, -0, Number.NaN, Infinity, -Infinity, 1e308, 180, -180, 90),
  );
  const ring = fc.array(fc.tuple(number, number), { maxLength: 12 });
  /** Corners on a small grid: many crossings, touches, spikes and repeats. */
  const tangle = fc.array(
    fc
      .tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }))
      .map(([x, y]): Position => [-83 + x * 1e-4, 40 + y * 1e-4]),
    { maxLength: 14 },
  );
  const geometry = (rings: fc.Arbitrary<Position[]>): fc.Arbitrary<AreaGeometry> =>
    fc.oneof(
      fc.array(rings, { maxLength: 3 }).map((coordinates): AreaGeometry => ({ type: 'Polygon', coordinates })),
      fc
        .array(fc.array(rings, { maxLength: 2 }), { maxLength: 3 })
        .map((coordinates): AreaGeometry => ({ type: 'MultiPolygon', coordinates })),
    );

  it.each([
    ['numbers of any size', geometry(ring as fc.Arbitrary<Position[]>)],
    ['tangles', geometry(tangle)],
  ])('never throws on %s, and every area is a number or null with a reason', (_, shapes) => {
    fc.assert(
      fc.property(
        fc.array(shapes, { maxLength: 3 }),
        fc.array(shapes, { maxLength: 3 }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (zones, cuts, keepAwayFt) => {
          const measure = measureProperty(
            property(
              zones.map((each, index) => zone(`z${index}`, each)),
              cuts.map((each, index) => exclusion(`e${index}`, each, { keepAwayFt })),
            ),
          );
          expect(measure.exclusionsSqFt).toBeGreaterThanOrEqual(0);
          for (const each of measure.zones) {
            if (each.areaSqFt === null) {
              expect(
                measure.issues.some((issue) => issue.severity === 'error' && issue.where.endsWith(each.zoneId)),
              ).toBe(true);
            } else {
              expect(each.areaSqFt).toBeGreaterThanOrEqual(0);
              expect(each.areaSqFt).toBeLessThanOrEqual((each.planAreaSqFt ?? -1) + 0.01);
            }
          }
        },
      ),
      { numRuns: 400 },
    );
  });
});
