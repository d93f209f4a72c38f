import { describe, expect, test } from 'vitest';
import { readBook } from '../../core/book/index.ts';
import { buildProblem } from '../../core/plan/problem/index.ts';
import type { PlanActivity } from '../../core/plan/result/index.ts';
import {
  formatArea,
  OUNCES_PER_POUND,
  parseArea,
  parseCarrierRate,
  quantity,
  SQUARE_FEET_PER_ACRE,
} from '../../core/units/index.ts';
import { smallBook } from './small-book.ts';
import { type WholeRun, wholeRun } from './whole-run.ts';

/** Values that people in the trade go by, and published ones, asked of the whole program: from a book's text to its plan. */

const THIRD = 1 / 3;
const stated = (areaSqFt: number, more: object = {}) => [
  { id: 'turf', name: 'turf', shape: { kind: 'stated', areaSqFt }, ...more },
];
const label = {};
const liquid = { id: 'liquid', name: 'Liquid', form: 'liquid', unit: 'fl-oz', label };
const thirdMix = {
  id: 'mix',
  name: 'Mix',
  carrierGalPer1000SqFt: THIRD,
  parts: [{ productId: 'liquid', amountPer1000SqFt: 0.1 }],
};
const spray = { id: 'spray', name: 'Spray', kind: 'spray', mixId: 'mix' };
const tank = (capacityGal: number) => ({ kind: 'tank', id: 'tank', name: 'tank', capacityGal });
const boom = { id: 'boom', name: 'boom', purpose: 'spray', swathFt: 10, speedMph: 5, compartmentIds: ['tank'] };

function treating(run: WholeRun): readonly (PlanActivity & { readonly kind: 'treat' })[] {
  return run.plan.days.flatMap((day) => day.activities.flatMap((each) => (each.kind === 'treat' ? [each] : [])));
}

function treatMinutes(run: WholeRun): number {
  return treating(run).reduce((sum, each) => sum + each.endSec - each.startSec, 0) / 60;
}

