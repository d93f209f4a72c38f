import type { Property, Round } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';

/** The list with one member added or taken out; the order of the others stays. */
export function withMember(chosen: readonly string[], id: string, on: boolean): readonly string[] {
  if (!on) return chosen.filter((each) => each !== id);
  return chosen.includes(id) ? chosen : [...chosen, id];
}

/** The days of a round with one more or one less, in order; null where none would be left. */
export function withDate(round: Round, date: string, on: boolean): readonly string[] | null {
  const rest = round.dates.filter((each) => each !== date);
  const dates = on ? [...rest, date].toSorted() : rest;
  return dates.length === 0 ? null : dates;
}

/** The promises of a round with this one for a lawn in place of any other; without one where the date is null. */
export function withPromise({ promised = [] }: Round, property: Property, on: string | null): Round['promised'] {
  const rest = promised.filter((each) => each.propertyId !== property.id);
  return on === null ? rest : [...rest, { propertyId: property.id, on }];
}

/** Properties that a plan has on the day that they are promised: they stay where they are when it is planned again. */
export function keptPromises({ promised = [] }: Round, plan: Plan): readonly string[] {
  const kept = promised.filter(({ propertyId, on }) =>
    plan.days.some((day) => day.date === on && day.stops.some((stop) => stop.propertyId === propertyId)),
  );
  return kept.map((each) => each.propertyId);
}
