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

function daysIn(year: number, month: number): number {
  if (month === FEBRUARY) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return SHORT_MONTHS.includes(month) ? 30 : 31;
}
