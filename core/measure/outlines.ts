import type { Exclusion, Property } from '../book/index.ts';
import { toPolygons, union, withoutHairs } from '../geometry/index.ts';
import { prepareProperty } from './prepare.ts';
import type { TreatableOutline } from './types.ts';

/** What is treated of one zone, in degrees, without hairs along shared sides; empty where the zone has no outline or nothing is left of it. */
export function treatableOutline(property: Property, zoneId: string): TreatableOutline {
  const { plane, zones } = prepareProperty(property);
  const zone = zones.find((each) => each.zone.id === zoneId);
  return zone?.kind === 'drawn' ? toPolygons(withoutHairs(zone.cut.treatable), plane) : [];
}

/** What passes treat of a zone, and what ways between separate parts of it lead round, in degrees; nothing is in the way of one part. */
export type TreatableGround = { readonly outline: TreatableOutline; readonly obstacles: TreatableOutline };

/** Machines are driven over paving, past play ground and across whatever else is called so, but not through these. */
const IN_THE_WAY: ReadonlySet<Exclusion['what']> = new Set(['building', 'bed', 'garden', 'water']);

/** The treatable outline of a zone with the obstacles of its property: buildings, beds, gardens and water, as they lie. */
export function treatableGround(property: Property, zoneId: string): TreatableGround {
  const known = grounds.get(property) ?? new Map<string, TreatableGround>();
  grounds.set(property, known);
  const ground = known.get(zoneId) ?? makeGround(property, zoneId);
  known.set(zoneId, ground);
  return ground;
}

/** Properties never change, and tables ask for the ground of a zone once for each machine and rig. */
const grounds = new WeakMap<Property, Map<string, TreatableGround>>();

function makeGround(property: Property, zoneId: string): TreatableGround {
  const outline = treatableOutline(property, zoneId);
  if (outline.length < 2) return { outline, obstacles: [] };
  const { plane, exclusions } = prepareProperty(property);
  const plain = exclusions.flatMap(({ exclusion, plain, isFar }) =>
    plain === null || isFar || !IN_THE_WAY.has(exclusion.what) ? [] : [plain],
  );
  return { outline, obstacles: plain.length === 0 ? [] : toPolygons(union(plain), plane) };
}

/** What an exclusion takes from the turf, keep-away distance included; outline in degrees. */
export type ExcludedOutline = { readonly exclusionId: string; readonly outline: TreatableOutline };

/** The exclusions of a property grown by their keep-away distance, in degrees; those that cannot be read are left out. */
export function excludedOutlines(property: Property): readonly ExcludedOutline[] {
  const { plane, exclusions } = prepareProperty(property);
  return exclusions.flatMap(({ exclusion, grown }) =>
    grown === null ? [] : [{ exclusionId: exclusion.id, outline: toPolygons(grown, plane) }],
  );
}
