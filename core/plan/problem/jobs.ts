import type { Book, Round } from '../../book/index.ts';
import { daysBetween, NANO_PER_DOLLAR } from '../../units/index.ts';
import type { JobGroup } from './group.ts';
import type { OpenDays } from './open-days.ts';
import { minutesToMs } from './scale.ts';
import type { ClosedDay, Job } from './types.ts';

/** A visit with the days that are open to it and what being late costs. */
export function jobOf(
  book: Book,
  round: Round,
  dates: readonly string[],
  group: JobGroup,
  placeOf: ReadonlyMap<string, number>,
  days: OpenDays,
): Job {
  const perDay = book.prices.perDayLate * NANO_PER_DOLLAR;
  const closed = closedByLabel(days.closedFor(group.property, group.productIds), dates, group);
  const treatHours = days.hoursFor(group.productIds);
  return {
    propertyId: group.property.id,
    place: placeOf.get(group.property.id) ?? 0,
    openMs: minutesToMs(group.property.hours?.openMin ?? 0),
    closeMs: minutesToMs(group.property.hours?.closeMin ?? 1440),
    tasks: group.tasks,
    modes: group.modes,
    dayAllowed: Uint8Array.from(closed, (each) => (each === null ? 1 : 0)),
    ...(closed.some((each) => each !== null) ? { closed } : {}),
    ...(treatHours.some((each) => each !== null) ? { treatHours } : {}),
    lateCost: Float64Array.from(dates, (date) => Math.round(perDay * daysLate(date, round.dueDate))),
  };
}

/** What a label forbids comes first: no leave and no promise opens such a day. */
function closedByLabel(
  closed: readonly (ClosedDay | null)[],
  dates: readonly string[],
  { labelDates, labelWords }: JobGroup,
): readonly (ClosedDay | null)[] {
  if (labelDates === null) return closed;
  const byLabel: ClosedDay = { code: 'label', words: labelWords, isPassing: false };
  return dates.map((date, day) => (labelDates.includes(date) ? (closed[day] ?? null) : byLabel));
}

function daysLate(date: string, dueDate: string | undefined): number {
  if (dueDate === undefined) return 0;
  return Math.max(0, daysBetween(dueDate, date));
}
