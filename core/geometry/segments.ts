import type { GridPoint } from './region.ts';

/** Positive where `point` lies left of the line from `from` to `to`, zero where it lies on it (in double precision). */
export function turn(from: GridPoint, to: GridPoint, point: GridPoint): number {
  return (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
}

/** True where a point of the line through two corners lies between them. */
export function isBetween(point: GridPoint, from: GridPoint, to: GridPoint): boolean {
  return (
    point.x >= Math.min(from.x, to.x) &&
    point.x <= Math.max(from.x, to.x) &&
    point.y >= Math.min(from.y, to.y) &&
    point.y <= Math.max(from.y, to.y)
  );
}

/** True where two sides cross or touch. */
export function sidesMeet(from: GridPoint, to: GridPoint, otherFrom: GridPoint, otherTo: GridPoint): boolean {
  const start = turn(otherFrom, otherTo, from);
  const end = turn(otherFrom, otherTo, to);
  if ((start > 0 && end > 0) || (start < 0 && end < 0)) return false;
  const otherStart = turn(from, to, otherFrom);
  const otherEnd = turn(from, to, otherTo);
  if ((otherStart > 0 && otherEnd > 0) || (otherStart < 0 && otherEnd < 0)) return false;
  if (start !== 0 && end !== 0 && otherStart !== 0 && otherEnd !== 0) return true;
  return (
    (start === 0 && isBetween(from, otherFrom, otherTo)) ||
    (end === 0 && isBetween(to, otherFrom, otherTo)) ||
    (otherStart === 0 && isBetween(otherFrom, from, to)) ||
    (otherEnd === 0 && isBetween(otherTo, from, to))
  );
}
