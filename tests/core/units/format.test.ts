import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Result } from '../../../core/base/index.ts';
import type { UnitSystem } from '../../../core/units/index.ts';
import * as units from '../../../core/units/index.ts';

describe('formatting', () => {
  test('areas', () => {
    expect(units.formatArea(12500)).toBe('12,500 ft²');
    expect(units.formatArea(12500, 'metric')).toBe('1,161 m²');
    expect(units.formatArea(1234567.4)).toBe('1,234,567 ft²');
    expect(units.formatArea(-0.001)).toBe('0.0 ft²');
    expect(units.formatLargeArea(158400)).toBe('3.64 ac');
    expect(units.formatLargeArea(10890)).toBe('0.250 ac');
    expect(units.formatLargeArea(158400, 'metric')).toBe('1.47 ha');
    expect(units.formatArea(Number.NaN)).toBe('– ft²');
  });

  test('volumes, weights, lengths', () => {
    expect(units.formatVolume(12.5)).toBe('12.5 gal');
    expect(units.formatVolume(0.25)).toBe('0.25 gal');
    expect(units.formatVolume(12.5, 'metric')).toBe('47.3 L');
    expect(units.formatWeight(21.42)).toBe('21.4 lb');
    expect(units.formatWeight(2293.5)).toBe('2,294 lb');
    expect(units.formatWeight(21.42, 'metric')).toBe('9.7 kg');
    expect(units.formatLength(159.24)).toBe('159.2 ft');
    expect(units.formatLength(75)).toBe('75 ft');
    expect(units.formatLength(75, 'metric')).toBe('22.9 m');
    expect(units.formatWidth(34)).toBe('34 in');
    expect(units.formatWidth(34.5)).toBe('34.5 in');
    expect(units.formatWidth(36, 'metric')).toBe('91 cm');
  });

  test('distances, speeds, rates', () => {
    expect(units.formatDistance(5150)).toBe('3.2 mi');
    expect(units.formatDistance(5150, 'metric')).toBe('5.2 km');
    expect(units.formatDistance(100)).toBe('328 ft');
    expect(units.formatDistance(140, 'metric')).toBe('140 m');
    expect(units.formatDistance(999, 'metric')).toBe('1.0 km');
    expect(units.formatSpeed(5)).toBe('5.0 mph');
    expect(units.formatSpeed(5, 'metric')).toBe('8.0 km/h');
    expect(units.formatRate(1 / 3)).toBe('0.33 gal/1,000 ft²');
    expect(units.formatRate(1 / 3, 'metric')).toBe('1.36 L/100 m²');
  });

  test('money, shares, slopes', () => {
    expect(units.formatMoney(1250.5)).toBe('$1,250.50');
    expect(units.formatMoney(-3)).toBe('-$3.00');
    expect(units.formatMoney(-0.001)).toBe('$0.00');
    expect(units.formatShare(0.25)).toBe('25 %');
    expect(units.formatShare(0.125)).toBe('12.5 %');
    expect(units.formatSlope(15)).toBe('15°');
    expect(units.formatSlope(12.5)).toBe('12.5°');
  });
});

type Shown = {
  readonly show: (value: number, system: UnitSystem) => string;
  readonly read: (text: string) => Result<number>;
  /** Largest value tried, in canonical units. */
  readonly most: number;
  /** What one digit in the last place shown may be worth, canonical, for any value. */
  readonly step: (value: number) => number;
};

const FEET_PER_METRE = 1 / 0.3048;
/** One litre per 100 m², in gallons per 1,000 ft². */
const GALLONS_PER_LITRE_RATE = ((1 / 3.785411784) * (1000 * 0.3048 ** 2)) / 100;

const SHOWN: Readonly<Record<string, Shown>> = {
  area: { show: units.formatArea, read: units.parseArea, most: 1e8, step: () => FEET_PER_METRE ** 2 },
  'large area': {
    show: units.formatLargeArea,
    read: units.parseArea,
    most: 1e8,
    step: (value) => (value < 43560 ? 0.001 : 0.01) * 107640,
  },
  volume: { show: units.formatVolume, read: units.parseVolume, most: 1e4, step: () => 0.1 },
  weight: { show: units.formatWeight, read: units.parseWeight, most: 1e5, step: (value) => (value < 900 ? 0.3 : 2.3) },
  length: { show: units.formatLength, read: units.parseLength, most: 1e4, step: () => 1 },
  width: { show: units.formatWidth, read: units.parseWidth, most: 500, step: () => 0.4 },
  speed: { show: units.formatSpeed, read: units.parseSpeed, most: 60, step: () => 0.1 },
  'carrier rate': {
    show: units.formatRate,
    read: units.parseCarrierRate,
    most: 90,
    // Metric figures lose a decimal from 10 L/100 m² on, which is 2.45 gal; US ones from 10 gal on.
    step: (value) => (value < 2.4 ? 0.01 : value < 9 ? 0.1 * GALLONS_PER_LITRE_RATE : 0.1),
  },
};

describe.each(Object.entries(SHOWN))('%s', (_name, { show, read, most, step }) => {
  const anyValue = fc.double({ min: 0, max: most, noNaN: true });
  const anySystem = fc.constantFrom<UnitSystem>('us', 'metric');

  test('what is shown can be typed again', () => {
    fc.assert(
      fc.property(anyValue, anySystem, (value, system) => {
        const again = read(show(value, system));
        expect(again.ok, show(value, system)).toBe(true);
        if (again.ok) expect(Math.abs(again.value - value)).toBeLessThanOrEqual(step(value) * 0.5001 + value * 1e-12);
      }),
    );
  });

  test('showing keeps the order', () => {
    fc.assert(
      fc.property(anyValue, anyValue, anySystem, (one, other, system) => {
        const [less, more] = one < other ? [one, other] : [other, one];
        const [shownLess, shownMore] = [read(show(less, system)), read(show(more, system))];
        if (shownLess.ok && shownMore.ok) expect(shownLess.value).toBeLessThanOrEqual(shownMore.value + 1e-9);
      }),
    );
  });
});
