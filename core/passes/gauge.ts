import { type AppError, type Err, err, ok, type Result } from '../base/index.ts';
import { feetToMetres, METRES_PER_MILE, quantity, SECONDS_PER_HOUR } from '../units/index.ts';
import type { Gauge, PassHead } from './types.ts';

const METRES_PER_SECOND_AT_1_MPH = METRES_PER_MILE / SECONDS_PER_HOUR;
const MOST_TRIM_PASSES = 10;
/** A swath less overlap narrower than this would never come to an end, ft. */
const LEAST_GAIN_FT = 0.1;
const metres = (feet: number): number => feetToMetres(quantity<'ft'>(feet));

/** A head in metres and seconds. Errors: a width, overlap, speed or count with which no pass can be driven. */
export function gaugeOf(head: PassHead, where: string): Result<Gauge> {
  const trimSwathFt = head.trimSwathFt ?? head.swathFt;
  const fault = faultOf(head, trimSwathFt, where);
  if (fault !== null) return fault;
  return ok({
    swathM: metres(head.swathFt),
    overlapM: metres(head.overlapFt),
    trimSwathM: metres(trimSwathFt),
    trimPasses: head.trimPasses,
    sectionsM: head.sectionsFt === undefined ? null : head.sectionsFt.map(metres),
    shieldedSide: head.shieldedSide ?? null,
    squareCorners: head.squareCorners ?? false,
    turnSec: head.turnSec,
    metresPerSec: head.speedMph * METRES_PER_SECOND_AT_1_MPH,
    mark: head.mark ?? null,
    transitMetresPerSec: (head.transitMph ?? head.speedMph) * METRES_PER_SECOND_AT_1_MPH,
  });
}

/** Why no pass can be driven with a head; null where passes can. */
export function passFault(head: PassHead, where: string): AppError | null {
  const gauge = gaugeOf(head, where);
  return gauge.ok ? null : gauge.error;
}

function faultOf(head: PassHead, trimSwathFt: number, where: string): Err | null {
  const wrong = (detail: string, hint: string): Err => err('quantity-out-of-range', where, detail, hint);
  const { swathFt, overlapFt, trimPasses, turnSec, speedMph } = head;
  if (!isPositive(swathFt)) return wrong(`The swath is ${swathFt} ft wide.`, 'Give a swath width above 0 ft.');
  if (!isPositive(trimSwathFt)) {
    return wrong(`The trim swath is ${trimSwathFt} ft wide.`, 'Give a width above 0 ft, or leave it out.');
  }
  if (!isPositive(speedMph)) return wrong(`The speed is ${speedMph} mph.`, 'Give a working speed above 0 mph.');
  if (head.transitMph !== undefined && !isPositive(head.transitMph)) {
    return wrong(`The speed between passes is ${head.transitMph} mph.`, 'Give a speed above 0 mph, or leave it out.');
  }
  if (!(overlapFt >= 0 && Math.min(swathFt, trimSwathFt) - overlapFt >= LEAST_GAIN_FT)) {
    return wrong(
      `An overlap of ${overlapFt} ft does not go with a swath of ${Math.min(swathFt, trimSwathFt)} ft.`,
      'Give an overlap from 0 ft up to less than the narrowest swath.',
    );
  }
  if (!Number.isInteger(trimPasses) || trimPasses < 0 || trimPasses > MOST_TRIM_PASSES) {
    return wrong(`${trimPasses} trim passes cannot be driven.`, `Give a whole number from 0 to ${MOST_TRIM_PASSES}.`);
  }
  if (!(turnSec >= 0 && Number.isFinite(turnSec))) {
    return wrong(`A turn of ${turnSec} s cannot be.`, 'Give the seconds of a turn, 0 or more.');
  }
  if (head.mark !== undefined && !isPositive(head.mark.flOzPer1000Ft)) {
    return wrong(
      `Marking with ${head.mark.flOzPer1000Ft} fl oz for 1,000 ft cannot be.`,
      'Give fluid ounces above 0, or leave the marker out.',
    );
  }
  if (head.sectionsFt !== undefined && !fillSwath(head.sectionsFt, swathFt)) {
    return wrong(
      `Sections of ${head.sectionsFt.join(' + ')} ft do not make a swath of ${swathFt} ft.`,
      'Give widths above 0 ft that add up to the swath, left to right.',
    );
  }
  return null;
}

/** Sections may miss the swath by rounding, ft. */
const SECTIONS_OFF_FT = 0.01;

const fillSwath = (sectionsFt: readonly number[], swathFt: number): boolean =>
  sectionsFt.every(isPositive) && Math.abs(sectionsFt.reduce((sum, each) => sum + each, 0) - swathFt) < SECTIONS_OFF_FT;

const isPositive = (value: number): boolean => value > 0 && Number.isFinite(value);
