import { boxOfEdge, type StepBox } from '../line.ts';
import type { RoadMap } from '../types.ts';

/** Side of a cell in steps of 1e-7 degrees: some 280 m. */
const CELL = 25_000;
/** Cells along each side at most, so that a map with one far-off road needs no more memory. */
const MOST_CELLS = 2_000;

/** Edges by the squares of ground that their boxes touch. */
export type EdgeGrid = {
  /** Calls with every edge whose box touches a square box round a place; an edge may come more than once. */
  readonly visit: (
    lon: number,
    lat: number,
    eastSteps: number,
    northSteps: number,
    see: (edge: number) => void,
  ) => void;
};

export function edgeGrid(map: RoadMap, isUsable: (edge: number) => boolean): EdgeGrid {
  const count = map.edges.from.length;
  const whole = boxOfAll(map);
  const cellWidth = Math.max(CELL, Math.ceil((whole.east - whole.west + 1) / MOST_CELLS));
  const cellHeight = Math.max(CELL, Math.ceil((whole.north - whole.south + 1) / MOST_CELLS));
  const columns = Math.floor((whole.east - whole.west) / cellWidth) + 1;
  const rows = Math.floor((whole.north - whole.south) / cellHeight) + 1;
  const column = (lon: number): number => Math.floor((lon - whole.west) / cellWidth);
  const row = (lat: number): number => Math.floor((lat - whole.south) / cellHeight);
  const start = new Uint32Array(columns * rows + 1);
  const eachCell = (box: StepBox, see: (cell: number) => void): void => {
    const [left, right] = [Math.max(0, column(box.west)), Math.min(columns - 1, column(box.east))];
    const [low, high] = [Math.max(0, row(box.south)), Math.min(rows - 1, row(box.north))];
    for (let y = low; y <= high; y += 1) for (let x = left; x <= right; x += 1) see(y * columns + x);
  };
  for (let edge = 0; edge < count; edge += 1) {
    if (!isUsable(edge)) continue;
    eachCell(boxOfEdge(map, edge), (cell) => {
      start[cell + 1] = (start[cell + 1] as number) + 1;
    });
  }
  for (let cell = 0; cell < columns * rows; cell += 1)
    start[cell + 1] = (start[cell + 1] as number) + (start[cell] as number);
  const fill = start.slice(0, columns * rows);
  const edges = new Uint32Array(start[columns * rows] as number);
  for (let edge = 0; edge < count; edge += 1) {
    if (!isUsable(edge)) continue;
    eachCell(boxOfEdge(map, edge), (cell) => {
      const place = fill[cell] as number;
      fill[cell] = place + 1;
      edges[place] = edge;
    });
  }
  return {
    visit: (lon, lat, east, north, see) =>
      eachCell({ west: lon - east, south: lat - north, east: lon + east, north: lat + north }, (cell) => {
        for (let at = start[cell] as number; at < (start[cell + 1] as number); at += 1) see(edges[at] as number);
      }),
  };
}

function boxOfAll({ about }: RoadMap): StepBox {
  const [west, south, east, north] = about.bounds;
  return { west: west * 1e7, south: south * 1e7, east: east * 1e7, north: north * 1e7 };
}
