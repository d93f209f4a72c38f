/**
 * Exact conversion factors and the few trade figures of the program, each with its source.
 *
 * - NIST, U.S. Survey Foot: Revised Unit Conversion Factors, 2023: international foot 0.3048 m, acre 43,560 ft2 =
 *   4,046.8564224 m2, mile 1,609.344 m. The U.S. survey foot (2 parts in a million longer, retired at the end of 2022) is
 *   not used.
 * - NIST Handbook 44, appendix C (from memory): gallon of 231 cubic inches, pound of 0.45359237 kg, ounces to the pound.
 */

/** Metres to the international foot, exact. */
export const METRES_PER_FOOT = 0.3048;
/** Inches to the foot, exact. */
export const INCHES_PER_FOOT = 12;
/** Feet to the yard, exact. */
export const FEET_PER_YARD = 3;
/** Feet to the statute mile, exact. */
export const FEET_PER_MILE = 5280;
/** Metres to the statute mile: 5,280 international feet, exact. */
export const METRES_PER_MILE = 1609.344;
/** 0.3048 squared, exact. */
export const SQUARE_METRES_PER_SQUARE_FOOT = 0.09290304;
/** Square feet to the acre, exact. */
export const SQUARE_FEET_PER_ACRE = 43560;
/** Square metres to the acre: 43,560 square feet of 0.3048 m, exact. */
export const SQUARE_METRES_PER_ACRE = 4046.8564224;
/** Square metres to the hectare, exact. */
export const SQUARE_METRES_PER_HECTARE = 10000;
/** 231 cubic inches of 2.54 cm each, exact. */
export const LITRES_PER_GALLON = 3.785411784;
/** Pints of 16 fl oz, quarts of 32: D. Gerken, Calibrating Application Equipment, OSU-Oklahoma City, 2013. */
export const FLUID_OUNCES_PER_GALLON = 128;
/** Pints to the gallon (same source). */
export const PINTS_PER_GALLON = 8;
/** Quarts to the gallon (same source). */
export const QUARTS_PER_GALLON = 4;
/** Kilograms to the avoirdupois pound, exact. */
export const KILOGRAMS_PER_POUND = 0.45359237;
/** Ounces of weight to the pound, exact. */
export const OUNCES_PER_POUND = 16;
/** Short ton. */
export const POUNDS_PER_TON = 2000;
/** Trade figure for the weight of water: US Army MD0173, Pesticides in the Military. Not exact (8.33 at 62 F). */
export const WATER_POUNDS_PER_GALLON = 8.34;
/** Seconds to the minute. */
export const SECONDS_PER_MINUTE = 60;
/** Seconds to the hour. */
export const SECONDS_PER_HOUR = 3600;
/** Seconds to the day by the clock; a day on which the clock changes has more or fewer. */
export const SECONDS_PER_DAY = 86400;
/** Milliseconds to the second. */
export const MS_PER_SECOND = 1000;
/** Milliseconds to the minute. */
export const MS_PER_MINUTE = 60_000;
/** Milliseconds to the hour. */
export const MS_PER_HOUR = 3_600_000;
/** Milliseconds to the day by the clock, as `SECONDS_PER_DAY`. */
export const MS_PER_DAY = 86_400_000;
/**
 * Gallons per acre = 5940 x (gal/min) / (mph x inches): Mesa County, Stationary Calibration Method for Boom Sprayers.
 * It is 43,560 x 12 x 60 / 5,280 and so exact.
 */
export const GPA_CONSTANT = 5940;
/** Acres per hour = mph x ft / 8.25 before efficiency: Iowa State University Extension A3-24. 43,560 / 5,280, exact. */
export const FIELD_CAPACITY_CONSTANT = 8.25;
/** Rates of the trade are counted on this much ground, ft2. */
export const RATE_AREA_SQFT = 1000;
