import type { Book, Calendar, Programme, ProgrammeStep, Round } from '../../book/index.ts';
import { addDays, dateInYear } from '../../units/index.ts';
import { calendarOf, workdaysBetween } from '../calendar/index.ts';

/** The rounds of a programme in one year, and what is to be said of them, a sentence each. */
export type SeasonRounds = { readonly rounds: readonly Round[]; readonly notes: readonly string[] };

/** First and last day of a step in a year; the last one lies in the next year where it comes before the first in the calendar. */
function stepSpan(step: ProgrammeStep, year: number): { readonly from: string; readonly to: string } {
  return { from: dateInYear(step.from, year), to: dateInYear(step.to, step.to < step.from ? year + 1 : year) };
}

/**
 * The rounds that a programme comes to in a year: one for each step that has none yet, on every working day of its span, due on the last
 * day of it. A step that follows another one begins no sooner than the days in between after that one's first day and, where the
 * programme says so, ends no later than so many after its last.
 *
 * @param rigIds who does them
 * @param freshId an id that is in no list handed to it yet
 */
export function seasonRounds(
  book: Book,
  programme: Programme,
  year: number,
  rigIds: readonly string[],
  freshId: (taken: readonly { readonly id: string }[]) => string,
): SeasonRounds {
  const calendar = calendarOf(book);
  const rounds: Round[] = [];
  const notes: string[] = [];
  for (const step of inOrder(programme)) {
    const all = [...book.rounds, ...rounds];
    const ofStep = (stepId: string): Round | undefined => all.find((each) => isOf(each, programme, stepId, year));
    const there = ofStep(step.id);
    if (there !== undefined) {
      notes.push(`${step.name}: ${there.name} is there already`);
      continue;
    }
    const before = step.after === undefined ? undefined : ofStep(step.after.stepId);
    const dates = stepDates(calendar, step, year, before);
    const treatmentIds = step.treatmentIds.filter((id) => book.treatments.some((each) => each.id === id));
    if (dates.length === 0) notes.push(`${step.name}: no working day lies ${spanWords(step, year, before)}`);
    else if (treatmentIds.length === 0) notes.push(`${step.name}: the shed has none of its treatments`);
    else rounds.push(roundOf(freshId(all), programme, { ...step, treatmentIds }, year, dates, rigIds));
  }
  return { rounds, notes };
}

function isOf({ season }: Round, programme: Programme, stepId: string, year: number): boolean {
  return season?.programmeId === programme.id && season.stepId === stepId && season.year === year;
}

/** Steps in the order of the list, each after the one that it follows; a ring of steps stays as it is. */
function inOrder({ steps }: Programme): readonly ProgrammeStep[] {
  const sorted: ProgrammeStep[] = [];
  let rest = steps;
  while (rest.length > 0) {
    const waits = (step: ProgrammeStep): boolean => rest.some((each) => each.id === step.after?.stepId);
    const ready = rest.filter((step) => !waits(step));
    sorted.push(...(ready.length > 0 ? ready : rest));
    rest = ready.length > 0 ? rest.filter(waits) : [];
  }
  return sorted;
}

function stepDates(
  calendar: Calendar,
  step: ProgrammeStep,
  year: number,
  before: Round | undefined,
): readonly string[] {
  const { from, to } = boundSpan(step, year, before);
  return workdaysBetween(calendar, from, to);
}

function boundSpan(step: ProgrammeStep, year: number, before: Round | undefined): { from: string; to: string } {
  const { from, to } = stepSpan(step, year);
  if (step.after === undefined || before === undefined) return { from, to };
  const sorted = before.dates.toSorted();
  const soonest = addDays(sorted[0] ?? from, step.after.leastDays);
  const { mostDays } = step.after;
  const latest = mostDays === undefined ? to : addDays(sorted.at(-1) ?? to, mostDays);
  return { from: [from, soonest].toSorted()[1] ?? from, to: [to, latest].toSorted()[0] ?? to };
}

function spanWords(step: ProgrammeStep, year: number, before: Round | undefined): string {
  const { from, to } = boundSpan(step, year, before);
  const after = before === undefined ? '' : `, so long after ${before.name}`;
  return `from ${from} to ${to}${after}`;
}

function roundOf(
  id: string,
  programme: Programme,
  step: ProgrammeStep,
  year: number,
  dates: readonly string[],
  rigIds: readonly string[],
): Round {
  return {
    id,
    name: `${step.name} ${year}`,
    treatmentIds: step.treatmentIds,
    propertyIds: 'all',
    ...(step.choice === undefined ? {} : { choice: step.choice }),
    skipped: [],
    dates,
    dueDate: stepSpan(step, year).to,
    ...(step.timingId === undefined ? {} : { timingId: step.timingId }),
    season: { programmeId: programme.id, stepId: step.id, year },
    rigIds,
    wetGround: false,
  };
}
