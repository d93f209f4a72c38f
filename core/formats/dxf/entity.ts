import type { DxfEntity } from 'dxf';
import { flattenArc, flattenBulge, flattenSpline, flattenWhole, MOST_POINTS, sweepBetween } from './curves.ts';
import { applyTo, type DrawingPoint, type Matrix, MIRRORED, UNMOVED } from './matrix.ts';

/** An entity as points in the plane of its block, not yet moved to where the block is inserted. */
export type EntityShape =
  | { readonly kind: 'point'; readonly at: DrawingPoint }
  | { readonly kind: 'path'; readonly points: readonly DrawingPoint[]; readonly isClosed: boolean }
  | { readonly kind: 'bad'; readonly what: string };

const FULL_TURN = 2 * Math.PI;
const bad = (what: string): EntityShape => ({ kind: 'bad', what });

/** The shape of an entity. Missing numbers are 0, as the standard has it. */
export function shapeOf(entity: DxfEntity): EntityShape {
  const plane = planeOf(entity);
  if (plane === null) return bad('an outline that does not lie flat');
  const shape = rawShape(entity, plane === MIRRORED);
  const isTurned = plane !== UNMOVED && !inWorld(entity);
  switch (shape.kind) {
    case 'path':
      return isTurned ? { ...shape, points: shape.points.map((point) => applyTo(plane, point)) } : shape;
    case 'point':
    case 'bad':
      return shape;
  }
}

/** Lines, points, ellipses and splines are given in world coordinates, the others in a plane of their own. */
function inWorld({ type }: DxfEntity): boolean {
  return ['LINE', 'POINT', 'ELLIPSE', 'SPLINE'].includes(type);
}

/** How the entity's own plane lies on the sheet; null where it stands out of it. */
export function planeOf({ extrusionX = 0, extrusionY = 0, extrusionZ = 1 }: DxfEntity): Matrix | null {
  const isFlat = Math.abs(extrusionX) < 1e-6 && Math.abs(extrusionY) < 1e-6 && extrusionZ !== 0;
  if (!isFlat) return null;
  return extrusionZ < 0 ? MIRRORED : UNMOVED;
}

function rawShape(entity: DxfEntity, isMirrored: boolean): EntityShape {
  switch (entity.type) {
    case 'POINT':
      return { kind: 'point', at: at(entity) };
    case 'LINE':
      return { kind: 'path', points: [at(entity.start), at(entity.end)], isClosed: false };
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return polyline(entity);
    case 'CIRCLE':
    case 'ARC':
      return circle(entity);
    case 'ELLIPSE':
      return ellipse(entity, isMirrored);
    case 'SPLINE':
      return spline(entity);
    default:
      return bad(`a ${entity.type.slice(0, 20)}`);
  }
}

function at(point: { readonly x?: number; readonly y?: number } | undefined): DrawingPoint {
  return [point?.x ?? 0, point?.y ?? 0];
}

function polyline({ vertices = [], closed = false, polygonMesh, polyfaceMesh }: DxfEntity): EntityShape {
  if (polygonMesh === true || polyfaceMesh === true) return bad('a mesh in three dimensions');
  if (vertices.length < 2) return bad('a polyline of fewer than two corners');
  const points: DrawingPoint[] = [];
  for (const [index, vertex] of vertices.entries()) {
    points.push(at(vertex));
    const next = vertices[index + 1] ?? (closed ? vertices[0] : undefined);
    if (next !== undefined) points.push(...flattenBulge(at(vertex), at(next), vertex.bulge ?? 0));
    if (points.length > MOST_POINTS) return bad('a polyline of more corners than are read');
  }
  return { kind: 'path', points, isClosed: closed };
}

function circle(entity: DxfEntity): EntityShape {
  const { r = 0, startAngle = 0, endAngle = 0 } = entity;
  if (!(r > 0)) return bad('a circle without a radius');
  const round = { centre: at(entity), major: [r, 0], minor: [0, r] } as const;
  if (entity.type === 'CIRCLE') return { kind: 'path', points: flattenWhole(round), isClosed: true };
  const sweep = sweepBetween(startAngle, endAngle);
  return { kind: 'path', points: flattenArc({ ...round, from: startAngle, sweep }), isClosed: false };
}

/** The minor axis is the extrusion direction times the major axis, shortened (DXF reference, ELLIPSE). */
function ellipse(entity: DxfEntity, isMirrored: boolean): EntityShape {
  const { majorX = 0, majorY = 0, axisRatio = 1, startAngle = 0, endAngle = FULL_TURN } = entity;
  if (majorX === 0 && majorY === 0) return bad('an ellipse without an axis');
  const turn = isMirrored ? -axisRatio : axisRatio;
  const sweep = sweepBetween(startAngle, endAngle);
  const minor: DrawingPoint = [-majorY * turn, majorX * turn];
  const round = { centre: at(entity), major: [majorX, majorY], minor } as const;
  if (sweep === FULL_TURN) return { kind: 'path', points: flattenWhole(round), isClosed: true };
  return { kind: 'path', points: flattenArc({ ...round, from: startAngle, sweep }), isClosed: false };
}

function spline({ degree = 0, knots = [], weights = [], controlPoints = [], closed = false }: DxfEntity): EntityShape {
  const points = flattenSpline({ degree, knots, weights, points: controlPoints.map(at) });
  return points === null
    ? bad('a spline that lacks knots or control points')
    : { kind: 'path', points, isClosed: closed };
}
