import type { Position } from '../book/index.ts';
import { fillNonzero, fillPositive } from './booleans.ts';
import { findContacts } from './contacts.ts';
import {
  crossingFault,
  type GeometryFault,
  hairlineFault,
  notClosedFault,
  repeatedCornerFault,
  tooFewCornersFault,
  zeroWidthFault,
} from './faults.ts';
import type { LocalPlane } from './local-plane.ts';
import {
  doubleArea,
  type GridPath,
  type GridPoint,
  pathLength,
  type Region,
  regionArea,
  regionOf,
  STEPS_PER_METRE,
} from './region.ts';

/** An outline narrower than this on average has no width, metres. */
const LEAST_WIDTH_M = 0.01;
/** Ground that a crossing may wrap wrongly or twice before it counts as one, m2. */
const CROSSING_TOLERANCE_SQ_M = 0.001;

/** One ring as ground, or refused with a reason. */
export type RingReading =
  | { readonly kind: 'region'; readonly region: Region; readonly faults: readonly GeometryFault[] }
  | { readonly kind: 'refused'; readonly fault: GeometryFault };

/**
 * Puts one ring into the plane, cleans it and fills it: closes it where it is open, leaves out repeated corners, turns it
 * anticlockwise; a ring that crosses itself becomes everything it goes round (nonzero filling).
 */
export function readRing(ring: readonly Position[], plane: LocalPlane): RingReading {
  const cleaned = cleanRing(ring, plane);
  const { path, faults } = cleaned;
  const start = ring[0] ?? plane.origin;
  if (path.length < 3) {
    return { kind: 'refused', fault: path.length === 2 ? zeroWidthFault(start) : tooFewCornersFault(start) };
  }
  const contacts = findContacts([path]);
  if (contacts.crossingCount === 0 && contacts.touch === null) {
    if (hasNoWidth(Math.abs(doubleArea(path)), path)) return { kind: 'refused', fault: zeroWidthFault(start) };
    return { kind: 'region', region: regionOf([anticlockwise(path)]), faults };
  }
  return fillTangled(path, faults, contacts.crossings[0] ?? contacts.touch ?? path[0], contacts.crossingCount, plane);
}

function fillTangled(
  path: GridPath,
  faults: readonly GeometryFault[],
  where: GridPoint | undefined,
  crossingCount: number,
  plane: LocalPlane,
): RingReading {
  const region = fillNonzero([path]);
  const at = toPosition(where ?? { x: 0, y: 0 }, plane);
  if (hasNoWidth(2 * regionArea(region) * STEPS_PER_METRE ** 2, path)) {
    return { kind: 'refused', fault: zeroWidthFault(at) };
  }
  if (isTangled(path, region)) {
    return { kind: 'region', region, faults: [...faults, crossingFault(at, Math.max(1, crossingCount))] };
  }
  return { kind: 'region', region, faults: crossingCount > 0 ? [...faults, hairlineFault(at)] : faults };
}

/** True where some ground is wrapped the wrong way round, or more than once. */
function isTangled(path: GridPath, filled: Region): boolean {
  const forward = anticlockwise(path);
  const filledArea = regionArea(filled);
  const rightWay = regionArea(fillPositive([forward]));
  const wrongWay = filledArea - rightWay;
  const wrapped = doubleArea(forward) / 2 / STEPS_PER_METRE ** 2;
  const repeated = wrapped - (rightWay - wrongWay);
  return Math.abs(wrongWay) > CROSSING_TOLERANCE_SQ_M || Math.abs(repeated) > CROSSING_TOLERANCE_SQ_M;
}

type Cleaned = { readonly path: GridPath; readonly faults: readonly GeometryFault[] };

function cleanRing(ring: readonly Position[], plane: LocalPlane): Cleaned {
  const path: GridPoint[] = [];
  let repeated = 0;
  let repeatedAt: Position | undefined;
  for (const position of ring) {
    const point = toGrid(position, plane);
    const last = path[path.length - 1];
    if (last !== undefined && last.x === point.x && last.y === point.y) {
      repeated += 1;
      repeatedAt ??= position;
    } else {
      path.push(point);
    }
  }
  const faults: GeometryFault[] = [];
  if (repeatedAt !== undefined) faults.push(repeatedCornerFault(repeated, repeatedAt));
  const first = path[0];
  const last = path[path.length - 1];
  if (first === undefined || last === undefined || path.length < 2) return { path, faults };
  if (first.x === last.x && first.y === last.y) {
    path.pop();
  } else {
    faults.push(
      notClosedFault(toPosition(first, plane), Math.hypot(last.x - first.x, last.y - first.y) / STEPS_PER_METRE),
    );
  }
  return { path, faults };
}

function hasNoWidth(twiceArea: number, path: GridPath): boolean {
  const width = twiceArea / STEPS_PER_METRE ** 2 / pathLength(path);
  return !(width >= LEAST_WIDTH_M);
}

function anticlockwise(path: GridPath): GridPath {
  return doubleArea(path) < 0 ? path.toReversed() : path;
}

function toGrid(position: Position, plane: LocalPlane): GridPoint {
  const { x, y } = plane.toPlane(position);
  return { x: Math.round(x * STEPS_PER_METRE), y: Math.round(y * STEPS_PER_METRE) };
}

export function toPosition({ x, y }: GridPoint, plane: LocalPlane): Position {
  return plane.toDegrees({ x: x / STEPS_PER_METRE, y: y / STEPS_PER_METRE });
}
