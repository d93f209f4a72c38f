import { createRandom } from '../../../core/base/index.ts';
import type { Region } from '../../../core/geometry/index.ts';
import { type PassHead, type PassPlan, planPasses } from '../../../core/passes/index.ts';
import { isOn, treats } from '../../core/passes/grounds.ts';

/** Checks of plans of passes that know nothing of how they came about. */

const PLACES = 100_000;
const STEPS_PER_METRE = 100_000;
/** Ground left to the hand counts as much as five times its length at working speed, as in the choice of direction. */
const HAND_FACTOR = 5;
const METRES_PER_MILE = 1609.344;
const SECONDS_PER_HOUR = 3600;

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

/** Seconds of a plan, and five times those of the length that is left to the hand. */
function costOf(plan: PassPlan, head: PassHead): number {
  const metresPerSec = (head.speedMph * METRES_PER_MILE) / SECONDS_PER_HOUR;
  const swathM = (head.swathFt * METRES_PER_MILE) / 5280;
  return 60 * plan.minutes + (HAND_FACTOR * plan.handTrimSqM) / swathM / metresPerSec;
}

/** By how much the plan costs more than the best of 180 with a fixed direction each, a degree apart; a share. */
export function overScan(ground: Region, head: PassHead, plan: PassPlan): number {
  let least = Number.POSITIVE_INFINITY;
  for (let angleDeg = 0; angleDeg < 180; angleDeg += 1) {
    const fixed = planPasses(ground, head, { angleDeg });
    if (fixed.ok) least = Math.min(least, costOf(fixed.value, head));
  }
  return costOf(plan, head) / least - 1;
}
