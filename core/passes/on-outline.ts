import { ok, type Result } from '../base/index.ts';
import type { AreaGeometry, Position } from '../book/index.ts';
import {
  boxCentre,
  degreesBox,
  type LocalPlane,
  localPlane,
  type Region,
  readOutline,
  toGeometry,
} from '../geometry/index.ts';
import { planPasses } from './plan-passes.ts';
import type { Leg, PassHead, PassOptions, PassPlan } from './types.ts';

/** The polygons of some ground in degrees: for each its outline, then its holes. */
export type PassOutline = readonly (readonly (readonly Position[])[])[];

/** What passes treat, and what the ways between parts of it that do not hang together lead round; obstacles are empty for one part. */
export type PassGround = { readonly outline: PassOutline; readonly obstacles: PassOutline };

/** A leg in degrees. */
export type PlacedLeg = Pick<Leg, 'kind' | 'widthM' | 'goesOn' | 'open'> & { readonly positions: readonly Position[] };
/** A plan of passes with its way and its hand trim in degrees. */
export type PlacedPasses = {
  /** The ground in a local plane. */
  readonly ground: Region;
  readonly plane: LocalPlane;
  readonly plan: PassPlan;
  readonly path: readonly PlacedLeg[];
  readonly handTrim: AreaGeometry;
};

/**
 * Passes over the outline of a zone, less everything that is not treated; obstacles that cannot be read are left out.
 * @returns null where the outline has no ground. Errors: those of `planPasses`.
 */
export function passesOnOutline(
  { outline: coordinates, obstacles }: PassGround,
  head: PassHead,
  options: Omit<PassOptions, 'obstacles'>,
  where: string,
): Result<PlacedPasses | null> {
  if (coordinates.length === 0) return ok(null);
  const outline: AreaGeometry = { type: 'MultiPolygon', coordinates };
  const checked = degreesBox(outline);
  if ('fault' in checked) return ok(null);
  const plane = localPlane(boxCentre(checked.box));
  const read = readOutline(outline, plane);
  if (read.kind === 'refused') return ok(null);
  const walls = obstacles.length === 0 ? null : readOutline({ type: 'MultiPolygon', coordinates: obstacles }, plane);
  const round = walls === null || walls.kind === 'refused' ? {} : { obstacles: walls.net };
  const planned = planPasses(read.net, head, { ...options, ...round }, where);
  if (!planned.ok) return planned;
  const plan = planned.value;
  return ok({
    ground: read.net,
    plane,
    plan,
    path: plan.path.map((leg) => placed(leg, plane)),
    handTrim: toGeometry(plan.handTrim, plane),
  });
}

const placed = ({ kind, widthM, points, goesOn, open }: Leg, plane: LocalPlane): PlacedLeg => ({
  kind,
  widthM,
  ...(goesOn === undefined ? {} : { goesOn }),
  ...(open === undefined ? {} : { open }),
  positions: points.map(plane.toDegrees),
});
