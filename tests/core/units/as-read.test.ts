import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asRead, formatArea, formatVolume, formatWeight, type Reading } from '../../../core/units/index.ts';

const US: Reading = { units: 'us', clock: '12-hour', dates: 'month-first' };
const METRIC: Reading = { units: 'metric', clock: '24-hour', dates: 'month-first' };

/**
 * Factors: international foot 0.3048 m, mile 1,609.344 m, acre 4,046.856 m2 (NIST, U.S. Survey Foot: Revised Unit Conversion Factors,
 * 2023); gallon 3.785411784 L, pound 0.45359237 kg (NIST Handbook 44, appendix C, from memory).
 */
describe('sentences of the program in metric units', () => {
  test.each([
    ['gate 34 in, machine 36 in', 'gate 86.4 cm, machine 91.4 cm'],
    [
      'gate 36 in (side gate, the narrowest of 2), machine 35.98 in: 0.02 in to spare',
      'gate 91.4 cm (side gate, the narrowest of 2), machine 91.389 cm: 0.051 cm to spare',
    ],
    ['this zone still needs 2.4 gal.', 'this zone still needs 9.1 L.'],
    ['3,670 ft² covered for 2,956 ft² treated, 24.2 % overlap', '341 m² covered for 275 m² treated, 24.2 % overlap'],
    ['At least 45 ft2 are not reached', 'At least 4.2 m² are not reached'],
    [
      'fits with 12 min more on 2027-03-11, first thing, or with 10.0 gal more in Stand-on 35, tank',
      'fits with 12 min more on Thu Mar 11, 2027, first thing, or with 37.9 L more in Stand-on 35, tank',
    ],
    ['wind 12 mph (Forecrop: at most 10 mph)', 'wind 19.3 km/h (Forecrop: at most 16.1 km/h)'],
    ['air 50 °F (Forecrop: at least 59 °F)', 'air 10 °C (Forecrop: at least 15 °C)'],
    ['hose 200 ft, way to the farthest corner not known', 'hose 61.0 m, way to the farthest corner not known'],
    ['1 gal 12 fl oz of it', '4.14 L of it'],
    ['2 lb 3.5 oz of it', '1.01 kg of it'],
    ['home by 2:03 pm, not before 9:30 am', 'home by 14:03, not before 9:30'],
    ['12:10 am', '0:10'],
    ['machine 1,200 lb full, wet ground carries 900 lb', 'machine 544.3 kg full, wet ground carries 408.2 kg'],
  ])('%s', (us, metric) => {
    expect(asRead(us, METRIC)).toBe(metric);
  });

  test.each([
    '9 days in 10 home by then',
    '7 days in a row',
    'the 1 likeliest of its 678 places in the plan',
    '16 bags in 14 bag places: 2 too many',
    'Take stop 3 in the morning',
    '',
  ])('%s has nothing to change', (text) => {
    expect(asRead(text, METRIC)).toBe(text);
  });

  test('names keep what they hold', () => {
    const names = ['Hose reel 200 ft', 'Hose reel 200 ft, long', 'Spreader 40 lb'];
    expect(asRead('Hose reel 200 ft, long takes 9 min; Spreader 40 lb for 2,000 ft²', METRIC, names)).toBe(
      'Hose reel 200 ft, long takes 9 min; Spreader 40 lb for 186 m²',
    );
  });

  test('what the formatters write in US units is read as they write it in metric ones', () => {
    const figure = fc.double({ min: 20, max: 90_000, noNaN: true });
    fc.assert(
      fc.property(figure, (value) => {
        // The sentence holds a rounded figure; its metric form is that of the rounded one.
        const round = (text: string) => Number(text.replace(/[^\d.]/g, ''));
        for (const format of [formatArea, formatVolume, formatWeight]) {
          const us = format(value, 'us');
          expect(asRead(`${us}.`, METRIC)).toBe(`${format(round(us.replace('²', '')), 'metric')}.`);
        }
      }),
    );
  });

  const SENTENCE = 'gate 34 in by 1:30 pm on 2027-03-11';
  test.each<[Partial<Reading>, string]>([
    [{}, 'gate 34 in by 1:30 pm on Thu Mar 11, 2027'],
    [{ clock: '24-hour' }, 'gate 34 in by 13:30 on Thu Mar 11, 2027'],
    [{ dates: 'day-first' }, 'gate 34 in by 1:30 pm on Thu 11 Mar 2027'],
    [{ units: 'metric' }, 'gate 86.4 cm by 1:30 pm on Thu Mar 11, 2027'],
  ])('units, clock and dates are each read on their own: %o', (wish, told) => {
    expect(asRead(SENTENCE, { ...US, ...wish })).toBe(told);
  });

  test.each(['written at 2027-03-11T07:30', 'plan-2027-03-11.json', 'order 12027-03-11', '2027-13-41 is no date'])(
    'what only looks like a date stays: %s',
    (text) => {
      expect(asRead(text, METRIC)).toBe(text);
    },
  );
});
