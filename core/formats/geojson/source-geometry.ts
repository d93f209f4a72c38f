import type { Geometry, Position } from 'geojson';
import { isObject, type JsonObject } from './structure.ts';

/** A geometry of any type made of sound numbers, or what is wrong with it. */
export type SourceGeometry =
  | {
      readonly kind: 'geometry';
      readonly geometry: Geometry;
      readonly positions: number;
      /** Rings that were open and are closed now. */
      readonly closed: number;
    }
  | { readonly kind: 'none' }
  | { readonly kind: 'bad'; readonly path: string; readonly what: string };

/** How deep the lists of each type lie: 0 is a single position. */
const DEPTHS = { Point: 0, MultiPoint: 1, LineString: 1, MultiLineString: 2, Polygon: 2, MultiPolygon: 3 } as const;
type PlainType = keyof typeof DEPTHS;

/** Collections nested deeper than this are not read. */
const DEEPEST_COLLECTION = 8;
/** Three corners and the first one again (RFC 7946, section 3.1.6). */
const LEAST_RING = 4;

/** Thrown and caught in this file: leads from the first fault straight out of the lists. */
class Fault extends Error {
  readonly path: string;
  readonly what: string;
  constructor(path: string, what: string) {
    super(what);
    this.path = path;
    this.what = what;
  }
}

type Counts = { positions: number; closed: number };

/** Reads the value of a geometry member. Never throws. */
export function readSourceGeometry(value: unknown): SourceGeometry {
  if (value === null || value === undefined) return { kind: 'none' };
  const counts: Counts = { positions: 0, closed: 0 };
  try {
    const geometry = readAny(value, 'geometry', 0, counts);
    return counts.positions === 0 ? { kind: 'none' } : { kind: 'geometry', geometry, ...counts };
  } catch (fault) {
    if (fault instanceof Fault) return { kind: 'bad', path: fault.path, what: fault.what };
    throw fault;
  }
}

function readAny(value: unknown, path: string, nesting: number, counts: Counts): Geometry {
  if (!isObject(value) || typeof value.type !== 'string') throw new Fault(path, 'no geometry type');
  if (value.type === 'GeometryCollection') return readCollection(value, path, nesting, counts);
  if (!Object.hasOwn(DEPTHS, value.type))
    throw new Fault(`${path}.type`, `"${value.type.slice(0, 40)}", no type of geometry`);
  const type = value.type as PlainType;
  const isArea = type === 'Polygon' || type === 'MultiPolygon';
  const coordinates = readLists(value.coordinates, DEPTHS[type], `${path}.coordinates`, isArea, counts);
  return { type, coordinates } as Geometry;
}

function readCollection(value: JsonObject, path: string, nesting: number, counts: Counts): Geometry {
  if (!Array.isArray(value.geometries)) throw new Fault(`${path}.geometries`, 'no list');
  if (nesting >= DEEPEST_COLLECTION) throw new Fault(`${path}.geometries`, 'collections nested too deep');
  const members = value.geometries as readonly unknown[];
  const geometries = members.map((each, index) => readAny(each, `${path}.geometries[${index}]`, nesting + 1, counts));
  return { type: 'GeometryCollection', geometries };
}

type Lists = Position | Lists[];

/** Lists of the wanted depth with positions at their ends; of an area, the lists next to the positions are rings. */
function readLists(value: unknown, depth: number, path: string, isArea: boolean, counts: Counts): Lists {
  if (depth === 0) return readPosition(value, path, counts);
  if (!Array.isArray(value)) throw new Fault(path, 'no list');
  const lists = (value as readonly unknown[]).map((each, index) =>
    readLists(each, depth - 1, `${path}[${index}]`, isArea, counts),
  );
  return isArea && depth === 1 && lists.length > 0 ? closeRing(lists as Position[], path, counts) : lists;
}

function closeRing(ring: Position[], path: string, counts: Counts): Position[] {
  const [first] = ring;
  const last = ring.at(-1);
  const isClosed = first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1];
  if (!isClosed && first !== undefined) {
    ring.push([...first]);
    counts.closed += 1;
  }
  if (ring.length < LEAST_RING) throw new Fault(path, 'a ring of fewer than three corners');
  return ring;
}

function readPosition(value: unknown, path: string, counts: Counts): Position {
  const [x, y] = Array.isArray(value) ? (value as readonly unknown[]) : [];
  if (typeof x !== 'number' || typeof y !== 'number' || !Number.isFinite(x) || !Number.isFinite(y)) {
    throw new Fault(path, 'a corner that is not a pair of numbers');
  }
  counts.positions += 1;
  return [x, y];
}
