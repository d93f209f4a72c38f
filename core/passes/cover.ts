import {
  difference,
  type PlanePoint,
  type Region,
  regionArea,
  regionOf,
  STEPS_PER_METRE,
  union,
} from '../geometry/index.ts';
import type { Cell, Swath } from './cells.ts';
import type { TrimPass } from './trim.ts';

/** What passes treat: ground left over, its area, and the area treated outside, m2. */
export type Cover = { readonly left: Region; readonly leftSqM: number; readonly outsideSqM: number };

/** Treated ground by polygon operations in the plane. A swath is a rectangle, square at both ends. */
export function coverOf(ground: Region, trim: readonly TrimPass[], cells: readonly Cell[], widthM: number): Cover {
  const swaths = cells.flat().map((swath) => rectangle(swath, widthM));
  const treated = union([...trim.map((each) => each.treated), ...swaths]);
  const left = difference(ground, [treated]);
  const leftSqM = regionArea(left);
  // Inside and outside add up to all that is treated, and inside is the ground less what is left.
  return { left, leftSqM, outsideSqM: Math.max(0, regionArea(treated) - (regionArea(ground) - leftSqM)) };
}

function rectangle({ from, to }: Swath, widthM: number): Region {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const x = ((to.y - from.y) / length) * (widthM / 2);
  const y = ((from.x - to.x) / length) * (widthM / 2);
  const corner = (point: PlanePoint, sign: number) => ({
    x: Math.round((point.x + sign * x) * STEPS_PER_METRE),
    y: Math.round((point.y + sign * y) * STEPS_PER_METRE),
  });
  return regionOf([[corner(from, 1), corner(to, 1), corner(to, -1), corner(from, -1)]]);
}
