import { ok, type Result } from '../base/index.ts';
import {
  boxesMeet,
  EMPTY_REGION,
  intersection,
  joinParts,
  type PlanePoint,
  partsOf,
  type Region,
  regionArea,
  regionOf,
} from '../geometry/index.ts';
import { bestDirection, type Directed, fixedDirection } from './angle.ts';
import { type Cell, cellsOf, type Swath } from './cells.ts';
import { barOf, cornerRuns } from './corners.ts';
import { type Cover, coverMore, coverOf } from './cover.ts';
import { gaugeOf } from './gauge.ts';
import { trimLegs } from './legs.ts';
import { driveLoops } from './loops.ts';
import { markUse } from './marking.ts';
import { notesOf } from './notes.ts';
import { orderCells } from './order.ts';
import { type Openings, openingsOf } from './sections.ts';
import { pivotOf, type Sides, sidesOf, turnSides } from './sides.ts';
import { lengthM, NO_WALLS, routeBetween, type Walls, wallsOf } from './transit.ts';
import { type Trim, trimOf } from './trim.ts';
import type { Gauge, Leg, PassHead, PassOptions, PassPlan } from './types.ts';
import { distanceM, drive, type Visit } from './visits.ts';

/**
 * Passes over ground in a local plane: along the edge and round obstacles first, then parallel swaths in the best direction,
 * cell by cell. Every connected part has its own passes; the way from one part to the next leaves the ground. The result
 * depends on the shape alone: not on where its outline begins, nor on where it lies.
 * @param where what the ground is called in an error
 * @returns lengths in metres, areas in m2, minutes at working speed with turns; an error where the head's figures make no
 * sense. Ground without room for the swath is no error: it is all hand trim, with a note.
 */
export function planPasses(
  ground: Region,
  head: PassHead,
  options: PassOptions = {},
  where = 'passes',
): Result<PassPlan> {
  const gauge = gaugeOf(head, where);
  if (!gauge.ok) return gauge;
  const obstacles = options.obstacles === undefined ? NO_WALLS : wallsOf(options.obstacles);
  const parts: PartPlan[] = [];
  let here: PlanePoint | null = null;
  for (const part of partsOf(ground)) {
    const plan: PartPlan = planPart(joinParts([part]), gauge.value, options, { from: here, obstacles });
    parts.push(plan);
    here = plan.end ?? here;
  }
  return ok(addUp(parts, regionArea(ground), gauge.value, options.isDownhillUnknown ?? false));
}

type PartPlan = {
  readonly legs: readonly Leg[];
  readonly cover: Cover;
  readonly angle: number | null;
  readonly end: PlanePoint | null;
  readonly leaves: number;
  readonly directionsCut: boolean;
  readonly orderCut: boolean;
};

/** Where the way to a part comes from, and what it has to go round. */
type Arrival = { readonly from: PlanePoint | null; readonly obstacles: Walls };

function planPart(ground: Region, gauge: Gauge, options: PassOptions, arrival: Arrival): PartPlan {
  const trim = trimOf(ground, gauge);
  const directed = directPieces(trim, ground, gauge, options);
  const [main] = directed;
  const pieces = directed.map((each) => ({
    cells: cellsOf(each.directed, each.pivot),
    openings: openingsIn(each, gauge),
  }));
  const cells = pieces.flatMap((each) => each.cells);
  const openings = pieces.flatMap((each) => each.cells.map(() => each.openings));
  const order = orderCells(cells);
  const loops = driveLoops(trim.passes, beginning(cells, order.visits), main?.directed.angle ?? 0);
  const swept = coverOf(ground, trim.passes, cells, gauge.swathM);
  const runs = gauge.squareCorners ? cornerRuns(swept.left, sidesOf(ground), trim.passes, gauge.trimSwathM) : [];
  const work = [
    ...loops.flatMap((points) => trimLegs(points, runs, gauge)),
    ...order.visits.flatMap(({ cell, way }) =>
      drive(cells[cell] ?? [], way).map((swath) => swathLeg(swath, openings[cell] ?? null, gauge)),
    ),
  ];
  const joined = joinLegs(work, wallsOf(ground), arrival);
  return {
    legs: joined.legs,
    leaves: joined.leaves,
    cover:
      runs.length === 0
        ? swept
        : coverMore(
            swept,
            ground,
            runs.map((run) => barOf(run, gauge.trimSwathM)),
          ),
    angle: cells.length === 0 ? null : (main?.directed.angle ?? null),
    end: endOf(work),
    directionsCut: directed.some((each) => each.directed.wasCutShort),
    orderCut: order.wasCutShort,
  };
}

function beginning(cells: readonly Cell[], visits: readonly Visit[]): PlanePoint | null {
  const [first] = visits;
  return first === undefined ? null : (drive(cells[first.cell] ?? [], first.way)[0]?.from ?? null);
}

function swathLeg({ from, to, strip, isTurned }: Swath, openings: Openings | null, { swathM, sectionsM }: Gauge): Leg {
  const leg = { kind: 'swath', points: [from, to], widthM: swathM } as const;
  if (openings === null || sectionsM === null) return { ...leg, appliedSqM: swathM * distanceM(from, to) };
  const open = (isTurned ? openings.back : openings.onward)[strip] ?? [];
  const appliedSqM = open.reduce((sum, each) => sum + (sectionsM[each.section] ?? 0) * (each.toM - each.fromM), 0);
  return { ...leg, appliedSqM, open };
}

type Piece = { readonly directed: Directed; readonly pivot: PlanePoint; readonly bare: Sides };

