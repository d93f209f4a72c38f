import { describe, expect, test } from 'vitest';
import type { Result } from '../../../core/base/index.ts';
import {
  parseArea,
  parseDistance,
  parseFlow,
  parseLength,
  parseProductAmount,
  parseSpeed,
  parseVolume,
  parseWeight,
  parseWidth,
} from '../../../core/units/index.ts';

type Reader = (text: string) => Result<number>;

const READ: readonly (readonly [string, Reader, string, number])[] = [
  ['area', parseArea, '1/2 ac', 21780],
  ['area', parseArea, '1 1/2 acres', 65340],
  ['area', parseArea, '1-1/2 acres', 65340],
  ['area', parseArea, '1½ ac', 65340],
  ['area', parseArea, '½ Acre', 21780],
  ['area', parseArea, '0.25 ac', 10890],
  ['area', parseArea, '.25ac.', 10890],
  ['area', parseArea, '12,500 sq ft', 12500],
  ['area', parseArea, '12,500 Sq. Ft.', 12500],
  ['area', parseArea, '12500', 12500],
  ['area', parseArea, '12,500', 12500],
  ['area', parseArea, '1,234,567.5 ft²', 1234567.5],
  ['area', parseArea, '12.5k', 12500],
  ['area', parseArea, '12.5 k sq ft', 12500],
  ['area', parseArea, '100 sq yd', 900],
  ['area', parseArea, '900 m²', 900 / 0.3048 ** 2],
  ['area', parseArea, '900 m2', 900 / 0.3048 ** 2],
  ['area', parseArea, '0.4 ha', 4000 / 0.3048 ** 2],
  ['area', parseArea, '  12,500   ft2 ', 12500],
  ['area', parseArea, '0', 0],
  ['length', parseLength, '75', 75],
  ['length', parseLength, '75 feet', 75],
  ['length', parseLength, '3 ft 6 in', 3.5],
  ['length', parseLength, '3ft6in', 3.5],
  ['length', parseLength, '3 ft 6', 3.5],
  ['length', parseLength, `3' 6"`, 3.5],
  ['length', parseLength, '3’6″', 3.5],
  ['length', parseLength, '25 yd', 75],
  ['length', parseLength, '22.5 m', 22.5 / 0.3048],
  ['width', parseWidth, '34"', 34],
  ['width', parseWidth, '48in', 48],
  ['width', parseWidth, '36-inch', 36],
  ['width', parseWidth, '34', 34],
  ['width', parseWidth, '34 1/2', 34.5],
  ['width', parseWidth, '3 ft 6 in', 42],
  ['width', parseWidth, '90 cm', 90 / 2.54],
  ['volume', parseVolume, '20 gal', 20],
  ['volume', parseVolume, '20', 20],
  ['volume', parseVolume, '2 qt', 0.5],
  ['volume', parseVolume, '1 gal 12 fl oz', 1 + 12 / 128],
  ['volume', parseVolume, '8 oz', 1 / 16],
  ['volume', parseVolume, '4 L', 4 / 3.785411784],
  ['weight', parseWeight, '5 lb', 5],
  ['weight', parseWeight, '5 lbs.', 5],
  ['weight', parseWeight, '50#', 50],
  ['weight', parseWeight, '8 oz', 0.5],
  ['weight', parseWeight, '5 lb 8 oz', 5.5],
  ['weight', parseWeight, '2.5 kg', 2.5 / 0.45359237],
  ['speed', parseSpeed, '5 mph', 5],
  ['speed', parseSpeed, '8 km/h', 8000 / 1609.344],
  // Cornell, Sprayer Calibration: 88 ft/min are 1 mph.
  ['speed', parseSpeed, '88 ft/min', 1],
  ['flow', parseFlow, '0.25 gpm', 0.25],
  ['flow', parseFlow, '32 fl oz/min', 0.25],
  ['distance', parseDistance, '3.2', 3.2],
  ['distance', parseDistance, '5 km', 5000 / 1609.344],
];

