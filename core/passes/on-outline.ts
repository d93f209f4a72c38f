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
import type { Leg, OpenSection, PassHead, PassOptions, PassPlan } from './types.ts';

/** A leg in degrees. */
export type PlacedLeg = Pick<Leg, 'kind' | 'widthM'> & {
  readonly positions: readonly Position[];
  readonly open?: readonly OpenSection[];
};
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
 * Passes over the outline of a zone, less everything that is not treated.
 * @returns null where the outline has no ground. Errors: those of `planPasses`.
 */
export function passesOnOutline(
  outline: AreaGeometry,
  head: PassHead,
  options: PassOptions,
  where: string,
): Result<PlacedPasses | null> {
  const checked = degreesBox(outline);
  if ('fault' in checked) return ok(null);
  const plane = localPlane(boxCentre(checked.box));
  const read = readOutline(outline, plane);
  if (read.kind === 'refused') return ok(null);
  const planned = planPasses(read.net, head, options, where);
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

const placed = ({ kind, widthM, points, open }: Leg, plane: LocalPlane): PlacedLeg => ({
  kind,
  widthM,
  ...(open === undefined ? {} : { open }),
  positions: points.map(plane.toDegrees),
});
