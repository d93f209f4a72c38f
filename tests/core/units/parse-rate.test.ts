import { describe, expect, test } from 'vitest';
import { parseCarrierRate, parseMoney, parseProductRate, parseShare, parseSlope } from '../../../core/units/index.ts';

const value = (read: { ok: true; value: number } | { ok: false }): number => {
  if (!read.ok) throw new Error('not read');
  return read.value;
};

describe('carrier rates', () => {
  test.each([
    ['0.33 gal/1000', 0.33],
    ['0.33', 0.33],
    ['1/3', 1 / 3],
    ['1/3 gal per 1,000 sq ft', 1 / 3],
    ['1 qt / 1000 ft²', 0.25],
    ['2 gal per 1000', 2],
    ['2 gal/k', 2],
    ['14.9 gpa', 14.9 / 43.56],
    ['14.9 GPA', 14.9 / 43.56],
    // D. Gerken, Calibrating Application Equipment, OSU-Oklahoma City, 2013: 40 gal/acre, 0.92 gal per 1,000 ft2.
    ['40 gal/acre', 40 / 43.56],
    ['1 L/100 m²', 1 / 3.785411784 / (100 / 0.3048 ** 2 / 1000)],
    ['140 L/ha', 140 / 3.785411784 / (10000 / 0.3048 ** 2 / 1000)],
  ])('%s', (text, expected) => {
    expect(value(parseCarrierRate(text))).toBeCloseTo(expected, 12);
  });

  test.each(['gal', '1 gal/100', '1 gal/lawn', '5 lb/1000', '1,5 gal/1000', ''])('"%s" is unreadable', (text) => {
    expect(parseCarrierRate(text)).toMatchObject({ error: { code: 'quantity-unreadable' } });
  });

  test.each(['-1 gpa', '500 gal/1000', '-0.3'])('"%s" is out of range', (text) => {
    expect(parseCarrierRate(text)).toMatchObject({ error: { code: 'quantity-out-of-range' } });
  });

  test('a decimal comma keeps its own hint and names the whole text', () => {
    const read = parseCarrierRate('1,5 gal/1000');
    expect(read).toMatchObject({
      error: { detail: expect.stringContaining('1,5 gal/1000'), hint: expect.stringContaining('1.5') },
    });
  });
});

describe('product rates', () => {
  test('3.6 pints/acre are 1.3 fl oz per 1,000 ft2 (D. Gerken, OSU-Oklahoma City, 2013)', () => {
    expect(value(parseProductRate('3.6 pt/acre', 'fl-oz'))).toBeCloseTo(1.322, 3);
  });

  test('5.2 lb per 1,000 ft2 are 226.5 lb/acre (a granular label prints 225: label database entry 40896)', () => {
    expect(value(parseProductRate('226.5 lb/acre', 'lb'))).toBeCloseTo(5.2, 3);
    expect(value(parseProductRate('5.2', 'lb'))).toBe(5.2);
  });

  test('ounces follow the product', () => {
    expect(value(parseProductRate('1.3 oz/1000', 'fl-oz'))).toBeCloseTo(1.3, 12);
    expect(value(parseProductRate('8 oz/1000', 'lb'))).toBe(0.5);
    expect(parseProductRate('1.3 fl oz/1000', 'oz')).toMatchObject({ error: { code: 'quantity-unreadable' } });
  });
});

describe('shares, slopes and money', () => {
  test('shares are written with % or as a part of one', () => {
    expect(value(parseShare('25 %'))).toBe(0.25);
    expect(value(parseShare('0.25'))).toBe(0.25);
    expect(value(parseShare('1/4'))).toBe(0.25);
    expect(value(parseShare('100%'))).toBe(1);
    expect(parseShare('25')).toMatchObject({ error: { code: 'quantity-out-of-range' } });
    expect(parseShare('101 %')).toMatchObject({ error: { code: 'quantity-out-of-range' } });
    expect(parseShare('-5 %')).toMatchObject({ error: { code: 'quantity-out-of-range' } });
    expect(parseShare('2,5 %')).toMatchObject({ error: { code: 'quantity-unreadable' } });
  });

  test('slopes are degrees, grades or ratios', () => {
    expect(value(parseSlope('15'))).toBe(15);
    expect(value(parseSlope('15°'))).toBe(15);
    expect(value(parseSlope('27 %'))).toBeCloseTo(15.11, 2);
    expect(value(parseSlope('1:1'))).toBeCloseTo(45, 12);
    expect(parseSlope('1:0')).toMatchObject({ error: { code: 'quantity-out-of-range' } });
    expect(parseSlope('61')).toMatchObject({ error: { code: 'quantity-out-of-range' } });
  });

  test('money', () => {
    expect(value(parseMoney('$1,250.50'))).toBe(1250.5);
    expect(value(parseMoney('45'))).toBe(45);
    expect(parseMoney('-$3')).toMatchObject({ error: { code: 'quantity-out-of-range' } });
    expect(parseMoney('$12,50')).toMatchObject({ error: { code: 'quantity-unreadable' } });
    expect(parseMoney('$')).toMatchObject({ error: { code: 'quantity-unreadable' } });
  });
});
