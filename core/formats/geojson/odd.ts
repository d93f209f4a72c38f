import { type Issue, issue } from '../../base/index.ts';
import type { AreaGeometry, Position } from '../../book/index.ts';
import { boxCentre, degreesBox, distanceMetres, polygonsOf } from '../../geometry/index.ts';
import type { Feature, ZoneFeature } from './feature.ts';

/** A feature this far from the middle of the others is worth a look, metres. */
const FAR_M = 300_000;
/** With fewer features than this there is no saying which one is far off. */
const LEAST_FOR_MIDDLE = 3;

/** Zones that are odd only beside the others of the file: the same outline twice, and far from all others. */
export function oddFeatures(features: readonly Feature[]): readonly Issue[] {
  const zones = features.flatMap((each) => (each.kind === 'zone' ? [each] : []));
  return [...duplicateOutlines(zones), ...strays(zones)];
}

function duplicateOutlines(zones: readonly ZoneFeature[]): readonly Issue[] {
  const known = new Map<string, ZoneFeature>();
  const issues: Issue[] = [];
  for (const zone of zones) {
    const key = outlineKey(zone.geometry);
    const first = known.get(key);
    if (first === undefined) {
      known.set(key, zone);
    } else if (first.joins === null || first.joins !== zone.joins) {
      const message = `The outline is the same as that of features[${first.index}] (id ${first.id}), and counts twice in the total. Remove one.`;
      issues.push(issue('warning', 'duplicate-outline', zone.where, message));
    }
  }
  return issues;
}

/** The same for outlines with the same corners, wherever they start and whichever way they run. */
function outlineKey(geometry: AreaGeometry): string {
  const rings = polygonsOf(geometry).flatMap((polygon) =>
    polygon.map((ring) =>
      [...new Set(ring.map(([longitude, latitude]) => `${longitude},${latitude}`))].sort().join(' '),
    ),
  );
  return rings.sort().join('|');
}

function strays(zones: readonly ZoneFeature[]): readonly Issue[] {
  const placed = zones.flatMap((zone) => {
    const checked = degreesBox(zone.geometry);
    return 'box' in checked ? [{ zone, at: boxCentre(checked.box) }] : [];
  });
  if (placed.length < LEAST_FOR_MIDDLE) return [];
  const middle: Position = [median(placed.map(({ at }) => at[0])), median(placed.map(({ at }) => at[1]))];
  return placed.flatMap(({ zone, at }) => {
    const distance = distanceMetres(middle, at);
    if (distance <= FAR_M) return [];
    const [longitude, latitude] = at;
    const isSwapped = Math.abs(longitude) <= 90 && distanceMetres(middle, [latitude, longitude]) <= FAR_M;
    const cause = isSwapped
      ? 'Its latitude and longitude look swapped; export it as longitude, latitude.'
      : 'Check its coordinates.';
    const message = `The outline lies ${Math.round(distance / 1000)} km from the middle of the others. ${cause}`;
    return [issue('warning', isSwapped ? 'maybe-swapped' : 'far-from-others', zone.where, message)];
  });
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((left, right) => left - right);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
