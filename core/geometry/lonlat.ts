import {
  bbox,
  booleanPointInPolygon,
  center,
  coordAll,
  lineString,
  nearestPointOnLine,
  point,
  polygon,
} from '@turf/turf';
import type { AreaGeometry, Position } from '../book/index.ts';
import { polygonsOf } from './degrees-box.ts';
import { distanceMetres } from './ellipsoid.ts';

/**
 * Helpers in degrees, by turf: for placing, picking and framing, never for a figure that is shown.
 * Outlines here do not cross the 180th meridian.
 */

/** West, south, east, north of some positions or outlines, degrees; null where there is nothing. */
export function boundingBox(
  shapes: readonly (AreaGeometry | Position)[],
): readonly [west: number, south: number, east: number, north: number] | null {
  const [west, south, east, north] = bbox({ type: 'GeometryCollection', geometries: shapes.map(toGeoJson) });
  if (west === undefined || south === undefined || east === undefined || north === undefined) return null;
  return Number.isFinite(west) && Number.isFinite(south) ? [west, south, east, north] : null;
}

/** Middle of an outline's bounding box; null for an outline without corners. */
export function centreOf(geometry: AreaGeometry): Position | null {
  if (cornersOf(geometry).length === 0) return null;
  const [longitude, latitude] = center(toGeoJson(geometry)).geometry.coordinates;
  return longitude === undefined || latitude === undefined ? null : [longitude, latitude];
}

/** All corners of an outline, closing corners included. */
export function cornersOf(geometry: AreaGeometry): readonly Position[] {
  return coordAll(toGeoJson(geometry)) as unknown as readonly Position[];
}

/** Fewest positions of a closed ring that goes round anything. */
const LEAST_OF_RING = 4;

/** True where the outline goes round the position or has it on a side. Rings that are not closed count as closed with a straight side. */
export function containsPosition(geometry: AreaGeometry, position: Position): boolean {
  const spot = point([...position]);
  return polygonsOf(geometry).some((rings) => {
    const [shell = [], ...holes] = rings.map(closed);
    const others = holes.filter((each) => each.length >= LEAST_OF_RING);
    return shell.length >= LEAST_OF_RING && booleanPointInPolygon(spot, polygon(mutable([shell, ...others])));
  });
}

function closed(ring: readonly Position[]): readonly Position[] {
  const [first] = ring;
  const last = ring.at(-1);
  return first === undefined || (first[0] === last?.[0] && first[1] === last[1]) ? ring : [...ring, first];
}

/** The point of the outline's shells, closed, that is nearest to a position; null for an outline without corners. */
export function nearestOnOutline(geometry: AreaGeometry, position: Position): Position | null {
  let best: Position | null = null;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const [shell] of polygonsOf(geometry)) {
    if (shell === undefined || shell.length < 2) continue;
    const found = nearestPointOnLine(lineString(mutable([closed(shell)])[0] ?? []), point([...position])).geometry
      .coordinates;
    const [longitude, latitude] = found;
    if (longitude === undefined || latitude === undefined) continue;
    const distance = distanceMetres(position, [longitude, latitude]);
    if (distance < bestDistance) {
      bestDistance = distance;
      best = [longitude, latitude];
    }
  }
  return best;
}

function toGeoJson(shape: AreaGeometry | Position): GeoJSON.Point | GeoJSON.Polygon | GeoJSON.MultiPolygon {
  if (!('type' in shape)) return { type: 'Point', coordinates: [...shape] };
  return shape.type === 'Polygon'
    ? { type: 'Polygon', coordinates: mutable(shape.coordinates) }
    : { type: 'MultiPolygon', coordinates: shape.coordinates.map(mutable) };
}

/** Turf's types want arrays that may be changed; nothing here changes them. */
function mutable(rings: readonly (readonly Position[])[]): GeoJSON.Position[][] {
  return rings as unknown as GeoJSON.Position[][];
}
