const DAY_SEC = 86_400;
const DAY_MS = DAY_SEC * 1000;

/**
 * A time of a day as ISO 8601 has local time, without a zone: books know no zones. "2027-03-16T07:30:00"; what is after midnight is
 * on the next date.
 * @param date YYYY-MM-DD
 * @param sec after the local midnight with which the date begins; rounded to whole seconds
 */
export function localTime(date: string, sec: number): string {
  const whole = Math.round(sec);
  const days = Math.floor(whole / DAY_SEC);
  const begins = new Date(`${date}T00:00:00Z`).getTime() + days * DAY_MS;
  return new Date(begins + (whole - days * DAY_SEC) * 1000).toISOString().slice(0, 19);
}
