import { createRandom } from '../../../core/base/index.ts';
import { intersection, joinParts, partsOf, type Region } from '../../../core/geometry/index.ts';
import { fixedDirection } from '../../../core/passes/angle.ts';
import { gaugeOf } from '../../../core/passes/gauge.ts';
import type { Leg, PassHead, PassPlan } from '../../../core/passes/index.ts';
import { pivotOf, sidesOf } from '../../../core/passes/sides.ts';
import type { Strips } from '../../../core/passes/strips.ts';
import { trimOf } from '../../../core/passes/trim.ts';
import type { Gauge } from '../../../core/passes/types.ts';
import { isOn, treats } from '../../core/passes/grounds.ts';

/** Checks of plans of passes: by a raster that knows the path alone, and by looking at every direction. */

const PLACES = 100_000;
const BLOCK_FIELDS = 10;
const STEPS_PER_METRE = 100_000;
/** As in the choice of direction. */
const HAND_FACTOR = 5;

/** Share of the ground that no leg treats: one random place in each field of a raster of 100,000 over the box. */
export function missedByRaster(ground: Region, plan: PassPlan): number {
  const { west, south, east, north } = ground.box;
  const [left, low] = [west / STEPS_PER_METRE, south / STEPS_PER_METRE];
  const [wide, high] = [(east - west) / STEPS_PER_METRE, (north - south) / STEPS_PER_METRE];
  const step = Math.sqrt((wide * high) / PLACES);
  const random = createRandom(5);
  let [on, missed] = [0, 0];
  // Legs are sought block by block, so that each place asks only those that pass its block.
  const block = BLOCK_FIELDS * step;
  for (let x0 = left; x0 < left + wide; x0 += block) {
    for (let y0 = low; y0 < low + high; y0 += block) {
      const near = stretchesNear(plan, x0 + block / 2, y0 + block / 2, block);
      for (let field = 0; field < BLOCK_FIELDS ** 2; field += 1) {
        const x = x0 + step * ((field % BLOCK_FIELDS) + random.unit());
        const y = y0 + step * (Math.floor(field / BLOCK_FIELDS) + random.unit());
        if (!isOn(ground, x, y)) continue;
        on += 1;
        if (!near.some((leg) => treats(leg, x, y))) missed += 1;
      }
    }
  }
  return on === 0 ? 0 : missed / on;
}

/** The straight stretches of legs that may treat a place within a square about a place. */
function stretchesNear(plan: PassPlan, x: number, y: number, side: number): readonly Leg[] {
  return plan.path.flatMap((leg) => {
    if (leg.kind === 'transit') return [];
    const reach = leg.widthM + side;
    return leg.points.flatMap((to, index) => {
      const from = leg.points[index - 1];
      if (from === undefined) return [];
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const share = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1);
      const at = Math.max(0, Math.min(1, share));
      const away = Math.hypot(x - from.x - at * dx, y - from.y - at * dy);
      return away <= reach ? [{ ...leg, points: [from, to] }] : [];
    });
  });
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
