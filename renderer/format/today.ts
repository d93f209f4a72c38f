/** The date on this machine's calendar, YYYY-MM-DD. */
export function todayHere(now: Date = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
