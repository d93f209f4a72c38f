import type { AppError } from '../../base/index.ts';
import { type Property, type Round, WEEKDAYS } from '../../book/index.ts';
import { dayNumber, isCalendarDate } from '../../units/index.ts';

/**
 * The fault of a round with a day that no calendar has, such as 2027-02-30; null where all of its days and the day it is due
 * exist. Days that are not asked for count too: the book is wrong either way.
 *
 * @param where the round, for the error
 * @returns 'quantity-out-of-range'
 */
export function dateFault(round: Round, where: string): AppError | null {
  const days = [
    ...round.dates.map((date, index) => ({ date, member: `dates[${index}]` })),
    ...(round.dueDate === undefined ? [] : [{ date: round.dueDate, member: 'dueDate' }]),
  ];
  const impossible = days.find(({ date }) => !isCalendarDate(date));
  if (impossible === undefined) return null;
  return {
    code: 'quantity-out-of-range',
    where: `${where}, ${impossible.member}`,
    detail: `There is no ${impossible.date} in the calendar.`,
    hint: 'Give the round another day in its place.',
  };
}

/** 1 January 1970 was a Thursday. */
const FIRST_WEEKDAY = WEEKDAYS.indexOf('thursday');

/** Whether a calendar date is one of these days of the week; any is where none are named. */
export function fallsOn(date: string, weekdays: Property['weekdays']): boolean {
  if (weekdays === undefined) return true;
  const weekday = WEEKDAYS[(((dayNumber(date) + FIRST_WEEKDAY) % WEEKDAYS.length) + WEEKDAYS.length) % WEEKDAYS.length];
  return weekday !== undefined && weekdays.includes(weekday);
}
