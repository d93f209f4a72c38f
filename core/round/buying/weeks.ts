import { addDays, dayNumber } from '../../units/index.ts';
import type { Week } from './types.ts';

const DAYS = 7;
/** 1 January 1970 was a Thursday, three days after a Monday. */
const THURSDAY = 3;

/** The week of a date by ISO 8601: weeks begin on Monday, and the first of a year is the one with its first Thursday. */
export function weekOf(date: string): Week {
  const sinceMonday = (((dayNumber(date) + THURSDAY) % DAYS) + DAYS) % DAYS;
  const monday = addDays(date, -sinceMonday);
  const year = addDays(monday, THURSDAY).slice(0, 4);
  const first = dayNumber(`${year}-01-04`);
  const number = 1 + Math.floor((dayNumber(addDays(monday, THURSDAY)) - (first - ((first + THURSDAY) % DAYS))) / DAYS);
  return { label: `${year}-W${String(number).padStart(2, '0')}`, monday };
}
