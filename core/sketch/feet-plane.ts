import type { Position } from '../book/index.ts';
import { localPlane, type PlanePoint } from '../geometry/index.ts';
import { METRES_PER_FOOT } from '../units/index.ts';

/** Decimals of degrees that places are written with: 0.1 mm. */
const DECIMALS = 9;

/** A local plane counted in feet: `x` east and `y` north of its origin. */
export type FeetPlane = {
  readonly origin: Position;
  readonly toFeet: (position: Position) => PlanePoint;
  /** The place under a point of the plane, rounded to nine decimals of a degree. */
  readonly toDegrees: (point: PlanePoint) => Position;
};

/** The plane that touches the ellipsoid at `origin`. */
export function feetPlane(origin: Position): FeetPlane {
  const plane = localPlane(origin);
  return {
    origin,
    toFeet: (position) => {
      const { x, y } = plane.toPlane(position);
      return { x: x / METRES_PER_FOOT, y: y / METRES_PER_FOOT };
    },
    toDegrees: ({ x, y }) => rounded(plane.toDegrees({ x: x * METRES_PER_FOOT, y: y * METRES_PER_FOOT })),
  };
}

export function rounded([longitude, latitude]: Position): Position {
  return [Number(longitude.toFixed(DECIMALS)), Number(latitude.toFixed(DECIMALS))];
}

/** Direction of a vector, degrees clockwise from north, in [0, 360). */
export function bearingOf({ x, y }: PlanePoint): number {
  const bearing = (Math.atan2(x, y) * 180) / Math.PI;
  return bearing < 0 ? bearing + 360 : bearing;
}

/** The vector of a length in a direction. */
export function vectorOf(length: number, bearingDeg: number): PlanePoint {
  const angle = (bearingDeg * Math.PI) / 180;
  return { x: length * Math.sin(angle), y: length * Math.cos(angle) };
}

/** An angle brought into (-180, 180]. */
export function halfTurn(angleDeg: number): number {
  const turned = angleDeg - 360 * Math.floor(angleDeg / 360);
  return turned > 180 ? turned - 360 : turned;
}

export function between(from: PlanePoint, to: PlanePoint): PlanePoint {
  return { x: to.x - from.x, y: to.y - from.y };
}

export function sum(left: PlanePoint, right: PlanePoint): PlanePoint {
  return { x: left.x + right.x, y: left.y + right.y };
}

export function lengthOf({ x, y }: PlanePoint): number {
  return Math.hypot(x, y);
}
