import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Exclusion, Zone } from '../../core/book/index.ts';
import { measureProperty } from '../../core/measure/index.ts';
import { copyShape, offsetOutline, outlineFigures, polygonOf, splitBy } from '../../core/sketch/index.ts';
import { placeAt } from '../core/geometry/shapes.ts';
import { exclusion, property, zone } from '../core/measure/lawns.ts';
import { good } from '../core/sketch/feet.ts';
import {
  cornersOf,
  edgeMetres,
  HOME,
  type LawnSeed,
  latitudes,
  lawnOf,
  lawnSeeds,
  longitudes,
  placed,
  shifted,
} from './lawns.ts';

const SQ_FT = 0.09290304;
const treatable = (zones: readonly Zone[], exclusions: readonly Exclusion[] = []): number =>
  measureProperty(property(zones, exclusions)).treatableSqFt ?? Number.NaN;

/** A few beds and houses strewn over a lawn, some across its edge, each with its keep-away distance. */
const cutSeeds = fc.array(
  fc.record({
    seed: fc.integer(),
    east: fc.double({ min: -1, max: 1, noNaN: true }),
    north: fc.double({ min: -1, max: 1, noNaN: true }),
    keepAwayFt: fc.constantFrom(0, 0, 3),
  }),
  { minLength: 1, maxLength: 5 },
);
type CutSeeds = typeof cutSeeds extends fc.Arbitrary<infer Seeds> ? Seeds : never;
function cutsOf(seeds: CutSeeds, { radius }: LawnSeed): readonly Exclusion[] {
  return seeds.map(({ seed, east, north, keepAwayFt }, index) => {
    const corners = cornersOf({ seed, count: 6, radius: radius * 0.2 });
    return exclusion(`e${index}`, polygonOf(placed(shifted(corners, east * radius, north * radius))), { keepAwayFt });
  });
}

/**
 * Ground that cutting in another way may move, ft2: places are written to 0.1 mm and crossings to 10 micrometres, on every
 * edge; and pieces under 1 m2 are left out, so a few of those may come or go.
 */
const toleranceSqFt = (pieces: number, ...geometries: readonly AreaGeometry[]): number =>
  (geometries.reduce((sum, each) => sum + edgeMetres(each), 0) * 0.0003 + 0.01 + pieces) / SQ_FT;

