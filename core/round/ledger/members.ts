import type { Book, Property, Round, Zone } from '../../book/index.ts';

/** Which ground a round treats. */
export type Members = {
  readonly has: (property: Property) => boolean;
  readonly treats: (property: Property, zone: Zone, treatmentId: string) => boolean;
};

export function membersOf(_book: Book, round: Round): Members {
  const skipped = new Set(round.skipped.map((each) => each.propertyId));
  const wanted = round.propertyIds === 'all' ? null : new Set(round.propertyIds);
  const has = ({ id }: Property): boolean => !skipped.has(id) && (wanted === null || wanted.has(id));
  return { has, treats: has };
}
