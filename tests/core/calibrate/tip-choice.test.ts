import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  gallonsPerAcre,
  perAcre,
  TIP_SIZES,
  type TipWish,
  tipCombinations,
  tipFlow,
  tipWish,
} from '../../../core/calibrate/index.ts';

const wish: TipWish = {
  wantedGalPer1000SqFt: 0.4,
  spacingIn: 20,
  tips: TIP_SIZES,
  leastPsi: 20,
  mostPsi: 60,
  leastMph: 3,
  mostMph: 5,
  stepMph: 0.5,
};

function combinations(change: Partial<TipWish> = {}) {
  const found = tipCombinations({ ...wish, ...change });
  if (!found.ok) throw new Error(found.error.detail);
  return found.value;
}

describe('which tip, pressure and speed', () => {
  it('03 at 4.5 mph: 17.424 gal/acre ask 0.264 gpm, so 40 x (0.264 / 0.3)^2 = 31 psi', () => {
    const found = combinations().find((each) => each.size === '03' && each.mph === 4.5)!;
    expect(found.psi).toBe(31);
    expect(found.gpm).toBeCloseTo(0.3 * Math.sqrt(31 / 40), 12);
    expect(Math.abs(found.difference)).toBeLessThan(0.001);
  });

  it('every figure of a combination agrees with the formulas, limits hold, and the nearest is first', () => {
    const limits = fc.record({
      wantedGalPer1000SqFt: fc.double({ min: 0.1, max: 3, noNaN: true }),
      spacingIn: fc.double({ min: 8, max: 40, noNaN: true }),
      leastPsi: fc.integer({ min: 10, max: 40 }),
      leastMph: fc.double({ min: 1, max: 4, noNaN: true }),
      stepMph: fc.double({ min: 0.1, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(limits, (change) => {
        const found = combinations(change);
        expect(found.length % TIP_SIZES.length).toBe(0);
        let last = 0;
        for (const { size, psi, mph, gpm, gpa, difference } of found) {
          const tip = TIP_SIZES.find((each) => each.size === size)!;
          expect(psi).toBeGreaterThanOrEqual(change.leastPsi);
          expect(psi).toBeLessThanOrEqual(60);
          expect(mph).toBeGreaterThanOrEqual(change.leastMph - 1e-6);
          expect(mph).toBeLessThanOrEqual(5);
          expect(gpm).toBe(tipFlow(tip, psi));
          expect(gpa).toBeCloseTo(gallonsPerAcre(gpm, mph, change.spacingIn), 9);
          expect(gpa / perAcre(change.wantedGalPer1000SqFt) - 1).toBeCloseTo(difference, 9);
          expect(Math.abs(difference)).toBeGreaterThanOrEqual(last);
          last = Math.abs(difference);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('no whole pressure within the limits comes nearer for the same tip and speed', () => {
    for (const { size, mph, difference } of combinations()) {
      const tip = TIP_SIZES.find((each) => each.size === size)!;
      for (let psi = 20; psi <= 60; psi += 1) {
        const other = gallonsPerAcre(tipFlow(tip, psi), mph, 20) / perAcre(0.4) - 1;
        // The nearest pressure is rounded as a pressure, so the next one may be as near within half a psi.
        expect(Math.abs(other)).toBeGreaterThan(Math.abs(difference) - 0.0005);
      }
    }
  });

  it('the most speed is among the speeds, whatever the step', () => {
    expect(new Set(combinations({ stepMph: 0.7 }).map((each) => each.mph))).toEqual(new Set([3, 3.7, 4.4, 5]));
    expect(new Set(combinations({ leastMph: 4, mostMph: 4 }).map((each) => each.mph))).toEqual(new Set([4]));
  });

  it.each<readonly [string, Partial<TipWish>]>([
    ['no rate', { wantedGalPer1000SqFt: 0 }],
    ['limits crossed', { leastPsi: 70 }],
    ['speeds crossed', { leastMph: 6 }],
    ['no speed', { leastMph: 0 }],
    ['no tip', { tips: [] }],
    ['steps too short', { stepMph: 1e-6 }],
    ['not a number', { spacingIn: Number.NaN }],
  ])('%s is out of range', (_, change) => {
    const found = tipCombinations({ ...wish, ...change });
    expect(!found.ok && found.error.code).toBe('quantity-out-of-range');
  });
});

describe('the wish from what was filled in', () => {
  const values = { 'want-gpa': 17.424, 'spacing-in': 20, psi: 30, 'least-mph': 3, 'most-mph': 5 };

  it('takes one pressure as a range of one, and a rate per acre', () => {
    const made = tipWish({ values, lists: {} }, ['3', '04']);
    if (!made.ok) throw new Error(made.error.detail);
    expect(made.value.wantedGalPer1000SqFt).toBeCloseTo(0.4, 12);
    expect([made.value.leastPsi, made.value.mostPsi, made.value.stepMph]).toEqual([30, 30, 0.5]);
    expect(made.value.tips.map((each) => each.size)).toEqual(['03', '04']);
  });

  it.each<readonly [string, Record<string, number>, readonly string[]]>([
    ['rate twice', { ...values, 'want-gal-per-1000': 0.4 }, []],
    ['range and figure', { ...values, 'least-psi': 20 }, []],
    ['half a range', { 'want-gpa': 20, 'spacing-in': 20, psi: 30, 'least-mph': 3 }, []],
    ['a figure that is worked out', { ...values, gpm: 0.3 }, []],
    ['no spacing', { 'want-gpa': 20, psi: 30, mph: 4 }, []],
    ['no such size', values, ['07']],
  ])('%s is refused', (_, given, sizes) => {
    const made = tipWish({ values: given, lists: {} }, sizes);
    expect(!made.ok && made.error.code).toBe('request-invalid');
  });
});
