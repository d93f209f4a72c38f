import { ok, type Result } from '../base/index.ts';
import type { MilesPerHour, Seconds } from '../units/index.ts';
import { quantity } from '../units/index.ts';
import { FEET_PER_MINUTE_PER_MPH } from './constants.ts';
import { allPositive } from './positive.ts';

/**
 * Speed over a timed course: mph = ft x 60 / (s x 88). Source: Cornell, Sprayer Calibration (with the page's misprint of 80
 * for 88 put right).
 *
 * @returns quantity-out-of-range where a figure is not above zero
 */
export function speedFromCourse(courseFt: number, courseSec: number): Result<MilesPerHour> {
  const checked = allPositive('speed course', [
    { name: 'course, ft', value: courseFt },
    { name: 'time, s', value: courseSec },
  ]);
  if (!checked.ok) return checked;
  return ok(quantity<'mph'>((courseFt * 60) / (courseSec * FEET_PER_MINUTE_PER_MPH)));
}

/** Seconds that a course takes: ft x 60 / (88 x mph). */
export function secondsForCourse(courseFt: number, mph: number): Seconds {
  return quantity<'s'>((courseFt * 60) / (FEET_PER_MINUTE_PER_MPH * mph));
}

/**
 * Speed at which a machine delivers the wanted rate with pressure unchanged: old speed x old output / wanted output.
 * Source: Nova Scotia applicator practice page. Rates may be per acre or per 1,000 ft2, both in the same unit.
 */
export function speedForRate(mph: number, deliveredRate: number, wantedRate: number): MilesPerHour {
  return quantity<'mph'>((mph * deliveredRate) / wantedRate);
}
