import {
  type Obstacles,
  obstaclesOf,
  type PlanePoint,
  type Region,
  STEPS_PER_METRE,
  waysRound,
  withoutHairs,
} from '../geometry/index.ts';
import type { PreparedProperty, PreparedZone } from './prepare.ts';

/** Points of an outline are at most so far apart: between two corners, ways round either side of a house may be longer. metres */
const POINTS_APART_M = 3;

/** Properties never change, so what is in the way is made once for each. */
const kept = new WeakMap<PreparedProperty, Obstacles>();

/** Buildings of a property, round which hoses have to go. */
export function hoseObstacles(prepared: PreparedProperty): Obstacles {
  const known = kept.get(prepared);
  if (known !== undefined) return known;
  const buildings = prepared.exclusions.flatMap(({ exclusion, plain }) =>
    exclusion.what === 'building' && plain !== null ? [plain] : [],
  );
  const obstacles = obstaclesOf(buildings);
  kept.set(prepared, obstacles);
  return obstacles;
}

/** Length of hose from a place to the farthest point of others, metres: round buildings; straight where one encloses either end. */
export function farthestWay(from: PlanePoint, points: readonly PlanePoint[], obstacles: Obstacles): number {
  const ways = waysRound(from, points, obstacles);
  return points.reduce((most, point, index) => {
    const way = ways[index] ?? Number.POSITIVE_INFINITY;
    return Math.max(most, Number.isFinite(way) ? way : Math.hypot(point.x - from.x, point.y - from.y));
  }, 0);
}

/** Corners of what is treated of a zone, metres; none where it has no outline. */
export function cornersOf(zone: PreparedZone | undefined): readonly PlanePoint[] {
  return zone?.kind === 'drawn' ? pathsOf(zone.cut.treatable).flat() : [];
}

/** The same with points along its sides. */
export function pointsOf(zone: PreparedZone | undefined): readonly PlanePoint[] {
  if (zone?.kind !== 'drawn') return [];
  return pathsOf(zone.cut.treatable).flatMap((path) =>
    path.flatMap((to, index) => between(path[(index + path.length - 1) % path.length] ?? to, to)),
  );
}

function pathsOf(region: Region): readonly (readonly PlanePoint[])[] {
  return withoutHairs(region).paths.map((path) =>
    path.map(({ x, y }) => ({ x: x / STEPS_PER_METRE, y: y / STEPS_PER_METRE })),
  );
}

function between(from: PlanePoint, to: PlanePoint): readonly PlanePoint[] {
  const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / POINTS_APART_M));
  return Array.from({ length: pieces }, (_, piece) => {
    const share = (piece + 1) / pieces;
    return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
  });
}
