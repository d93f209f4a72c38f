import { type AppError, type Issue, issue } from '../../base/index.ts';
import type { Book, Rig, Round } from '../../book/index.ts';
import { calendarOf, clockShift } from '../../round/calendar/index.ts';
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

/** Shifts during which the clock is changed: a plan counts real minutes, so its later times differ from the clock on the wall. */
export function clockNotes(
  book: Book,
  dates: readonly string[],
  rigs: readonly { readonly rig: Rig }[],
): readonly Issue[] {
  const { clockChange } = calendarOf(book);
  return dates.flatMap((date) =>
    rigs.flatMap(({ rig }): Issue[] => {
      const shift = clockShift(date, rig.shiftStartMin, rig.shiftMin, clockChange);
      if (shift === 0) return [];
      const way = shift > 0 ? 'forward' : 'back';
      const off = shift > 0 ? 'an hour behind' : 'an hour ahead of';
      const words = `The clock goes ${way} an hour during the shift. The plan counts real minutes from its start: after the change its times are ${off} the clock on the wall.`;
      return [issue('warning', 'clock-changes', `rig ${rig.name}, ${date}`, words)];
    }),
  );
}
