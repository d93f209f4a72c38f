import { isCalendarDate } from '../../units/index.ts';

/** In which order year, month and day stand in a date of three numbers. */
export type DateOrder = 'ymd' | 'mdy' | 'dmy';
const DATE_ORDERS: readonly DateOrder[] = ['mdy', 'dmy', 'ymd'];

/** What the dates of a column say about their order. */
export type DateGuess = {
  /** The order; null where it has to be asked. Any where every date says itself how it is read. */
  readonly order: DateOrder | null;
  /** A date that can be read in several ways, with each of them; null where nothing has to be asked. */
  readonly example: { readonly text: string; readonly readings: readonly DateReading[] } | null;
};
export type DateReading = { readonly order: DateOrder; readonly date: string };

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
/** Two figures of a year mean this century up to here. */
const LAST_OF_CENTURY = 79;

/**
 * A date as YYYY-MM-DD from "2027-03-16", "2027/3/16", "20270316", "16 Mar 2027", "March 16, 2027", "3/16/2027", "16.3.27"; a time
 * after it is left out. Null where it cannot be read, or where the calendar has no such day.
 *
 * @param order how three numbers are read that do not begin with a year of four figures; null: not at all
 */
export function readDate(text: string, order: DateOrder | null): string | null {
  const tidy = withoutTime(text);
  return (
    plainDate(tidy) ?? (order === null ? null : (readings(tidy).find((each) => each.order === order)?.date ?? null))
  );
}

/**
 * The order of a column's dates: the one in which most of its dates exist. Where two orders do equally well it has to be asked.
 */
export function guessDateOrder(cells: readonly string[]): DateGuess {
  const counts = { ymd: 0, mdy: 0, dmy: 0 };
  let example: DateGuess['example'] = null;
  for (const cell of cells) {
    const tidy = withoutTime(cell);
    if (plainDate(tidy) !== null) continue;
    const found = readings(tidy);
    for (const { order } of found) counts[order] += 1;
    const isOpen = new Set(found.map((each) => each.date)).size > 1;
    if (isOpen && example === null) example = { text: cell.trim(), readings: found };
  }
  const most = Math.max(counts.ymd, counts.mdy, counts.dmy);
  const best = DATE_ORDERS.filter((order) => counts[order] === most);
  if (most === 0 || best.length === 1) return { order: best[0] ?? 'ymd', example: null };
  if (example === null) return { order: best[0] ?? 'mdy', example: null };
  return {
    order: null,
    example: { ...example, readings: example.readings.filter(({ order }) => best.includes(order)) },
  };
}

function withoutTime(text: string): string {
  if (!text.includes(':')) return text.trim();
  return text
    .trim()
    .replace(/(?:T|\s+)\d{1,2}:\d{2}.*$/i, '')
    .trim();
}

/** A date that can be read in one way only. */
function plainDate(tidy: string): string | null {
  const led = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})$/.exec(tidy) ?? /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(tidy);
  if (led !== null) return existing(Number(led[1]), Number(led[2]), Number(led[3]));
  const [, day, name, year] = /^(\d{1,2})[-/. ]+([a-z]{3,9})\.?[-/., ]+(\d{4}|\d{2})$/i.exec(tidy) ?? [];
  if (name !== undefined) return existing(fullYear(year), monthOf(name), Number(day));
  const [, named, second, last] =
    /^([a-z]{3,9})\.?[-/. ]+(\d{1,2})(?:st|nd|rd|th)?[-/., ]+(\d{4}|\d{2})$/i.exec(tidy) ?? [];
  return named === undefined ? null : existing(fullYear(last), monthOf(named), Number(second));
}

/** Every way in which three numbers are a date. */
function readings(tidy: string): readonly DateReading[] {
  const [, one, two, three] = /^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4}|\d{2})$/.exec(tidy) ?? [];
  if (one === undefined) return [];
  const [first, second] = [Number(one), Number(two)];
  const ways: readonly (readonly [DateOrder, string | null])[] = [
    ['mdy', existing(fullYear(three), first, second)],
    ['dmy', existing(fullYear(three), second, first)],
    ['ymd', three?.length === 2 && one.length === 2 ? existing(fullYear(one), second, Number(three)) : null],
  ];
  return ways.flatMap(([order, date]) => (date === null ? [] : [{ order, date }]));
}

function fullYear(text = ''): number {
  const year = Number(text);
  return text.length === 4 ? year : year + (year <= LAST_OF_CENTURY ? 2000 : 1900);
}

function monthOf(name: string): number {
  return MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
}

function existing(year: number, month: number, day: number): string | null {
  const two = (figure: number) => String(figure).padStart(2, '0');
  const date = `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
  return isCalendarDate(date) ? date : null;
}
