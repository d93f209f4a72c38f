import type { AreaGeometry, Position } from '../book/index.ts';
import { polygonsOf } from '../geometry/index.ts';
import { openRing } from './ring-edits.ts';

/** An outline that may be snapped to. */
export type SnapShape = { readonly id: string; readonly geometry: AreaGeometry };
/** A side of such an outline. */
export type SnapSide = { readonly id: string; readonly from: Position; readonly to: Position };

/** Sides in a grid of cells, made once for a map and asked at every move of the pointer. */
export type SnapTargets = {
  readonly cells: ReadonlyMap<number, readonly SnapSide[]>;
  /** Sides too long for the grid; compared every time. */
  readonly long: readonly SnapSide[];
};

/** Width and height of a cell, degrees: about 45 m north to south. */
const CELL_DEG = 0.0004;
/** Cells round the earth. */
const CELLS_ROUND = Math.ceil(360 / CELL_DEG);
/** A side whose bounds take more cells than this is kept apart. */
const MOST_CELLS = 64;

/** Puts the sides of outlines, holes included, into a grid. Takes time in proportion to the number of sides. */
export function snapTargets(shapes: readonly SnapShape[]): SnapTargets {
  const cells = new Map<number, SnapSide[]>();
  const long: SnapSide[] = [];
  for (const { id, geometry } of shapes) {
    for (const rings of polygonsOf(geometry)) {
      for (const ring of rings) {
        for (const side of sidesOfRing(id, openRing(ring))) place(side, cells, long);
      }
    }
  }
  return { cells, long };
}

/** The sides that may lie within so many degrees of a position; some more may be among them. */
export function sidesNear(targets: SnapTargets, position: Position, reach: Position): ReadonlySet<SnapSide> {
  const near = new Set<SnapSide>(targets.long);
  const { west, south, east, north } = cellsOf(
    [position[0] - reach[0], position[1] - reach[1]],
    [position[0] + reach[0], position[1] + reach[1]],
  );
  for (let row = south; row <= north; row += 1) {
    for (let column = west; column <= east; column += 1) {
      for (const side of targets.cells.get(keyOf(column, row)) ?? []) near.add(side);
    }
  }
  return near;
}

function sidesOfRing(id: string, corners: readonly Position[]): readonly SnapSide[] {
  return corners.map((from, index) => ({ id, from, to: corners[(index + 1) % corners.length] ?? from }));
}

function place(side: SnapSide, cells: Map<number, SnapSide[]>, long: SnapSide[]): void {
  const { west, south, east, north } = cellsOf(side.from, side.to);
  if ((east - west + 1) * (north - south + 1) > MOST_CELLS) {
    long.push(side);
    return;
  }
  for (let row = south; row <= north; row += 1) {
    for (let column = west; column <= east; column += 1) {
      const key = keyOf(column, row);
      const others = cells.get(key);
      if (others === undefined) cells.set(key, [side]);
      else others.push(side);
    }
  }
}

function cellsOf(from: Position, to: Position) {
  return {
    west: Math.floor(Math.min(from[0], to[0]) / CELL_DEG),
    south: Math.floor(Math.min(from[1], to[1]) / CELL_DEG),
    east: Math.floor(Math.max(from[0], to[0]) / CELL_DEG),
    north: Math.floor(Math.max(from[1], to[1]) / CELL_DEG),
  };
}

function keyOf(column: number, row: number): number {
  return row * CELLS_ROUND * 2 + column;
}
