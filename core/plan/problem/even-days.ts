import { issue } from '../../base/index.ts';
import { wagePerMs } from '../../units/index.ts';
import type { Problem } from './types.ts';

/**
 * The problem with a price on days of unlike length, in dollars for an hour; unchanged for 0.
 *
 * A price above what the crew is paid for the same hour is noted: making a short day longer would then save more than it costs.
 */
export function withEvenDays(parts: Omit<Problem, 'hash'>, usdPerHour: number): Omit<Problem, 'hash'> {
  if (usdPerHour <= 0) return parts;
  const costPerMs = wagePerMs(usdPerHour);
  const isDear = parts.rigs.some((rig) => costPerMs > rig.costPerMs);
  const words =
    'An hour above the mean day costs more than the crew is paid for an hour, so that a longer way may pay where it makes a short day longer.';
  const issues = isDear ? [...parts.issues, issue('note', 'even-days-above-pay', 'even days', words)] : parts.issues;
  return { ...parts, evenDays: { usdPerHour, costPerMs }, issues };
}

/**
 * By how much days are longer than the mean of those that are used, summed over the days.
 *
 * @param paidMs whole length of each paid day, ms; days of 0 are not used
 * @returns ms; the mean is rounded up to a whole one, so days of equal length give 0
 */
export function daysAboveMs(paidMs: readonly number[] | Float64Array): number {
  let sum = 0;
  let used = 0;
  for (const each of paidMs) {
    sum += each;
    if (each > 0) used += 1;
  }
  const mean = Math.ceil(sum / Math.max(1, used));
  let above = 0;
  for (const each of paidMs) above += Math.max(0, each - mean);
  return above;
}

/** What the lengths of a plan's days cost for being unlike; 0 where the problem has no price for it. nano-dollars */
export function unevenCost({ evenDays }: Problem, paidMs: readonly number[] | Float64Array): number {
  return evenDays === undefined ? 0 : evenDays.costPerMs * daysAboveMs(paidMs);
}
