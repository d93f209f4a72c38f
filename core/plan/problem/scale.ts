import { MS_PER_MINUTE } from '../../units/index.ts';

/** Turning the book's figures into the whole numbers of a problem. Demands, times and weights go up, capacities down. */

export const PARTS_PER_UNIT = 100;
/** 8.34 lb per gallon of water, in ten-thousandths of a pound per hundredth of a gallon. */
export const WATER_WEIGHT_PER_PART = 834;
export const DRY_WEIGHT_PER_PART = 100;
// Keeps 20.000000001 from becoming 2001 parts.
const ROUNDING_SLACK = 1e-6;

/** Minutes to milliseconds, rounded up. */
export function minutesToMs(minutes: number): number {
  return Math.ceil(minutes * MS_PER_MINUTE - ROUNDING_SLACK);
}

/** Gallons or pounds needed, to parts, rounded up. */
export function demandParts(amount: number): number {
  return Math.ceil(amount * PARTS_PER_UNIT - ROUNDING_SLACK);
}

/** Gallons or pounds that fit, to parts, rounded down. */
export function capacityParts(amount: number): number {
  return Math.max(0, Math.floor(amount * PARTS_PER_UNIT + ROUNDING_SLACK));
}

/** Flow in gallons per minute to milliseconds per part, rounded up. */
export function flowToMsPerPart(gallonsPerMinute: number): number {
  return Math.ceil(MS_PER_MINUTE / (gallonsPerMinute * PARTS_PER_UNIT) - ROUNDING_SLACK);
}

/** Minutes for one bag to milliseconds per part, rounded up. */
export function bagToMsPerPart(minutesPerBag: number, bagLb: number): number {
  return Math.ceil((minutesPerBag * MS_PER_MINUTE) / (bagLb * PARTS_PER_UNIT) - ROUNDING_SLACK);
}

/** Whole ft2, rounded up, at least one. */
export function areaUnits(squareFeet: number): number {
  return Math.max(1, Math.ceil(squareFeet - ROUNDING_SLACK));
}
