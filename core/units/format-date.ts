const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
/** The months in words, January first. */
export const MONTHS: readonly string[] =
  'January February March April May June July August September October November December'.split(' ');

/** 'long' for a line of its own, 'table' for rows that may lie in several years, 'short' where the year is plain. */
export type DateLength = 'long' | 'table' | 'short';

/** Whether "March 16" or "16 March" is written. */
export type DateOrder = 'month-first' | 'day-first';

/**
 * A calendar date in words, from "2027-03-16"; the text itself where it is no date. Month first: "Tuesday, March 16, 2027",
 * "Tue Mar 16, 2027", "Tue Mar 16"; day first: "Tuesday, 16 March 2027", "Tue 16 Mar 2027", "Tue 16 Mar". The month is a word either
 * way, so that a date is never taken for another one.
 */
export function formatDate(date: string, length: DateLength, order: DateOrder = 'month-first'): string {
  const at = new Date(`${date}T00:00:00Z`);
  const [weekday, month] = [WEEKDAYS[at.getUTCDay()], MONTHS[at.getUTCMonth()]];
  if (weekday === undefined || month === undefined) return date;
  const [day, year] = [at.getUTCDate(), at.getUTCFullYear()];
  const isMonthFirst = order === 'month-first';
  if (length === 'long') return `${weekday}, ${isMonthFirst ? `${month} ${day},` : `${day} ${month}`} ${year}`;
  const [weekdayShort, monthShort] = [weekday.slice(0, 3), month.slice(0, 3)];
  const short = `${weekdayShort} ${isMonthFirst ? `${monthShort} ${day}` : `${day} ${monthShort}`}`;
  if (length === 'short') return short;
  return isMonthFirst ? `${short}, ${year}` : `${short} ${year}`;
}

/** The first three letters of the months, January first. */
export const SHORT_MONTHS: readonly string[] = MONTHS.map((month) => month.slice(0, 3));
