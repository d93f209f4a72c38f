import type { AppError } from '../../base/index.ts';
import type { Round } from '../../book/index.ts';
import { isCalendarDate } from '../../units/index.ts';

/**
 * The fault of a round with a day that no calendar has, such as 2027-02-30; null where all of its days and the day it is due
 * exist. Days that are not asked for count too: the book is wrong either way.
 *
 * @param where the round, for the error
 * @returns 'quantity-out-of-range'
 */
export function dateFault(round: Round, where: string): AppError | null {
  const days = [
    ...round.dates.map((date, index) => ({ date, member: `dates[${index}]` })),
    ...(round.dueDate === undefined ? [] : [{ date: round.dueDate, member: 'dueDate' }]),
  ];
  const impossible = days.find(({ date }) => !isCalendarDate(date));
  if (impossible === undefined) return null;
  return {
    code: 'quantity-out-of-range',
    where: `${where}, ${impossible.member}`,
    detail: `There is no ${impossible.date} in the calendar.`,
    hint: 'Give the round another day in its place.',
  };
}
