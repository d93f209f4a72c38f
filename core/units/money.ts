import { METRES_PER_MILE, MS_PER_HOUR } from './constants.ts';

/** Money is reckoned in whole billionths of a dollar, so that sums are the same in whatever order they are made. */
export const NANO_PER_DOLLAR = 1_000_000_000;

/** Dollars per hour for one millisecond, in nano-dollars; at least 1, so that time is never free. */
export function wagePerMs(dollarsPerHour: number): number {
  return Math.max(1, Math.round((dollarsPerHour * NANO_PER_DOLLAR) / MS_PER_HOUR));
}

/**
 * Pay beyond the wage for one millisecond of overtime, in nano-dollars; the wage as `wagePerMs` gives it, the factor as
 * a multiple of it.
 */
export function overtimePerMs(wage: number, overtimeFactor: number): number {
  return Math.round(wage * Math.max(0, overtimeFactor - 1));
}

/** Dollars per mile for one metre, in nano-dollars. */
export function milesCostPerM(dollarsPerMile: number): number {
  return Math.round((dollarsPerMile * NANO_PER_DOLLAR) / METRES_PER_MILE);
}
