const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** 'long' for a line of its own, 'table' for rows that may lie in several years, 'short' where the year is plain. */
export type DateLength = 'long' | 'table' | 'short';

/**
 * A calendar date in words, "Tuesday, March 16, 2027", "Tue Mar 16, 2027", "Tue Mar 16", from "2027-03-16"; the text itself where it is no
 * date. The month is a word, so that no order of figures has to be known, and screens and paper say the same.
 */
export function formatDate(date: string, length: DateLength): string {
  const at = new Date(`${date}T00:00:00Z`);
  const [weekday, month] = [WEEKDAYS[at.getUTCDay()], MONTHS[at.getUTCMonth()]];
  if (weekday === undefined || month === undefined) return date;
  const [day, year] = [at.getUTCDate(), at.getUTCFullYear()];
  if (length === 'long') return `${weekday}, ${month} ${day}, ${year}`;
  const short = `${weekday.slice(0, 3)} ${month.slice(0, 3)} ${day}`;
  return length === 'table' ? `${short}, ${year}` : short;
}
