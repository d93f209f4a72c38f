import { createRandom } from '../../../core/base/index.ts';
import { intersection, joinParts, partsOf, type Region } from '../../../core/geometry/index.ts';
import { fixedDirection } from '../../../core/passes/angle.ts';
import { gaugeOf } from '../../../core/passes/gauge.ts';
import type { PassHead, PassPlan } from '../../../core/passes/index.ts';
import { pivotOf, sidesOf } from '../../../core/passes/sides.ts';
import type { Strips } from '../../../core/passes/strips.ts';
import { trimOf } from '../../../core/passes/trim.ts';
import type { Gauge } from '../../../core/passes/types.ts';
import { isOn, treats } from '../../core/passes/grounds.ts';

/** Checks of plans of passes: by a raster that knows the path alone, and by looking at every direction. */

const PLACES = 100_000;
const STEPS_PER_METRE = 100_000;
/** As in the choice of direction. */
const HAND_FACTOR = 5;

/** Share of the ground that no leg treats: one random place in each field of a raster of 100,000 over the box. */
export function missedByRaster(ground: Region, plan: PassPlan): number {
  const { west, south, east, north } = ground.box;
  const [left, low] = [west / STEPS_PER_METRE, south / STEPS_PER_METRE];
  const [wide, high] = [(east - west) / STEPS_PER_METRE, (north - south) / STEPS_PER_METRE];
  const step = Math.sqrt((wide * high) / PLACES);
  const legs = plan.path
    .filter((leg) => leg.kind !== 'transit')
    .flatMap((leg) =>
      leg.points.slice(1).map((to, index) => {
        const from = leg.points[index] ?? to;
        const reach = leg.widthM;
        return {
          leg: { ...leg, points: [from, to] },
          west: Math.min(from.x, to.x) - reach,
          east: Math.max(from.x, to.x) + reach,
          south: Math.min(from.y, to.y) - reach,
          north: Math.max(from.y, to.y) + reach,
        };
      }),
    );
  const random = createRandom(5);
  let [on, missed] = [0, 0];
  for (let column = left; column < left + wide; column += step) {
    const near = legs.filter((each) => each.west <= column + step && column <= each.east);
    for (let row = low; row < low + high; row += step) {
      const [x, y] = [column + step * random.unit(), row + step * random.unit()];
      if (!isOn(ground, x, y)) continue;
      on += 1;
      if (!near.some((each) => each.south <= y && y <= each.north && treats(each.leg, x, y))) missed += 1;
    }
  }
  return on === 0 ? 0 : missed / on;
}

/** Seconds for swaths, the steps between lanes and the turns, and five times those of the length that is left to the hand. */
function secondsOf({ lanes, lengthM, lostM, strips }: Strips, { metresPerSec, turnSec }: Gauge): number {
  return (lengthM + HAND_FACTOR * lostM + strips.length * lanes.stepM) / metresPerSec + strips.length * turnSec;
}

/**
 * By how much the swaths of the largest piece take longer than in the best of 180 directions a degree apart; a share, null where
 * there are no swaths.
 */
export function overScan(ground: Region, head: PassHead, plan: PassPlan): number | null {
  const gauge = gaugeOf(head, 'bench');
  const [part] = partsOf(ground);
  if (!gauge.ok || part === undefined || plan.angleDeg === null) return null;
  const whole = joinParts([part]);
  const trim = trimOf(whole, gauge.value);
  const [largest] = partsOf(trim.rest);
  if (largest === undefined) return null;
  const piece = joinParts([largest]);
  const bare = intersection(trim.bare, piece);
  const field = { rest: sidesOf(piece), bare: sidesOf(bare), ground: sidesOf(whole) };
  const seconds = (angleDeg: number): number =>
    secondsOf(fixedDirection(field, pivotOf(piece), gauge.value, angleDeg).strips, gauge.value);
  const scan = Array.from({ length: 180 }, (_, angleDeg) => seconds(angleDeg));
  return seconds(plan.angleDeg) / Math.min(...scan) - 1;
}
