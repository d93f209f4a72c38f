import type { RoadMap } from '../types.ts';

/** Metres in 1e-7 degrees of latitude on a sphere of the earth's mean radius, 6,371,008.8 m; good to half a per cent. */
const METRES_PER_STEP = 0.011_119_5;

/** The nearest point of an edge: how far from the place, how far along the edge, and which side of it the place lies on. */
export type Nearest = {
  readonly awayM: number;
  /** Share of the edge's length from its beginning. */
  readonly share: number;
  readonly lon: number;
  readonly lat: number;
  /** Seen in the direction of the edge; null where the place lies on it. */
  readonly side: 'left' | 'right' | null;
};

/** Nearer than this, a place has no side, metres. */
const ON_ROAD_M = 0.5;

/** @param lon, lat the place, in steps of 1e-7 degrees; @param squeeze cosine of its latitude */
export function nearestOnEdge(map: RoadMap, edge: number, lon: number, lat: number, squeeze: number): Nearest {
  const { edges, junctions } = map;
  const first = edges.shapeStart[edge] as number;
  const inner = (edges.shapeStart[edge + 1] as number) - first;
  const ends = [edges.from[edge] as number, edges.to[edge] as number] as const;
  const lonAt = (at: number): number =>
    at === 0 || at > inner
      ? (junctions.lon[ends[at === 0 ? 0 : 1]] as number)
      : (edges.shapeLon[first + at - 1] as number);
  const latAt = (at: number): number =>
    at === 0 || at > inner
      ? (junctions.lat[ends[at === 0 ? 0 : 1]] as number)
      : (edges.shapeLat[first + at - 1] as number);
  let [best, bestEast, bestNorth, bestAlong, cross] = [Number.POSITIVE_INFINITY, 0, 0, 0, 0];
  let driven = 0;
  let [fromEast, fromNorth] = [(lonAt(0) - lon) * squeeze, latAt(0) - lat];
  for (let at = 1; at <= inner + 1; at += 1) {
    const [toEast, toNorth] = [(lonAt(at) - lon) * squeeze, latAt(at) - lat];
    const [east, north] = [toEast - fromEast, toNorth - fromNorth];
    const length = Math.hypot(east, north);
    const share = length === 0 ? 0 : clamp(-(fromEast * east + fromNorth * north) / (length * length));
    const [hitEast, hitNorth] = [fromEast + share * east, fromNorth + share * north];
    const away = Math.hypot(hitEast, hitNorth);
    if (away < best) {
      [best, bestEast, bestNorth, bestAlong] = [away, hitEast, hitNorth, driven + share * length];
      cross = east * -fromNorth - north * -fromEast;
    }
    driven += length;
    [fromEast, fromNorth] = [toEast, toNorth];
  }
  const awayM = best * METRES_PER_STEP;
  return {
    awayM,
    share: driven === 0 ? 0 : bestAlong / driven,
    lon: lon + bestEast / squeeze,
    lat: lat + bestNorth,
    side: awayM < ON_ROAD_M ? null : cross > 0 ? 'left' : 'right',
  };
}

export function stepsOf(metres: number): number {
  return metres / METRES_PER_STEP;
}

function clamp(share: number): number {
  return Math.min(1, Math.max(0, share));
}
