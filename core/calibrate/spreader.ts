import { err, ok, type Result } from '../base/index.ts';
import type { Feet } from '../units/index.ts';
import { quantity } from '../units/index.ts';
import { RATE_TOLERANCE } from './constants.ts';
import { allPositive } from './positive.ts';

/** A hopper weighed before and after a measured run. */
export type WeighBackTest = {
  /** Width gained with each pass (effective swath), ft. */
  readonly swathFt: number;
  readonly courseFt: number;
  readonly beforeLb: number;
  readonly afterLb: number;
};

/**
 * Delivered rate, lb per 1,000 ft2, of a weighed run. Source: UMass Extension, Rotary Spreader Calibration Procedures.
 *
 * @returns quantity-out-of-range where a figure is not above zero or nothing left the hopper
 */
export function weighBack(test: WeighBackTest): Result<number> {
  const checked = allPositive('weigh-back', [
    { name: 'effective swath, ft', value: test.swathFt },
    { name: 'course, ft', value: test.courseFt },
    { name: 'weight before, lb', value: test.beforeLb },
    { name: 'material gone, lb', value: test.beforeLb - test.afterLb },
  ]);
  if (!checked.ok) return checked;
  return ok(((test.beforeLb - test.afterLb) * 1000) / (test.courseFt * test.swathFt));
}

/** The rates that pass, in the unit of the wanted one: 5 % either side of it (UMass Extension, same page). */
export function acceptableRates(wanted: number): { readonly least: number; readonly most: number } {
  return { least: wanted * (1 - RATE_TOLERANCE), most: wanted * (1 + RATE_TOLERANCE) };
}

/**
 * Setting of the spreader for each pass where the ground is gone over several times: the rate shared out evenly, in its
 * own unit.
 */
export function ratePerPass(rate: number, passes: number): number {
  return rate / passes;
}

/**
 * Effective swath from a row of pans across the line of travel: the distance between the two points, left and right, where
 * the catch falls to half of the middle pan's, drawn straight from pan to pan.
 * Source: P. Landschoot (Penn State) in Lawn & Landscape, 2016.
 *
 * @param caught what each pan holds, left to right, in any one unit; an odd number of pans
 * @param spacingFt distance from pan to pan
 * @returns quantity-out-of-range where the row has no middle, the middle caught nothing or the pattern does not fall to half
 */
export function effectiveSwathFt(caught: readonly number[], spacingFt: number): Result<Feet> {
  const where = 'pan test';
  if (caught.length < 3 || caught.length % 2 === 0) {
    return err(
      'quantity-out-of-range',
      where,
      `${caught.length} pans have no middle one.`,
      'Use an odd number of pans, at least three.',
    );
  }
  const middle = (caught.length - 1) / 2;
  const checked = allPositive(where, [
    { name: 'pan spacing, ft', value: spacingFt },
    { name: 'middle pan', value: caught[middle] ?? Number.NaN },
  ]);
  if (!checked.ok) return checked;
  const right = pansToHalf(caught.slice(middle));
  const left = pansToHalf(caught.slice(0, middle + 1).reverse());
  if (left === null || right === null) {
    return err(
      'quantity-out-of-range',
      where,
      'The outermost pan still holds more than half of what the middle one does.',
      'Put pans farther out and repeat the run.',
    );
  }
  return ok(quantity<'ft'>((left + right) * spacingFt));
}

/** Pans from the middle (first entry) to where the catch meets half of it; null where it never does. */
function pansToHalf(outward: readonly number[]): number | null {
  const half = (outward[0] ?? 0) / 2;
  for (let pan = 1; pan < outward.length; pan += 1) {
    const inner = outward[pan - 1] ?? 0;
    const outer = outward[pan] ?? 0;
    if (outer <= half) return pan - 1 + (inner - half) / (inner - outer);
  }
  return null;
}
