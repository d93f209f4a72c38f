import type { Geometry, Position } from 'geojson';
import { polygonsFromPatches, polygonsFromRings } from './rings.ts';

/** One record of a .shp file: its geometry, or why there is none. */
export type Shape =
  | { readonly kind: 'geometry'; readonly geometry: Geometry; readonly positions: number }
  | { readonly kind: 'none' }
  | { readonly kind: 'bad'; readonly what: string };

/**
 * Types of shapes (Esri, "ESRI Shapefile Technical Description", July 1998, pages 4 to 26). Those with heights (Z) and measures (M)
 * begin as the plain ones do; what follows the plain part is left out.
 */
const PLAIN_TYPES: Readonly<Record<number, 'point' | 'lines' | 'rings' | 'points' | 'patches'>> = {
  1: 'point',
  3: 'lines',
  5: 'rings',
  8: 'points',
  11: 'point',
  13: 'lines',
  15: 'rings',
  18: 'points',
  21: 'point',
  23: 'lines',
  25: 'rings',
  28: 'points',
  31: 'patches',
};

const TOO_SHORT: Shape = { kind: 'bad', what: 'fewer bytes than its shape needs' };
const NOT_NUMBERS: Shape = { kind: 'bad', what: 'a corner that is not a pair of numbers' };
const POINT_BYTES = 16;

/** Reads the content of one record, from its type on. Never throws; allocates no more than the record's own bytes call for. */
export function readShape(view: DataView): Shape {
  if (view.byteLength < 4) return TOO_SHORT;
  const type = view.getInt32(0, true);
  if (type === 0) return { kind: 'none' };
  switch (PLAIN_TYPES[type]) {
    case 'point':
      return readPoint(view);
    case 'points':
      return readPoints(view);
    case 'lines':
    case 'rings':
    case 'patches':
      return readParts(view, PLAIN_TYPES[type]);
    default:
      return { kind: 'bad', what: `a shape of type ${type}, which is not read` };
  }
}

function readPoint(view: DataView): Shape {
  const [position] = positionsAt(view, 4, 1) ?? [];
  if (position === undefined) return TOO_SHORT;
  return finish({ type: 'Point', coordinates: position }, [[position]]);
}

function readPoints(view: DataView): Shape {
  if (view.byteLength < 40) return TOO_SHORT;
  const positions = positionsAt(view, 40, view.getInt32(36, true));
  if (positions === null) return TOO_SHORT;
  return finish({ type: 'MultiPoint', coordinates: positions }, [positions]);
}

function readParts(view: DataView, kind: 'lines' | 'rings' | 'patches'): Shape {
  if (view.byteLength < 44) return TOO_SHORT;
  const partCount = view.getInt32(36, true);
  const pointCount = view.getInt32(40, true);
  // Each part has its beginning, a patch its kind too.
  const headBytes = 44 + partCount * (kind === 'patches' ? 8 : 4);
  if (partCount < 0 || headBytes > view.byteLength) return TOO_SHORT;
  const positions = positionsAt(view, headBytes, pointCount);
  if (positions === null) return TOO_SHORT;
  const parts = cutParts(view, partCount, positions);
  if (parts === null) return { kind: 'bad', what: 'parts that do not lie one behind the other' };
  if (kind === 'lines') return finish({ type: 'MultiLineString', coordinates: parts }, parts);
  const polygons =
    kind === 'rings' ? polygonsFromRings(parts) : polygonsFromPatches(parts, patchKinds(view, partCount));
  if (polygons === null) return { kind: 'bad', what: 'a body made of triangles, not an outline' };
  const [only] = polygons;
  const isSingle = polygons.length === 1 && only !== undefined;
  return finish(
    isSingle ? { type: 'Polygon', coordinates: only } : { type: 'MultiPolygon', coordinates: polygons },
    polygons.flat(),
  );
}

/** Null where the record holds fewer. */
function positionsAt(view: DataView, from: number, count: number): Position[] | null {
  if (count < 0 || from + count * POINT_BYTES > view.byteLength) return null;
  return Array.from({ length: count }, (_, index) => {
    const at = from + index * POINT_BYTES;
    return [view.getFloat64(at, true), view.getFloat64(at + 8, true)];
  });
}

function cutParts(view: DataView, count: number, positions: readonly Position[]): Position[][] | null {
  const starts = Array.from({ length: count }, (_, index) => view.getInt32(44 + index * 4, true));
  const isSound = starts.every((start, index) => start >= (starts[index - 1] ?? 0) && start <= positions.length);
  if (!isSound) return null;
  return starts.map((start, index) => positions.slice(start, starts[index + 1] ?? positions.length));
}

function patchKinds(view: DataView, count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => view.getInt32(44 + (count + index) * 4, true));
}

function finish(geometry: Geometry, lines: readonly (readonly Position[])[]): Shape {
  let positions = 0;
  for (const line of lines) {
    for (const [x, y] of line) if (!Number.isFinite(x) || !Number.isFinite(y)) return NOT_NUMBERS;
    positions += line.length;
  }
  return positions === 0 ? { kind: 'none' } : { kind: 'geometry', geometry, positions };
}
