import type { DegreesBox } from './degrees-box.ts';

/** Finds which of many boxes lie near a place without looking at all of them. */
export type PlaceIndex = {
  /** Places in the list, ascending, of the boxes that share a point with `box`, grown by `marginDeg` on all sides. */
  readonly meeting: (box: DegreesBox, marginDeg?: number) => readonly number[];
};

const SMALLEST_CELL_DEG = 1e-5;
/** A box over more cells than this is kept in a list that every question goes through. */
const MOST_CELLS = 400;

/**
 * A grid over boxes in degrees. Its cells are as large as the middle one of the boxes, so that building takes time by the
 * number of boxes and a question by the number of answers. A box that is null is never found.
 */
export function placeIndex(boxes: readonly (DegreesBox | null)[]): PlaceIndex {
  const cell = cellSize(boxes);
  const cells = new Map<string, number[]>();
  const wide: number[] = [];
  for (const [index, box] of boxes.entries()) {
    if (box === null) continue;
    const keys = keysOf(box, cell);
    if (keys === null) wide.push(index);
    for (const key of keys ?? []) {
      const list = cells.get(key);
      if (list === undefined) cells.set(key, [index]);
      else list.push(index);
    }
  }
  const all = boxes.flatMap((box, index) => (box === null ? [] : [index]));
  return {
    meeting: (box, marginDeg = 0) => {
      const found = new Set<number>();
      for (const turn of [0, -360, 360]) {
        const sought = grown(box, marginDeg, turn);
        const near = keysOf(sought, cell)?.flatMap((key) => cells.get(key) ?? []);
        for (const index of near === undefined ? all : [...near, ...wide]) {
          const other = boxes[index];
          if (other !== null && other !== undefined && meets(sought, other)) found.add(index);
        }
      }
      return [...found].sort((left, right) => left - right);
    },
  };
}

function cellSize(boxes: readonly (DegreesBox | null)[]): number {
  const sizes = boxes.flatMap((box) => (box === null ? [] : [Math.max(box.east - box.west, box.north - box.south)]));
  sizes.sort((left, right) => left - right);
  return Math.max(sizes[sizes.length >> 1] ?? 0, SMALLEST_CELL_DEG);
}

/** Names of the cells that a box touches; null where they are too many to list. */
function keysOf(box: DegreesBox, cell: number): readonly string[] | null {
  const [west, east] = [Math.floor(box.west / cell), Math.floor(box.east / cell)];
  const [south, north] = [Math.floor(box.south / cell), Math.floor(box.north / cell)];
  if ((east - west + 1) * (north - south + 1) > MOST_CELLS) return null;
  const keys: string[] = [];
  for (let column = west; column <= east; column += 1) {
    for (let row = south; row <= north; row += 1) keys.push(`${column} ${row}`);
  }
  return keys;
}

function grown(box: DegreesBox, margin: number, turn: number): DegreesBox {
  const { west, south, east, north } = box;
  return { west: west - margin + turn, south: south - margin, east: east + margin + turn, north: north + margin };
}

function meets(left: DegreesBox, right: DegreesBox): boolean {
  return left.west <= right.east && right.west <= left.east && left.south <= right.north && right.south <= left.north;
}
