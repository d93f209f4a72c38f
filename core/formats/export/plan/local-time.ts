import { MS_PER_DAY, SECONDS_PER_DAY } from '../../../units/index.ts';

/**
 * A time of a day as ISO 8601 has local time, without a zone: books know no zones. "2027-03-16T07:30:00"; what is after midnight is
 * on the next date.
 * @param date YYYY-MM-DD
 * @param sec after the local midnight with which the date begins; rounded to whole seconds
 */
export function localTime(date: string, sec: number): string {
  const whole = Math.round(sec);
  const days = Math.floor(whole / SECONDS_PER_DAY);
  const begins = new Date(`${date}T00:00:00Z`).getTime() + days * MS_PER_DAY;
  return new Date(begins + (whole - days * SECONDS_PER_DAY) * 1000).toISOString().slice(0, 19);
}
