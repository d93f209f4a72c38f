import { describe, expect, it } from 'vitest';
import { NO_ESTIMATE, visitPrice } from '../../../core/quote/index.ts';

const steps = [
  { upToSqFt: 5000, dollarsPer1000SqFt: 9 },
  { upToSqFt: 10_000, dollarsPer1000SqFt: 7 },
  { upToSqFt: null, dollarsPer1000SqFt: 5 },
];
const price = (areaSqFt: number, more: object = {}) => visitPrice({ ...NO_ESTIMATE, steps, ...more }, areaSqFt, 'us');

describe('visitPrice', () => {
  it.each([
    // 4 x 9; 5 x 9 at the end of the first step; 45 + 2.5 x 7; 45 + 35 + 3 x 5
    [4000, 36],
    [5000, 45],
    [7500, 62.5],
    [13_000, 95],
  ])('of %d ft2 is the sum over the steps', (areaSqFt, dollars) => {
    expect(price(areaSqFt)?.dollars).toBe(dollars);
  });

  it('shows its arithmetic', () => {
    expect(price(7500)?.lines).toEqual([
      '5,000 ft² at $9.00 per 1,000 ft² = $45.00',
      '2,500 ft² at $7.00 per 1,000 ft² = $17.50',
      'together $62.50',
    ]);
  });

  it('never makes a larger lawn cheaper', () => {
    let before = 0;
    for (let areaSqFt = 0; areaSqFt <= 20_000; areaSqFt += 250) {
      const { dollars } = price(areaSqFt) ?? { dollars: 0 };
      expect(dollars).toBeGreaterThanOrEqual(before);
      before = dollars;
    }
  });

  it('is at least the least per visit, and says so', () => {
    expect(price(1000, { leastPerVisit: 45 })).toEqual({
      dollars: 45,
      lines: ['1,000 ft² at $9.00 per 1,000 ft² = $9.00', 'least per visit $45.00'],
    });
    expect(price(1000, { steps: [], leastPerVisit: 45 })?.dollars).toBe(45);
  });

  it('takes the steps by size whatever their order, and the last one for all beyond', () => {
    expect(price(13_000, { steps: steps.toReversed() })?.dollars).toBe(95);
    // 45 + 8 x 7
    expect(price(13_000, { steps: steps.slice(0, 2) })?.dollars).toBe(101);
  });

  it('is none without steps: the program has no prices of its own', () => {
    expect(visitPrice(NO_ESTIMATE, 5000, 'us')).toBeNull();
  });
});
