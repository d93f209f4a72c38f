import { shrink } from './booleans.ts';
import type { PlanePoint } from './local-plane.ts';
import { type Region, STEPS_PER_METRE } from './region.ts';

/** Obstacles as sides, and the corners that ways go round. */
export type Obstacles = {
  /** x1, y1, x2, y2 of each side, metres. */
  readonly sides: Float64Array;
  readonly corners: readonly PlanePoint[];
};

/** Ways may touch an obstacle: it is taken to be smaller by this much, and its corners a little less. metres */
const TOUCH_M = 0.05;
const CORNER_M = 0.04;

/** Regions as obstacles for `waysRound`, metres in their plane. */
export function obstaclesOf(regions: readonly Region[]): Obstacles {
  const sides: number[] = [];
  const corners: PlanePoint[] = [];
  for (const region of regions) {
    for (const path of shrink(region, TOUCH_M).paths) {
      path.forEach((to, index) => {
        const from = path[(index + path.length - 1) % path.length] ?? to;
        sides.push(...[from.x, from.y, to.x, to.y].map((each) => each / STEPS_PER_METRE));
      });
    }
    for (const path of shrink(region, CORNER_M).paths) {
      corners.push(...path.map(({ x, y }) => ({ x: x / STEPS_PER_METRE, y: y / STEPS_PER_METRE })));
    }
  }
  return { sides: Float64Array.from(sides), corners };
}

/**
 * Length of the shortest way from one place to each of others, round obstacles on either side: straight where nothing is in between,
 * else by way of their corners (E. W. Dijkstra, *A note on two problems in connexion with graphs*, 1959).
 * @returns metres, in the order of the places; Infinity where an obstacle encloses one of the two
 */
export function waysRound(from: PlanePoint, places: readonly PlanePoint[], obstacles: Obstacles): readonly number[] {
  const reached = new Float64Array(obstacles.corners.length).fill(-1);
  let known = false;
  return places.map((place) => {
    if (isFree(from, place, obstacles)) return distance(from, place);
    if (!known) reachCorners(from, obstacles, reached);
    known = true;
    let least = Number.POSITIVE_INFINITY;
    obstacles.corners.forEach((corner, index) => {
      const length = (reached[index] as number) + distance(corner, place);
      if (length < least && isFree(corner, place, obstacles)) least = length;
    });
    return least;
  });
}

/** Length of the shortest way to every corner; Infinity where there is none. */
function reachCorners(from: PlanePoint, obstacles: Obstacles, reached: Float64Array): void {
  const { corners } = obstacles;
  const done = new Uint8Array(corners.length);
  corners.forEach((corner, index) => {
    reached[index] = isFree(from, corner, obstacles) ? distance(from, corner) : Number.POSITIVE_INFINITY;
  });
  for (;;) {
    let next = -1;
    for (let index = 0; index < corners.length; index += 1) {
      if (done[index] === 0 && (next < 0 || (reached[index] as number) < (reached[next] as number))) next = index;
    }
    if (next < 0 || reached[next] === Number.POSITIVE_INFINITY) return;
    done[next] = 1;
    const here = corners[next] as PlanePoint;
    for (let index = 0; index < corners.length; index += 1) {
      const there = corners[index] as PlanePoint;
      const length = (reached[next] as number) + distance(here, there);
      if (done[index] === 0 && length < (reached[index] as number) && isFree(here, there, obstacles)) {
        reached[index] = length;
      }
    }
  }
}

/** Whether a straight line crosses no side. */
function isFree(from: PlanePoint, to: PlanePoint, { sides }: Obstacles): boolean {
  for (let at = 0; at < sides.length; at += 4) {
    const [x1, y1, x2, y2] = [sides[at], sides[at + 1], sides[at + 2], sides[at + 3]] as [
      number,
      number,
      number,
      number,
    ];
    const apart = turn(from, to, x1, y1) > 0 !== turn(from, to, x2, y2) > 0;
    const [start, end] = [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ];
    if (apart && turn(start, end, from.x, from.y) > 0 !== turn(start, end, to.x, to.y) > 0) return false;
  }
  return true;
}

const turn = (from: PlanePoint, to: PlanePoint, x: number, y: number): number =>
  (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);

const distance = (from: PlanePoint, to: PlanePoint): number => Math.hypot(to.x - from.x, to.y - from.y);
