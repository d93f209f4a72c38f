import type { GridPath } from './region.ts';

/** Which ground counts, by how often the subject and the clip paths go round it. */
export type Filling = (subject: number, clip: number) => boolean;

type Side = {
  readonly lowX: number;
  readonly low: number;
  readonly highX: number;
  readonly high: number;
  /** How the winding changes from west to east across the side: 1 where the path runs south along it, -1 where north. */
  readonly turn: number;
  readonly isClip: boolean;
  x: number;
};

/**
 * Area that a filling gives to paths, in square grid steps, without making the shape: the plane is sliced at every corner
 * and crossing, and in each slice the trapezoids between neighbouring sides are summed. It shares nothing with the clipper
 * and is what the clipper's results are checked against.
 */
export function filledArea(subject: readonly GridPath[], clip: readonly GridPath[], filling: Filling): number {
  const sides = [...sidesOf(subject, false), ...sidesOf(clip, true)].sort((left, right) => left.low - right.low);
  const levels = Float64Array.from([...cornerLevels(sides), ...crossingLevels(sides)]).sort();
  const active: Side[] = [];
  let next = 0;
  let area = 0;
  for (let index = 1; index < levels.length; index += 1) {
    const low = levels[index - 1] ?? 0;
    const high = levels[index] ?? 0;
    if (!(high > low)) continue;
    dropBelow(active, low);
    for (let side = sides[next]; side !== undefined && side.low <= low; side = sides[next]) {
      if (side.high > low) active.push(side);
      next += 1;
    }
    area += sliceArea(active, (low + high) / 2, filling) * (high - low);
  }
  return area;
}

/** Leaves out the sides that end at or below a height. */
function dropBelow(active: Side[], low: number): void {
  let kept = 0;
  for (const side of active) {
    if (side.high <= low) continue;
    active[kept] = side;
    kept += 1;
  }
  active.length = kept;
}

/** Width of the filled ground at one height. Leaves the sides in order from west to east. */
function sliceArea(active: Side[], middle: number, filling: Filling): number {
  for (const side of active) {
    side.x = side.lowX + ((middle - side.low) / (side.high - side.low)) * (side.highX - side.lowX);
  }
  insertionSort(active);
  let width = 0;
  let subject = 0;
  let clip = 0;
  let previous = 0;
  for (const side of active) {
    if (filling(subject, clip)) width += side.x - previous;
    if (side.isClip) clip += side.turn;
    else subject += side.turn;
    previous = side.x;
  }
  return width;
}

/** Sides keep nearly the same order from slice to slice. */
function insertionSort(sides: Side[]): void {
  for (let index = 1; index < sides.length; index += 1) {
    const side = sides[index];
    if (side === undefined) break;
    let place = index - 1;
    for (let before = sides[place]; before !== undefined && before.x > side.x; before = sides[place]) {
      sides[place + 1] = before;
      place -= 1;
    }
    sides[place + 1] = side;
  }
}

function sidesOf(paths: readonly GridPath[], isClip: boolean): Side[] {
  const sides: Side[] = [];
  for (const path of paths) {
    let from = path[path.length - 1];
    for (const to of path) {
      if (from !== undefined && from.y < to.y) {
        sides.push({ lowX: from.x, low: from.y, highX: to.x, high: to.y, turn: -1, isClip, x: 0 });
      } else if (from !== undefined && from.y > to.y) {
        sides.push({ lowX: to.x, low: to.y, highX: from.x, high: from.y, turn: 1, isClip, x: 0 });
      }
      from = to;
    }
  }
  return sides;
}

function cornerLevels(sides: readonly Side[]): number[] {
  const levels: number[] = [];
  for (const side of sides) levels.push(side.low, side.high);
  return levels;
}

/** Heights at which sides cross. The sides come sorted by their lower ends. */
function crossingLevels(sides: readonly Side[]): number[] {
  const levels: number[] = [];
  for (let index = 0; index < sides.length; index += 1) {
    const side = sides[index];
    if (side === undefined) break;
    const west = Math.min(side.lowX, side.highX);
    const east = Math.max(side.lowX, side.highX);
    for (let other = index + 1; other < sides.length; other += 1) {
      const against = sides[other];
      if (against === undefined || against.low >= side.high) break;
      if (Math.max(against.lowX, against.highX) < west || Math.min(against.lowX, against.highX) > east) continue;
      const level = crossingLevel(side, against);
      if (level !== null) levels.push(level);
    }
  }
  return levels;
}

function crossingLevel(side: Side, against: Side): number | null {
  const slope = (side.highX - side.lowX) / (side.high - side.low);
  const otherSlope = (against.highX - against.lowX) / (against.high - against.low);
  if (slope === otherSlope) return null;
  const start = side.lowX + slope * (against.low - side.low);
  const level = against.low + (start - against.lowX) / (otherSlope - slope);
  return level > against.low && level < Math.min(side.high, against.high) ? level : null;
}
