import type { AreaGeometry, Position } from '../book/index.ts';
import { polygonsOf } from '../geometry/index.ts';

/** Corners nearer to each other than this are the same: half a millimetre, so that rounding to 9 decimals changes nothing. */
const SAME_DEG = 5e-9;

/** True for outlines with the same corners, wherever their rings start and whichever way they run. */
export function sameOutline(first: AreaGeometry, second: AreaGeometry): boolean {
  if (first === second) return true;
  const left = polygonsOf(first);
  const right = polygonsOf(second);
  if (left.length !== right.length) return false;
  return left.every((rings, part) => {
    const others = right[part] ?? [];
    return rings.length === others.length && rings.every((ring, index) => sameRing(ring, others[index] ?? []));
  });
}

function sameRing(ring: readonly Position[], other: readonly Position[]): boolean {
  const left = open(ring);
  const right = open(other);
  if (left.length !== right.length) return false;
  const [start] = left;
  if (start === undefined) return true;
  for (const [offset, corner] of right.entries()) {
    if (samePlace(start, corner) && (runsAlong(left, right, offset, 1) || runsAlong(left, right, offset, -1)))
      return true;
  }
  return false;
}

function runsAlong(ring: readonly Position[], other: readonly Position[], offset: number, step: 1 | -1): boolean {
  const count = ring.length;
  return ring.every((corner, index) => {
    const twin = other[(((offset + step * index) % count) + count) % count];
    return twin !== undefined && samePlace(corner, twin);
  });
}

function open(ring: readonly Position[]): readonly Position[] {
  const [first, last] = [ring[0], ring.at(-1)];
  return first !== undefined && last !== undefined && ring.length > 1 && samePlace(first, last)
    ? ring.slice(0, -1)
    : ring;
}

export function samePlace(first: Position, second: Position): boolean {
  return Math.abs(first[0] - second[0]) <= SAME_DEG && Math.abs(first[1] - second[1]) <= SAME_DEG;
}
