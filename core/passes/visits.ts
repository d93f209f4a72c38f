import type { PlanePoint } from '../geometry/index.ts';
import type { Cell, Swath } from './cells.ts';

/** The four ways through a cell: from its first or its last swath, beginning at either end of it. */
export const WAYS = [0, 1, 2, 3] as const;
export type Way = (typeof WAYS)[number];
/** A cell and the way it is driven. */
export type Visit = { readonly cell: number; readonly way: Way };

/** Where a cell is entered and left, per way. */
export type Doors = { readonly entry: readonly PlanePoint[]; readonly exit: readonly PlanePoint[] };

/** The swaths of a cell in the order and direction in which a way drives them. */
export function drive(cell: Cell, way: Way): readonly Swath[] {
  const ordered = way >= 2 ? cell.toReversed() : cell;
  return ordered.map((swath, index) =>
    (index + way) % 2 === 0 ? swath : { ...swath, from: swath.to, to: swath.from, isTurned: true },
  );
}

export function doorsOf(cell: Cell): Doors {
  const entry: PlanePoint[] = [];
  const exit: PlanePoint[] = [];
  for (const way of WAYS) {
    const driven = drive(cell, way);
    const first = driven[0];
    const last = driven[driven.length - 1];
    if (first !== undefined) entry.push(first.from);
    if (last !== undefined) exit.push(last.to);
  }
  return { entry, exit };
}

export const distanceM = (from: PlanePoint, to: PlanePoint): number => Math.hypot(to.x - from.x, to.y - from.y);

/** The way that drives a cell of so many swaths exactly backwards. */
export function turnedWay(way: Way, swathCount: number): Way {
  return ((way >= 2 ? 0 : 2) + ((swathCount + way) % 2)) as Way;
}
