import type { Property } from '../book/index.ts';
import { toPolygons, withoutHairs } from '../geometry/index.ts';
import { prepareProperty } from './prepare.ts';
import type { TreatableOutline } from './types.ts';

/** What is treated of one zone, in degrees, without hairs along shared sides; empty where the zone has no outline or nothing is left of it. */
export function treatableOutline(property: Property, zoneId: string): TreatableOutline {
  const { plane, zones } = prepareProperty(property);
  const zone = zones.find((each) => each.zone.id === zoneId);
  return zone?.kind === 'drawn' ? toPolygons(withoutHairs(zone.cut.treatable), plane) : [];
}

export type ExcludedOutline = { readonly exclusionId: string; readonly outline: TreatableOutline };

/** The exclusions of a property grown by their keep-away distance, in degrees; those that cannot be read are left out. */
export function excludedOutlines(property: Property): readonly ExcludedOutline[] {
  const { plane, exclusions } = prepareProperty(property);
  return exclusions.flatMap(({ exclusion, grown }) =>
    grown === null ? [] : [{ exclusionId: exclusion.id, outline: toPolygons(grown, plane) }],
  );
}
