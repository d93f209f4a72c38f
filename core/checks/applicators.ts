import { type Issue, issue } from '../base/index.ts';
import type { Applicator, Book, Rig } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/**
 * Rigs that are planned on days on which nobody of theirs holds a licence. Looked at only where the book keeps applicators: without any,
 * nobody asked.
 */
export const licences: Rule = {
  code: 'licence-lacking',
  find: (book) => {
    if (book.applicators.length === 0) return [];
    const planned = plannedDays(book);
    return [
      ...book.applicators.flatMap(withoutNumber),
      ...book.rigs.flatMap((rig) => rigIssues(book, rig, planned.get(rig.id) ?? [])),
    ];
  },
};

type PlannedDay = { readonly date: string; readonly round: string };

/** Days of every rig in every round, in order. */
function plannedDays(book: Book): ReadonlyMap<string, readonly PlannedDay[]> {
  const days = new Map<string, PlannedDay[]>();
  for (const round of book.rounds) {
    const own = round.dates.map((date) => ({ date, round: named('round', round) }));
    for (const rigId of round.rigIds) days.set(rigId, [...(days.get(rigId) ?? []), ...own]);
  }
  for (const own of days.values()) own.sort((one, other) => one.date.localeCompare(other.date));
  return days;
}

function withoutNumber(applicator: Applicator): readonly Issue[] {
  if (applicator.licence.trim() !== '' || (applicator.rigIds ?? []).length === 0) return [];
  const message = 'No license number is entered. Enter it, or take the rigs from this person.';
  return [issue('warning', 'licence-lacking', named('applicator', applicator), message)];
}

function rigIssues(book: Book, rig: Rig, days: readonly PlannedDay[]): readonly Issue[] {
  if (days.length === 0) return [];
  const own = book.applicators.filter((each) => each.rigIds?.includes(rig.id) === true);
  const where = named('rig', rig);
  if (own.length === 0) {
    const message = `It is planned in ${days[0]?.round}, and no applicator is entered for it. Give it to one of the applicators of the book.`;
    return [issue('warning', 'licence-lacking', where, message)];
  }
  const open = days.filter(({ date }) => !own.some((each) => each.expires === undefined || each.expires >= date));
  const [first] = open;
  if (first === undefined) return [];
  const ends = own.map((each) => `${each.name} until ${each.expires}`).join(', ');
  const more = open.length > 1 ? `, and on ${open.length - 1} later ${open.length === 2 ? 'day' : 'days'},` : '';
  const message = `On ${first.date} (${first.round})${more} none of its applicators has a valid license: ${ends}. Renew it, or plan another rig.`;
  return [issue('warning', 'licence-lacking', where, message)];
}
