import { ok, type Result } from '../../core/base/index.ts';
import type { AreaGeometry } from '../../core/book/index.ts';
import { polygonsOf } from '../../core/geometry/index.ts';
import { type Corners, cornersAt, squareUp, withCorners } from '../../core/sketch/index.ts';

/**
 * Changes every ring of an outline. A ring that has nothing to change stays; the first other refusal counts for all, and so
 * does the last one where no ring was changed.
 */
export function mapRings(geometry: AreaGeometry, change: (corners: Corners) => Result<Corners>): Result<AreaGeometry> {
  let next = geometry;
  let refusal: Result<never> | null = null;
  for (const [polygon, rings] of polygonsOf(geometry).entries()) {
    for (const ring of rings.keys()) {
      const corners = cornersAt(geometry, { polygon, ring });
      const changed = corners === null ? null : change(corners);
      if (changed === null) continue;
      if (!changed.ok) {
        if (changed.error.code !== 'nothing-to-do') return changed;
        refusal = changed;
        continue;
      }
      const joined = withCorners(next, { polygon, ring }, changed.value);
      if (!joined.ok) return joined;
      next = joined.value;
    }
  }
  return next === geometry && refusal !== null ? refusal : ok(next);
}

export function squareRing(corners: Corners): Result<Corners> {
  const squared = squareUp(corners);
  return squared.ok ? ok(squared.value.corners) : squared;
}
