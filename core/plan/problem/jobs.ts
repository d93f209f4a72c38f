import type { Book, Round } from '../../book/index.ts';
import { lastInTime, lawnWindows } from '../../round/timing/index.ts';
import { daysBetween, NANO_PER_DOLLAR } from '../../units/index.ts';
import type { JobGroup } from './group.ts';
import type { OpenDays } from './open-days.ts';
import { minutesToMs } from './scale.ts';
import type { ClosedDay, Job } from './types.ts';

/** Makes visits of groups of tasks, with the days that are open to them and what being late costs. */
export function jobMaker(
  book: Book,
  round: Round,
  dates: readonly string[],
  placeOf: ReadonlyMap<string, number>,
  days: OpenDays,
): (group: JobGroup) => Job {
  const perDay = book.prices.perDayLate * NANO_PER_DOLLAR;
  const windows = lawnWindows(book, round);
  const lastDay = lastInTime(book, round);
  return (group) => {
    const { property } = group;
    const closed = closedByLabel(days.closedFor(property, group.productIds), dates, group);
    const treatHours = days.hoursFor(group.productIds);
    const lastOn = windows?.(property).lastOn ?? null;
    const due = lastDay(property);
    return {
      propertyId: property.id,
      place: placeOf.get(property.id) ?? 0,
      openMs: minutesToMs(property.hours?.openMin ?? 0),
      closeMs: minutesToMs(property.hours?.closeMin ?? 1440),
      tasks: group.tasks,
      modes: group.modes,
      dayAllowed: Uint8Array.from(closed, (each) => (each === null ? 1 : 0)),
      ...(closed.some((each) => each !== null) ? { closed } : {}),
      ...(treatHours.some((each) => each !== null) ? { treatHours } : {}),
      ...(lastOn === null ? {} : { lastOn }),
      lateCost: Float64Array.from(dates, (date) => Math.round(perDay * daysLate(date, due))),
    };
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

function daysLate(date: string, due: string | null): number {
  return due === null ? 0 : Math.max(0, daysBetween(due, date));
}
