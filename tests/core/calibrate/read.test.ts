import { describe, expect, it } from 'vitest';
import { readBlank, readList } from '../../../core/calibrate/bench/read.ts';
import { type Blank, SHEETS } from '../../../core/calibrate/index.ts';

const blankOf = (kind: string, name: string): Blank =>
  SHEETS.find((each) => each.kind === kind)!.blanks.find((each) => each.name === name)!;

function read(kind: string, name: string, text: string, unit: 'fl-oz' | 'oz' | 'lb' = 'fl-oz'): number | string {
  const value = readBlank(blankOf(kind, name), text, unit);
  return value.ok ? Number(value.value.toPrecision(9)) : value.error.code;
}

describe('figures as they are typed', () => {
  it.each<readonly [string, string, string, number | string]>([
    ['boom', 'mph', '5', 5],
    ['boom', 'mph', '8.04672 km/h', 5],
    ['boom', 'spacing-in', '20', 20],
    ['boom', 'spacing-in', '50.8 cm', 20],
    ['boom', 'gpa', '43.56', 43.56],
    ['boom', 'gpa', '1 gal/1000', 43.56],
    ['boom', 'gal-per-1000', '43.56 gpa', 1],
    ['boom', 'psi', '40 psi', 40],
    ['boom', 'psi', '40 bar', 'quantity-unreadable'],
    ['boom', 'psi', '-40', -40],
    ['boom', 'tips', '1,200', 1200],
    ['boom', 'tips', '', 'quantity-unreadable'],
    ['boom', 'mph', '-5', 'quantity-out-of-range'],
    ['speed', 'seconds', '78', 78],
    ['speed', 'seconds', '78.4 s', 78.4],
    ['speed', 'seconds', '1:18', 78],
    ['speed', 'seconds', '1:18.5', 78.5],
    ['speed', 'seconds', '1 min 18 s', 78],
    ['capacity', 'minutes', '90', 90],
    ['capacity', 'minutes', '1.5 h', 90],
    ['capacity', 'efficiency', '65 %', 0.65],
    ['capacity', 'efficiency', '0.65', 0.65],
    ['granular', 'lb-per-acre', '43.56', 43.56],
    ['granular', 'lb-per-acre', '1 lb/1000', 43.56],
    ['granular', 'lb-per-1000', '217.8 lb/acre', 5],
    ['mix', 'product-per-acre', '3.6 pt', 57.6],
    ['catch', 'oz', '1 qt', 32],
  ])('%s %s: "%s" is %s', (kind, name, text, value) => {
    expect(read(kind, name, text)).toBe(value);
  });

  it('amounts of a product are in its unit', () => {
    expect(read('mix', 'product-per-tank', '2 lb', 'oz')).toBe(32);
    expect(read('mix', 'product-per-tank', '8 oz', 'lb')).toBe(0.5);
    expect(read('mix', 'product-per-tank', '8 fl oz', 'lb')).toBe('quantity-unreadable');
  });

  it('lists: bare numbers with commas, semicolons or spaces between; figures with units with commas', () => {
    const seconds = blankOf('speed', 'seconds');
    const list = (text: string) => {
      const values = readList(seconds, text, 'fl-oz');
      return values.ok ? values.value : values.error.code;
    };
    expect(list('77, 79,78')).toEqual([77, 79, 78]);
    expect(list('77 79;78')).toEqual([77, 79, 78]);
    expect(list('1:17, 79 s')).toEqual([77, 79]);
    expect(list(' , ')).toBe('quantity-unreadable');
    expect(list('77, soon')).toBe('quantity-unreadable');
  });
});
