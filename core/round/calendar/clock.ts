import type { Calendar } from '../../book/index.ts';
import { addDays, dayNumber } from '../../units/index.ts';
import { weekdayOf } from './days.ts';

/** The clock on the wall jumps on a date, when it shows `atMin`, by so many minutes. */
export type ClockChange = { readonly atMin: number; readonly byMin: number };

/** A stretch of one date by the clock on the wall, minutes after midnight. */
export type ClockSpan = { readonly date: string; readonly fromMin: number; readonly toMin: number };

const DAY_MIN = 1440;
const TWO_O_CLOCK = 120;
const HOUR = 60;
const MARCH = '03';
const NOVEMBER = '11';

/**
 * The change of the clock on a date: forward by an hour at 2 am on the second Sunday of March, back at 2 am on the first Sunday of November
 * (15 U.S.C. 260a as amended by the Energy Policy Act of 2005); null on other days and where clocks are not changed.
 */
export function clockChangeOn(date: string, rule: Calendar['clockChange']): ClockChange | null {
  if (rule === 'none' || weekdayOf(date) !== 'sunday') return null;
  const month = date.slice(5, 7);
  const day = Number(date.slice(8, 10));
  if (month === MARCH && day > 7 && day <= 14) return { atMin: TWO_O_CLOCK, byMin: HOUR };
  if (month === NOVEMBER && day <= 7) return { atMin: TWO_O_CLOCK, byMin: -HOUR };
  return null;
}

/**
 * What the clock on the wall shows during a shift that lasts so many real minutes, over midnight and over a change of the clock. In spring
 * the hour that is left out is in no span, so that the shift ends an hour later by the clock; in autumn the hour that comes twice is
 * in two spans. A start inside the hour that is left out is an hour later; one inside the hour that comes twice is its first time.
 *
 * @param startMin when it starts, minutes after midnight of `date`; 1440 and more is on a later date
 * @param lengthMin real minutes
 */
export function shiftOnClock(
  date: string,
  startMin: number,
  lengthMin: number,
  rule: Calendar['clockChange'],
): readonly ClockSpan[] {
  let day = addDays(date, Math.floor(startMin / DAY_MIN));
  let at = startMin % DAY_MIN;
  let left = lengthMin;
  let change = clockChangeOn(day, rule);
  if (change !== null && at >= change.atMin) {
    if (change.byMin > 0 && at < change.atMin + change.byMin) at += change.byMin;
    change = null;
  }
  const spans: ClockSpan[] = [];
  while (left > 0) {
    const end = Math.min(at + left, change?.atMin ?? DAY_MIN);
    if (end > at) spans.push({ date: day, fromMin: at, toMin: end });
    left -= end - at;
    at = end;
    if (change !== null) {
      at += change.byMin;
      change = null;
    } else if (at >= DAY_MIN) {
      day = addDays(day, 1);
      at = 0;
      change = clockChangeOn(day, rule);
    }
  }
  return spans;
}

/** By how much the clock is ahead of minutes counted from the start of the shift when it ends: 60, -60, or 0. minutes */
export function clockShift(date: string, startMin: number, lengthMin: number, rule: Calendar['clockChange']): number {
  const spans = shiftOnClock(date, startMin, lengthMin, rule);
  const last = spans.at(-1);
  if (last === undefined) return 0;
  const shown = (dayNumber(last.date) - dayNumber(date)) * DAY_MIN + last.toMin;
  return shown - (startMin + lengthMin);
}
