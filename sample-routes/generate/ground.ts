import type { AreaGeometry, Position } from '../../core/book/index.ts';

/** A point of the invented town: metres east and north of its middle. */
export type Spot = readonly [number, number];

/** Middle of the invented town. The place lies in open country; nothing there is modelled on a real street. */
const ORIGIN_LON = -89.4125;
const ORIGIN_LAT = 40.0375;
// WGS84: equatorial radius and first eccentricity squared.
const RADIUS_M = 6378137;
const ECCENTRICITY_SQUARED = 0.00669437999014;

const latRadians = (ORIGIN_LAT * Math.PI) / 180;
const w = Math.sqrt(1 - ECCENTRICITY_SQUARED * Math.sin(latRadians) ** 2);
const METRES_PER_DEGREE_LAT = ((RADIUS_M * (1 - ECCENTRICITY_SQUARED)) / w ** 3) * (Math.PI / 180);
const METRES_PER_DEGREE_LON = (RADIUS_M / w) * Math.cos(latRadians) * (Math.PI / 180);

/** Degrees of a spot, rounded to a hundred-millionth (about a millimetre). */
export function toPosition([east, north]: Spot): Position {
  return [round(ORIGIN_LON + east / METRES_PER_DEGREE_LON), round(ORIGIN_LAT + north / METRES_PER_DEGREE_LAT)];
}

function round(degrees: number): number {
  return Math.round(degrees * 1e8) / 1e8;
}

/** A frame laid on the ground: where its own origin is and which way its x axis points (degrees, counter-clockwise from east). */
export type Frame = { readonly at: Spot; readonly headingDeg: number };

/** A point given in a frame, on the ground. */
export function place(frame: Frame, [x, y]: Spot): Spot {
  const angle = (frame.headingDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return [frame.at[0] + x * cos - y * sin, frame.at[1] + x * sin + y * cos];
}

/** A rectangle in a frame, corners given as x from, y from, x to, y to in metres. */
export type Box = readonly [number, number, number, number];

export function boxPolygon(frame: Frame, [x1, y1, x2, y2]: Box): AreaGeometry {
  return polygon(frame, [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ]);
}

/** A closed polygon through the given points of a frame. */
export function polygon(frame: Frame, points: readonly Spot[]): AreaGeometry {
  const ring = points.map((each) => toPosition(place(frame, each)));
  const first = ring[0];
  return { type: 'Polygon', coordinates: [first === undefined ? ring : [...ring, first]] };
}
