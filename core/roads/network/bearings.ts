import type { RoadMap } from '../types.ts';

/** A bearing is taken to a point about so far from the junction, so that a kink right at it does not matter; degrees of latitude. */
const AWAY = 1000; // 1e-4 degrees, some 11 m

/** Compass bearings of the edges as they leave their two ends, degrees. */
export type Bearings = { readonly atFrom: Float32Array; readonly atTo: Float32Array };

export function bearingsOf(map: RoadMap): Bearings {
  const { edges, junctions } = map;
  const count = edges.from.length;
  const atFrom = new Float32Array(count);
  const atTo = new Float32Array(count);
  for (let edge = 0; edge < count; edge += 1) {
    const from = edges.from[edge] as number;
    const to = edges.to[edge] as number;
    const first = edges.shapeStart[edge] as number;
    const last = (edges.shapeStart[edge + 1] as number) - 1;
    const [fromLon, fromLat] = [junctions.lon[from] as number, junctions.lat[from] as number];
    const [toLon, toLat] = [junctions.lon[to] as number, junctions.lat[to] as number];
    const squeeze = Math.cos((fromLat / 1e7) * (Math.PI / 180));
    const leave = (lon: number, lat: number, begin: number, step: number, endLon: number, endLat: number): number => {
      for (let at = begin; at >= first && at <= last; at += step) {
        const east = ((edges.shapeLon[at] as number) - lon) * squeeze;
        const north = (edges.shapeLat[at] as number) - lat;
        if (Math.abs(east) + Math.abs(north) >= AWAY) return bearing(east, north);
      }
      return bearing((endLon - lon) * squeeze, endLat - lat);
    };
    atFrom[edge] = leave(fromLon, fromLat, first, 1, toLon, toLat);
    atTo[edge] = leave(toLon, toLat, last, -1, fromLon, fromLat);
  }
  return { atFrom, atTo };
}

function bearing(east: number, north: number): number {
  return (Math.atan2(east, north) * 180) / Math.PI;
}

/** How far one turns who comes by one bearing (seen from the junction) and leaves by another; right is positive, [-180, 180). */
export function turnAngle(cameBy: number, leavesBy: number): number {
  const angle = (leavesBy - cameBy) % 360;
  return ((angle + 720) % 360) - 180;
}
