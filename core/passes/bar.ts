import { type PlanePoint, type Region, STEPS_PER_METRE } from '../geometry/index.ts';
import type { Sides } from './sides.ts';

/** Sides that reach less than this into the bar do not count, metres: an edge along which it runs must not stop it. */
const TOUCH_M = 0.0001;

/**
 * How far a bar can be driven straight until a side of the ground is in its way. Where it stands it is on the ground.
 * @param from the bar's middle, metres
 * @param way unit vector in which it is driven; the bar lies across
 * @param halfM half its length
 * @returns metres; infinite where no side is ahead
 */
export function freeAhead(from: PlanePoint, way: PlanePoint, sides: Sides, halfM: number): number {
  const reach = halfM - TOUCH_M;
  let freeM = Number.POSITIVE_INFINITY;
  for (let at = 0; at < sides.length; at += 4) {
    const [startX, startY] = [(sides[at] as number) - from.x, (sides[at + 1] as number) - from.y];
    const [endX, endY] = [(sides[at + 2] as number) - from.x, (sides[at + 3] as number) - from.y];
    const [along, across] = [startX * way.x + startY * way.y, startY * way.x - startX * way.y];
    const [endAlong, endAcross] = [endX * way.x + endY * way.y, endY * way.x - endX * way.y];
    if ((across > reach && endAcross > reach) || (across < -reach && endAcross < -reach)) continue;
    const lean = across === endAcross ? 0 : (endAlong - along) / (endAcross - across);
    const one = along + (Math.max(-reach, Math.min(reach, across)) - across) * lean;
    const other = endAlong + (Math.max(-reach, Math.min(reach, endAcross)) - endAcross) * lean;
    if (one <= 0 && other <= 0) continue;
    freeM = Math.min(freeM, Math.max(0, Math.min(one, other)));
  }
  return freeM;
}

/** What of some ground a bar goes over, and how far along it the farthest of that lies, metres. */
export type UnderBar = { readonly areaSqM: number; readonly farM: number };

/** Ground under a bar that is driven straight for `lengthM`. */
export function underBar(ground: Region, from: PlanePoint, way: PlanePoint, halfM: number, lengthM: number): UnderBar {
  let twice = 0;
  let farM = 0;
  for (const path of ground.paths) {
    let inside: number[] = [];
    for (const point of path) {
      const [x, y] = [point.x / STEPS_PER_METRE - from.x, point.y / STEPS_PER_METRE - from.y];
      inside.push(x * way.x + y * way.y, y * way.x - x * way.y);
    }
    inside = cut(inside, 0, 1, lengthM);
    inside = cut(inside, 0, -1, 0);
    inside = cut(inside, 1, 1, halfM);
    inside = cut(inside, 1, -1, halfM);
    for (let at = 0, before = inside.length - 2; at < inside.length; before = at, at += 2) {
      const [x, y] = [inside[at] as number, inside[at + 1] as number];
      twice += (inside[before] as number) * y - x * (inside[before + 1] as number);
      if (x > farM) farM = x;
    }
  }
  return { areaSqM: twice / 2, farM };
}

/**
 * A closed path cut along a line across one axis (I. Sutherland, G. Hodgman, *Reentrant polygon clipping*, 1974): what has
 * sign times coordinate up to `most` stays. Pieces may hang together by ways along the line, which changes no area.
 */
function cut(points: readonly number[], axis: number, sign: number, most: number): number[] {
  const kept: number[] = [];
  for (let at = 0, before = points.length - 2; at < points.length; before = at, at += 2) {
    const beyond = sign * (points[at + axis] as number) - most;
    const wasBeyond = sign * (points[before + axis] as number) - most;
    if (beyond > 0 !== wasBeyond > 0) {
      const share = wasBeyond / (wasBeyond - beyond);
      const [x, y] = [points[before] as number, points[before + 1] as number];
      kept.push(x + share * ((points[at] as number) - x), y + share * ((points[at + 1] as number) - y));
    }
    if (beyond <= 0) kept.push(points[at] as number, points[at + 1] as number);
  }
  return kept;
}
