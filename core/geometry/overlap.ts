import type { AreaGeometry } from '../book/index.ts';
import { grow, intersection } from './booleans.ts';
import { boxCentre, type DegreesBox, degreesBox, joinBoxes } from './degrees-box.ts';
import { localPlane } from './local-plane.ts';
import { readOutline } from './outline.ts';
import { regionArea } from './region.ts';

/** Common ground smaller than this is rounding along a shared side, m2. */
const LEAST_COMMON_SQ_M = 0.01;
/** Outlines whose boxes lie farther apart than this are not compared further, degrees. */
const MARGIN_DEG = 0.01;

/** True where two outlines, the first one grown by `marginMetres`, have ground in common. False where one is refused. */
export function outlinesOverlap(first: AreaGeometry, second: AreaGeometry, marginMetres = 0): boolean {
  const firstBox = degreesBox(first);
  const secondBox = degreesBox(second);
  if ('fault' in firstBox || 'fault' in secondBox) return false;
  if (!areNear(firstBox.box, secondBox.box)) return false;
  const plane = localPlane(boxCentre(firstBox.box));
  const left = readOutline(first, plane);
  const right = readOutline(second, plane);
  if (left.kind === 'refused' || right.kind === 'refused') return false;
  return regionArea(intersection(grow(left.net, marginMetres), right.net)) > LEAST_COMMON_SQ_M;
}

function areNear(first: DegreesBox, second: DegreesBox): boolean {
  const joined = joinBoxes(first, second);
  const width = first.east - first.west + (second.east - second.west) + MARGIN_DEG;
  const height = first.north - first.south + (second.north - second.south) + MARGIN_DEG;
  return joined.east - joined.west <= width && joined.north - joined.south <= height;
}
