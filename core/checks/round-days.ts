import { type Issue, issue } from '../base/index.ts';
import type { Book, Programme, Round } from '../book/index.ts';
import { calendarOf, holidayWhy, lawnClosedWhy } from '../round/calendar/index.ts';
import { isCalendarDate } from '../units/index.ts';
import { named, type Rule } from './rule.ts';

/** Days that do not go together: holidays that are worked, promises that cannot be kept, reserves that eat up a shift. */
export const roundDays: Rule = {
  code: 'days-senseless',
  find: (book) => [
    ...calendar(book),
    ...book.rounds.flatMap((round) => [...holidays(book, round), ...promises(book, round)]),
    ...book.programmes.flatMap(order),
  ],
};

function senseless(where: string, message: string): Issue {
  return issue('warning', 'days-senseless', where, message);
}

function calendar(book: Book): readonly Issue[] {
  const { holidays: free, workdays, serviceMin } = calendarOf(book);
  return [
    ...free.flatMap(({ on }) =>
      isCalendarDate(on) ? [] : [senseless('calendar', `There is no ${on} in the calendar; correct the holiday.`)],
    ),
    ...(workdays.length === 0 ? [senseless('calendar', 'No day of the week is worked; tick at least one.')] : []),
    ...book.rigs.flatMap((rig) =>
      rig.shiftMin > 0 && serviceMin >= rig.shiftMin
        ? [senseless('calendar', `The reserve for service calls takes the whole shift of ${named('rig', rig)}.`)]
        : [],
    ),
  ];
}

function holidays(book: Book, round: Round): readonly Issue[] {
  return round.dates.flatMap((date) => {
    const why = holidayWhy(calendarOf(book), date);
    const message = `${date} is a ${why}, so nothing is planned on it. Take the day out of the round, or out of the holidays.`;
    return why === null ? [] : [senseless(named('round', round), message)];
  });
}

function promises(book: Book, round: Round): readonly Issue[] {
  const seen = new Set<string>();
  const properties = new Map(book.properties.map((each) => [each.id, each]));
  return (round.promised ?? []).flatMap(({ propertyId, on }) => {
    const property = properties.get(propertyId);
    if (property === undefined) return [];
    const where = `${named('round', round)}, ${named('property', property)}`;
    const twice = seen.has(propertyId);
    seen.add(propertyId);
    if (twice) return [senseless(where, 'It is promised two days; the last one of the list counts. Take one away.')];
    if (!round.dates.includes(on))
      return [
        senseless(where, `It is promised for ${on}, which is no day of the round; add the day or change the promise.`),
      ];
    const shut = isCalendarDate(on) ? lawnClosedWhy(property, on) : null;
    return shut === null ? [] : [senseless(where, `It is promised for ${on}, but that day is not open: ${shut}.`)];
  });
}

/** Steps that follow each other in a ring can never begin. */
function order({ steps, ...programme }: Programme): readonly Issue[] {
  const before = new Map(steps.map((each) => [each.id, each.after?.stepId]));
  const rings = steps.filter((step) => {
    const seen = new Set<string>();
    let at = before.get(step.id);
    while (at !== undefined && at !== step.id && !seen.has(at)) {
      seen.add(at);
      at = before.get(at);
    }
    return at === step.id;
  });
  const contradictory = steps.filter(({ after }) => after?.mostDays !== undefined && after.mostDays < after.leastDays);
  const where = `programme ${programme.name === '' ? programme.id : programme.name}`;
  return [
    ...rings.map((each) =>
      senseless(where, `${each.name} follows itself by way of other steps; let it follow another one.`),
    ),
    ...contradictory.map((each) => senseless(where, `${each.name} has to follow in fewer days than it has to wait.`)),
  ];
}

/** Rounds with days to come that are due before today. Asked apart, because a book does not know what day it is. */
export function pastDueDates(book: Book, today: string): readonly Issue[] {
  return book.rounds.flatMap((round) => {
    if (round.dueDate === undefined || round.dueDate >= today) return [];
    if (!round.dates.some((date) => date >= today)) return [];
    const message = `It is due on ${round.dueDate}, before today, ${today}: every day that is left is late. Move the due date, or take it away.`;
    return [issue('warning', 'due-date-past', named('round', round), message)];
  });
}
