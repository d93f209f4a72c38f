import type { Position } from '../book/index.ts';
import { localPlane } from '../geometry/index.ts';
import type { NumberRange, StreetPiece } from './streets.ts';

export type Side = 'left' | 'right';

/** Metres from the middle of the street to where an address is put: beside the roadway (common practice, no source). */
export const OFFSET_M = 10;

/**
 * Where a house number lies along a range: each number of the range has an equal part of the line, and lies in the middle of its
 * part. A number beyond the range lies at its nearer end.
 *
 * @returns share of the line from its beginning, 0 to 1
 */
export function shareAlong(number: number, [from, to]: NumberRange): number {
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  const inside = Math.min(high, Math.max(low, number));
  const share = (inside - low + 1) / (high - low + 2);
  return from <= to ? share : 1 - share;
}

/** The place beside a street line at a share of its length, `OFFSET_M` to the side. */
export function placeBeside(piece: StreetPiece, share: number, side: Side): Position {
  const origin = piece.line[0] ?? [0, 0];
  const plane = localPlane(origin);
  const points = piece.line.map(plane.toPlane);
  const lengths = points.slice(1).map((point, index) => {
    const start = points[index] ?? point;
    return Math.hypot(point.x - start.x, point.y - start.y);
  });
  let rest = share * lengths.reduce((sum, length) => sum + length, 0);
  let leg = 0;
  while (leg < lengths.length - 1 && rest > (lengths[leg] ?? 0)) {
    rest -= lengths[leg] ?? 0;
    leg += 1;
  }
  const start = points[leg] ?? { x: 0, y: 0 };
  const end = points[leg + 1] ?? start;
  const length = lengths[leg] ?? 0;
  if (length === 0) return origin;
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  const turn = side === 'left' ? OFFSET_M : -OFFSET_M;
  return plane.toDegrees({
    x: start.x + along.x * rest - along.y * turn,
    y: start.y + along.y * rest + along.x * turn,
  });
}
