import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as units from '../../../core/units/index.ts';

type Conversion = (value: never) => number;

/** Each pair must undo the other. */
const PAIRS: Readonly<Record<string, readonly [Conversion, Conversion]>> = {
  'ft2 and acres': [units.squareFeetToAcres, units.acresToSquareFeet],
  'ft2 and m2': [units.squareFeetToSquareMetres, units.squareMetresToSquareFeet],
  'ft and m': [units.feetToMetres, units.metresToFeet],
  'ft and in': [units.feetToInches, units.inchesToFeet],
  'm and miles': [units.metresToMiles, units.milesToMetres],
  'gal and fl oz': [units.gallonsToFluidOunces, units.fluidOuncesToGallons],
  'gal and L': [units.gallonsToLitres, units.litresToGallons],
  'lb and kg': [units.poundsToKilograms, units.kilogramsToPounds],
  'min and s': [units.minutesToSeconds, units.secondsToMinutes],
  'gal/acre and gal/1,000 ft2': [units.perAcreToPer1000, units.per1000ToPerAcre],
};

const anyValue = fc.double({ min: 1e-6, max: 1e9, noNaN: true });

describe.each(Object.entries(PAIRS))('%s', (_name, [to, back]) => {
  test('there and back is within 4 ulp', () => {
    fc.assert(
      fc.property(anyValue, (value) => {
        expect(Math.abs(back(to(value as never) as never) - value)).toBeLessThanOrEqual(4 * Number.EPSILON * value);
      }),
    );
  });

  test('the order is kept', () => {
    fc.assert(
      fc.property(anyValue, anyValue, (one, other) => {
        const [less, more] = one < other ? [one, other] : [other, one];
        expect(to(less as never)).toBeLessThanOrEqual(to(more as never));
      }),
    );
  });
});

test('a grade of 27 % is 15 degrees, 100 % is 45', () => {
  expect(units.gradeToDegrees(0.27)).toBeCloseTo(15.11, 2);
  expect(units.gradeToDegrees(1)).toBeCloseTo(45, 12);
  expect(units.degreesToGrade(units.gradeToDegrees(0.333))).toBeCloseTo(0.333, 12);
});
