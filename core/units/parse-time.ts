import { err, ok, type Result } from '../base/index.ts';
import type { Seconds } from './brand.ts';
import { quantity } from './brand.ts';
import { SECONDS_PER_DAY, SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from './constants.ts';
import { normalise, quote, type ReadOptions, readQuantity } from './quantity-text.ts';
import { DURATION_TABLE } from './unit-tables.ts';

const HOURS_AND_MINUTES = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?$/;

/**
 * A span of time in seconds from "7 h 30", "7h30m", "7:30" (hours and minutes), "45 min", "45" (minutes), "1.5 h", "90 s".
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' (negative, above 100 h).
 */
export function parseDuration(text: string, options: ReadOptions = {}): Result<Seconds> {
  const colon = HOURS_AND_MINUTES.exec(normalise(text));
  const spelled = colon === null ? text : `${colon[1]} h ${colon[2]} min ${colon[3] ?? '0'} s`;
  const value = readQuantity(spelled, DURATION_TABLE, { ...options, where: options.where ?? quote(text) });
  return value.ok ? ok(quantity<'s'>(value.value)) : value;
}

const CLOCK = /^(\d{1,2})(?::([0-5]\d)(?::([0-5]\d))?)? ?(?:(a|p)\.? ?m\.?|h|o'clock)?$/;
const FOUR_DIGITS = /^([01]\d|2[0-4])([0-5]\d)$/;
const CLOCK_HINT = 'Write it like one of these: 7:30, 1:30 pm, 13:30, 7 am.';

/**
 * A time of the day in seconds after local midnight from "7:30", "7", "1:30 pm", "13:30", "0730", "noon". 24:00 is the end of the day.
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' (25:00, 13 pm).
 */
export function parseClock(text: string, where: string = quote(text)): Result<Seconds> {
  const tidy = normalise(text).replace(FOUR_DIGITS, '$1:$2');
  if (tidy === 'noon') return ok(quantity(SECONDS_PER_DAY / 2));
  if (tidy === 'midnight') return ok(quantity(0));
  const found = CLOCK.exec(tidy);
  if (found === null)
    return err('quantity-unreadable', where, `${quote(text)} cannot be read as a time of day.`, CLOCK_HINT);
  const half = found[4];
  const typedHour = Number(found[1]);
  const hourFits = half === undefined ? typedHour <= 24 : typedHour >= 1 && typedHour <= 12;
  const hour = half === undefined ? typedHour : (typedHour % 12) + (half === 'p' ? 12 : 0);
  const seconds = hour * SECONDS_PER_HOUR + Number(found[2] ?? 0) * SECONDS_PER_MINUTE + Number(found[3] ?? 0);
  if (hourFits && seconds <= SECONDS_PER_DAY) return ok(quantity(seconds));
  return err('quantity-out-of-range', where, `${quote(text)} is no time of the day.`, CLOCK_HINT);
}
