import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Product } from '../../../core/book/index.ts';
import {
  bagsNeeded,
  hopperLoads,
  loadFor,
  tankLoads,
  totalDemand,
  waterIn,
  yearLimitIssues,
  type ZoneDemand,
} from '../../../core/demand/index.ts';
import { byId, sampleBook } from '../reach/sample.ts';

const book = sampleBook();
const mix = byId(book.mixes, 'mix');

describe('bags', () => {
  it.each([
    [0, 0],
    [0.1, 1],
    [50, 1],
    [50.01, 2],
    [220, 5],
  ])('%d lb in 50-lb bags: %i', (weightLb, bags) => {
    expect(bagsNeeded(weightLb, 50)).toBe(bags);
  });

  it('a sum that is whole but for binary fractions opens no further bag', () => {
    const weightLb = Array.from({ length: 30 }, () => 0.1).reduce((sum, each) => sum + each, 0);
    expect(weightLb / 0.3).toBeGreaterThan(10 - 1e-9);
    expect(bagsNeeded(weightLb, 0.3)).toBe(10);
    expect(bagsNeeded(0.1 + 0.2, 0.3)).toBe(1);
  });
});

describe('tank loads', () => {
  it('cover the ground exactly, every one but the last full', () => {
    const area = fc.double({ min: 1, max: 500_000, noNaN: true });
    const tank = fc.double({ min: 1, max: 300, noNaN: true });
    fc.assert(
      fc.property(area, tank, (areaSqFt, usableGal) => {
        const loads = tankLoads(mix, book.products, areaSqFt, usableGal);
        const covered = loads.full * loads.fullLoad.areaSqFt + (loads.last?.areaSqFt ?? 0);
        expect(covered / areaSqFt).toBeCloseTo(1, 8);
        expect(loads.fullLoad.volumeGal).toBeCloseTo(usableGal, 9);
        expect(loads.last?.volumeGal ?? 0).toBeLessThan(usableGal);
        expect(loads.last === null || loads.last.volumeGal > 0).toBe(true);
      }),
    );
  });

  it('a job that fills its tanks exactly has no last one', () => {
    const loads = tankLoads(mix, book.products, 120_000, 20);
    expect(loads).toMatchObject({ full: 3, last: null });
  });

  it('liquid products take the place of water, dry ones do not', () => {
    const load = loadFor(mix, book.products, 64_000);
    expect(load.volumeGal).toBe(32);
    // 0.4 fl oz x 64 = 25.6 fl oz = 0.2 gal of the liquid; 12.8 oz of the powder.
    expect(load.products.map((each) => each.amount)).toEqual([expect.closeTo(25.6, 9), expect.closeTo(12.8, 9)]);
    expect(load.waterGal).toBeCloseTo(31.8, 9);
    expect(waterIn(1, [{ amount: 256, unit: 'fl-oz' }])).toBe(0);
  });
});

describe('hopper loads', () => {
  it('the last one is partial, or none', () => {
    expect(hopperLoads(300, 120)).toEqual({ full: 2, lastLb: 60 });
    expect(hopperLoads(240, 120)).toEqual({ full: 2, lastLb: 0 });
    expect(hopperLoads(80, 120)).toEqual({ full: 0, lastLb: 80 });
  });
});

function sprayed(zoneId: string, treatedSqFt: number, ounces: number): ZoneDemand {
  const ids = { propertyId: 'elm', zoneId, treatmentId: 't', step: 0, materialId: 'mix' };
  const products = [{ productId: 'liquid', amount: ounces, unit: 'fl-oz' } as const];
  return { ...ids, what: 'spray', treatedSqFt, volumeGal: 1, weightLb: 0, products, passes: 1 };
}

describe('yearly limits over several applications', () => {
  const products = book.products.map(
    (each): Product => (each.id === 'liquid' ? { ...each, label: { ...each.label, mostPerYear: 0.9 } } : each),
  );

  it('adds the rates on one zone and keeps zones apart', () => {
    const twice = [sprayed('front', 5000, 2.5), sprayed('front', 5000, 2.25)];
    expect(yearLimitIssues(products, twice).map((each) => [each.code, each.where])).toEqual([
      ['label-limit-broken', 'property elm, zone front'],
    ]);
    expect(yearLimitIssues(products, [sprayed('front', 5000, 2.5), sprayed('back', 5000, 2.25)])).toEqual([]);
    expect(yearLimitIssues(products, [sprayed('front', 5000, 2.25), sprayed('front', 5000, 2.25)])).toEqual([]);
  });

  it('counts the rate on the sprayed ground, not the amount', () => {
    expect(yearLimitIssues(products, [sprayed('front', 5000, 2.5), sprayed('front', 500, 0.25)])).toHaveLength(1);
  });
});

it('totals keep one entry for each product', () => {
  const total = totalDemand([sprayed('front', 5000, 2), sprayed('back', 3000, 1.5)]);
  expect(total).toEqual({
    treatedSqFt: 8000,
    volumeGal: 2,
    weightLb: 0,
    products: [{ productId: 'liquid', amount: 3.5, unit: 'fl-oz' }],
  });
});