describe('common practice, no source', () => {
  test('at 1/3 gal per 1,000 ft2 a 20-gal tank covers 60,000 ft2: 120,000 ft2 take two loads, one foot more a third', () => {
    const sprayed = (areaSqFt: number) =>
      wholeRun(
        smallBook({
          zones: stated(areaSqFt),
          machine: { compartments: [tank(20)], heads: [boom] },
          products: [liquid],
          mixes: [thirdMix],
          treatments: [spray],
        }),
      );
    const even = sprayed(120_000);
    expect(even.verdict.violations).toEqual([]);
    const loads = even.plan.days[0]?.loads ?? [];
    expect(loads.map((load) => load.coversSqFt)).toEqual([60_000, 60_000]);
    expect(loads.map((load) => load.volumeGal)).toEqual([20, 20]);
    expect(sprayed(120_100).plan.days[0]?.loads).toHaveLength(3);
  });

  test.each([
    ['1/3', THIRD],
    ['1', 1],
    ['2', 2],
  ])('liquids at %s gal per 1,000 ft2 all plan', (_, carrierGalPer1000SqFt) => {
    const run = wholeRun(
      smallBook({
        lawns: 3,
        zones: stated(12_000),
        machine: { compartments: [tank(20)], heads: [boom] },
        products: [liquid],
        mixes: [{ ...thirdMix, carrierGalPer1000SqFt }],
        treatments: [spray],
      }),
    );
    expect(run.plan.unplaced).toEqual([]);
    expect(run.verdict.violations).toEqual([]);
    const gallons = run.plan.days.flatMap((day) => day.loads).reduce((sum, load) => sum + load.volumeGal, 0);
    // Three lawns of 12,000 ft2, rounded up to a hundredth of a gallon each.
    expect(gallons).toBeGreaterThanOrEqual(36 * carrierGalPer1000SqFt - 1e-9);
    expect(gallons).toBeLessThanOrEqual(36 * carrierGalPer1000SqFt + 0.03 + 1e-9);
  });

  test('a rig with a 200-gal nurse tank and two pallets of bags does a day of large properties without a fill point', () => {
    const granules = { id: 'granules', name: 'Granules', form: 'granular', unit: 'lb', bagLb: 50, label };
    const run = wholeRun(
      smallBook({
        lawns: 8,
        zones: stated(1.5 * SQUARE_FEET_PER_ACRE),
        machine: {
          compartments: [tank(20), { kind: 'hopper', id: 'hopper', name: 'hopper', capacityLb: 220 }],
          heads: [boom, { ...boom, id: 'spreader', name: 'spreader', purpose: 'spread', compartmentIds: ['hopper'] }],
        },
        // Two pallets of 40 bags.
        rig: { nurseTankGal: 200, bagPlaces: 80, payloadLb: 8000, shiftMin: 720 },
        products: [liquid, granules],
        mixes: [thirdMix],
        treatments: [
          spray,
          {
            id: 'feed',
            name: 'Feed',
            kind: 'spread',
            productId: 'granules',
            rate: { kind: 'product', lbPer1000SqFt: 4 },
          },
        ],
      }),
    );
    expect(run.plan.unplaced).toEqual([]);
    expect(run.verdict.violations).toEqual([]);
    expect(run.plan.totals).toMatchObject({ days: 1, stops: 8, fillPointVisits: 0 });
    // 12 acres: 522,720 ft2 at 1/3 gal are 174.2 gal; at 4 lb they are 2,090.9 lb, 42 bags of the 80.
    const [day] = run.plan.days;
    const gallons = day?.loads.reduce((sum, load) => sum + load.volumeGal, 0) ?? 0;
    const pounds = day?.loads.reduce((sum, load) => sum + load.weightLb, 0) ?? 0;
    expect(gallons).toBeCloseTo(174.24, 0);
    expect(pounds).toBeCloseTo(2090.88, 0);
  });

  test('60 gal at 1/3 gal per 1,000 ft2 is about 4 acres: 4 acres take one load of a 60-gal tank', () => {
    const run = wholeRun(
      smallBook({
        zones: stated(4 * SQUARE_FEET_PER_ACRE),
        machine: { compartments: [tank(60)], heads: [boom] },
        products: [liquid],
        mixes: [thirdMix],
        treatments: [spray],
      }),
    );
    const loads = run.plan.days[0]?.loads ?? [];
    expect(loads).toHaveLength(1);
    expect(loads[0]?.volumeGal).toBeGreaterThan(57);
    expect(run.verdict.violations).toEqual([]);
  });

  test('tips that put out 0.341 gal per 1,000 ft2 (14.85 gal an acre) do for a mix of 1/3: no complaint, and the tank empties by 0.341', () => {
    const run = wholeRun(
      smallBook({
        machine: { compartments: [tank(20)], heads: [{ ...boom, deliveredGalPer1000SqFt: 14.85 / 43.56 }] },
        products: [liquid],
        mixes: [thirdMix],
        treatments: [spray],
      }),
    );
    expect(run.checks).toEqual([]);
    expect(run.plan.issues).toEqual([]);
    const drawn = treating(run).flatMap((each) => each.draws.map((draw) => draw.volumeGal));
    expect(drawn.reduce((sum, each) => sum + each, 0)).toBeCloseTo(14.85, 2);
  });

  test.each([
    [36, 36, true, true],
    [36, 35, false, false],
    [46, 48, true, false],
    [46, 45, false, false],
  ])('a %d-in machine and a gate of %d in: planned %s, tight %s', (transitWidthIn, clearWidthIn, fits, tight) => {
    const run = wholeRun(
      smallBook({
        gates: [{ id: 'gate', name: 'gate', clearWidthIn }],
        zones: stated(5000, { gateIds: ['gate'] }),
        machine: { transitWidthIn, compartments: [tank(20)], heads: [boom] },
        products: [liquid],
        mixes: [thirdMix],
        treatments: [spray],
      }),
    );
    expect(run.plan.totals.unplaced).toBe(fits ? 0 : 1);
    expect(run.plan.issues.some((each) => each.code === 'gate-tight')).toBe(tight);
  });

  test('a 220-lb hopper takes four 50-lb bags: 200 lb are one load, 225 lb are two', () => {
    const spread = (areaSqFt: number) =>
      wholeRun(
        smallBook({
          zones: stated(areaSqFt),
          machine: {
            compartments: [{ kind: 'hopper', id: 'hopper', name: 'hopper', capacityLb: 220 }],
            heads: [{ ...boom, id: 'disc', purpose: 'spread', compartmentIds: ['hopper'] }],
          },
          products: [{ id: 'feed', name: 'Feed', form: 'granular', unit: 'lb', bagLb: 50, label }],
          treatments: [
            {
              id: 'spread',
              name: 'Spread',
              kind: 'spread',
              productId: 'feed',
              rate: { kind: 'product', lbPer1000SqFt: 5 },
            },
          ],
        }),
      );
    expect(spread(40_000).plan.days[0]?.loads.map((load) => load.weightLb)).toEqual([200]);
    const two = spread(45_000);
    expect(two.plan.days[0]?.loads.map((load) => load.weightLb).reduce((sum, each) => sum + each, 0)).toBe(225);
    expect(two.plan.days[0]?.loads).toHaveLength(2);
    expect(two.verdict.violations).toEqual([]);
  });

  test('a 10-ft swath at 5 mph makes about 4 acres an hour (E = 0.66): 4 acres are an hour of treating', () => {
    const run = wholeRun(
      smallBook({
        zones: stated(4 * SQUARE_FEET_PER_ACRE),
        machine: { compartments: [tank(60)], heads: [{ ...boom, fieldEfficiency: 0.66 }] },
        products: [liquid],
        mixes: [thirdMix],
        treatments: [spray],
      }),
    );
    expect(treatMinutes(run)).toBeCloseTo(60, 0);
  });

  test('a 40-in aerator at 8.5 mph makes about 2 acres an hour (E about 0.58): an acre takes half an hour', () => {
    const run = wholeRun(
      smallBook({
        machine: {
          heads: [
            { id: 'tines', name: 'tines', purpose: 'aerate', swathFt: 40 / 12, speedMph: 8.5, fieldEfficiency: 0.58 },
          ],
        },
        treatments: [{ id: 'aerate', name: 'Aerate', kind: 'aerate' }],
      }),
    );
    expect(treatMinutes(run)).toBeGreaterThan(29.5);
    expect(treatMinutes(run)).toBeLessThan(30.5);
    expect(run.verdict.violations).toEqual([]);
  });

  test.each([
    [75, 0],
    [76, 1],
  ])('hose reels reach 75 ft: %d ft paced leaves %d zones out', (hosePathFt, left) => {
    const run = wholeRun(
      smallBook({
        zones: stated(2000, { hosePathFt }),
        handMethods: [
          {
            id: 'reel',
            name: 'Reel',
            what: 'hose',
            drawsFrom: { kind: 'rig', capacityGal: 50 },
            reachFt: 75,
            minutesPer1000SqFt: 3,
          },
        ],
        products: [liquid],
        mixes: [thirdMix],
        treatments: [spray],
      }),
    );
    expect(run.plan.totals.unplaced).toBe(left);
  });
});

