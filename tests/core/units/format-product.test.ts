import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatMeasured,
  formatProductAmount,
  formatProductRate,
  formatWithSmaller,
  type ProductUnit,
  parseProductAmount,
} from '../../../core/units/index.ts';

describe('amounts of products', () => {
  test.each([
    [12.4, 'fl-oz', '12.4 fl oz'],
    [140, 'fl-oz', '1 gal 12 fl oz'],
    [128, 'fl-oz', '1 gal'],
    // Rounding first, so that nothing like "0 gal 128 fl oz" comes out.
    [127.97, 'fl-oz', '1 gal'],
    [255.99, 'fl-oz', '2 gal'],
    [0.37, 'fl-oz', '0.37 fl oz'],
    [35.5, 'oz', '2 lb 3.5 oz'],
    [15.98, 'oz', '1 lb'],
    [21.42, 'lb', '21.4 lb'],
    [1500, 'lb', '1,500 lb'],
    [0, 'fl-oz', '0 fl oz'],
  ] as const)('%d %s', (amount, unit, shown) => {
    expect(formatProductAmount(amount, unit)).toBe(shown);
  });

  test('metric', () => {
    expect(formatProductAmount(140, 'fl-oz', 'metric')).toBe('4.14 L');
    expect(formatProductAmount(12.4, 'fl-oz', 'metric')).toBe('366.7 mL');
    expect(formatProductAmount(5, 'lb', 'metric')).toBe('2.27 kg');
    expect(formatProductAmount(0.5, 'oz', 'metric')).toBe('14.2 g');
  });

  test.each([
    [133.2, 'fl-oz', '133.2 fl oz', '1 gal 5.2 fl oz'],
    [14.6, 'fl-oz', '14.6 fl oz', ''],
    [33.3, 'oz', '33.3 oz', '2 lb 1.3 oz'],
    [132.5, 'lb', '132.5 lb', '132 lb 8 oz'],
    [150, 'lb', '150 lb', ''],
    [1.5, 'gal', '1.5 gal', '1 gal 64 fl oz'],
    // 0.9 gal are 115 fl oz.
    [17.9, 'gal', '17.9 gal', '17 gal 115 fl oz'],
    [0.5, 'gal', '0.50 gal', ''],
    [Number.NaN, 'gal', '–', ''],
  ] as const)('%d %s in its own unit, and with the next smaller one', (amount, unit, own, smaller) => {
    expect(formatMeasured(amount, unit)).toBe(own);
    expect(formatWithSmaller(amount, unit)).toBe(smaller);
  });

  test('metric amounts with the next smaller unit', () => {
    // 17.9 gal x 3.785411784 = 67.759 L; 132.5 lb x 0.45359237 = 60.101 kg.
    expect([formatMeasured(17.9, 'gal', 'metric'), formatWithSmaller(17.9, 'gal', 'metric')]).toEqual([
      '67.8 L',
      '67 L 759 mL',
    ]);
    expect(formatWithSmaller(132.5, 'lb', 'metric')).toBe('60 kg 101 g');
    expect(formatWithSmaller(1, 'oz', 'metric')).toBe('');
  });

  test('rates', () => {
    expect(formatProductRate(0.37, 'fl-oz')).toBe('0.37 fl oz/1,000 ft²');
    expect(formatProductRate(5, 'lb')).toBe('5 lb/1,000 ft²');
    // 5 lb on 1,000 ft2 are 2,268 g on 92.9 m2.
    expect(formatProductRate(5, 'lb', 'metric')).toBe('2.44 kg/100 m²');
  });

  test('what is shown can be typed again, to the last place shown', () => {
    const anyUnit = fc.constantFrom<ProductUnit>('fl-oz', 'oz', 'lb');
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), anyUnit, (amount, unit) => {
        const again = parseProductAmount(formatProductAmount(amount, unit), unit);
        expect(again.ok).toBe(true);
        const step = amount < 0.9 ? 0.001 : amount < 99 && unit === 'lb' ? 0.1 : 1;
        if (again.ok) expect(Math.abs(again.value - amount)).toBeLessThanOrEqual(step * 0.5001);
      }),
    );
  });
});
