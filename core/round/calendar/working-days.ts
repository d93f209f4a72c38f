import * as v from 'valibot';
import { type Book, type Calendar, calendarSchema, type Round } from '../../book/index.ts';
import { addDays, formatShare } from '../../units/index.ts';
import { fallsOn } from './days.ts';

/** The calendar of a book, or one with every setting at its default where it has none. */
export function calendarOf(book: Book): Calendar {
  return book.calendar ?? USUAL;
}

const USUAL: Calendar = v.parse(calendarSchema, {});

/** Keeps 0.07 of 100 days, which a computer makes a little more than 7, from becoming 8. */
const DUST = 1e-9;

/** How many of so many working days are held back for weather: the share of them, rounded up. */
export function heldBackCount(days: number, rainShare: number): number {
  return Math.min(days, Math.max(0, Math.ceil(days * rainShare - DUST)));
}

/** What a day of a round is: worked, free, or kept for what rain takes. */
export type RoundDay = {
  readonly date: string;
  readonly kind: 'worked' | 'holiday' | 'held-back';
  /** Why it is not planned, '' where it is. */
  readonly why: string;
};

/** The days of one round, and in one sentence how many of them are held back. */
export type RoundDays = { readonly days: readonly RoundDay[]; readonly words: string };

/**
 * What the calendar makes of the days of a round. Holidays are free; of the others the last ones are held back: as many as the round says,
 * else the calendar's share of them, rounded up.
 */
export function roundDays(calendar: Calendar, { dates, heldBack }: Pick<Round, 'dates' | 'heldBack'>): RoundDays {
  const sorted = dates.toSorted();
  const working = sorted.filter((date) => holidayWhy(calendar, date) === null);
  const count = Math.min(working.length, heldBack ?? heldBackCount(working.length, calendar.rainShare));
  const held = new Set(working.slice(working.length - count));
  const days = sorted.map((date): RoundDay => {
    const why = holidayWhy(calendar, date);
    if (why !== null) return { date, kind: 'holiday', why };
    return held.has(date)
      ? { date, kind: 'held-back', why: 'held back for weather' }
      : { date, kind: 'worked', why: '' };
  });
  const reason = heldBack === undefined ? `${formatShare(calendar.rainShare)}, rounded up` : 'as the round says';
  return { days, words: heldBackWords(working, held.size, reason) };
}

function heldBackWords(working: readonly string[], held: number, reason: string): string {
  const all = `${working.length} working ${working.length === 1 ? 'day' : 'days'}`;
  if (held === 0) return `${all}; none is held back for weather`;
  const first = working[working.length - held] ?? '';
  const kept = held === 1 ? `the last one, ${first}, is` : `the last ${held}, from ${first} on, are`;
  return `${all}, of which ${kept} held back for weather (${reason})`;
}

/** "holiday (Memorial Day)", or null on any other day. */
export function holidayWhy(calendar: Calendar, date: string): string | null {
  const holiday = calendar.holidays.find((each) => each.on === date);
  if (holiday === undefined) return null;
  return holiday.name === '' ? 'holiday' : `holiday (${holiday.name})`;
}

/** Whether the calendar has a day as one that is worked. */
export function isWorkday(calendar: Calendar, date: string): boolean {
  return fallsOn(date, calendar.workdays) && holidayWhy(calendar, date) === null;
}

/** The working days from one date to another, both counted, in order; none where the second comes first. */
export function workdaysBetween(calendar: Calendar, from: string, to: string): readonly string[] {
  const days: string[] = [];
  for (let date = from; date <= to; date = addDays(date, 1)) if (isWorkday(calendar, date)) days.push(date);
  return days;
}

/** Longest row of days without work that is looked through for the next working day. */
const MOST_DAYS_OFF = 366;

/** The first working day after a date; the next day where the calendar has no working day for a year. */
export function nextWorkday(calendar: Calendar, after: string): string {
  for (let days = 1; days <= MOST_DAYS_OFF; days += 1) {
    const date = addDays(after, days);
    if (isWorkday(calendar, date)) return date;
  }
  return addDays(after, 1);
}
