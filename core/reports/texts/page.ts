/** What stands on pages of every sheet. */
export const PAGE = {
  /** On every sheet and page made of invented data. */
  invented: 'Invented data, not for use',
  program: 'Swardway',
  map: 'Map',
} as const;

/** Why a paper size is refused. */
export const PAPER = {
  place: 'paper size',
  unknown: (text: string) => `"${text}" is no paper that sheets are made for.`,
  choose: (known: readonly string[]) => `Choose ${known.join(' or ')}.`,
} as const;

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = 'January,February,March,April,May,June,July,August,September,October,November,December'.split(',');

/** A calendar date in words, "Tuesday, March 16, 2027"; the text itself where it is no date. */
export function dateWord(date: string): string {
  const at = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(at.getTime())) return date;
  return `${WEEKDAYS[at.getUTCDay()]}, ${MONTHS[at.getUTCMonth()]} ${at.getUTCDate()}, ${at.getUTCFullYear()}`;
}

/** The same for tables, "Tue Mar 16, 2027". */
export function shortDateWord(date: string): string {
  const at = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(at.getTime())) return date;
  const [weekday, month] = [WEEKDAYS[at.getUTCDay()] ?? '', MONTHS[at.getUTCMonth()] ?? ''];
  return `${weekday.slice(0, 3)} ${month.slice(0, 3)} ${at.getUTCDate()}, ${at.getUTCFullYear()}`;
}
