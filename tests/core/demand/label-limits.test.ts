import { describe, expect, it } from 'vitest';
import type { Label, Product } from '../../../core/book/index.ts';
import {
  carrierLimitIssues,
  intervalIssues,
  rateLimitIssues,
  rateWords,
  yearLimitIssues,
  type ZoneDemand,
} from '../../../core/demand/index.ts';
import { byId, sampleBook } from '../reach/sample.ts';

/** Invented products with invented limits, not for use. */
function product(id: string, label: Partial<Label> = {}): Product {
  const found = byId(sampleBook().products, id);
  return { ...found, label: { ...found.label, ...label } };
}

function sprayed(amount: number, change: Partial<ZoneDemand> = {}): ZoneDemand {
  return {
    propertyId: 'elm',
    zoneId: 'front',
    treatmentId: 'spray',
    step: 0,
    what: 'spray',
    materialId: 'mix',
    treatedSqFt: 2000,
    volumeGal: 1,
    weightLb: 0,
    products: [{ productId: 'liquid', amount, unit: 'fl-oz' }],
    passes: 1,
    ...change,
  };
}

const mixOf = (carrierGalPer1000SqFt: number) => ({ ...byId(sampleBook().mixes, 'mix'), carrierGalPer1000SqFt });

describe('rates against the label', () => {
  it('says what was asked, what is allowed, and by how much it is too much', () => {
    const limited = product('liquid', { mostPerApplication: 0.4, mostPerYear: 0.5 });
    const rates = [{ productId: 'liquid', amountPer1000SqFt: 0.6 }];
    expect(rateLimitIssues([limited], rates, 'here')).toEqual([
      {
        code: 'label-limit-broken',
        severity: 'error',
        where: 'here',
        message:
          'Liquid: 0.6 fl oz per 1,000 ft² asked, 0.4 fl oz allowed in an application (0.6 > 0.4, 50 % too much). Lower the rate to what the label allows.',
      },
      {
        code: 'label-limit-broken',
        severity: 'error',
        where: 'here',
        message:
          'Liquid: 0.6 fl oz per 1,000 ft² asked, 0.5 fl oz allowed in a year (0.6 > 0.5, 20 % too much). Lower the rate to what the label allows.',
      },
    ]);
  });

  it('a product that is not there has no limits', () => {
    expect(rateLimitIssues([], [{ productId: 'liquid', amountPer1000SqFt: 9 }], 'here')).toEqual([]);
  });
});

describe('carrier against the label', () => {
  it.each([
    [0.5, { leastCarrierGalPer1000SqFt: 1 }, 'at least 1'],
    [2.5, { mostCarrierGalPer1000SqFt: 2 }, 'at most 2'],
  ])('%d gal is told with its limit', (carrier, label, limit) => {
    expect(carrierLimitIssues([product('liquid', label), product('powder')], mixOf(carrier), 'here')).toEqual([
      {
        code: 'label-limit-broken',
        severity: 'error',
        where: 'here',
        message: `Liquid: the mix carries ${carrier} gal per 1,000 ft², the label asks for ${limit}. Change the carrier volume of mix Mix.`,
      },
    ]);
  });

  it('looks at the label of each part, and not at products that are not in the mix', () => {
    const others = [product('feed', { leastCarrierGalPer1000SqFt: 9 }), product('liquid')];
    expect(carrierLimitIssues(others, mixOf(1), 'here')).toEqual([]);
  });
});

describe('several applications on one zone', () => {
  it('their rates are added against the yearly limit', () => {
    const limited = product('liquid', { mostPerYear: 0.7 });
    // 0.8 and 1.2 fl oz on 2,000 ft2 each: 0.4 and 0.6 per 1,000.
    expect(yearLimitIssues([limited], [sprayed(0.8), sprayed(1.2)])).toEqual([
      {
        code: 'label-limit-broken',
        severity: 'error',
        where: 'property elm, zone front',
        message:
          'Liquid: 1 fl oz per 1,000 ft² asked, 0.7 fl oz allowed in a year, by 2 applications (1 > 0.7, 42.86 % too much). Lower the rate to what the label allows.',
      },
    ]);
    expect(yearLimitIssues([product('liquid', { mostPerYear: 1 })], [sprayed(0.8), sprayed(1.2)])).toEqual([]);
  });

  it('one application is not judged here, nor are two on different zones, nor one without the product or ground', () => {
    const limited = product('liquid', { mostPerYear: 0.1, leastDaysBetween: 30 });
    const cases = [
      [sprayed(0.8)],
      [sprayed(0.8), sprayed(0.8, { zoneId: 'back' })],
      [sprayed(0.8), sprayed(0.8, { propertyId: 'oak' })],
      [sprayed(0.8), sprayed(0.8, { products: [{ productId: 'powder', amount: 5, unit: 'oz' }] })],
      [sprayed(0.8), sprayed(0)],
      [sprayed(0.8), sprayed(0.8, { treatedSqFt: 0 })],
    ];
    for (const demands of cases) {
      expect(yearLimitIssues([limited], demands)).toEqual([]);
      expect(intervalIssues([limited], demands)).toEqual([]);
    }
  });

  it('days between two applications cannot be kept inside one round', () => {
    const limited = product('liquid', { leastDaysBetween: 28 });
    expect(intervalIssues([limited], [sprayed(1), sprayed(1)])).toEqual([
      {
        code: 'label-limit-broken',
        severity: 'error',
        where: 'property elm, zone front',
        message:
          'Liquid: 2 applications in one round, 0 days apart, its label asks for 28 days in between (0 < 28). Put them into rounds of their own.',
      },
    ]);
    expect(intervalIssues([product('liquid')], [sprayed(1), sprayed(1)])).toEqual([]);
  });
});

describe('rates in words', () => {
  // A gallon is 231 in3 = 3.785411784 L, a pound 0.45359237 kg, 1,000 ft2 92.90304 m2 (NIST Handbook 44, Appendix C), so 100 m2 are 1.07639.
  it.each([
    ['fl-oz', 1.2, '1.2 fl oz', '38.2 mL'],
    ['oz', 2, '2 oz', '61.03 g'],
    ['lb', 1, '1 lb', '488.2 g'],
  ] as const)('%s', (unit, amount, us, metric) => {
    expect(rateWords(unit, amount)).toBe(us);
    expect(rateWords(unit, amount, 'us')).toBe(us);
    expect(rateWords(unit, amount, 'metric')).toBe(metric);
  });
});
