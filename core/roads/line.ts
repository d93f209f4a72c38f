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

/** Smallest upright rectangle, in steps of 1e-7 degrees. */
export type StepBox = { west: number; south: number; east: number; north: number };

/** The box round the points of an edge. */
export function boxOfEdge({ edges, junctions }: RoadMap, edge: number): StepBox {
  const from = edges.from[edge] as number;
  const box: StepBox = {
    west: junctions.lon[from] as number,
    south: junctions.lat[from] as number,
    east: junctions.lon[from] as number,
    north: junctions.lat[from] as number,
  };
  const to = edges.to[edge] as number;
  widen(box, junctions.lon[to] as number, junctions.lat[to] as number);
  for (let at = edges.shapeStart[edge] as number; at < (edges.shapeStart[edge + 1] as number); at += 1) {
    widen(box, edges.shapeLon[at] as number, edges.shapeLat[at] as number);
  }
  return box;
}

export function widen(box: StepBox, lon: number, lat: number): void {
  box.west = Math.min(box.west, lon);
  box.east = Math.max(box.east, lon);
  box.south = Math.min(box.south, lat);
  box.north = Math.max(box.north, lat);
}

export function boxesMeet(one: StepBox, other: StepBox): boolean {
  return one.west <= other.east && one.east >= other.west && one.south <= other.north && one.north >= other.south;
}
