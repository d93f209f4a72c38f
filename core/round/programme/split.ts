import type { Book, ProgrammeStep, Property, Round } from '../../book/index.ts';
import { addDays } from '../../units/index.ts';
import type { AreaOf } from './choice.ts';
import { lawnsOf } from './lawns.ts';

/** Days on which rounds have lawns in their plans: round, then property, then the date YYYY-MM-DD. */
export type PlannedDays = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** Between which days a step of a split application may follow on one lawn. */
export type SplitSpan = {
  readonly notBefore: string;
  /** Only where the day of the step before is known. */
  readonly notAfter: string | null;
  readonly words: string;
  /** True where it is a record that says when the step before was done, so that asking again gives the same answer. */
  readonly isRecorded: boolean;
};

/**
 * For each lawn the days between which a round may follow the step before it in a split application; null where nothing binds the lawn.
 * The day of the step before is the one that was recorded; else, where plans of other rounds are handed in, the planned one, or, of a
 * lawn that no plan has, the last day of that round, which errs on the safe side. A lawn that was not in the round before, or was skipped
 * there, is not bound.
 *
 * @param planned absent: only what was recorded is asked
 */
export function splitSpans(
  book: Book,
  round: Round,
  areaOf: AreaOf,
  planned?: PlannedDays,
): (property: Property) => SplitSpan | null {
  const split = stepBefore(book, round);
  if (split === null) return () => null;
  const { before, step, least, most } = split;
  const { done, skipped } = recorded(book, before);
  const inBefore = new Set(lawnsOf(book, before, areaOf).taken.map((each) => each.id));
  const last = before.dates.toSorted().at(-1) ?? '';
  return ({ id }) => {
    const record = done.get(id);
    if (record === undefined && (planned === undefined || skipped.has(id) || !inBefore.has(id))) return null;
    const plan = planned?.[before.id]?.[id];
    const day = record ?? plan ?? last;
    const notBefore = addDays(day, least);
    const notAfter = most === undefined || (record ?? plan) === undefined ? null : addDays(day, most);
    const was = record === undefined ? (plan === undefined ? 'ends on' : 'is planned there for') : 'was done there on';
    const until = notAfter === null ? '' : ` and not after ${notAfter}`;
    const words = `${before.name} ${was} ${day} and ${step.name} follows ${least} days later at least: not before ${notBefore}${until}`;
    return { notBefore, notAfter, words, isRecorded: record !== undefined };
  };
}

type Split = {
  readonly before: Round;
  readonly step: ProgrammeStep;
  readonly least: number;
  readonly most: number | undefined;
};

/** The round of the step before, in the same year of the same programme; null where the round follows none. */
function stepBefore(book: Book, { season }: Round): Split | null {
  const programme = book.programmes.find((each) => each.id === season?.programmeId);
  const step = programme?.steps.find((each) => each.id === season?.stepId);
  if (season === undefined || step?.after === undefined) return null;
  const { stepId, leastDays, mostDays } = step.after;
  const before = book.rounds.find(
    ({ season: other }) =>
      other !== undefined &&
      other.programmeId === season.programmeId &&
      other.year === season.year &&
      other.stepId === stepId,
  );
  return before === undefined ? null : { before, step, least: leastDays, most: mostDays };
}

type Recorded = { readonly done: ReadonlyMap<string, string>; readonly skipped: ReadonlySet<string> };

/** The last day on which each lawn was done in a round, and the lawns that were skipped in it and not done. */
function recorded(book: Book, round: Round): Recorded {
  const done = new Map<string, string>();
  const skipped = new Set<string>();
  for (const { roundId, propertyId, on, outcome } of book.visits) {
    if (roundId !== round.id) continue;
    if (outcome.kind === 'skipped') skipped.add(propertyId);
    else if (on > (done.get(propertyId) ?? '')) done.set(propertyId, on);
  }
  for (const id of done.keys()) skipped.delete(id);
  return { done, skipped };
}
