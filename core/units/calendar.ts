import { MS_PER_DAY } from './constants.ts';

const FEBRUARY = 2;
const MONTHS = 12;
const SHORT_MONTHS = [4, 6, 9, 11];

/** True for a date YYYY-MM-DD that the Gregorian calendar has; the shape alone lets 2027-02-30 through. */
export function isCalendarDate(date: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (parts === null) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  return month >= 1 && month <= MONTHS && day >= 1 && day <= daysIn(year, month);
}

/**
 * Days from 1970-01-01 to a date YYYY-MM-DD, by the date alone: no time zone, no hour that is left out in spring. A day that does
 * not exist counts as the one that follows so much later: 2027-02-30 as 2027-03-02.
 */
export function dayNumber(date: string): number {
  return Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / MS_PER_DAY;
}

/** The calendar date, YYYY-MM-DD, that many days after 1970-01-01. */
export function dateOfDay(number: number): string {
  return new Date(number * MS_PER_DAY).toISOString().slice(0, 10);
}

/** The calendar date so many days after another one; a negative count goes back. */
export function addDays(date: string, days: number): string {
  return dateOfDay(dayNumber(date) + days);
}

/** Days from one calendar date to another; negative where the second comes first. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** The date of a day of the year, MM-DD, in one year; the last of February where that year has no 29th. */
export function dateInYear(monthDay: string, year: number): string {
  const wanted = monthDay === '02-29' && daysIn(year, FEBRUARY) === 28 ? '02-28' : monthDay;
  return `${String(year).padStart(4, '0')}-${wanted}`;
}

function daysIn(year: number, month: number): number {
  if (month === FEBRUARY) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return SHORT_MONTHS.includes(month) ? 30 : 31;
}
