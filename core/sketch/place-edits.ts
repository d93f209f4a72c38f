import { ok, type Result } from '../base/index.ts';
import type { AreaGeometry, Position } from '../book/index.ts';
import { boxCentre, degreesBox, type PlanePoint } from '../geometry/index.ts';
import { feetPlane } from './feet-plane.ts';
import { refuseFault } from './refuse.ts';

type Move = (position: Position) => Position;

/**
 * The outline moved so many feet east and north, in its true size. Errors: `geometry-not-lonlat`, `geometry-too-large`
 * or `geometry-invalid` where it cannot be used, before or after.
 */
export function nudge(geometry: AreaGeometry, eastFt: number, northFt: number): Result<AreaGeometry> {
  return about(geometry, (centre) => {
    const target = feetPlane(centre).toDegrees({ x: eastFt, y: northFt });
    return carried(centre, target);
  });
}

/**
 * The outline carried from one place to another in its true size; `fromAnchor` comes to lie on `toAnchor`. Errors as of
 * `nudge`.
 */
export function copyShape(geometry: AreaGeometry, fromAnchor: Position, toAnchor: Position): Result<AreaGeometry> {
  return about(geometry, () => carried(fromAnchor, toAnchor));
}

/** The outline turned clockwise by so many degrees round the middle of its bounds. Errors as of `nudge`. */
export function rotateShape(geometry: AreaGeometry, angleDeg: number): Result<AreaGeometry> {
  const angle = (angleDeg * Math.PI) / 180;
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return about(geometry, (centre) =>
    inPlane(centre, ({ x, y }) => ({ x: cosine * x + sine * y, y: cosine * y - sine * x })),
  );
}

/**
 * The outline mirrored in a line through the middle of its bounds that runs `axisDeg` degrees clockwise from north.
 * Errors as of `nudge`.
 */
export function mirrorShape(geometry: AreaGeometry, axisDeg = 0): Result<AreaGeometry> {
  const angle = (2 * axisDeg * Math.PI) / 180;
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return about(geometry, (centre) =>
    inPlane(centre, ({ x, y }) => ({ x: sine * y - cosine * x, y: sine * x + cosine * y })),
  );
}

/** A place carried along with an outline: where `copyShape` with the same anchors would put a corner there. */
export function carryPlace(place: Position, fromAnchor: Position, toAnchor: Position): Position {
  return carried(fromAnchor, toAnchor)(place);
}

/** A place moved so many feet east and north. */
export function nudgePlace(place: Position, eastFt: number, northFt: number): Position {
  return feetPlane(place).toDegrees({ x: eastFt, y: northFt });
}

/** True size: places are taken off in the plane at one anchor and put down in that at the other. */
function carried(fromAnchor: Position, toAnchor: Position): Move {
  const from = feetPlane(fromAnchor);
  const to = feetPlane(toAnchor);
  return (position) => to.toDegrees(from.toFeet(position));
}

function inPlane(centre: Position, change: (point: PlanePoint) => PlanePoint): Move {
  const plane = feetPlane(centre);
  return (position) => plane.toDegrees(change(plane.toFeet(position)));
}

/** Applies a move to every corner; refused where the outline, or what becomes of it, does not lie on the ground. */
function about(geometry: AreaGeometry, moveFor: (centre: Position) => Move): Result<AreaGeometry> {
  const before = degreesBox(geometry);
  if ('fault' in before) return refuseFault(before.fault);
  const moved = moveAll(geometry, moveFor(boxCentre(before.box)));
  const after = degreesBox(moved);
  return 'fault' in after ? refuseFault(after.fault, 'Choose another place.') : ok(moved);
}

function moveAll(geometry: AreaGeometry, move: Move): AreaGeometry {
  const ring = (positions: readonly Position[]): readonly Position[] => positions.map(move);
  return geometry.type === 'Polygon'
    ? { type: 'Polygon', coordinates: geometry.coordinates.map(ring) }
    : { type: 'MultiPolygon', coordinates: geometry.coordinates.map((rings) => rings.map(ring)) };
}
