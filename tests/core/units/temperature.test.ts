import { describe, expect, test } from 'vitest';
import {
  formatDegreeDays,
  formatTemperature,
  formatTemperatureDifference,
  parseDegreeDays,
  parseTemperature,
  parseTemperatureDifference,
} from '../../../core/units/index.ts';

describe('temperatures', () => {
  test.each([
    ['56', 56],
    ['-3 °F', -3],
    ['53.6F', 53.6],
    ['12 C', 53.6],
    ['−40 c', -40],
    ['13 degrees Celsius', 55.4],
    ['+50 deg F', 50],
  ])('"%s" is %d F', (text, expected) => {
    const read = parseTemperature(text);
    expect(read.ok && read.value).toBeCloseTo(expected, 9);
  });

  test('a bare number is in the scale that is shown', () => {
    expect(parseTemperature('10', 'x', 'C')).toEqual({ ok: true, value: 50 });
  });

  test.each([
    ['', 'quantity-unreadable'],
    ['warm', 'quantity-unreadable'],
    ['12,5', 'quantity-unreadable'],
    ['5 K', 'quantity-unreadable'],
    ['200', 'quantity-out-of-range'],
    ['100 C', 'quantity-out-of-range'],
  ])('"%s" is refused', (text, code) => expect(parseTemperature(text)).toMatchObject({ ok: false, error: { code } }));

  test('are shown in either scale', () => {
    expect(formatTemperature(53.6)).toBe('53.6 °F');
    expect(formatTemperature(53.6, 'metric')).toBe('12 °C');
    expect(formatTemperature(-40, 'metric')).toBe('-40 °C');
    expect(formatTemperatureDifference(5)).toBe('+5 °F');
    expect(formatTemperatureDifference(-9, 'metric')).toBe('-5 °C');
    expect(formatTemperatureDifference(0)).toBe('0 °F');
    expect(formatDegreeDays(1250)).toBe('1,250 °F days');
    expect(formatDegreeDays(450, 'metric')).toBe('250 °C days');
  });

  test('differences and counts have no zero point to shift', () => {
    expect(parseTemperatureDifference('-5 C')).toEqual({ ok: true, value: -9 });
    expect(parseTemperatureDifference('120')).toMatchObject({ ok: false });
    expect(parseDegreeDays('250 C days')).toEqual({ ok: true, value: 450 });
    expect(parseDegreeDays('1,250 °F days')).toEqual({ ok: true, value: 1250 });
    expect(parseDegreeDays('-1')).toMatchObject({ ok: false, error: { code: 'quantity-out-of-range' } });
  });
});
