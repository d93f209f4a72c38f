import { boxesMeet, boxOfEdge, type StepBox } from '../line.ts';
import type { RoadMap } from '../types.ts';

/** Side of a cell in steps of 1e-7 degrees: some 280 m. */
const CELL = 25_000;
/** Cells along each side at most, so that a map with one far-off road needs no more memory. */
const MOST_CELLS = 2_000;
/** Edges whose boxes touch more cells are kept apart and looked at one by one, so that long ones cost no more than others. */
const MOST_OF_EDGE = 400;

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
  const whole = boxOfAll(map);
  const cellWidth = Math.max(CELL, Math.ceil((whole.east - whole.west + 1) / MOST_CELLS));
  const cellHeight = Math.max(CELL, Math.ceil((whole.north - whole.south + 1) / MOST_CELLS));
  const columns = Math.floor((whole.east - whole.west) / cellWidth) + 1;
  const rows = Math.floor((whole.north - whole.south) / cellHeight) + 1;
  const column = (lon: number): number => Math.floor((lon - whole.west) / cellWidth);
  const row = (lat: number): number => Math.floor((lat - whole.south) / cellHeight);
  const cellsOf = (box: StepBox): readonly [left: number, right: number, low: number, high: number] => [
    Math.max(0, column(box.west)),
    Math.min(columns - 1, column(box.east)),
    Math.max(0, row(box.south)),
    Math.min(rows - 1, row(box.north)),
  ];
  const eachCell = (box: StepBox, see: (cell: number) => void): void => {
    const [left, right, low, high] = cellsOf(box);
    for (let y = low; y <= high; y += 1) for (let x = left; x <= right; x += 1) see(y * columns + x);
  };
  const long: { readonly edge: number; readonly box: StepBox }[] = [];
  const short: number[] = [];
  for (let edge = 0; edge < map.edges.from.length; edge += 1) {
    if (!isUsable(edge)) continue;
    const box = boxOfEdge(map, edge);
    const [left, right, low, high] = cellsOf(box);
    if ((right - left + 1) * (high - low + 1) > MOST_OF_EDGE) long.push({ edge, box });
    else short.push(edge);
  }
  const start = new Uint32Array(columns * rows + 1);
  for (const edge of short) {
    eachCell(boxOfEdge(map, edge), (cell) => {
      start[cell + 1] = (start[cell + 1] as number) + 1;
    });
  }
  for (let cell = 0; cell < columns * rows; cell += 1) {
    start[cell + 1] = (start[cell + 1] as number) + (start[cell] as number);
  }
  const fill = start.slice(0, columns * rows);
  const edges = new Uint32Array(start[columns * rows] as number);
  for (const edge of short) {
    eachCell(boxOfEdge(map, edge), (cell) => {
      const place = fill[cell] as number;
      fill[cell] = place + 1;
      edges[place] = edge;
    });
  }
  return {
    visit: (lon, lat, east, north, see) => {
      const around = { west: lon - east, south: lat - north, east: lon + east, north: lat + north };
      for (const { edge, box } of long) if (boxesMeet(box, around)) see(edge);
      eachCell(around, (cell) => {
        for (let at = start[cell] as number; at < (start[cell + 1] as number); at += 1) see(edges[at] as number);
      });
    },
  };
}

function boxOfAll({ about }: RoadMap): StepBox {
  const [west, south, east, north] = about.bounds;
  return { west: west * 1e7, south: south * 1e7, east: east * 1e7, north: north * 1e7 };
}
