import { type PlanePoint, type Region, STEPS_PER_METRE } from '../geometry/index.ts';

/** Sides of a region as numbers in a row: x and y of one end, x and y of the other, metres. */
export type Sides = Float64Array;

/** The sides of all paths of a region, metres in its plane, path by path. */
export function sidesOf(region: Region): Sides {
  const count = region.paths.reduce((sum, path) => sum + path.length, 0);
  const sides = new Float64Array(4 * count);
  let at = 0;
  for (const path of region.paths) {
    let previous = path[path.length - 1];
    for (const point of path) {
      if (previous === undefined) continue;
      sides[at] = previous.x / STEPS_PER_METRE;
      sides[at + 1] = previous.y / STEPS_PER_METRE;
      sides[at + 2] = point.x / STEPS_PER_METRE;
      sides[at + 3] = point.y / STEPS_PER_METRE;
      at += 4;
      previous = point;
    }
  }
  return sides;
}

/**
 * The sides seen in a frame whose first axis points `angle` radians anticlockwise from east, about `pivot`.
 * @param turned where they are written, as long as the sides
 */
export function turnSides(
  sides: Sides,
  angle: number,
  pivot: PlanePoint,
  turned: Sides = new Float64Array(sides.length),
): Sides {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  for (let at = 0; at < sides.length; at += 2) {
    const x = (sides[at] ?? 0) - pivot.x;
    const y = (sides[at + 1] ?? 0) - pivot.y;
    turned[at] = cosine * x + sine * y;
    turned[at + 1] = cosine * y - sine * x;
  }
  return turned;
}

/** A point of such a frame back in the plane. */
export function turnBack(point: PlanePoint, angle: number, pivot: PlanePoint): PlanePoint {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return { x: pivot.x + cosine * point.x - sine * point.y, y: pivot.y + sine * point.x + cosine * point.y };
}

/** Middle of a region's box, metres. */
export function pivotOf({ box }: Region): PlanePoint {
  return { x: (box.west + box.east) / 2 / STEPS_PER_METRE, y: (box.south + box.north) / 2 / STEPS_PER_METRE };
}
