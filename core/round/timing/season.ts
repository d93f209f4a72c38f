import type { Timing } from '../../book/index.ts';
import { dateInYear, daysBetween } from '../../units/index.ts';

/** A round may be thought of so many days before the season of its timing begins. */
const AHEAD_DAYS = 30;

/**
 * The first day of the season that a day belongs to: the last beginning that lies at most 30 days after it.
 * A round on 10 February with a timing from 1 October belongs to the season that began in the year before.
 *
 * @param reference first working day of the round, or today
 */
export function seasonStart(timing: Timing, reference: string): string {
  const monthDay = timing.kind === 'calendar' ? timing.opens : timing.from;
  const year = Number(reference.slice(0, 4));
  const starts = [year + 1, year, year - 1].map((each) => dateInYear(monthDay, each));
  return starts.find((start) => daysBetween(reference, start) <= AHEAD_DAYS) ?? reference;
}

/** The next such day of the year, from a date on. */
export function nextInYear(monthDay: string, from: string): string {
  const year = Number(from.slice(0, 4));
  const sameYear = dateInYear(monthDay, year);
  return sameYear >= from ? sameYear : dateInYear(monthDay, year + 1);
}
