import { describe, expect, it } from 'vitest';
import type { Mix, Product } from '../../../core/book/index.ts';
import { rateCheck, rateIssue } from '../../../core/calibrate/index.ts';

const mix: Mix = {
  id: 'spring',
  name: 'Spring',
  carrierGalPer1000SqFt: 1,
  parts: [{ productId: 'p', amountPer1000SqFt: 0.5 }],
  needsAgitation: false,
  rinseMin: 0,
  rinseGal: 0,
};

function product(mostPerApplication: number): Product {
  const label = { registration: '', mostPerApplication, needsAgitation: false, note: '' };
  return { id: 'p', name: 'P', form: 'liquid', unit: 'fl-oz', pricePerUnit: 0, label, note: '' };
}

const at = (deliveredGalPer1000SqFt: number) => ({ name: 'boom', deliveredGalPer1000SqFt, speedMph: 4 });

describe('the 5 % rule (W. Buhler, Spray Gun, NC Cooperative Extension)', () => {
  it.each([
    [0.949, 'differs'],
    [0.95, 'agrees'],
    [1, 'agrees'],
    [1.05, 'agrees'],
    [1.051, 'differs'],
  ] as const)('wanted 1, delivered %d: %s', (delivered, kind) => {
    expect(rateCheck(mix, at(delivered)).kind).toBe(kind);
  });

  it('says what the product rate becomes and which speed would match', () => {
    const check = rateCheck(mix, at(1.2));
    if (check.kind === 'not-calibrated') throw new Error('has a delivery');
    expect(check.difference).toBeCloseTo(0.2, 12);
    expect(check.products).toEqual([{ productId: 'p', wanted: 0.5, becomes: 0.6, overLabel: null }]);
    expect(check.matchingMph).toBeCloseTo(4.8, 12);
    expect(rateIssue(check, 'rig A')).toMatchObject({ code: 'rate-differs', severity: 'warning', where: 'rig A' });
    expect(rateIssue(check, 'rig A')?.message).toMatch(/20\.0 % more.*0\.5 becomes 0\.6.*4\.8 mph/);
  });

  it('an error where the real rate passes a label limit, even inside 5 %', () => {
    const check = rateCheck(mix, at(1.04), [product(0.51)]);
    expect(check.kind).toBe('agrees');
    expect(rateIssue(check, 'x')).toMatchObject({ code: 'label-limit-broken', severity: 'error' });
    expect(rateIssue(rateCheck(mix, at(1.02), [product(0.51)]), 'x')).toBeNull();
  });

  it('a note where nothing was ever caught', () => {
    const check = rateCheck(mix, { name: 'boom' });
    expect(check.kind).toBe('not-calibrated');
    expect(rateIssue(check, 'x')).toMatchObject({ code: 'rate-not-calibrated', severity: 'note' });
  });
});
