import type { AreaGeometry, Position } from '../book/index.ts';
import { intersection } from './booleans.ts';
import { boxCentre, degreesBox, polygonsOf } from './degrees-box.ts';
import { localPlane } from './local-plane.ts';
import { readOutline } from './outline.ts';
import { regionArea } from './region.ts';

/** Ground of two outlines, m2. */
export type CommonGround = { readonly firstSqM: number; readonly secondSqM: number; readonly bothSqM: number };

/** How much ground two outlines have and share, m2; null where one is refused. */
export function commonGround(first: AreaGeometry, second: AreaGeometry): CommonGround | null {
  const checked = degreesBox(first);
  if ('fault' in checked || 'fault' in degreesBox(second)) return null;
  const plane = localPlane(boxCentre(checked.box));
  const left = readOutline(first, plane);
  const right = readOutline(second, plane);
  if (left.kind === 'refused' || right.kind === 'refused') return null;
  const bothSqM = regionArea(intersection(left.net, right.net));
  return { firstSqM: regionArea(left.net), secondSqM: regionArea(right.net), bothSqM };
}

/** A corner farther than this from every side of an outline that it lies in is surely inside, metres. */
const DEEP_M = 0.2;
const METRES_PER_DEGREE = 111_320;

/** How an outline lies to another one. */
export type Lie = 'within' | 'overlaps' | 'apart' | 'unsure';

/**
 * A quick look at how an outline lies to a larger one: all of it within, a part of it, all of it apart, or not to be told by
 * corners and sides alone. Even-odd, in degrees, for outlines that do not cross the 180th meridian: for sorting, never for a
 * figure.
 */
export function quickLie(outline: AreaGeometry, around: AreaGeometry): Lie {
  const inner = ringsOf(outline);
  const outer = ringsOf(around);
  if (inner.some((ring) => outer.some((other) => ringsCross(ring, other)))) {
    const reachesIn = (inner[0] ?? []).some((corner) => isInside(corner, outer) && isDeep(corner, outer));
    return reachesIn ? 'overlaps' : 'unsure';
  }
  const corner = inner[0]?.[0];
  const otherCorner = outer[0]?.[0];
  if (corner === undefined || otherCorner === undefined) return 'apart';
  // No sides cross, so each ring lies wholly on one side of every other one.
  const within = inner.filter((ring) => ring[0] !== undefined && isInside(ring[0], outer)).length;
  const swallows = outer.some((ring) => ring[0] !== undefined && isInside(ring[0], inner));
  if (within === inner.length && !swallows) return 'within';
  return within === 0 && !swallows ? 'apart' : 'unsure';
}

type Ring = readonly Position[];

function ringsOf(geometry: AreaGeometry): readonly Ring[] {
  return polygonsOf(geometry).flat();
}

/** True where two rings cross or touch. */
function ringsCross(ring: Ring, other: Ring): boolean {
  for (let index = 0; index < ring.length; index += 1) {
    const from = ring[index] as Position;
    const to = (ring[index + 1] ?? ring[0]) as Position;
    const [west, east] = from[0] < to[0] ? [from[0], to[0]] : [to[0], from[0]];
    const [south, north] = from[1] < to[1] ? [from[1], to[1]] : [to[1], from[1]];
    for (let step = 0; step < other.length; step += 1) {
      const start = other[step] as Position;
      const end = (other[step + 1] ?? other[0]) as Position;
      if (Math.max(start[0], end[0]) < west || Math.min(start[0], end[0]) > east) continue;
      if (Math.max(start[1], end[1]) < south || Math.min(start[1], end[1]) > north) continue;
      if (sidesMeet(from, to, start, end)) return true;
    }
  }
  return false;
}

function sidesMeet(from: Position, to: Position, start: Position, end: Position): boolean {
  const one = turn(from, to, start) * turn(from, to, end);
  const two = turn(start, end, from) * turn(start, end, to);
  return one <= 0 && two <= 0;
}

function turn(from: Position, to: Position, at: Position): number {
  return Math.sign((to[0] - from[0]) * (at[1] - from[1]) - (to[1] - from[1]) * (at[0] - from[0]));
}

/** True where a corner lies farther than DEEP_M from every side. */
function isDeep([longitude, latitude]: Position, rings: readonly Ring[]): boolean {
  const north = METRES_PER_DEGREE;
  const east = METRES_PER_DEGREE * Math.cos((latitude * Math.PI) / 180);
  return rings.every((ring) =>
    ring.every((corner, index) => {
      const next = ring[index + 1] ?? ring[0] ?? corner;
      const from = [(corner[0] - longitude) * east, (corner[1] - latitude) * north] as const;
      const to = [(next[0] - longitude) * east, (next[1] - latitude) * north] as const;
      return distanceFromOrigin(from, to) > DEEP_M;
    }),
  );
}

/** Distance of the side between two points of a plane from its origin. */
function distanceFromOrigin(from: readonly [number, number], to: readonly [number, number]): number {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const length = x * x + y * y;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, -(from[0] * x + from[1] * y) / length));
  return Math.hypot(from[0] + share * x, from[1] + share * y);
}

function isInside([x, y]: Position, rings: readonly Ring[]): boolean {
  let inside = false;
  for (const ring of rings) {
    let previous = ring[ring.length - 1];
    for (const corner of ring) {
      if (previous !== undefined && corner[1] > y !== previous[1] > y) {
        const at = previous[0] + ((y - previous[1]) / (corner[1] - previous[1])) * (corner[0] - previous[0]);
        if (x < at) inside = !inside;
      }
      previous = corner;
    }
  }
  return inside;
}