describe('published values, as people type and read them', () => {
  const typed = (text: string): number => {
    const area = parseArea(text);
    if (!area.ok) throw new Error(area.error.detail);
    return area.value;
  };

  test('pestcontroltests.com, notes on the Core Manual ch. 11 (W19): 158,400 ft2 are 3.6 acres', () => {
    expect(typed('158,400 sq ft')).toBe(158_400);
    expect(typed('3.636 ac')).toBeCloseTo(158_400, -2);
    expect(formatArea(quantity(158_400), 'us')).toContain('158,400');
  });

  test('American football field, en.wikipedia.org (W25): 57,600 ft2 are 1.32 acres', () => {
    expect(typed('57,600 ft2') / typed('1 acre')).toBeCloseTo(1.32, 2);
    expect(typed('1.32 acres')).toBeCloseTo(57_500, -2);
  });

  test('informedfarmers.com/measuring-turf-grass (W26): an oval of 312.8 m2 by the rule of thumb is 3,367 ft2', () => {
    expect(typed('312.8 m2')).toBeCloseTo(312.8 / 0.3048 ** 2, 6);
  });

  test('one third of a gallon per 1,000 ft2 is typed as 0.333 gal/1000 or as 14.5 gal/acre', () => {
    const per1000 = parseCarrierRate('0.333 gal/1000');
    const perAcre = parseCarrierRate('14.52 gal/acre');
    expect(per1000.ok && per1000.value).toBe(0.333);
    expect(perAcre.ok && perAcre.value).toBeCloseTo(THIRD, 4);
  });

  describe('S. Hart (Rutgers), Kent County Cooperative Extension, 2009 (W27): 2 to 3 lb an acre split into 1 to 1.5 and 1 to 1.5', () => {
    /** Two doses of so many pounds an acre, against a yearly limit of 3 lb an acre, all in oz per 1,000 ft2. */
    const split = (poundsPerAcre: number) => {
      const toOunces = (pounds: number): number => (pounds * OUNCES_PER_POUND * 1000) / SQUARE_FEET_PER_ACRE;
      const dose = (id: string) => ({
        ...thirdMix,
        id,
        parts: [{ productId: 'dry', amountPer1000SqFt: toOunces(poundsPerAcre) }],
      });
      const read = readBook(
        smallBook({
          machine: { compartments: [tank(20)], heads: [boom] },
          products: [{ id: 'dry', name: 'Dry', form: 'dry', unit: 'oz', label: { mostPerYear: toOunces(3) } }],
          mixes: [dose('april'), dose('june')],
          treatments: [
            { ...spray, id: 'first', mixId: 'april' },
            { ...spray, id: 'second', mixId: 'june' },
          ],
        }),
        'split.json',
      );
      if (!read.ok) throw new Error(read.error.detail);
      return buildProblem(read.value.book, 'round');
    };

    test('both doses at the top of the range keep the yearly sum', () => expect(split(1.5).ok).toBe(true));

    test('a dose above it breaks the sum, although neither breaks it alone', () => {
      const built = split(1.55);
      expect(built).toMatchObject({ ok: false, error: { code: 'label-limit-broken' } });
      expect(!built.ok && built.error.detail).toMatch(/a year, by 2 applications/);
    });
  });
});
