import type { Calendar, Property } from '../../book/index.ts';
import { addDays } from '../../units/index.ts';
import { fallsOn, weekdayName, weekdayOf } from './days.ts';

/** Days before the work on which people have to be told: the lawn's own, else the calendar's. */
export function noticeDaysOf(property: Property, calendar: Calendar): number {
  return property.noticeDays ?? calendar.noticeDays;
}

/** The day on which people are told of work on a date; null where nobody has to be told. */
export function noticeDate(property: Property, calendar: Calendar, workOn: string): string | null {
  const days = noticeDaysOf(property, calendar);
  return days === 0 ? null : addDays(workOn, -days);
}

/** The earliest day of work for which notice can still be given; today itself where none has to be. */
export function earliestWorkDay(property: Property, calendar: Calendar, today: string): string {
  return addDays(today, noticeDaysOf(property, calendar));
}

const HOLD_WORDS = { seeding: 'seeded', new: 'a new customer', 'on-hold': 'on hold' } as const;

/** "on hold", "seeded", "a new customer": why a lawn is left out of rounds. */
export function holdWords(hold: NonNullable<Property['hold']>): string {
  const until = hold.until === undefined ? '' : ` to ${hold.until}`;
  return `${HOLD_WORDS[hold.why]}${until}`;
}

/** Why a lawn may not be worked on on a date, for reasons of the customer's; null where it may. */
export function lawnClosedWhy(property: Property, date: string): string | null {
  const { hold } = property;
  if (hold !== undefined && (hold.until === undefined || date <= hold.until)) return holdWords(hold);
  const shut = property.closed?.find((each) =>
    each.kind === 'date' ? each.on === date : each.weekday === weekdayOf(date),
  );
  if (shut !== undefined) return shut.why === '' ? 'the customer’s closed day' : `closed: ${shut.why}`;
  if (fallsOn(date, property.weekdays)) return null;
  return `the customer allows ${(property.weekdays ?? []).map(weekdayName).join(', ')} alone`;
}
