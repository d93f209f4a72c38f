import { ok, type Result } from '../base/index.ts';
import { type Feet, type GallonsPerAcre, quantity, SQUARE_FEET_PER_ACRE } from '../units/index.ts';
import { CATCH_PLOT_SQFT } from './constants.ts';
import { allPositive } from './positive.ts';

/**
 * Course for the 1/128-acre method: (43,560 / 128) / width. One tip caught for the time this course takes gives
 * gal/acre as its fluid ounces. Source: Ohio State University Extension, Bulletin 817-00.
 *
 * @param widthIn spacing of the tips, or the width of a sprayed band, inches
 */
export function catchPlotCourseFt(widthIn: number): Feet {
  return quantity<'ft'>((CATCH_PLOT_SQFT * 12) / widthIn);
}

/** What was done for the 1/128-acre method. */
export type CatchPlotTest = {
  readonly widthIn: number;
  /** Course really driven, ft; the caught ounces are scaled where it is not the exact one. */
  readonly courseFt: number;
  /** Fluid ounces caught from each tip during the time of the course. */
  readonly caughtOunces: readonly number[];
};

/** What one tip gave: fluid ounces, and how it compares with the others. */
export type TipReading = {
  readonly ounces: number;
  /** Difference from the mean of all tips, a share: 0.1 is 10 % above. */
  readonly offMean: number;
  readonly verdict: 'even' | 'watch' | 'replace';
};

/** What a catch shows: the rate in gallons an acre, and the tips in the order in which they were caught. */
export type CatchPlotResult = { readonly rate: GallonsPerAcre; readonly tips: readonly TipReading[] };

/**
 * Rate and evenness from the 1/128-acre method. A tip more than 5 % off the mean wants watching, more than 10 % a new tip
 * (J. Nedin, SportsTurf, September 2012, STMA, and a Florida study guide give 5 and 10 %).
 *
 * @returns quantity-out-of-range where a figure is not above zero or nothing was caught
 */
export function catchPlot(test: CatchPlotTest): Result<CatchPlotResult> {
  const mean = test.caughtOunces.reduce((sum, each) => sum + each, 0) / test.caughtOunces.length;
  const checked = allPositive('1/128-acre catch', [
    { name: 'width, in', value: test.widthIn },
    { name: 'course, ft', value: test.courseFt },
    ...test.caughtOunces.map((value, index) => ({ name: `tip ${index + 1}, fl oz`, value })),
    { name: 'mean catch, fl oz', value: mean },
  ]);
  if (!checked.ok) return checked;
  const rate = (mean * catchPlotCourseFt(test.widthIn)) / test.courseFt;
  return ok({ rate: quantity<'gpa'>(rate), tips: test.caughtOunces.map((ounces) => tipReading(ounces, mean)) });
}

function tipReading(ounces: number, mean: number): TipReading {
  const offMean = ounces / mean - 1;
  const off = Math.abs(offMean) - 1e-9;
  return { ounces, offMean, verdict: off > 0.1 ? 'replace' : off > 0.05 ? 'watch' : 'even' };
}

/**
 * Rate from what a measured run used: gal x 43,560 / (course ft x swath ft). Over 660 ft this is the 66 / swath rule
 * (Florida pest control study guide), on a quarter acre it is four times the gallons (Boom or Boomless Volume Method).
 *
 * @returns quantity-out-of-range where a figure is not above zero
 */
export function rateFromRun(usedGal: number, courseFt: number, swathFt: number): Result<GallonsPerAcre> {
  const checked = allPositive('volume run', [
    { name: 'used, gal', value: usedGal },
    { name: 'course, ft', value: courseFt },
    { name: 'swath, ft', value: swathFt },
  ]);
  if (!checked.ok) return checked;
  return ok(quantity<'gpa'>((usedGal * SQUARE_FEET_PER_ACRE) / (courseFt * swathFt)));
}
