import { createRandom, type Random } from '../../../core/base/index.ts';
import { fillNonzero } from '../../../core/geometry/booleans.ts';
import { difference, type Region } from '../../../core/geometry/index.ts';
import { type Leg, type PassHead, type PassOptions, type PassPlan, planPasses } from '../../../core/passes/index.ts';
import { type Corner, rectangle, starCorners } from '../geometry/shapes.ts';

/** Ground that several tests of passes go over, in metres round the origin. */

export const FEET_PER_METRE = 1 / 0.3048;

export function groundOf(corners: readonly Corner[], holes: readonly (readonly Corner[])[] = []): Region {
  const toRegion = (ring: readonly Corner[]): Region =>
    fillNonzero([ring.map(([x, y]) => ({ x: Math.round(x * 100_000), y: Math.round(y * 100_000) }))]);
  return difference(toRegion(corners), holes.map(toRegion));
}

export const turned = (corners: readonly Corner[], degrees: number): Corner[] => {
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return corners.map(([x, y]) => [cosine * x - sine * y, sine * x + cosine * y]);
};

/** A head of which the widths are given in metres: 2 trim passes, 0.1 m overlap, 3 s a turn, 2 m/s. */
export const headOf = (swathM: number, change: Partial<PassHead> = {}): PassHead => ({
  swathFt: swathM * FEET_PER_METRE,
  overlapFt: 0.1 * FEET_PER_METRE,
  trimPasses: 2,
  turnSec: 3,
  speedMph: (2 * 3600) / 1609.344,
  ...change,
});

export function planWith(ground: Region, head: PassHead, options: PassOptions): PassPlan {
  const plan = planPasses(ground, head, options);
  if (!plan.ok) throw new Error(plan.error.detail);
  return plan.value;
}

export const planned = (ground: Region, head: PassHead, angleDeg?: number): PassPlan =>
  planWith(ground, head, angleDeg === undefined ? {} : { angleDeg });

/** A lawn with a house, a drive that comes in from the edge, and two round beds. */
export const houseLawn = (): Region =>
  groundOf(rectangle(0, 0, 40, 30), [
    rectangle(12, 10, 26, 20),
    rectangle(17, -1, 21, 12),
    circle(6, 22, 1.5),
    circle(33, 8, 2),
  ]);
export const lShape = (): Region =>
  groundOf([
    [0, 0],
    [30, 0],
    [30, 10],
    [12, 10],
    [12, 25],
    [0, 25],
  ]);
export const unevenLawn = (seed: number): Region => groundOf(starCorners(createRandom(seed), 14, 25));
export const circle = (x: number, y: number, radius: number): Corner[] =>
  Array.from({ length: 48 }, (_, step) => [
    x + radius * Math.cos((step * Math.PI) / 24),
    y + radius * Math.sin((step * Math.PI) / 24),
  ]);

/** An uneven shape without hollows: corners on a circle. */
export const convexCorners = (random: Random, radius: number): Corner[] =>
  Array.from({ length: 9 }, (_, step) => {
    const angle = (2 * Math.PI * (step + 0.9 * random.unit())) / 9;
    return [radius * Math.cos(angle), 0.7 * radius * Math.sin(angle)];
  });

const NEAR_END = 1e-9;

/** Whether a leg treats a place: within half its width of a trim pass, or in the rectangle of a swath or of a run into a corner. */
export function treats(leg: Leg, x: number, y: number): boolean {
  return leg.points.some((to, index) => {
    const from = leg.points[index - 1];
    if (from === undefined) return false;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) return false;
    const along = ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / length;
    const across = Math.abs((x - from.x) * (to.y - from.y) - (y - from.y) * (to.x - from.x)) / length;
    const beyond = Math.max(0, -along, along - length);
    if (leg.kind !== 'trim') return leg.kind !== 'transit' && beyond <= NEAR_END && across <= leg.widthM / 2;
    return Math.hypot(beyond, across) <= leg.widthM / 2;
  });
}

/** Even-odd, over all paths of a region. */
export function isOn(ground: Region, x: number, y: number): boolean {
  let inside = false;
  for (const path of ground.paths) {
    let before = path[path.length - 1];
    for (const point of path) {
      if (before !== undefined && point.y / 100_000 > y !== before.y / 100_000 > y) {
        const share = (y * 100_000 - before.y) / (point.y - before.y);
        if (x * 100_000 < before.x + share * (point.x - before.x)) inside = !inside;
      }
      before = point;
    }
  }
  return inside;
}
