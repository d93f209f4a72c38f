import type { Geometry } from 'geojson';
import { err, ok, type Result } from '../base/index.ts';
import type { SourceCoordinates } from '../formats/index.ts';
import { distanceMetres, localPlane, type PlanePoint, projectGeometry, projectionFromEpsg } from '../geometry/index.ts';
import type { ControlPoint, CoordinatesAnswer } from './mapping.ts';

/** Puts the coordinates of a layer on the ground. Null for what cannot be shown in degrees. */
export type Placing = (geometry: Geometry) => Geometry | null;

/** Two points of a drawing nearer than this on the ground say too little about its scale, metres. */
const SHORTEST_BASE_M = 1;

/**
 * How the coordinates of a layer become degrees: as the file says, or as it was answered.
 * Errors: `request-invalid` where an answer is missing or makes no sense, `format-unknown` for an EPSG code that is not known.
 */
export function placingOf(given: SourceCoordinates, answer: CoordinatesAnswer | null, where: string): Result<Placing> {
  if (answer === null) return given.kind === 'degrees' ? ok((geometry) => geometry) : unanswered(given, where);
  switch (answer.kind) {
    case 'degrees':
      return ok((geometry) => geometry);
    case 'epsg': {
      const read = projectionFromEpsg(answer.code);
      if (read.kind === 'known') return ok((geometry) => projectGeometry(geometry, read.projection));
      return err('format-unknown', where, read.why, 'Choose another system, or export the file in degrees (WGS84).');
    }
    case 'two-points':
      return twoPoints(answer.first, answer.second, where);
    case 'one-point':
      return onePoint(answer.point, answer.metresPerUnit, answer.bearingDeg, where);
  }
}

/** What two points say about a drawing: metres for one of its units, and the length of the base line on the ground. */
export type ScaleReading = {
  readonly metresPerUnit: number;
  readonly baseM: number;
  /** Bearing on the ground of the drawing's y axis, degrees from north by east. */
  readonly bearingDeg: number;
};

/**
 * What two points say about a drawing. Null where they are the same in the drawing, or nearer than a metre on the
 * ground.
 */
export function readScale(first: ControlPoint, second: ControlPoint): ScaleReading | null {
  const [east, north] = [second.drawing[0] - first.drawing[0], second.drawing[1] - first.drawing[1]];
  const units = Math.hypot(east, north);
  const plane = localPlane(first.ground);
  const end = plane.toPlane(second.ground);
  const baseM = Math.hypot(end.x, end.y);
  if (!(units > 0) || !(baseM >= SHORTEST_BASE_M) || !Number.isFinite(baseM / units)) return null;
  const turn = Math.atan2(end.x, end.y) - Math.atan2(east, north);
  return { metresPerUnit: baseM / units, baseM, bearingDeg: (turn * 180) / Math.PI };
}

/**
 * Likely error of an area that is scaled by two points, as a share of it: 2 sqrt(2) s / D for points that are each off by s on
 * a base of length D (error propagation of two independent ends; an area goes with the square of the scale).
 */
export function scaleErrorShare(pointErrorM: number, baseM: number): number {
  return (2 * Math.SQRT2 * pointErrorM) / baseM;
}

/** How far a second point would lie from its place if the drawing's own unit were right, metres. */
export function unitResidualM(first: ControlPoint, second: ControlPoint, metresPerUnit: number): number {
  const units = Math.hypot(second.drawing[0] - first.drawing[0], second.drawing[1] - first.drawing[1]);
  return Math.abs(units * metresPerUnit - distanceMetres(first.ground, second.ground));
}

function twoPoints(first: ControlPoint, second: ControlPoint, where: string): Result<Placing> {
  const scale = readScale(first, second);
  if (scale !== null) return onePoint(first, scale.metresPerUnit, scale.bearingDeg, where);
  return err(
    'request-invalid',
    where,
    'The two points are the same, or nearer than 1 m to each other.',
    'Choose two points that lie far apart, such as two corners of the lot.',
  );
}

function onePoint(point: ControlPoint, metresPerUnit: number, bearingDeg: number, where: string): Result<Placing> {
  if (!(metresPerUnit > 0) || !Number.isFinite(metresPerUnit) || !Number.isFinite(bearingDeg)) {
    return err('request-invalid', where, 'The length of a unit is no number above 0.', 'Enter metres for one unit.');
  }
  const plane = localPlane(point.ground);
  const [sine, cosine] = [Math.sin((bearingDeg * Math.PI) / 180), Math.cos((bearingDeg * Math.PI) / 180)];
  const toPlane = (x: number, y: number): PlanePoint => {
    const [east, north] = [(x - point.drawing[0]) * metresPerUnit, (y - point.drawing[1]) * metresPerUnit];
    return { x: east * cosine + north * sine, y: north * cosine - east * sine };
  };
  const toDegrees = (x: number, y: number) => plane.toDegrees(toPlane(x, y));
  return ok((geometry) => projectGeometry(geometry, { name: 'drawing', toDegrees, fromDegrees: () => null }));
}

function unanswered(given: Exclude<SourceCoordinates, { kind: 'degrees' }>, where: string): Result<never> {
  const hint =
    given.kind === 'drawing'
      ? 'Say where two points of the drawing lie on the ground.'
      : 'Say what the coordinates are: degrees, or an EPSG code.';
  return err('request-invalid', where, given.why, hint);
}