const openingsIn = ({ directed, pivot, bare }: Piece, { sectionsM }: Gauge): Openings | null =>
  sectionsM === null ? null : openingsOf(turnSides(bare, directed.angle, pivot), directed.strips, sectionsM);

/** Swaths for every connected piece that the trim passes leave, largest first. */
function directPieces(trim: Trim, ground: Region, gauge: Gauge, { angleDeg }: PassOptions): readonly Piece[] {
  const pieces = partsOf(trim.rest).map((part) => joinParts([part]));
  const sides = sidesOf(ground);
  const bareGround = shareOut(trim.bare, pieces);
  return pieces.map((piece, index) => {
    const pivot = pivotOf(piece);
    const bare = bareGround[index] ?? EMPTY_REGION;
    const field = { rest: sidesOf(piece), bare: sidesOf(bare), ground: sides };
    const directed =
      angleDeg === undefined ? bestDirection(field, pivot, gauge) : fixedDirection(field, pivot, gauge, angleDeg);
    return { directed, pivot, bare: field.bare };
  });
}

/** The untreated ground of each piece: every part of it lies in one of them, and only near several has to be cut to tell which. */
function shareOut(bare: Region, pieces: readonly Region[]): readonly Region[] {
  if (pieces.length === 1) return [bare];
  const shares: Region[][] = pieces.map(() => []);
  for (const part of partsOf(bare).map((each) => joinParts([each]))) {
    const near = pieces.flatMap((piece, index) => (boxesMeet(piece.box, part.box) ? [index] : []));
    for (const index of near) {
      shares[index]?.push(near.length === 1 ? part : intersection(part, pieces[index] ?? EMPTY_REGION));
    }
  }
  return shares.map((each) => regionOf(each.flatMap((region) => region.paths)));
}

/** Ways between the legs of one part; the way from another part leads over other ground, round the obstacles. */
function joinLegs(
  work: readonly Leg[],
  walls: Walls,
  { from, obstacles }: Arrival,
): { readonly legs: readonly Leg[]; readonly leaves: number } {
  const legs: Leg[] = [];
  let leaves = 0;
  let here = from;
  for (const [index, leg] of work.entries()) {
    const start = leg.points[0];
    if (start === undefined) continue;
    if (here !== null && distanceM(here, start) > 0) {
      const isArrival = index === 0;
      const route = isArrival ? routeBetween(here, start, obstacles, 'outside') : routeBetween(here, start, walls);
      legs.push({ kind: 'transit', points: route.points, widthM: 0, appliedSqM: 0 });
      if (isArrival || !route.staysInside) leaves += 1;
    }
    legs.push(leg);
    here = leg.points[leg.points.length - 1] ?? here;
  }
  return { legs, leaves };
}

function endOf(work: readonly Leg[]): PlanePoint | null {
  const points = work[work.length - 1]?.points;
  return points?.[points.length - 1] ?? null;
}

function addUp(parts: readonly PartPlan[], areaSqM: number, gauge: Gauge, isDownhillUnknown: boolean): PassPlan {
  const path = parts.flatMap((each) => each.legs);
  const sum = (figure: (leg: Leg) => number): number => path.reduce((total, leg) => total + figure(leg), 0);
  const sprayedM = sum((leg) => (leg.kind === 'transit' ? 0 : lengthM(leg.points)));
  const unsprayedM = sum((leg) => (leg.kind === 'transit' ? lengthM(leg.points) : 0));
  const swathM = sum((leg) => (leg.kind === 'swath' ? lengthM(leg.points) : 0));
  const appliedSqM = sum((leg) => leg.appliedSqM);
  const swathCount = path.filter((leg) => leg.kind === 'swath').length;
  const trimCount = path.filter((leg) => leg.kind === 'trim' && leg.goesOn !== true).length;
  const cornerCount = path.filter((leg) => leg.kind === 'corner').length;
  const turnCount = Math.max(0, swathCount + trimCount + cornerCount - 1);
  const handTrimSqM = parts.reduce((total, each) => total + each.cover.leftSqM, 0);
  const outsideSqM = parts.reduce((total, each) => total + each.cover.outsideSqM, 0);
  const share = (part: number): number => (areaSqM > 0 ? part / areaSqM : 0);
  const radians = parts.find((each) => each.angle !== null)?.angle ?? null;
  return {
    path,
    swathCount,
    trimCount,
    cornerCount,
    turnCount,
    sprayedM,
    swathM,
    mark: gauge.mark === null ? null : markUse(gauge.mark, sprayedM, swathM),
    unsprayedM,
    minutes: (sprayedM / gauge.metresPerSec + unsprayedM / gauge.transitMetresPerSec + turnCount * gauge.turnSec) / 60,
    areaSqM,
    appliedSqM,
    overlapShare: share(appliedSqM - (areaSqM - handTrimSqM) - outsideSqM),
    missedShare: share(handTrimSqM),
    offTargetShare: share(outsideSqM),
    handTrim: parts.length === 0 ? EMPTY_REGION : regionOf(parts.flatMap((each) => each.cover.left.paths)),
    handTrimSqM,
    angleDeg: radians === null ? null : (radians * 180) / Math.PI,
    notes: notesOf({
      swathCount,
      trimCount,
      handTrimSqM,
      areaSqM,
      leaves: parts.reduce((total, each) => total + each.leaves, 0),
      isDownhillUnknown,
      directionsCut: parts.some((each) => each.directionsCut),
      orderCut: parts.some((each) => each.orderCut),
    }),
  };
}
