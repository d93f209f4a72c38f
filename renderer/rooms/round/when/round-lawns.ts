import type { Book, Round } from '../../../../core/book/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { type AreaOf, lawnsOf } from '../../../../core/round/programme/index.ts';
import type { LawnDay } from '../../../../core/round/timing/index.ts';

/** The lawns of a round with the last day that is planned or promised for each, and the day on which it was done. */
export function roundLawns(book: Book, round: Round, plan: Plan | null, areaOf: AreaOf): readonly LawnDay[] {
  const planned = plannedDays(round, plan);
  const done = new Map(
    book.visits
      .filter((visit) => visit.roundId === round.id && visit.outcome.kind === 'done')
      .map((visit) => [visit.propertyId, visit.on]),
  );
  return lawnsOf(book, round, areaOf)
    .taken.filter((property) => property.zones.length > 0)
    .map((property) => ({
      property,
      plannedOn: planned.get(property.id) ?? null,
      doneOn: done.get(property.id) ?? null,
    }));
}

/** The last planned day of each lawn; where nothing is planned, the day that was promised. */
function plannedDays(round: Round, plan: Plan | null): ReadonlyMap<string, string> {
  const days = new Map((round.promised ?? []).map((each) => [each.propertyId, each.on]));
  const planned = new Map<string, string>();
  for (const { date, stops } of plan?.days ?? []) {
    for (const { propertyId } of stops) {
      if (date > (planned.get(propertyId) ?? '')) planned.set(propertyId, date);
    }
  }
  for (const [propertyId, date] of planned) days.set(propertyId, date);
  return days;
}
