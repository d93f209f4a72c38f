import { type Issue, issue } from '../base/index.ts';
import type { Round } from '../book/index.ts';
import { isCalendarDate } from '../units/index.ts';
import { named, type Rule } from './rule.ts';

/** Rounds with nothing to do, or with days in a muddle. */
export const rounds: Rule = {
  code: 'round-senseless',
  find: (book) => {
    const withZones = new Set(book.properties.filter((each) => each.zones.length > 0).map((each) => each.id));
    return book.rounds.flatMap((round) => [
      ...empty(round, withZones),
      ...impossibleDates(round),
      ...order(round),
      ...due(round),
    ]);
  },
};

function senseless(severity: Issue['severity'], round: Round, message: string): readonly Issue[] {
  return [issue(severity, 'round-senseless', named('round', round), message)];
}

function empty(round: Round, withZones: ReadonlySet<string>): readonly Issue[] {
  const skipped = new Set(round.skipped.map((each) => each.propertyId));
  const wanted = round.propertyIds === 'all' ? [...withZones] : round.propertyIds;
  if (wanted.some((id) => withZones.has(id) && !skipped.has(id))) return [];
  return senseless('warning', round, 'Nothing is left to do in it; add properties or take fewer out.');
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
