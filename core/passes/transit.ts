import { type PlanePoint, type Region, regionOf, STEPS_PER_METRE } from '../geometry/index.ts';
import { type Sides, sidesOf } from './sides.ts';
import { distanceM } from './visits.ts';

type Loop = readonly PlanePoint[];
/**
 * Edges of ground that no way may cross: its loops, and per loop its sides in a row, side i ending at corner i, with the boxes of
 * so many sides at a time (west, south, east, north), by which most of them are passed over.
 */
export type Walls = { readonly loops: readonly Loop[]; readonly runs: readonly Run[] };
type Run = { readonly sides: Sides; readonly boxes: Float64Array };
const SIDES_PER_BOX = 16;
/** Whether a way keeps inside its walls, or outside of them: on ground, or round obstacles. */
export type Keeps = 'inside' | 'outside';
/** A way and whether it keeps to the ground. */
export type Route = { readonly points: readonly PlanePoint[]; readonly staysInside: boolean };

/** Crossings nearer to an end of a line than this share of it are that end touching an edge. */
const TOUCH = 1e-6;
const TOUCH_M = 0.002;
/** Ways round with more corners than this are not pulled taut. */
const MOST_CORNERS_PULLED = 400;

export function wallsOf(ground: Region): Walls {
  return {
    loops: ground.paths.map((path) => path.map(({ x, y }) => ({ x: x / STEPS_PER_METRE, y: y / STEPS_PER_METRE }))),
    runs: ground.paths.map((path) => {
      const sides = sidesOf(regionOf([path]));
      return { sides, boxes: boxesOf(sides) };
    }),
  };
}

function boxesOf(sides: Sides): Float64Array {
  const boxes = new Float64Array(4 * Math.ceil(sides.length / 4 / SIDES_PER_BOX));
  for (let box = 0; box < boxes.length; box += 4) {
    const ends = sides.subarray(box * SIDES_PER_BOX, (box + 4) * SIDES_PER_BOX);
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let at = 0; at < ends.length; at += 2) {
      const [x, y] = [ends[at] as number, ends[at + 1] as number];
      if (x < west) west = x;
      if (x > east) east = x;
      if (y < south) south = y;
      if (y > north) north = y;
    }
    boxes.set([west, south, east, north], box);
  }
  return boxes;
}

/** Ground without edges in the way. */
export const NO_WALLS: Walls = { loops: [], runs: [] };

type Crossing = { readonly at: number; readonly loop: number; readonly side: number; readonly point: PlanePoint };

/**
 * The way from one place to another: straight, and where an edge is in between along it, the shorter way round, then pulled
 * taut. It is a way on the ground, not always the shortest one.
 */
export function routeBetween(from: PlanePoint, to: PlanePoint, walls: Walls, keeps: Keeps = 'inside'): Route {
  const crossings = crossingsOf(from, to, walls);
  if (crossings.length === 0) return { points: [from, to], staysInside: true };
  const points: PlanePoint[] = [from];
  let here = -1;
  let staysInside = true;
  for (const crossing of crossings) {
    if (crossing.at <= here) continue;
    const last = crossings.findLast((each) => each.loop === crossing.loop);
    if (last === undefined || last === crossing) {
      staysInside = false;
      continue;
    }
    points.push(...wayAlong(walls.loops[crossing.loop] ?? [], crossing, last));
    here = last.at;
  }
  points.push(to);
  return { points: pullTaut(points, walls, keeps), staysInside };
}

/** Crossings of a line with the walls, in the order in which they are met. */
function crossingsOf(from: PlanePoint, to: PlanePoint, walls: Walls): readonly Crossing[] {
  const found: Crossing[] = [];
  const touch = Math.max(TOUCH, TOUCH_M / Math.max(TOUCH_M, distanceM(from, to)));
  const [west, east] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [south, north] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  for (const [loop, { sides, boxes }] of walls.runs.entries()) {
    for (let box = 0; box < boxes.length; box += 4) {
      if ((boxes[box] as number) > east || (boxes[box + 2] as number) < west) continue;
      if ((boxes[box + 1] as number) > north || (boxes[box + 3] as number) < south) continue;
      const end = Math.min(sides.length, (box + 4) * SIDES_PER_BOX);
      for (let at = box * SIDES_PER_BOX; at < end; at += 4) {
        const share = crossingAt(from, to, sides, at);
        if (!(share >= touch && share <= 1 - touch)) continue;
        const point = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
        found.push({ at: share, loop, side: at / 4, point });
      }
    }
  }
  return found.sort((left, right) => left.at - right.at);
}

