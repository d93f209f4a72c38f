import type { Book, Property, Round } from '../../book/index.ts';
import { addDays, dateInYear, daysBetween } from '../../units/index.ts';
import { calendarOf, holdWords, holidayWhy, isWorkday } from '../calendar/index.ts';

/** A round of an earlier year laid out for another one, and what is to be said of it, a sentence each. */
export type CopiedRound = { readonly round: Round; readonly notes: readonly string[] };

/**
 * A round of an earlier year for another year. All of its days move by the same whole number of weeks, so that the pattern of weekdays
 * stays, to where the first one is nearest to the same date; days that are holidays then go over to the next working day after the
 * last one. Promised days are dropped. Lawns stay left out where they are still in the book and what kept them out may still hold: a
 * reason that was a hold is dropped where the lawn is not on hold any more.
 *
 * @param id of the new round
 * @returns null where the round's treatments or rigs are no longer in the book
 */
export function copiedToYear(book: Book, round: Round, year: number, id: string): CopiedRound | null {
  const notes: string[] = [];
  const kept = (ids: readonly string[], records: readonly { readonly id: string }[], what: string) => {
    const there = ids.filter((each) => records.some((record) => record.id === each));
    if (there.length < ids.length) notes.push(`not in the book any more: ${ids.length - there.length} of its ${what}`);
    return there;
  };
  const treatmentIds = kept(round.treatmentIds, book.treatments, 'treatments');
  const rigIds = kept(round.rigIds, book.rigs, 'rigs');
  if (treatmentIds.length === 0 || rigIds.length === 0) return null;
  const shift = weeksShift(round, year);
  const dates = movedDates(book, round, shift, notes);
  const propertyIds = round.propertyIds === 'all' ? 'all' : kept(round.propertyIds, book.properties, 'lawns');
  const skipped = round.skipped.filter((each) => stillHolds(book, each, dates.at(-1) ?? ''));
  const again = round.skipped.length - skipped.length;
  if (again > 0)
    notes.push(`${again} of the lawns that were left out ${again === 1 ? 'is' : 'are'} not left out again`);
  const { promised, dueDate, season, heldBack: _, ...rest } = round;
  const promises = promised?.length ?? 0;
  if (promises > 0) notes.push(`${promises} promised ${promises === 1 ? 'day is' : 'days are'} dropped`);
  const copy: Round = {
    ...rest,
    id,
    name: renamed(round, year),
    treatmentIds,
    rigIds,
    propertyIds,
    skipped,
    dates,
    ...(dueDate === undefined ? {} : { dueDate: addDays(dueDate, shift) }),
    ...(season === undefined ? {} : { season: { ...season, year: season.year + year - yearOf(round) } }),
  };
  return { round: copy, notes };
}

function yearOf(round: Round): number {
  return Number((round.dates.toSorted()[0] ?? '').slice(0, 4));
}

/** Whole weeks, in days, that bring the first day nearest to the same date of the other year. */
function weeksShift(round: Round, year: number): number {
  const first = round.dates.toSorted()[0] ?? '';
  return Math.round(daysBetween(first, dateInYear(first.slice(5), year)) / 7) * 7;
}

function movedDates(book: Book, round: Round, shift: number, notes: string[]): readonly string[] {
  const calendar = calendarOf(book);
  const dates: string[] = [];
  let free = 0;
  for (const date of round.dates.toSorted()) {
    const moved = addDays(date, shift);
    const why = holidayWhy(calendar, moved);
    if (why === null) dates.push(moved);
    else {
      free += 1;
      notes.push(`${moved} is a ${why}; a working day after the last one stands for it`);
    }
  }
  let last = dates.at(-1) ?? addDays(round.dates.toSorted().at(-1) ?? '', shift);
  for (let tries = 0; free > 0 && tries < 366; tries += 1) {
    last = addDays(last, 1);
    if (!isWorkday(calendar, last)) continue;
    dates.push(last);
    free -= 1;
  }
  return dates;
}

const HOLD_KINDS = ['seeding', 'new', 'on-hold'] as const;

/** Whether a lawn is to be left out again. A reason that says what a hold says is none of its own: the lawn's hold decides. */
function stillHolds(book: Book, { propertyId, reason }: Round['skipped'][number], lastDay: string): boolean {
  const property = book.properties.find((each) => each.id === propertyId);
  if (property === undefined) return false;
  return !saysHold(reason) || isHeld(property, lastDay);
}

function saysHold(reason: string): boolean {
  const words = reason.trim().toLowerCase();
  return HOLD_KINDS.some((why) => words === why || words.startsWith(holdWords({ why })));
}

function isHeld({ hold }: Property, lastDay: string): boolean {
  return hold !== undefined && (hold.until === undefined || hold.until >= lastDay);
}

/** "Spring 2026" becomes "Spring 2027"; a name without the year gets it. */
function renamed(round: Round, year: number): string {
  const old = String(yearOf(round));
  return round.name.includes(old) ? round.name.replaceAll(old, String(year)) : `${round.name} ${year}`;
}
