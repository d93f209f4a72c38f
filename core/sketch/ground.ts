import { ok, type Result } from '../base/index.ts';
import type { AreaGeometry } from '../book/index.ts';
import {
  boxCentre,
  degreesBox,
  isEmpty,
  joinParts,
  type LocalPlane,
  localPlane,
  partArea,
  partsOf,
  type Region,
  readOutline,
  STEPS_PER_METRE,
  toGeometry,
} from '../geometry/index.ts';
import { refuse, refuseFault } from './refuse.ts';

/** Outlines as ground in one plane. */
export type Ground = { readonly plane: LocalPlane; readonly regions: readonly Region[] };

/** Pieces that an edit leaves smaller than this are rounding, m2. */
const LEAST_PIECE_SQ_M = 0.01;

/**
 * Reads outlines into one plane, in the middle of the first. Refused where one of them crosses itself, has no ground or
 * does not lie on the earth, with the reason and the place.
 */
export function readGround(geometries: readonly AreaGeometry[]): Result<Ground> {
  const [first] = geometries;
  if (first === undefined) return refuse('There is no outline.', 'Choose at least one.');
  const box = degreesBox(first);
  if ('fault' in box) return refuseFault(box.fault);
  const plane = localPlane(boxCentre(box.box));
  const regions: Region[] = [];
  for (const geometry of geometries) {
    const region = readRegion(geometry, plane);
    if (!region.ok) return region;
    regions.push(region.value);
  }
  return ok({ plane, regions });
}

/** The outline as it is, where it can be used; else the first fault that keeps it out of plans, with its place. */
export function checkOutline(geometry: AreaGeometry): Result<AreaGeometry> {
  const ground = readGround([geometry]);
  return ground.ok ? ok(geometry) : ground;
}

/** Ground as an outline again, pieces under 0.01 m2 left out; refused with `nothingLeft` where there is none. */
export function writeGround(region: Region, plane: LocalPlane, nothingLeft: string): Result<AreaGeometry> {
  const parts = partsOf(region).filter((part) => partArea(part) >= 2 * LEAST_PIECE_SQ_M * STEPS_PER_METRE ** 2);
  const kept = joinParts(parts);
  if (isEmpty(kept)) return refuse(nothingLeft, 'Choose a smaller piece or distance.');
  return ok(toGeometry(kept, plane));
}

function readRegion(geometry: AreaGeometry, plane: LocalPlane): Result<Region> {
  const box = degreesBox(geometry);
  if ('fault' in box) return refuseFault(box.fault);
  const outline = readOutline(geometry, plane);
  const fault = outline.faults.find((each) => each.severity === 'error');
  if (fault !== undefined) return refuseFault(fault, 'Move the corner.');
  if (outline.kind === 'refused') return refuse('The outline has no ground.', 'Draw it again.');
  return ok(outline.net);
}
