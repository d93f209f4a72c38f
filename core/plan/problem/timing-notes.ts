import { type Issue, issue } from '../../base/index.ts';
import type { Book, Round } from '../../book/index.ts';
import { lawnWindows } from '../../round/timing/index.ts';
import { roundWhere } from './round-faults.ts';
import type { Job } from './types.ts';

/** Names that are told; the others are counted. */
const MOST_NAMES = 8;

/** Lawns whose window the days of a round miss whatever is planned, and whether windows are unknown for want of temperatures. */
export function timingNotes(
  book: Book,
  round: Round,
  dates: readonly string[],
  jobs: readonly Job[],
): readonly Issue[] {
  const windows = lawnWindows(book, round);
  if (windows === null) return [];
  const properties = new Map(book.properties.map((each) => [each.id, each]));
  const missed = new Set<string>();
  const unknown = new Set<string>();
  for (const { propertyId, dayAllowed, lastOn } of jobs) {
    const property = properties.get(propertyId);
    if (property === undefined) continue;
    const { opensOn, isNever } = windows(property);
    if (opensOn === null && !isNever) unknown.add(property.name);
    else if (!dates.some((date, day) => dayAllowed[day] === 1 && (lastOn === undefined || date <= lastOn)))
      missed.add(property.name);
  }
  const where = roundWhere(round);
  const timing = book.timings.find((each) => each.id === round.timingId)?.name ?? '';
  const words = `By ${timing} no open day of the round lies between the first and the last useful day of ${namesOf([...missed])}.`;
  const blank = `When ${timing} opens is not known for ${namesOf([...unknown])}, for want of temperatures: no day is closed to them for it.`;
  return [
    ...(missed.size > 0 ? [issue('warning', 'timing-missed', where, words)] : []),
    ...(unknown.size > 0 ? [issue('warning', 'timing-unknown', where, blank)] : []),
  ];
}

/** "Elm 3, Oak 12 and 14 more" */
export function namesOf(names: readonly string[]): string {
  const told = names.slice(0, MOST_NAMES).join(', ');
  return names.length > MOST_NAMES ? `${told} and ${names.length - MOST_NAMES} more` : told;
}