describe('the measure of any property', () => {
  it('does not depend on the order of the exclusions, nor on one being there twice', () => {
    fc.assert(
      fc.property(lawnSeeds, cutSeeds, (seed, seeds) => {
        const zones = [zone('lawn', lawnOf(seed))];
        const cuts = cutsOf(seeds, seed);
        const area = treatable(zones, cuts);
        const tolerance = toleranceSqFt(0, lawnOf(seed), ...cuts.map((each) => each.geometry));
        fc.pre(Number.isFinite(area));
        expect(Math.abs(treatable(zones, cuts.toReversed()) - area)).toBeLessThan(tolerance);
        const twice = [...cuts, ...cuts.map((each) => ({ ...each, id: `${each.id}-again` }))];
        expect(Math.abs(treatable(zones, twice) - area)).toBeLessThan(tolerance);
      }),
      { numRuns: 40 },
    );
  });

  it('another exclusion never adds turf', () => {
    fc.assert(
      fc.property(lawnSeeds, cutSeeds, (seed, seeds) => {
        const cuts = cutsOf(seeds, seed);
        const areas = cuts.map((_, index) => treatable([zone('lawn', lawnOf(seed))], cuts.slice(0, index)));
        for (const [index, area] of areas.entries()) {
          expect(area).toBeLessThanOrEqual((areas[index - 1] ?? Number.POSITIVE_INFINITY) + 0.5);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('is the same in two zones as in one, but for pieces that are too small to count', () => {
    let split = 0;
    fc.assert(
      fc.property(lawnSeeds, cutSeeds, fc.double({ min: 0, max: 3.14, noNaN: true }), (seed, seeds, angle) => {
        const lawn = lawnOf(seed);
        const cuts = cutsOf(seeds, seed);
        const reach = 1.5 * seed.radius;
        const end = (way: number) => placeAt(HOME, [way * reach * Math.cos(angle), way * reach * Math.sin(angle)]);
        const pieces = splitBy(lawn, [end(-1), end(1)]);
        if (!pieces.ok) return;
        split += 1;
        const whole = measureProperty(property([zone('lawn', lawn)], cuts));
        const parts = measureProperty(
          property(
            pieces.value.map((each, index) => zone(`z${index}`, each)),
            cuts,
          ),
        );
        // every crossing of the line may cut a crumb of up to 1 m2 off, on either side
        const crumbs = 2 * (cuts.length + pieces.value.length);
        const tolerance = toleranceSqFt(crumbs, lawn, ...cuts.map((each) => each.geometry));
        expect(Math.abs((parts.treatableSqFt ?? 0) - (whole.treatableSqFt ?? 0))).toBeLessThan(tolerance);
        const gross = (each: typeof whole) => (each.treatableSqFt ?? 0) + each.exclusionsSqFt;
        expect(Math.abs(gross(parts) - gross(whole))).toBeLessThan(toleranceSqFt(0, lawn, lawn));
      }),
      { numRuns: 30 },
    );
    expect(split).toBeGreaterThan(20);
  });

  it('is the same wherever the property lies', () => {
    fc.assert(
      fc.property(lawnSeeds, cutSeeds, longitudes, latitudes, (seed, seeds, longitude, latitude) => {
        const carry = (geometry: AreaGeometry) => good(copyShape(geometry, HOME, [longitude, latitude]));
        const cuts = cutsOf(seeds, seed);
        const here = treatable([zone('lawn', lawnOf(seed))], cuts);
        const there = treatable(
          [zone('lawn', carry(lawnOf(seed)))],
          cuts.map((each) => ({ ...each, geometry: carry(each.geometry) })),
        );
        fc.pre(here > 100);
        // written to 0.1 mm; a piece of 1 m2, give or take, may be on either side of what counts
        expect(Math.abs(there - here)).toBeLessThan(toleranceSqFt(1.01, lawnOf(seed)) + 1e-7 * here);
      }),
      { numRuns: 40 },
    );
  });

  it('on a slope is the area on the map over the cosine', () => {
    fc.assert(
      fc.property(lawnSeeds, fc.double({ min: 0, max: 45, noNaN: true }), (seed, slopeDeg) => {
        const level = treatable([zone('lawn', lawnOf(seed))]);
        const sloped = treatable([zone('lawn', lawnOf(seed), { slopeDeg })]);
        expect(Math.abs((sloped * Math.cos((slopeDeg * Math.PI) / 180)) / level - 1)).toBeLessThan(1e-12);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the likely error of any lawn', () => {
  const errors = fc.double({ min: 0.1, max: 5, noNaN: true });
  const drawn = (geometry: AreaGeometry, outlineErrorFt: number): Zone => ({
    ...zone('lawn', geometry),
    shape: { kind: 'drawn', geometry, outlineErrorFt },
  });

  it('is what the drawing shows, and grows with the error of the outline', () => {
    fc.assert(
      fc.property(lawnSeeds, errors, (seed, errorFt) => {
        const corners = placed(cornersOf(seed));
        const shown = outlineFigures(corners, true, errorFt).likelyErrorSqFt ?? Number.NaN;
        const measured = measureProperty(property([drawn(polygonOf(corners), errorFt)]));
        // the measure leaves hairs under 1 cm out of the edge, and so blunts sharp tips by up to 0.2 m of edge
        expect(Math.abs((measured.errorSqFt ?? Number.NaN) / shown - 1)).toBeLessThan(0.005);
        const double = measureProperty(property([drawn(polygonOf(corners), 2 * errorFt)])).errorSqFt;
        expect(Math.abs((double ?? Number.NaN) / (measured.errorSqFt ?? Number.NaN) - 2)).toBeLessThan(1e-9);
      }),
      { numRuns: 30 },
    );
  });

  it('bounds what an outline moved out by that much gains, but for round corners', () => {
    fc.assert(
      fc.property(lawnSeeds, errors, (seed, errorFt) => {
        const lawn = lawnOf(seed);
        const { treatableSqFt, errorSqFt } = measureProperty(property([drawn(lawn, errorFt)]));
        const gained = treatable([zone('lawn', good(offsetOutline(lawn, errorFt)))]) - (treatableSqFt ?? 0);
        // the ground within a distance of an outline is at most its length times that, and pi r2 for the corners (J. Steiner)
        expect(gained).toBeGreaterThan(0);
        expect(gained).toBeLessThan((errorSqFt ?? 0) * 1.001 + Math.PI * errorFt ** 2 + 1);
      }),
      { numRuns: 40 },
    );
  });
});
