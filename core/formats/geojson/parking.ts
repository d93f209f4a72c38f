import type { Position } from '../../book/index.ts';
import { boxCentre, degreesBox, nearestOnOutline } from '../../geometry/index.ts';
import type { GateFeature, ZoneFeature } from './feature.ts';

/**
 * Where the rig is taken to park when the file does not say: the point of the first zone's outline that is nearest to a
 * gate, else nearest to the middle of the outline. Files of outlines know nothing of streets, so it is only a start.
 */
export function placeParking(zones: readonly ZoneFeature[], gates: readonly GateFeature[]): Position {
  const gate = gates.find((each) => each.at !== null)?.at ?? null;
  for (const { geometry } of zones) {
    const checked = degreesBox(geometry);
    if ('fault' in checked) continue;
    const middle = boxCentre(checked.box);
    return nearestOnOutline(geometry, gate ?? middle) ?? middle;
  }
  return gate ?? [0, 0];
}
