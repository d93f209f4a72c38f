import { describe, expect, test } from 'vitest';
import * as units from '../../../core/units/index.ts';
import { quantity } from '../../../core/units/index.ts';

describe('exact constants', () => {
  test('an acre is 43,560 ft2 and 4,046.8564224 m2 (NIST, U.S. Survey Foot: Revised Unit Conversion Factors, 2023)', () => {
    expect(units.SQUARE_FEET_PER_ACRE * units.SQUARE_METRES_PER_SQUARE_FOOT).toBeCloseTo(4046.8564224, 9);
    expect(units.SQUARE_METRES_PER_ACRE).toBe(4046.8564224);
  });

  test('a square foot is the square of 0.3048 m, a mile 5,280 ft (same source)', () => {
    expect(units.METRES_PER_FOOT ** 2).toBeCloseTo(units.SQUARE_METRES_PER_SQUARE_FOOT, 15);
    expect(units.FEET_PER_MILE * units.METRES_PER_FOOT).toBeCloseTo(units.METRES_PER_MILE, 9);
  });

  test('a gallon is 231 cubic inches of 2.54 cm (NIST Handbook 44, from memory)', () => {
    expect((231 * 2.54 ** 3) / 1000).toBeCloseTo(units.LITRES_PER_GALLON, 12);
  });

  test('a gallon holds 128 fl oz, 8 pints of 16, 4 quarts of 32 (D. Gerken, OSU-Oklahoma City, 2013)', () => {
    expect(units.PINTS_PER_GALLON * 16).toBe(units.FLUID_OUNCES_PER_GALLON);
    expect(units.QUARTS_PER_GALLON * 32).toBe(units.FLUID_OUNCES_PER_GALLON);
  });

  test('5940 and 8.25 follow from acre, foot and mile (Mesa County; Iowa State University Extension A3-24)', () => {
    expect((units.SQUARE_FEET_PER_ACRE * 12 * 60) / units.FEET_PER_MILE).toBe(units.GPA_CONSTANT);
    expect(units.SQUARE_FEET_PER_ACRE / units.FEET_PER_MILE).toBe(units.FIELD_CAPACITY_CONSTANT);
  });
});

describe('published figures', () => {
  test('40 gal/acre is 0.918 gal per 1,000 ft2 (D. Gerken, Calibrating Application Equipment, OSU-Oklahoma City, 2013)', () => {
    expect(units.perAcreToPer1000(quantity(40))).toBeCloseTo(0.918, 3);
  });

  test('5.25 gal per 1,000 ft2 is 228.7 gal/acre (W. Buhler, Spray Gun, Pesticide Environmental Stewardship)', () => {
    expect(units.per1000ToPerAcre(quantity(5.25))).toBeCloseTo(228.7, 1);
  });

  test('14.9 gal/acre is about a third of a gallon per 1,000 ft2, within 3 % (common practice, no source)', () => {
    expect(units.perAcreToPer1000(quantity(14.9)) / (1 / 3)).toBeLessThan(1.03);
    expect(units.perAcreToPer1000(quantity(14.9)) / (1 / 3)).toBeGreaterThan(1);
  });

  test('275 gal of water weigh 2,293.5 lb at 8.34 lb/gal (figure of US Army MD0173; the product worked out here)', () => {
    expect(units.waterWeight(quantity(275))).toBeCloseTo(2293.5, 9);
  });

  test('1,320 x 120 ft are 3.636 acres (notes on the Pesticide Applicator Certification Core Manual, chapter 11)', () => {
    expect(units.squareFeetToAcres(quantity(1320 * 120))).toBeCloseTo(3.636, 3);
  });
});