describe('what people type', () => {
  test.each(READ)('%s: %#: "$2" ', (_noun, reader, text, expected) => {
    const read = reader(text);
    expect(read.ok, text).toBe(true);
    if (read.ok) expect(Math.abs(read.value - expected)).toBeLessThanOrEqual(1e-12 * expected);
  });

  test('8 oz is fluid or dry by what the product is measured in', () => {
    expect(parseProductAmount('8 oz', 'fl-oz')).toEqual({ ok: true, value: 8 });
    expect(parseProductAmount('8 oz', 'oz')).toEqual({ ok: true, value: 8 });
    expect(parseProductAmount('8 oz', 'lb')).toEqual({ ok: true, value: 0.5 });
    expect(parseProductAmount('2 qt', 'fl-oz')).toEqual({ ok: true, value: 64 });
    expect(parseProductAmount('1 gal 12', 'fl-oz').ok).toBe(false);
    expect(parseProductAmount('12', 'fl-oz')).toEqual({ ok: true, value: 12 });
  });
});

const UNREADABLE: readonly (readonly [Reader, string])[] = [
  [parseArea, ''],
  [parseArea, '   '],
  [parseArea, 'ac'],
  [parseArea, 'half an acre'],
  [parseArea, '1e5'],
  [parseArea, 'Infinity'],
  [parseArea, '1/0 ac'],
  [parseArea, '1 3/2 ac'],
  [parseArea, '1.2.3 ac'],
  [parseArea, '5 lb'],
  [parseArea, '12 500 sq ft'],
  [parseArea, '5 ac 200'],
  [parseArea, '5 ac of turf'],
  [parseLength, '900 ft2'],
  [parseLength, '900 ft²'],
  [parseLength, '6 in 3 ft'],
  [parseLength, '3 ft 6 ft'],
  [parseLength, '3 ft -6 in'],
  [parseVolume, '5 lb'],
  [parseWeight, '5 gal'],
  [parseWeight, '5 lb 8'],
];

const DECIMAL_COMMAS = ['1,5 ac', '0,125 ac', '12,5', '1,2345 ac', '1.500,5', '12,50 m²', '1,500,5', ',5', '0,500'];

describe('what is refused', () => {
  test.each(UNREADABLE)('%#: "$1" is unreadable, and a hint shows how to write it', (reader, text) => {
    const read = reader(text);
    expect(read.ok, text).toBe(false);
    if (!read.ok) {
      expect(read.error.code).toBe('quantity-unreadable');
      expect(read.error.hint).toMatch(/\d/);
    }
  });

  test.each(DECIMAL_COMMAS)('a decimal comma is refused, never misread: "%s"', (text) => {
    const read = parseArea(text);
    expect(read).toMatchObject({ ok: false, error: { code: 'quantity-unreadable' } });
    if (!read.ok) expect(read.error.hint).toContain('1.5');
  });

  test('a fluid ounce is no weight', () => {
    const read = parseWeight('8 fl oz');
    expect(read).toMatchObject({ ok: false, error: { code: 'quantity-unreadable' } });
    if (!read.ok) expect(read.error.detail).toContain('dry ounce');
  });

  const OUT_OF_RANGE: readonly (readonly [Reader, string])[] = [
    [parseArea, '-5 ac'],
    [parseArea, '−5'],
    [parseArea, '25,000 acres'],
    [parseArea, '9'.repeat(400)],
    [parseLength, '101 miles'],
    [parseWidth, '101 ft'],
    [parseVolume, '-1 gal'],
    [parseVolume, '100,001'],
    [parseWeight, '101 tons'],
    [parseSpeed, '101'],
    [parseFlow, '-0.1 gpm'],
  ];
  test.each(OUT_OF_RANGE)('%#: negative and absurd values are out of range', (reader, text) => {
    expect(reader(text)).toMatchObject({ ok: false, error: { code: 'quantity-out-of-range' } });
  });

  test('limits and the field of the caller are respected and named', () => {
    const read = parseWidth('30 in', { where: 'side gate', least: 32, most: 60 });
    expect(read).toMatchObject({ ok: false, error: { code: 'quantity-out-of-range', where: 'side gate' } });
    expect(parseWidth('32 in', { least: 32, most: 60 })).toEqual({ ok: true, value: 32 });
    expect(parseWidth('60 in', { least: 32, most: 60 })).toEqual({ ok: true, value: 60 });
    expect(parseWidth('61 in', { least: 32, most: 60 }).ok).toBe(false);
  });

  test('a long text is cut in the message', () => {
    const read = parseArea('x'.repeat(5000));
    if (read.ok) throw new Error('read');
    expect(read.error.detail.length).toBeLessThan(200);
  });
});
