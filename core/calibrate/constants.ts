import { FEET_PER_MILE, FLUID_OUNCES_PER_GALLON, SQUARE_FEET_PER_ACRE } from '../units/index.ts';

/** Feet travelled in one minute at 1 mph: 5,280 / 60 = 88, exact. */
export const FEET_PER_MINUTE_PER_MPH = FEET_PER_MILE / 60;
/** Area of ground on which caught fluid ounces equal gallons per acre: one 128th of an acre. ft2 */
export const CATCH_PLOT_SQFT = SQUARE_FEET_PER_ACRE / FLUID_OUNCES_PER_GALLON;
/** Largest difference between the delivered and the wanted rate that passes: 5 % (W. Buhler, Spray Gun, NC Cooperative Extension). */
export const RATE_TOLERANCE = 0.05;
