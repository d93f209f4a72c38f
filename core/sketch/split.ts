import { ok, type Result } from '../base/index.ts';
import type { AreaGeometry, Position } from '../book/index.ts';
import {
  type LocalPlane,
  type PlanePoint,
  partArea,
  partsOf,
  positionFault,
  type Region,
  type RegionPart,
  STEPS_PER_METRE,
  toGeometry,
} from '../geometry/index.ts';
import { METRES_PER_FOOT } from '../units/index.ts';
import { crossingsOf } from './crossings.ts';
import { readGround } from './ground.ts';
import { needless, refuse, refuseFault } from './refuse.ts';
import { splitPart } from './split-part.ts';

/** The ends of the line are drawn out by this much, so that an end set on the edge does cross it, ft. */
const REACH_FT = 0.5;

/**
 * Splits an outline along a line of two or more places. Corners of the outline stay where they are; where the line meets a
 * side, the pieces share a new corner, rounded to 10 micrometres.
 *
 * @returns two or more pieces, largest first; parts that the line does not touch stay with the largest piece
 * Errors: `nothing-to-do` where the line does not go right across; `geometry-invalid` where it crosses itself
 */
export function splitBy(geometry: AreaGeometry, line: readonly Position[]): Result<readonly AreaGeometry[]> {
  const fault = line.map(positionFault).find((each) => each !== null);
  if (fault !== undefined && fault !== null) return refuseFault(fault);
  if (line.length < 2) return needless('The line has fewer than two places.', 'Draw it across the outline.');
  if (crossingsOf(line, false).length > 0) return refuse('The line crosses itself.', 'Draw it without a loop.');
  const ground = readGround([geometry]);
  if (!ground.ok) return ground;
  const { plane, regions } = ground.value;
  const path = drawnOut(line.map((position) => onGrid(position, plane)));
  const split = partsOf(regions[0] ?? NO_REGION).map((part) => splitPart(part, path));
  const pieces = split.flatMap((each) => (each.length > 1 ? each : []));
  if (pieces.length === 0) {
    return needless('The line does not go right across the outline.', 'Begin and end it outside the outline.');
  }
  const [largest, ...others] = pieces.toSorted((left, right) => partArea(right) - partArea(left));
  const whole = split.flatMap((each) => (each.length > 1 ? [] : each));
  const groups = [[...(largest === undefined ? [] : [largest]), ...whole], ...others.map((each) => [each])];
  return ok(groups.map((group) => toGeometry(regionOfParts(group), plane)));
}

const NO_REGION: Region = { paths: [], box: { west: 0, south: 0, east: 0, north: 0 } };

function regionOfParts(parts: readonly RegionPart[]): Region {
  return { ...NO_REGION, paths: parts.flatMap((part) => [part.outer, ...part.holes]) };
}

function onGrid(position: Position, plane: LocalPlane): PlanePoint {
  const { x, y } = plane.toPlane(position);
  return { x: Math.round(x * STEPS_PER_METRE), y: Math.round(y * STEPS_PER_METRE) };
}

/** The line with both ends drawn out straight. */
function drawnOut(path: readonly PlanePoint[]): readonly PlanePoint[] {
  const reach = REACH_FT * METRES_PER_FOOT * STEPS_PER_METRE;
  const [first, second] = path;
  const last = path.at(-1);
  const nextToLast = path.at(-2);
  if (first === undefined || second === undefined || last === undefined || nextToLast === undefined) return path;
  return [beyond(second, first, reach), ...path.slice(1, -1), beyond(nextToLast, last, reach)];
}

function beyond(from: PlanePoint, to: PlanePoint, reach: number): PlanePoint {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return to;
  const share = reach / length;
  return { x: Math.round(to.x + (to.x - from.x) * share), y: Math.round(to.y + (to.y - from.y) * share) };
}
