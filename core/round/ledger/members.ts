import type { Book, Property, Round, Zone } from '../../book/index.ts';
import { type AreaOf, lawnsOf, zonesOf } from '../programme/index.ts';
import type { Ground } from './types.ts';

/** Which ground a round treats. */
export type Members = {
  readonly has: (property: Property) => boolean;
  readonly treats: (property: Property, zone: Zone, treatmentId: string) => boolean;
};

export function membersOf(book: Book, round: Round, ground: Ground): Members {
  const areaOf = wholeArea(ground);
  const taken = new Set(lawnsOf(book, round, areaOf).taken.map((each) => each.id));
  const has = ({ id }: Property): boolean => taken.has(id);
  return {
    has,
    treats: (property, zone, treatmentId) =>
      has(property) && zonesOf(round, treatmentId, property, areaOf).some((each) => each.id === zone.id),
  };
}

/** Ground of all zones of a property; null where that of one of them is not known. */
function wholeArea({ areaSqFt }: Ground): AreaOf {
  return (property) => {
    const areas = property.zones.map((zone) => areaSqFt(property, zone.id));
    return areas.includes(null) ? null : areas.reduce<number>((sum, each) => sum + (each ?? 0), 0);
  };
}
