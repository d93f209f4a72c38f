import type { Property, Round } from '../../../core/book/index.ts';

/** The list with one member added or taken out; the order of the others stays. */
export function withMember(chosen: readonly string[], id: string, on: boolean): readonly string[] {
  if (!on) return chosen.filter((each) => each !== id);
  return chosen.includes(id) ? chosen : [...chosen, id];
}

/** The promises of a round with this one for a lawn in place of any other; without one where the date is null. */
export function withPromise({ promised = [] }: Round, property: Property, on: string | null): Round['promised'] {
  const rest = promised.filter((each) => each.propertyId !== property.id);
  return on === null ? rest : [...rest, { propertyId: property.id, on }];
}
