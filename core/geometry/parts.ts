import { PointInPolygonResult, pointInPolygon } from 'clipper2-ts';
import type { AreaGeometry, Position } from '../book/index.ts';
import type { LocalPlane } from './local-plane.ts';
import { doubleArea, type GridPath, type GridPoint, type Region, regionOf } from './region.ts';
import { toPosition } from './rings.ts';

/** One connected piece of a region: an outer path and the holes in it. */
export type RegionPart = { readonly outer: GridPath; readonly holes: readonly GridPath[] };

/** Decimals of degrees that outlines are written with: 0.1 mm. */
const DECIMALS = 9;

/** The connected pieces of a region, largest outer path first. */
export function partsOf(region: Region): readonly RegionPart[] {
  const outers: { path: GridPath; holes: GridPath[]; size: number }[] = [];
  const holes: GridPath[] = [];
  for (const path of region.paths) {
    const size = doubleArea(path);
    if (size > 0) outers.push({ path, holes: [], size });
    else if (size < 0) holes.push(path);
  }
  outers.sort((left, right) => right.size - left.size);
  for (const hole of holes) {
    outerAround(hole, outers)?.holes.push(hole);
  }
  return outers.map(({ path, holes: inner }) => ({ outer: path, holes: inner }));
}

/** The region made of some parts again. */
export function joinParts(parts: readonly RegionPart[]): Region {
  return regionOf(parts.flatMap((part) => [part.outer, ...part.holes]));
}

/** Twice the area of a part without its holes, in squared grid steps: for comparing parts, as `doubleArea` is. */
export function partArea(part: RegionPart): number {
  let sum = doubleArea(part.outer);
  for (const hole of part.holes) sum += doubleArea(hole);
  return sum;
}

/**
 * The outer path that a hole lies in, of several nested ones the smallest. Corners of the hole may touch the outer path, and
 * by rounding even lie a step outside, so the most of its corners and mid-sides decide.
 */
function outerAround<Outer extends { readonly path: GridPath }>(
  hole: GridPath,
  outers: readonly Outer[],
): Outer | undefined {
  if (outers.length < 2) return outers[0];
  let best: Outer | undefined;
  let bestCount = Number.NEGATIVE_INFINITY;
  for (const outer of outers) {
    const count = countWithin(hole, outer.path);
    if (count < bestCount) continue;
    best = outer;
    bestCount = count;
  }
  return best;
}

/** Corners and mid-sides of a path inside another, less those outside. */
function countWithin(path: GridPath, around: GridPath): number {
  let count = 0;
  let previous = path[path.length - 1];
  for (const point of path) {
    count += sideOf(point, around);
    if (previous !== undefined) {
      const middle = { x: Math.round((previous.x + point.x) / 2), y: Math.round((previous.y + point.y) / 2) };
      count += sideOf(middle, around);
    }
    previous = point;
  }
  return count;
}

function sideOf(point: GridPoint, around: GridPath): number {
  const where = pointInPolygon({ x: point.x, y: point.y }, around as { x: number; y: number }[]);
  if (where === PointInPolygonResult.IsOn) return 0;
  return where === PointInPolygonResult.IsInside ? 1 : -1;
}

/** A region as polygons in degrees: per part the outer ring, then its holes; rings closed, outer ones anticlockwise. */
export function toPolygons(region: Region, plane: LocalPlane): readonly (readonly (readonly Position[])[])[] {
  return partsOf(region).map((part) => [part.outer, ...part.holes].map((path) => toRing(path, plane)));
}

/** A region as GeoJSON. A region without ground gives a multi-polygon without members. */
export function toGeometry(region: Region, plane: LocalPlane): AreaGeometry {
  const polygons = toPolygons(region, plane);
  const [only] = polygons;
  if (polygons.length === 1 && only !== undefined) return { type: 'Polygon', coordinates: only };
  return { type: 'MultiPolygon', coordinates: polygons };
}

function toRing(path: GridPath, plane: LocalPlane): readonly Position[] {
  const ring = path.map((point): Position => {
    const [longitude, latitude] = toPosition(point, plane);
    return [roundTo(longitude), roundTo(latitude)];
  });
  const [first] = ring;
  return first === undefined ? ring : [...ring, first];
}

function roundTo(value: number): number {
  return Number(value.toFixed(DECIMALS));
}
