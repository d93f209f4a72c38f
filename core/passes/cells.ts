import type { PlanePoint } from '../geometry/index.ts';
import type { Directed } from './angle.ts';
import { turnBack } from './sides.ts';
import type { Strip } from './strips.ts';

/** A straight swath in the plane, metres. */
export type Swath = {
  readonly from: PlanePoint;
  readonly to: PlanePoint;
  /** Number of its strip among those of its piece of ground. */
  readonly strip: number;
  /** Driven from the far end of the strip to its near one. */
  readonly isTurned: boolean;
};
/** Swaths that are driven one after the other, there and back. */
export type Cell = readonly Swath[];

/**
 * Chains of swaths: a swath follows the one beside it where each is the only neighbour of the other. This is the
 * decomposition by back-and-forth motions (H. Choset, P. Pignon, Field and Service Robotics, 1998), taken on the swaths
 * themselves instead of on the outline, so that any hole and any corner is treated alike.
 */
export function cellsOf({ angle, strips }: Directed, pivot: PlanePoint): readonly Cell[] {
  const { lanes, strips: all } = strips;
  const follower = onlyFollowers(all);
  const followed = new Set(follower.filter((each) => each >= 0));
  const toSwath = ({ lane, from, to }: Strip, strip: number): Swath => {
    const y = lanes.firstM + lane * lanes.stepM;
    return {
      from: turnBack({ x: from, y }, angle, pivot),
      to: turnBack({ x: to, y }, angle, pivot),
      strip,
      isTurned: false,
    };
  };
  const cells: Swath[][] = [];
  for (const [index] of all.entries()) {
    if (followed.has(index)) continue;
    const cell: Swath[] = [];
    for (let at = index; at >= 0; at = follower[at] ?? -1) {
      const strip = all[at];
      if (strip !== undefined) cell.push(toSwath(strip, at));
    }
    cells.push(cell);
  }
  return cells;
}

/** Per swath the number of the one in the next lane that it leads to, -1 where there is none or more than one. */
function onlyFollowers(strips: readonly Strip[]): readonly number[] {
  const above = strips.map(() => [] as number[]);
  const below = strips.map(() => [] as number[]);
  const byLane: number[][] = Array.from({ length: lastLane(strips) + 1 }, () => []);
  for (const [index, { lane }] of strips.entries()) byLane[lane]?.push(index);
  for (const [index, strip] of strips.entries()) {
    for (const other of byLane[strip.lane + 1] ?? []) {
      const next = strips[other];
      if (next === undefined || next.from >= strip.to || next.to <= strip.from) continue;
      above[index]?.push(other);
      below[other]?.push(index);
    }
  }
  return above.map((each) => {
    const [only] = each;
    return only !== undefined && each.length === 1 && below[only]?.length === 1 ? only : -1;
  });
}

const lastLane = (strips: readonly Strip[]): number => strips.reduce((last, { lane }) => Math.max(last, lane), -1);
