import type { Geometry, Position } from 'geojson';
import { issue } from '../../base/index.ts';
import { closeRing } from '../ring.ts';
import type { SourceFeature } from '../types.ts';
import { shapeOf } from './entity.ts';
import type { PlacedEntity } from './expand.ts';
import { applyTo, type DrawingPoint } from './matrix.ts';

export type ReadEntity = { readonly feature: SourceFeature; readonly positions: number };

export const RECORD_FIELDS: readonly string[] = ['layer', 'kind', 'block'];

/** Numbers larger than this are no coordinates of a drawing. */
const LARGEST = 1e12;

/** One entity as a record: a closed path as a polygon, an open one as a line. */
export function readEntity(placed: PlacedEntity, where: string): ReadEntity {
  const shape = shapeOf(placed.entity);
  if (shape.kind === 'bad') return reject(placed, where, shape.what);
  const local = shape.kind === 'point' ? [shape.at] : shape.points;
  const points = local.map((point) => applyTo(placed.matrix, point));
  const least = shape.kind === 'point' ? 1 : 2;
  if (points.length < least || !points.every(isSound))
    return reject(placed, where, 'a corner that is no pair of numbers');
  const geometry = shape.kind === 'point' ? pointOf(points) : pathOf(points, shape.isClosed);
  return { feature: { ...base(placed, where), geometry, issues: [] }, positions: points.length };
}

function isSound([x, y]: DrawingPoint): boolean {
  return Math.abs(x) <= LARGEST && Math.abs(y) <= LARGEST;
}

function pointOf([at = [0, 0]]: readonly Position[]): Geometry {
  return { type: 'Point', coordinates: at };
}

/** A path that ends where it began is closed, whether its flag says so or not. */
function pathOf(line: [x: number, y: number][], isClosed: boolean): Geometry {
  const last = line.at(-1);
  const [first] = line;
  const size = Math.max(...extents(line));
  const endsAtStart =
    line.length > 3 &&
    first !== undefined &&
    last !== undefined &&
    Math.hypot(first[0] - last[0], first[1] - last[1]) <= size * 1e-9;
  const ring = endsAtStart ? closeRing(line.slice(0, -1)) : isClosed ? closeRing(line) : null;
  return ring === null ? { type: 'LineString', coordinates: line } : { type: 'Polygon', coordinates: [ring.ring] };
}

function extents(points: readonly DrawingPoint[]): readonly [number, number] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  return [east - west, north - south];
}

function base({ entity, layer, block }: PlacedEntity, where: string): Omit<SourceFeature, 'geometry' | 'issues'> {
  const handle = block === null ? (entity.handle ?? '') : '';
  return {
    where,
    id: handle === '' ? null : handle.slice(0, 120),
    attributes: { layer, kind: entity.type, block },
  };
}

function reject(placed: PlacedEntity, where: string, what: string): ReadEntity {
  const message = `The entity is ${what}. Draw its outline as a polyline.`;
  return {
    feature: { ...base(placed, where), geometry: null, issues: [issue('error', 'geometry-invalid', where, message)] },
    positions: 0,
  };
}
