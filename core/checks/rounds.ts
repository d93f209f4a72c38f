import { type Issue, issue } from '../base/index.ts';
import type { Book, Round } from '../book/index.ts';
import { lawnsOf, zonesOf } from '../round/programme/index.ts';
import { isCalendarDate } from '../units/index.ts';
import { named, type Rule } from './rule.ts';

/** Rounds with nothing to do, or with days in a muddle. */
export const rounds: Rule = {
  code: 'round-senseless',
  find: (book) => {
    return book.rounds.flatMap((round) => [
      ...empty(book, round),
      ...impossibleDates(round),
      ...order(round),
      ...due(round),
    ]);
  },
};

function senseless(severity: Issue['severity'], round: Round, message: string): readonly Issue[] {
  return [issue(severity, 'round-senseless', named('round', round), message)];
}

/** Sizes are not asked here: measuring every lawn of a book takes longer than a check may. */
function empty(book: Book, round: Round): readonly Issue[] {
  const { leastSqFt: _, mostSqFt: __, ...choice } = round.choice ?? {};
  const { taken } = lawnsOf(book, { ...round, choice }, () => null);
  const isWorked = taken.some((property) =>
    round.treatmentIds.some((id) => zonesOf(unsized(round), id, property, () => null).length > 0),
  );
  if (isWorked) return [];
  return senseless('warning', round, 'Nothing is left to do in it; choose more lawns or zones, or take fewer out.');
}

function unsized({ only = [] }: Round): Pick<Round, 'only'> {
  return {
    only: only.map(({ treatmentId, choice: { leastSqFt: _, mostSqFt: __, ...choice } }) => ({ treatmentId, choice })),
  };
}

function impossibleDates(round: Round): readonly Issue[] {
  const dates = round.dueDate === undefined ? round.dates : [...round.dates, round.dueDate];
  return dates
    .filter((date) => !isCalendarDate(date))
    .flatMap((date) => senseless('error', round, `There is no ${date} in the calendar; choose another day.`));
}

function order(round: Round): readonly Issue[] {
  const inOrder = round.dates.every((date, index) => index === 0 || date > (round.dates[index - 1] ?? ''));
  if (inOrder) return [];
  return senseless('error', round, 'Its days are not in order, or one stands twice; put them in order.');
}

function due(round: Round): readonly Issue[] {
  const first = round.dates[0] ?? '';
  if (round.dueDate === undefined || round.dueDate >= first) return [];
  const message = `It is due on ${round.dueDate}, before its first day ${first}; correct one of the two.`;
  return senseless('warning', round, message);
}
