import type { Geometry } from 'geojson';
import type { AreaGeometry, Position } from '../book/index.ts';
import { distanceMetres, polygonsOf } from '../geometry/index.ts';

/** What the geometry of a record is good for. */
export type ShapeReading =
  | {
      readonly kind: 'area';
      readonly geometry: AreaGeometry;
      readonly leftOut: number;
      /** Widest gap between the ends of a line that was closed, metres. */
      readonly gapM: number;
    }
  | { readonly kind: 'point'; readonly at: Position }
  | { readonly kind: 'none' }
  | { readonly kind: 'refused'; readonly code: string; readonly message: string };

/** Collections nested deeper than this are not read. */
const DEEPEST = 8;

/**
 * The outline or point of a geometry in degrees. Of a collection the areas are joined and the other members counted as left out.
 * Lines become outlines only where that was asked for.
 */
export function readShape(geometry: Geometry | null, closeLines: boolean, depth = 0): ShapeReading {
  if (geometry === null) return { kind: 'none' };
  switch (geometry.type) {
    case 'Polygon':
      return areaOf([geometry.coordinates.map(ring)], 0);
    case 'MultiPolygon':
      return areaOf(
        geometry.coordinates.map((rings) => rings.map(ring)),
        0,
      );
    case 'Point': {
      const at = position(geometry.coordinates);
      return at === null ? refused('geometry-invalid', 'The point is no pair of numbers.') : { kind: 'point', at };
    }
    case 'LineString':
      return linesOf([geometry.coordinates], closeLines);
    case 'MultiLineString':
      return linesOf(geometry.coordinates, closeLines);
    case 'MultiPoint': {
      const [only] = geometry.coordinates;
      if (geometry.coordinates.length === 1 && only !== undefined)
        return readShape({ type: 'Point', coordinates: only }, closeLines);
      return refused('geometry-not-area', 'The record is a set of points, which has no area. Draw its outline.');
    }
    case 'GeometryCollection':
      return collectionOf(geometry.geometries, closeLines, depth + 1);
  }
}

type Ring = readonly Position[];

function refused(code: string, message: string): ShapeReading {
  return { kind: 'refused', code, message };
}

function areaOf(polygons: readonly (readonly (Ring | null)[])[], leftOut: number, gapM = 0): ShapeReading {
  if (polygons.flat().some((each) => each === null))
    return refused('geometry-invalid', 'A corner of the outline is no pair of numbers. Export it once more.');
  const whole = (polygons as readonly (readonly Ring[])[]).filter((rings) => rings.some((each) => each.length > 0));
  const [only] = whole;
  if (only === undefined) return refused('geometry-missing', 'The outline is empty. Draw it, or remove the record.');
  const geometry: AreaGeometry =
    whole.length === 1 ? { type: 'Polygon', coordinates: only } : { type: 'MultiPolygon', coordinates: whole };
  return { kind: 'area', geometry, leftOut, gapM };
}

function linesOf(lines: readonly (readonly number[][])[], closeLines: boolean): ShapeReading {
  if (!closeLines) {
    const message =
      'The record is a line, which has no area. Have lines closed as outlines, if it goes round the turf.';
    return refused('geometry-not-area', message);
  }
  const open = lines.map(ring);
  return areaOf(
    open.map((each) => [closed(each)]),
    0,
    Math.max(0, ...open.map(gapOf)),
  );
}

function collectionOf(members: readonly Geometry[], closeLines: boolean, depth: number): ShapeReading {
  if (depth > DEEPEST) return refused('geometry-invalid', 'The record nests collections too deep to be read.');
  const readings = members.map((each) => readShape(each, closeLines, depth));
  const areas = readings.flatMap((each) => (each.kind === 'area' ? [each] : []));
  const bad = readings.find((each) => each.kind === 'refused' && each.code === 'geometry-invalid');
  if (bad !== undefined) return bad;
  if (areas.length === 0) {
    const [only] = readings;
    if (readings.length === 1 && only !== undefined) return only;
    return refused('geometry-not-area', 'The record is a collection without an outline. Draw its outline.');
  }
  const leftOut = readings.length - areas.length + areas.reduce((sum, each) => sum + each.leftOut, 0);
  return areaOf(
    areas.flatMap((each) => polygonsOf(each.geometry)),
    leftOut,
    Math.max(...areas.map((each) => each.gapM)),
  );
}

/** Two numbers to a corner; heights are dropped. Null where one is no number. */
function ring(corners: readonly (readonly number[])[]): Ring | null {
  const read = corners.map(position);
  return read.some((each) => each === null) ? null : (read as readonly Position[]);
}

function position(corner: readonly number[]): Position | null {
  const [longitude, latitude] = corner;
  if (longitude === undefined || latitude === undefined) return null;
  return Number.isFinite(longitude) && Number.isFinite(latitude) ? [longitude, latitude] : null;
}

/** Distance between the ends of a line, metres. */
function gapOf(line: Ring | null): number {
  const [first, last] = [line?.[0], line?.at(-1)];
  return first === undefined || last === undefined ? 0 : distanceMetres(first, last);
}

function closed(line: Ring | null): Ring | null {
  const [first, last] = [line?.[0], line?.at(-1)];
  if (line === null || first === undefined || last === undefined) return line;
  return first[0] === last[0] && first[1] === last[1] ? line : [...line, first];
}
