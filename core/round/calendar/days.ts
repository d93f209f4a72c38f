import { type Property, WEEKDAYS } from '../../book/index.ts';
import { dayNumber } from '../../units/index.ts';

/** One of the days from Monday on. */
export type Weekday = (typeof WEEKDAYS)[number];

/** 1 January 1970, day 0, was a Thursday. */
const FIRST_WEEKDAY = WEEKDAYS.indexOf('thursday');
const WEEK = WEEKDAYS.length;

/**
 * The day of the week of a date YYYY-MM-DD. Throws a RangeError for a text that is none: dates of a book are checked
 * before.
 */
export function weekdayOf(date: string): Weekday {
  const weekday = WEEKDAYS[(((dayNumber(date) + FIRST_WEEKDAY) % WEEK) + WEEK) % WEEK];
  if (weekday === undefined) throw new RangeError(`no date: ${date}`);
  return weekday;
}

/** Whether a date is one of these days of the week; any is where none are named. */
export function fallsOn(date: string, weekdays: Property['weekdays']): boolean {
  return weekdays === undefined || weekdays.includes(weekdayOf(date));
}

/** "Tuesday" from "tuesday". */
export function weekdayName(weekday: Weekday): string {
  return `${weekday.charAt(0).toUpperCase()}${weekday.slice(1)}`;
}
