import { describe, expect, it } from 'vitest';
import { formatBearing, parseBearing } from '../../../core/units/index.ts';

describe('a bearing', () => {
  it.each([
    ['N', 0],
    ['ne', 45],
    ['SSW', 202.5],
    ['45', 45],
    ['45°', 45],
    ['112.5 deg', 112.5],
    ['360', 0],
  ])('is read from "%s"', (text, degrees) => {
    expect(parseBearing(text)).toEqual({ ok: true, value: degrees });
  });

  it.each([
    ['up', 'quantity-unreadable'],
    ['', 'quantity-unreadable'],
    ['-10', 'quantity-out-of-range'],
    ['361', 'quantity-out-of-range'],
  ])('is refused for "%s"', (text, code) => {
    expect(parseBearing(text)).toMatchObject({ ok: false, error: { code } });
  });

  it('is written with the nearest point of the compass, and read again', () => {
    expect([0, 45, 203, 350, 359].map(formatBearing)).toEqual(['0° N', '45° NE', '203° SSW', '350° N', '359° N']);
    for (const degrees of [0, 45, 203, 350])
      expect(parseBearing(formatBearing(degrees))).toEqual({ ok: true, value: degrees });
  });
});
