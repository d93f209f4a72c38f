/**
 * A way as one whole number, so that every search has one answer and all give the same: fewest entries to roads that are for
 * those who have business there, then least time, then least length. weight = (entries x 2^20 + tenths of a second) x 2^25 +
 * decimetres. Sums of weights are the weights of sums up to 29 hours, 3,355 km and 256 entries, which a Float64 holds exactly.
 */
const LENGTHS = 2 ** 25;
const TIMES = 2 ** 20;

/** Ways that weigh as much or more are none. */
export const NO_WAY = 2 ** 53;
/** Keeps through traffic off a road: it is used only where no other way is. */
export const ENTRY = TIMES * LENGTHS;

export function weightOf(durationDs: number, lengthDm: number): number {
  return durationDs * LENGTHS + lengthDm;
}

export function durationDsOf(weight: number): number {
  return Math.floor(weight / LENGTHS) % TIMES;
}

export function lengthDmOf(weight: number): number {
  return weight % LENGTHS;
}

export function entriesOf(weight: number): number {
  return Math.floor(weight / ENTRY);
}
