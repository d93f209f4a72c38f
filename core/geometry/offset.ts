import type { GridPath, GridPoint } from './region.ts';

/** How far a round corner may lie inside the true arc, steps: 1 mm. */
const ARC_TOLERANCE_STEPS = 100;
/** Corners whose tip would stand out more than this many times the distance are cut off square. */
const MITER_LIMIT = 20;
/** Cosine of the sharpest turn at an inner corner that is trimmed. */
const SHARPEST_TRIM = -0.9;

/**
 * The path moved to its right by `distance` steps (outwards for an anticlockwise outer path, into the hole for a clockwise
 * hole), or to its left where negative. The result crosses itself wherever the path bends the other way or is narrow; filled
 * where its winding is positive it is the moved edge. Method: A. Johnson, Clipper2, documentation of offsetting.
 */
export function movePath(path: GridPath, distance: number, corners: 'round' | 'sharp'): GridPath {
  const moved: GridPoint[] = [];
  const count = path.length;
  for (let index = 0; index < count; index += 1) {
    const before = path[(index + count - 1) % count];
    const point = path[index];
    const after = path[(index + 1) % count];
    if (before === undefined || point === undefined || after === undefined) continue;
    const incoming = normal(before, point);
    const outgoing = normal(point, after);
    if (incoming === null || outgoing === null) continue;
    turnCorner(moved, point, incoming, outgoing, distance, corners);
  }
  return moved;
}

/**
 * The same for a plain path whose sides are all longer than what its inner corners take off them: there the moved sides are
 * simply cut where they meet. Null where a side would turn round; the result may still cross itself elsewhere.
 */
export function movePathTrimmed(path: GridPath, distance: number): GridPath | null {
  const moved: GridPoint[] = [];
  const count = path.length;
  const taken = new Float64Array(count);
  for (let index = 0; index < count; index += 1) {
    const last = (index + count - 1) % count;
    const before = path[last];
    const point = path[index];
    const after = path[(index + 1) % count];
    if (before === undefined || point === undefined || after === undefined) return null;
    const incoming = normal(before, point);
    const outgoing = normal(point, after);
    if (incoming === null || outgoing === null) return null;
    const sine = incoming.x * outgoing.y - incoming.y * outgoing.x;
    const cosine = incoming.x * outgoing.x + incoming.y * outgoing.y;
    if (sine * distance > 0) {
      turnCorner(moved, point, incoming, outgoing, distance, 'round');
      continue;
    }
    if (cosine < SHARPEST_TRIM) return null;
    const trim = Math.abs((distance * sine) / (1 + cosine));
    taken[last] = (taken[last] ?? 0) + trim;
    taken[index] = (taken[index] ?? 0) + trim;
    add(moved, point, { x: incoming.x + outgoing.x, y: incoming.y + outgoing.y }, distance / (1 + cosine));
  }
  return fitsSides(path, taken) ? moved : null;
}

/** True where every side, from its corner on, is longer than what is taken off its two ends. */
function fitsSides(path: GridPath, taken: Float64Array): boolean {
  return path.every((point, index) => {
    const after = path[(index + 1) % path.length] ?? point;
    return Math.hypot(after.x - point.x, after.y - point.y) > (taken[index] ?? 0) + 1;
  });
}

type Vector = { readonly x: number; readonly y: number };

/** Unit vector to the right of the way from one corner to the next; null where they are the same. */
function normal(from: GridPoint, to: GridPoint): Vector | null {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return length === 0 ? null : { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

function turnCorner(
  moved: GridPoint[],
  point: GridPoint,
  incoming: Vector,
  outgoing: Vector,
  distance: number,
  corners: 'round' | 'sharp',
): void {
  const sine = incoming.x * outgoing.y - incoming.y * outgoing.x;
  const cosine = incoming.x * outgoing.x + incoming.y * outgoing.y;
  const opensOut = sine * distance > 0 || (cosine < 0 && Math.abs(sine) < 1e-9);
  add(moved, point, incoming, distance);
  if (!opensOut) {
    if (cosine < 0.9999) moved.push(point);
  } else if (corners === 'round') {
    addArc(moved, point, incoming, Math.atan2(sine, cosine), distance);
  } else if (1 + cosine > 2 / (MITER_LIMIT * MITER_LIMIT)) {
    add(moved, point, { x: incoming.x + outgoing.x, y: incoming.y + outgoing.y }, distance / (1 + cosine));
  }
  add(moved, point, outgoing, distance);
}

function add(moved: GridPoint[], point: GridPoint, way: Vector, distance: number): void {
  const x = Math.round(point.x + way.x * distance);
  const y = Math.round(point.y + way.y * distance);
  const last = moved[moved.length - 1];
  if (last === undefined || last.x !== x || last.y !== y) moved.push({ x, y });
}

/** The corners of an arc between its ends, on the circle, near enough together. */
function addArc(moved: GridPoint[], point: GridPoint, start: Vector, angle: number, distance: number): void {
  const radius = Math.abs(distance);
  const widest = 2 * Math.acos(Math.max(0, 1 - ARC_TOLERANCE_STEPS / radius));
  const count = Math.ceil(Math.abs(angle) / widest);
  for (let index = 1; index < count; index += 1) {
    const part = (angle * index) / count;
    const cosine = Math.cos(part);
    const sine = Math.sin(part);
    add(moved, point, { x: start.x * cosine - start.y * sine, y: start.x * sine + start.y * cosine }, distance);
  }
}
