import type { AreaGeometry, Position } from '../../book/index.ts';
import { distanceMetres, nearestOnOutline, outlinesOverlap } from '../../geometry/index.ts';
import { feetToMetres, quantity } from '../../units/index.ts';
import type { BadFeature, ExclusionFeature, Feature, ZoneFeature } from './feature.ts';

/** A gate farther than this from every outline belongs to none of them, metres. */
const FARTHEST_GATE_M = 30;

type Home = { readonly zones: readonly (ZoneFeature | BadFeature)[] };

/** The properties that an exclusion or gate without a named property belongs to: the only one, or by where it lies. */
export function findHome<Group extends Home>(feature: Feature, groups: readonly Group[]): readonly Group[] {
  if (groups.length <= 1) return groups;
  if (feature.kind === 'exclusion') return groups.filter((group) => meetsTurf(feature, group));
  if (feature.kind !== 'gate' || feature.at === null) return [];
  let best: Group | null = null;
  let bestDistance = FARTHEST_GATE_M;
  for (const group of groups) {
    for (const geometry of outlinesOf(group)) {
      const distance = distanceTo(geometry, feature.at);
      if (distance > bestDistance) continue;
      bestDistance = distance;
      best = group;
    }
  }
  return best === null ? [] : [best];
}

function meetsTurf(feature: ExclusionFeature, group: Home): boolean {
  const margin = feetToMetres(quantity<'ft'>(feature.keepAwayFt));
  return outlinesOf(group).some((geometry) => outlinesOverlap(feature.geometry, geometry, margin));
}

function outlinesOf(group: Home): readonly AreaGeometry[] {
  return group.zones.flatMap((zone) => (zone.kind === 'zone' ? [zone.geometry] : []));
}

function distanceTo(geometry: AreaGeometry, position: Position): number {
  const nearest = nearestOnOutline(geometry, position);
  return nearest === null ? Number.POSITIVE_INFINITY : distanceMetres(nearest, position);
}
