import type { AreaGeometry, Position } from '../../book/index.ts';
import { polygonsOf } from '../../geometry/index.ts';
import { isObject } from './structure.ts';

/** The geometry of a feature, checked to be made of numbers but not yet to be on the ground. */
export type GeometryReading =
  | { readonly kind: 'area'; readonly geometry: AreaGeometry; readonly leftOut: number }
  | { readonly kind: 'point'; readonly at: Position }
  | { readonly kind: 'none' }
  | { readonly kind: 'not-area'; readonly type: string }
  | { readonly kind: 'bad'; readonly path: string; readonly what: string };

/** Collections nested deeper than this are not read. */
const DEEPEST_COLLECTION = 8;

/** Reads any GeoJSON geometry: areas, also out of collections, and points. Heights are dropped. */
export function readGeometry(value: unknown, depth = 0): GeometryReading {
  if (value === null || value === undefined) return { kind: 'none' };
  if (!isObject(value) || typeof value.type !== 'string')
    return { kind: 'bad', path: 'geometry', what: 'no geometry type' };
  switch (value.type) {
    case 'Polygon':
      return readArea('Polygon', value.coordinates);
    case 'MultiPolygon':
      return readArea('MultiPolygon', value.coordinates);
    case 'Point': {
      const at = readPosition(value.coordinates);
      return at === null
        ? { kind: 'bad', path: 'geometry.coordinates', what: 'no pair of numbers' }
        : { kind: 'point', at };
    }
    case 'GeometryCollection':
      return readCollection(value.geometries, depth + 1);
    default:
      return { kind: 'not-area', type: value.type };
  }
}

function readArea(type: AreaGeometry['type'], coordinates: unknown): GeometryReading {
  const fault = findFault(coordinates, type === 'Polygon' ? 2 : 3, 'geometry.coordinates');
  if (fault !== null) return { kind: 'bad', ...fault };
  return { kind: 'area', geometry: { type, coordinates: strip(coordinates, type) } as AreaGeometry, leftOut: 0 };
}

type Fault = { readonly path: string; readonly what: string };

/** The first place that is not a list of the wanted depth with positions at its ends. */
function findFault(value: unknown, depth: number, path: string): Fault | null {
  if (depth === 0) {
    return readPosition(value) === null ? { path, what: 'a corner that is not a pair of numbers' } : null;
  }
  if (!Array.isArray(value)) return { path, what: 'no list' };
  for (const [index, each] of value.entries()) {
    const fault = findFault(each, depth - 1, `${path}[${index}]`);
    if (fault !== null) return fault;
  }
  return null;
}

function readPosition(value: unknown): Position | null {
  if (!Array.isArray(value)) return null;
  const [longitude, latitude] = value as readonly unknown[];
  if (typeof longitude !== 'number' || typeof latitude !== 'number') return null;
  return Number.isFinite(longitude) && Number.isFinite(latitude) ? [longitude, latitude] : null;
}

/** The areas among the members of a collection, joined; other members are counted as left out. */
function readCollection(members: unknown, depth: number): GeometryReading {
  if (!Array.isArray(members)) return { kind: 'bad', path: 'geometry.geometries', what: 'no list' };
  if (depth > DEEPEST_COLLECTION)
    return { kind: 'bad', path: 'geometry.geometries', what: 'collections nested too deep' };
  const polygons: (readonly (readonly Position[])[])[] = [];
  let leftOut = 0;
  for (const member of members) {
    const reading = readGeometry(member, depth);
    if (reading.kind === 'bad') return reading;
    if (reading.kind === 'area') {
      polygons.push(...polygonsOf(reading.geometry));
      leftOut += reading.leftOut;
    } else {
      leftOut += 1;
    }
  }
  if (polygons.length === 0) return { kind: 'not-area', type: 'GeometryCollection' };
  return { kind: 'area', geometry: { type: 'MultiPolygon', coordinates: polygons }, leftOut };
}

/** The same coordinates with two numbers to a corner. */
function strip(coordinates: unknown, type: AreaGeometry['type']): unknown {
  const ring = (corners: readonly (readonly number[])[]) =>
    corners.map(([longitude, latitude]) => [longitude, latitude]);
  if (type === 'Polygon') return (coordinates as readonly (readonly (readonly number[])[])[]).map(ring);
  return (coordinates as readonly (readonly (readonly (readonly number[])[])[])[]).map((each) => each.map(ring));
}
