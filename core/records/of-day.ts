import type { Book, Visit } from '../book/index.ts';
import type { PlanDay } from '../plan/result/index.ts';
import type { RecordSubject } from './types.ts';

/** Something that a rig did or was to do on one day. */
export type DayEntry = {
  readonly subject: RecordSubject;
  readonly name: string;
  /** Of the stop in the plan; null for what was done and is not in the plan any more. */
  readonly number: number | null;
};

/** What records of a rig's day are about: the stops of the plan, then visits that it no longer has since they are done. */
export function entriesOfDay(book: Book, roundId: string, day: PlanDay): readonly DayEntry[] {
  const planned = day.stops.map(({ propertyId, name, number }): DayEntry => {
    return { subject: { propertyId, on: day.date, roundId, rigId: day.rigId }, name, number };
  });
  const names = new Map(book.properties.map((each) => [each.id, each.name]));
  const known = new Set(planned.map((each) => each.subject.propertyId));
  const others = book.visits.filter(
    (each) =>
      each.on === day.date && each.rigId === day.rigId && each.roundId === roundId && !known.has(each.propertyId),
  );
  return [
    ...planned,
    ...others.map(({ propertyId, on, rigId }): DayEntry => {
      const subject = { propertyId, on, roundId, rigId };
      return { subject, name: names.get(propertyId) ?? propertyId, number: null };
    }),
  ];
}

/** Visits that were done and of which no record was ever kept, in the order of the book; one that was withdrawn was kept. */
export function visitsWithoutRecord(book: Book): readonly Visit[] {
  const kept = new Set(book.applicationRecords.map(keyOf));
  return book.visits.filter((visit) => visit.outcome.kind === 'done' && !kept.has(keyOf(visit)));
}

function keyOf({ propertyId, on, roundId, rigId }: RecordSubject): string {
  return JSON.stringify([propertyId, on, roundId, rigId]);
}
