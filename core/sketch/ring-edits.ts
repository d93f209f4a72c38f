import { ok, type Result } from '../base/index.ts';
import type { AreaGeometry, Position } from '../book/index.ts';
import { polygonsOf } from '../geometry/index.ts';
import { needless, refuse } from './refuse.ts';
import type { Corners, RingPlace } from './types.ts';

/** The corners of one ring of an outline, without the repeated first one; null where there is no such ring. */
export function cornersAt(geometry: AreaGeometry, place: RingPlace): Corners | null {
  const ring = polygonsOf(geometry)[place.polygon]?.[place.ring];
  return ring === undefined ? null : openRing(ring);
}

/** A ring without its first corner repeated at the end. */
export function openRing(ring: readonly Position[]): Corners {
  const [first] = ring;
  const last = ring.at(-1);
  const isClosed = ring.length > 1 && first !== undefined && last?.[0] === first[0] && last[1] === first[1];
  return isClosed ? ring.slice(0, -1) : ring;
}

/** Corners as the outline of a polygon. */
export function polygonOf(corners: Corners): AreaGeometry {
  const [first] = corners;
  return { type: 'Polygon', coordinates: [first === undefined ? [] : [...corners, first]] };
}

/** The outline with one ring's corners replaced. Errors: `nothing-to-do` for no such ring, `geometry-invalid` under three. */
export function withCorners(geometry: AreaGeometry, place: RingPlace, corners: Corners): Result<AreaGeometry> {
  const polygons = polygonsOf(geometry);
  const rings = polygons[place.polygon];
  const [first] = corners;
  if (rings?.[place.ring] === undefined) return needless('The outline has no such ring.', 'Choose a corner of it.');
  if (first === undefined || corners.length < 3) {
    return refuse('An outline needs at least three corners.', 'Delete the whole of it instead.');
  }
  const changed = rings.with(place.ring, [...corners, first]);
  return ok(
    geometry.type === 'Polygon'
      ? { type: 'Polygon', coordinates: changed }
      : { type: 'MultiPolygon', coordinates: polygons.with(place.polygon, changed) },
  );
}

/**
 * A new corner before the one at `index`; an index equal to the number of corners puts it into the closing side.
 * `nothing-to-do` where the outline has no such place.
 */
export function addCorner(geometry: AreaGeometry, place: RingPlace, index: number, at: Position): Result<AreaGeometry> {
  return changeCorners(geometry, place, index, 1, (corners) => corners.toSpliced(index, 0, at));
}

/** The outline with one corner elsewhere. `nothing-to-do` where it has no such corner. */
export function moveCorner(
  geometry: AreaGeometry,
  place: RingPlace,
  index: number,
  to: Position,
): Result<AreaGeometry> {
  return changeCorners(geometry, place, index, 0, (corners) => corners.with(index, to));
}

/**
 * The outline without one corner. `geometry-invalid` where only two would be left, `nothing-to-do` where it has no such
 * corner.
 */
export function removeCorner(geometry: AreaGeometry, place: RingPlace, index: number): Result<AreaGeometry> {
  return changeCorners(geometry, place, index, 0, (corners) => corners.toSpliced(index, 1));
}

/** The outline without one of its holes. `nothing-to-do` where it has no such hole. */
export function removeHole(geometry: AreaGeometry, place: RingPlace): Result<AreaGeometry> {
  const polygons = polygonsOf(geometry);
  const rings = polygons[place.polygon];
  if (place.ring === 0 || rings?.[place.ring] === undefined) {
    return needless('The outline has no such hole.', 'Choose a corner of the hole.');
  }
  const changed = rings.toSpliced(place.ring, 1);
  return ok(
    geometry.type === 'Polygon'
      ? { type: 'Polygon', coordinates: changed }
      : { type: 'MultiPolygon', coordinates: polygons.with(place.polygon, changed) },
  );
}

function changeCorners(
  geometry: AreaGeometry,
  place: RingPlace,
  index: number,
  beyond: number,
  change: (corners: Corners) => Corners,
): Result<AreaGeometry> {
  const corners = cornersAt(geometry, place);
  if (corners === null || !Number.isInteger(index) || index < 0 || index >= corners.length + beyond) {
    return needless('The outline has no such corner.', 'Choose a corner of it.');
  }
  return withCorners(geometry, place, change(corners));
}
