import { err, ok, type Result } from '../base/index.ts';
import { dateInYear, isCalendarDate } from './calendar.ts';
import { MONTHS } from './format-date.ts';
import { normalise, quote } from './quantity-text.ts';

/** A leap year, so that 29 February can be written. */
const LEAP_YEAR = 2028;

/** "15 February" of "02-15"; the text itself where it is no day of the year. */
export function formatMonthDay(monthDay: string): string {
  const month = MONTHS[Number(monthDay.slice(0, 2)) - 1];
  return month === undefined ? monthDay : `${Number(monthDay.slice(3))} ${month}`;
}

/**
 * A day of any year, MM-DD, from "15 February", "Feb 15", "02-15", "2/15" (month first).
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' for a day that no year has.
 */
export function parseMonthDay(text: string, where: string = quote(text)): Result<string> {
  const tidy = normalise(text);
  const [, dayFirst, name] = /^(\d{1,2})\.? ?([a-z]{3,9})\.?$/.exec(tidy) ?? [];
  const [, nameFirst, dayLast] = /^([a-z]{3,9})\.? ?(\d{1,2})(?:st|nd|rd|th)?$/.exec(tidy) ?? [];
  const [, month, day] = /^(\d{1,2})[-/](\d{1,2})$/.exec(tidy) ?? [];
  const named = name ?? nameFirst;
  const monthNumber = named === undefined ? Number(month) : monthOf(named);
  const dayNumber = Number(dayFirst ?? dayLast ?? day);
  if (!(monthNumber >= 1) || Number.isNaN(dayNumber)) {
    const detail = `${quote(text)} cannot be read as a day of the year.`;
    return err('quantity-unreadable', where, detail, 'Write it like 15 February, Feb 15 or 02-15.');
  }
  const two = (figure: number) => String(figure).padStart(2, '0');
  const monthDay = `${two(monthNumber)}-${two(dayNumber)}`;
  if (isCalendarDate(dateInYear(monthDay, LEAP_YEAR))) return ok(monthDay);
  return err('quantity-out-of-range', where, `No year has a day ${quote(text)}.`, 'Write a day such as 15 February.');
}

/** Number of a month by its name or the beginning of it; 0 where there is none. */
function monthOf(name: string): number {
  return MONTHS.findIndex((month) => month.toLowerCase().startsWith(name)) + 1;
}
