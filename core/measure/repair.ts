import { err, ok, type Result } from '../base/index.ts';
import type { AreaGeometry } from '../book/index.ts';
import {
  boxCentre,
  degreesBox,
  joinParts,
  localPlane,
  partArea,
  partsOf,
  readOutline,
  STEPS_PER_METRE,
  toGeometry,
} from '../geometry/index.ts';

/** Pieces of a repaired outline smaller than this are left out, m2. */
const LEAST_PIECE_SQ_M = 0.01;

/**
 * The outline that is offered in place of a faulty one: everything that the old one goes round, as one or more polygons that
 * neither cross nor touch themselves. Its area is the one the faulty outline was measured with.
 * Errors: `geometry-not-lonlat`, `geometry-too-large`, `geometry-invalid` where there is no ground to keep.
 */
export function repairPolygon(geometry: AreaGeometry, where = 'outline'): Result<AreaGeometry> {
  const hint = 'Draw the outline again.';
  const checked = degreesBox(geometry);
  if ('fault' in checked) {
    const { code, message } = checked.fault;
    const known = code === 'geometry-not-lonlat' || code === 'geometry-too-large' ? code : 'geometry-invalid';
    return err(known, where, message, hint);
  }
  const plane = localPlane(boxCentre(checked.box));
  const outline = readOutline(geometry, plane);
  if (outline.kind === 'refused') {
    return err('geometry-invalid', where, outline.faults[0]?.message ?? 'The outline has no ground.', hint);
  }
  const least = 2 * LEAST_PIECE_SQ_M * STEPS_PER_METRE ** 2;
  const parts = partsOf(outline.net).filter((part) => partArea(part) >= least);
  if (parts.length === 0) return err('geometry-invalid', where, 'Nothing is left of the outline.', hint);
  return ok(toGeometry(joinParts(parts), plane));
}
