/**
 * How far a figure of a plan's JSON form may be off before the judge minds. Plans carry decimals of whole milliseconds, whole
 * hundredths of a gallon or pound and whole ft2, so that every allowance is well below one such unit.
 */

/** Times of one activity, ms. */
export const TIME_SLACK_MS = 0.5;
/** Levels, parts (hundredths of a gallon or a pound). */
export const LEVEL_SLACK_PARTS = 0.05;
/** Ground, ft2. */
export const GROUND_SLACK_SQ_FT = 0.5;
/** Weight aboard, ten-thousandths of a pound. */
export const WEIGHT_SLACK = 50;
/** Stated draws and fills against those worked out, gal or lb. */
export const AMOUNT_SLACK = 0.0105;
/** Stated shares, and rates as multiples of one pass. */
export const SHARE_SLACK = 0.0005;
/** Stated sums of seconds. */
export const SUM_SLACK_SEC = 0.05;
/** Stated metres. */
export const DISTANCE_SLACK_M = 0.5;
/** Stated dollars: plans may round each day to whole cents. */
export const COST_SLACK_USD = 0.0105;

// A figure within this distance of a whole number is that number.
const SNAP = 0.02;

/** Gallons or pounds of a plan as parts; decimals that stand for a whole number of parts become that number. */
export function partsOf(amount: number): number {
  return snap(amount * 100);
}

/** Seconds of a plan as milliseconds. */
export function msOf(seconds: number): number {
  return snap(seconds * 1000);
}

/** Where a piece of work begins and ends, ft2; decimals that stand for a whole number become that number. */
export function marksOf(treat: { readonly doneSqFt: number; readonly areaSqFt: number }): readonly [number, number] {
  return [snap(treat.doneSqFt), snap(treat.doneSqFt + treat.areaSqFt)];
}

function snap(figure: number): number {
  const whole = Math.round(figure);
  return Math.abs(figure - whole) < SNAP ? whole : figure;
}

/** Clock time in words for messages, "7:05:09". */
export function clockWords(ms: number): string {
  const seconds = Math.round(ms / 1000);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${Math.floor(seconds / 3600)}:${two(Math.floor((seconds % 3600) / 60))}:${two(seconds % 60)}`;
}

/** Parts in words for messages, "12.5". */
export function amountWords(parts: number): string {
  return String(Math.round(parts) / 100);
}
