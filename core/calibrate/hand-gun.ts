import { ok, type Result } from '../base/index.ts';
import type { Feet, GallonsPer1000SqFt, GallonsPerAcre, Minutes, Seconds } from '../units/index.ts';
import { quantity } from '../units/index.ts';
import { perAcre } from './boom.ts';
import { allPositive } from './positive.ts';

/** Length to walk for 1,000 ft2: 1,000 / width (W. Buhler, Spray Gun, NC Cooperative Extension). Also used for spreaders. */
export function courseFor1000SqFt(widthFt: number): Feet {
  return quantity<'ft'>(1000 / widthFt);
}

/** A timed catch with hose and gun. */
export type HandGunTest = {
  /**
   * Width gained with each pass, ft. Where the worker sprays back to the middle of the pass before, this is half of what the
   * spray covers; with the full width the ground would get twice the rate found.
   */
  readonly advanceFt: number;
  /** Seconds of each walk over the course of 1,000 / advance feet. */
  readonly walksSec: readonly number[];
  /** Caught in a bucket during the mean time of the walks, gal. */
  readonly caughtGal: number;
};

/** What a timed catch shows: the course in feet, the mean walk in seconds, the carrier by both areas. */
export type HandGunResult = {
  readonly courseFt: Feet;
  readonly meanSec: Seconds;
  readonly carrier: GallonsPer1000SqFt;
  readonly carrierPerAcre: GallonsPerAcre;
  /** Spraying time for 1,000 ft2 at that pace, without handling the hose. */
  readonly minutesPer1000SqFt: Minutes;
};

/**
 * Rate of hose and gun from timed walks over 1,000 ft2 and a catch of the same length of time: gallons caught are gallons
 * per 1,000 ft2. Source: W. Buhler, Spray Gun, Pesticide Environmental Stewardship / NC Cooperative Extension.
 *
 * @returns quantity-out-of-range where a figure is not above zero or there is no walk
 */
export function handGunCatch(test: HandGunTest): Result<HandGunResult> {
  const meanSec = test.walksSec.reduce((sum, each) => sum + each, 0) / test.walksSec.length;
  const checked = allPositive('hand gun catch', [
    { name: 'advance per pass, ft', value: test.advanceFt },
    ...test.walksSec.map((value, index) => ({ name: `walk ${index + 1}, s`, value })),
    { name: 'mean time, s', value: meanSec },
    { name: 'caught, gal', value: test.caughtGal },
  ]);
  if (!checked.ok) return checked;
  return ok({
    courseFt: courseFor1000SqFt(test.advanceFt),
    meanSec: quantity<'s'>(meanSec),
    carrier: quantity<'gal/1000ft2'>(test.caughtGal),
    carrierPerAcre: perAcre(test.caughtGal),
    minutesPer1000SqFt: quantity<'min'>(meanSec / 60),
  });
}
