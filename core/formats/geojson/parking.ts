import type { AreaGeometry, Position } from '../../book/index.ts';
import { boxCentre, degreesBox, nearestOnOutline } from '../../geometry/index.ts';

/**
 * Where the rig is taken to park when a file does not say: the point of the first outline that is nearest to a gate, else nearest
 * to the middle of the outline. Files of outlines know nothing of streets, so it is only a start. Null without outline and gate.
 */
export function assumedParking(outlines: readonly AreaGeometry[], gate: Position | null): Position | null {
  for (const geometry of outlines) {
    const checked = degreesBox(geometry);
    if ('fault' in checked) continue;
    const middle = boxCentre(checked.box);
    return nearestOnOutline(geometry, gate ?? middle) ?? middle;
  }
  return gate;
}
