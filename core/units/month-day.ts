import { err, ok, type Result } from '../base/index.ts';
import { dateInYear, isCalendarDate } from './calendar.ts';
import { type DateOrder, MONTHS } from './format-date.ts';
import { normalise, quote } from './quantity-text.ts';

const EXAMPLES: Readonly<Record<DateOrder, string>> = {
  'month-first': 'February 15, Feb 15, 2/15',
  'day-first': '15 February, 15 Feb, 15/2',
};

/** A leap year, so that 29 February can be written. */
const LEAP_YEAR = 2028;

/** "February 15" of "02-15", or "15 February" with the day first; the text itself where it is no day of the year. */
export function formatMonthDay(monthDay: string, order: DateOrder = 'month-first'): string {
  const month = MONTHS[Number(monthDay.slice(0, 2)) - 1];
  if (month === undefined) return monthDay;
  const day = Number(monthDay.slice(3));
  return order === 'month-first' ? `${month} ${day}` : `${day} ${month}`;
}

/**
 * A day of any year, MM-DD, from "15 February", "Feb 15", "02-15", or in the order of dates from "2/15" or "15/2".
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' for a day that no year has.
 */
export function parseMonthDay(
  text: string,
  where: string = quote(text),
  order: DateOrder = 'month-first',
): Result<string> {
  const tidy = normalise(text);
  const [, dayFirst, name] = /^(\d{1,2})\.? ?([a-z]{3,9})\.?$/.exec(tidy) ?? [];
  const [, nameFirst, dayLast] = /^([a-z]{3,9})\.? ?(\d{1,2})(?:st|nd|rd|th)?$/.exec(tidy) ?? [];
  const [month, day] = inFigures(tidy, order);
  const named = name ?? nameFirst;
  const monthNumber = named === undefined ? Number(month) : monthOf(named);
  const dayNumber = Number(dayFirst ?? dayLast ?? day);
  if (!(monthNumber >= 1) || Number.isNaN(dayNumber)) {
    const detail = `${quote(text)} cannot be read as a day of the year.`;
    return err('quantity-unreadable', where, detail, `Write it like ${EXAMPLES[order]} or 02-15.`);
  }
  const two = (figure: number) => String(figure).padStart(2, '0');
  const monthDay = `${two(monthNumber)}-${two(dayNumber)}`;
  if (isCalendarDate(dateInYear(monthDay, LEAP_YEAR))) return ok(monthDay);
  return err(
    'quantity-out-of-range',
    where,
    `No year has a day ${quote(text)}.`,
    `Write a day such as ${formatMonthDay('02-15', order)}.`,
  );
}

/** A day in figures, month before day: one with a dash is written as in files, one with a slash in the order of dates. */
function inFigures(tidy: string, order: DateOrder): readonly (string | undefined)[] {
  const [, first, sign, second] = /^(\d{1,2})([-/])(\d{1,2})$/.exec(tidy) ?? [];
  return sign === '/' && order === 'day-first' ? [second, first] : [first, second];
}

/** Number of a month by its name or the beginning of it; 0 where there is none. */
function monthOf(name: string): number {
  return MONTHS.findIndex((month) => month.toLowerCase().startsWith(name)) + 1;
}