/** Share of the line at which it crosses a side; NaN where it does not. */
function crossingAt(from: PlanePoint, to: PlanePoint, sides: Sides, at: number): number {
  const [startX, startY] = [sides[at] as number, sides[at + 1] as number];
  const [endX, endY] = [sides[at + 2] as number, sides[at + 3] as number];
  if (Math.max(startX, endX) < Math.min(from.x, to.x) || Math.min(startX, endX) > Math.max(from.x, to.x)) {
    return Number.NaN;
  }
  if (Math.max(startY, endY) < Math.min(from.y, to.y) || Math.min(startY, endY) > Math.max(from.y, to.y)) {
    return Number.NaN;
  }
  const x = to.x - from.x;
  const y = to.y - from.y;
  const startSide = x * (startY - from.y) - y * (startX - from.x);
  const endSide = x * (endY - from.y) - y * (endX - from.x);
  if (startSide > 0 === endSide > 0) return Number.NaN;
  const share = startSide / (startSide - endSide);
  const meetX = startX + share * (endX - startX);
  const meetY = startY + share * (endY - startY);
  return ((meetX - from.x) * x + (meetY - from.y) * y) / (x * x + y * y);
}

/** Along a loop from one crossing to another, whichever way is shorter. */
function wayAlong(loop: Loop, first: Crossing, last: Crossing): readonly PlanePoint[] {
  const forwards = [first.point, ...cornersFrom(loop, first.side, last.side), last.point];
  const backwards = [first.point, ...cornersFrom(loop, last.side, first.side).toReversed(), last.point];
  return lengthM(forwards) <= lengthM(backwards) ? forwards : backwards;
}

/** Corners between two sides, walking with the numbers; side i ends at corner i. */
function cornersFrom(loop: Loop, from: number, to: number): readonly PlanePoint[] {
  const corners: PlanePoint[] = [];
  for (let at = from; at !== to; at = (at + 1) % loop.length) {
    const corner = loop[at];
    if (corner !== undefined) corners.push(corner);
  }
  return corners;
}

/** Length of an open way, metres. */
export function lengthM(points: readonly PlanePoint[]): number {
  let sum = 0;
  for (let at = 1; at < points.length; at += 1) {
    const from = points[at - 1];
    const to = points[at];
    if (from !== undefined && to !== undefined) sum += distanceM(from, to);
  }
  return sum;
}

/** Leaves out corners that can be cut without crossing an edge: from each one straight to the farthest that can be seen. */
function pullTaut(points: readonly PlanePoint[], walls: Walls, keeps: Keeps): readonly PlanePoint[] {
  if (points.length > MOST_CORNERS_PULLED) return points;
  const taut: PlanePoint[] = points.slice(0, 1);
  for (let at = 0; at < points.length - 1; ) {
    const next = farthestSeen(points, at, walls, keeps);
    const point = points[next];
    if (point !== undefined) taut.push(point);
    at = next;
  }
  return taut;
}

function farthestSeen(points: readonly PlanePoint[], at: number, walls: Walls, keeps: Keeps): number {
  const from = points[at];
  for (let next = points.length - 1; next > at + 1; next -= 1) {
    const to = points[next];
    if (from === undefined || to === undefined) continue;
    const isFree = crossingsOf(from, to, walls).length === 0;
    if (isFree && isInside(middle(from, to), walls) === (keeps === 'inside')) return next;
  }
  return at + 1;
}

const middle = (from: PlanePoint, to: PlanePoint): PlanePoint => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });

function isInside({ x, y }: PlanePoint, walls: Walls): boolean {
  let inside = false;
  for (const { sides, boxes } of walls.runs) {
    for (let box = 0; box < boxes.length; box += 4) {
      if ((boxes[box + 1] as number) > y || (boxes[box + 3] as number) < y) continue;
      const end = Math.min(sides.length, (box + 4) * SIDES_PER_BOX);
      for (let at = box * SIDES_PER_BOX; at < end; at += 4) {
        const [fromX, fromY] = [sides[at] as number, sides[at + 1] as number];
        const [toX, toY] = [sides[at + 2] as number, sides[at + 3] as number];
        if (toY > y !== fromY > y && x < fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX)) inside = !inside;
      }
    }
  }
  return inside;
}
