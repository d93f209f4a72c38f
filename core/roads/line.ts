import type { RoadMap } from './types.ts';

/** The points of an edge from its beginning to its end, degrees. */
export function* lineOf({ edges, junctions }: RoadMap, edge: number): Generator<readonly [number, number]> {
  const from = edges.from[edge] as number;
  const to = edges.to[edge] as number;
  yield [(junctions.lon[from] as number) / 1e7, (junctions.lat[from] as number) / 1e7];
  for (let at = edges.shapeStart[edge] as number; at < (edges.shapeStart[edge + 1] as number); at += 1) {
    yield [(edges.shapeLon[at] as number) / 1e7, (edges.shapeLat[at] as number) / 1e7];
  }
  yield [(junctions.lon[to] as number) / 1e7, (junctions.lat[to] as number) / 1e7];
}
