import { PointInPolygonResult, pointInPolygon } from 'clipper2-ts';
import type { AreaGeometry, Position } from '../book/index.ts';
import type { LocalPlane } from './local-plane.ts';
import { boxOf, doubleArea, type GridPath, type Region, regionOf } from './region.ts';
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
    const around = outers.length === 1 ? outers[0] : outers.findLast((each) => isWithin(hole, each.path));
    around?.holes.push(hole);
  }
  return outers.map(({ path, holes: inner }) => ({ outer: path, holes: inner }));
}

/** The region made of some parts again. */
export function joinParts(parts: readonly RegionPart[]): Region {
  return regionOf(parts.flatMap((part) => [part.outer, ...part.holes]));
}

export function partArea(part: RegionPart): number {
  let sum = doubleArea(part.outer);
  for (const hole of part.holes) sum += doubleArea(hole);
  return sum;
}

/** True where `path`, which crosses nothing, lies within `around`. Corners may lie on its sides. */
function isWithin(path: GridPath, around: GridPath): boolean {
  for (const point of path) {
    const where = pointInPolygon({ x: point.x, y: point.y }, around as { x: number; y: number }[]);
    if (where === PointInPolygonResult.IsInside) return true;
    if (where === PointInPolygonResult.IsOutside) return false;
  }
  const box = boxOf([path]);
  const middle = { x: Math.round((box.west + box.east) / 2), y: Math.round((box.south + box.north) / 2) };
  return pointInPolygon(middle, around as { x: number; y: number }[]) !== PointInPolygonResult.IsOutside;
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
