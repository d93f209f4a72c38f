import type { Op, Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import type { PlanDay } from '../../../../core/plan/result/index.ts';
import { does, drawParts, lengthMs, type Reading, sum, type Treat, type VisitSpan } from './day-facts.ts';

/** The visits of a day, each read as the job and mode that explain it best. */
export function visitsOf(problem: Problem, day: PlanDay, rigNumber: number): readonly VisitSpan[] {
  const { activities } = day;
  return activities.flatMap((activity, setUp): VisitSpan[] => {
    if (activity.kind !== 'set-up') return [];
    const after = activities.findIndex((each, at) => at > setUp && (each.kind === 'set-up' || each.kind === 'pack-up'));
    const end = after < 0 ? activities.length : after;
    const numbers = activities.map((_, at) => at).filter((at) => at > setUp && at < end);
    const treats = numbers.filter((at) => activities[at]?.kind === 'treat');
    const packUp = activities[end]?.kind === 'pack-up' ? end : -1;
    const pieces = treats.map((at) => activities[at] as Treat);
    const spare = [lengthMs(activity), packUp < 0 ? 0 : lengthMs(activities[packUp] ?? activity)] as const;
    const reading = bestReading(problem, rigNumber, activity.propertyId, pieces, spare);
    return [{ setUp, packUp, propertyId: activity.propertyId, treats, reading }];
  });
}

/** The reading with the least that does not fit; null where none does the pieces in their order. */
function bestReading(
  problem: Problem,
  rigNumber: number,
  propertyId: string,
  pieces: readonly Treat[],
  spare: readonly [number, number],
): Reading | null {
  const jobs = problem.jobs.filter((job) => job.propertyId === propertyId);
  const all = jobs.flatMap((job) => (job.modes[rigNumber] ?? []).map((mode): Reading => ({ job, mode })));
  const rig = problem.rigs[rigNumber];
  if (rig === undefined) return null;
  const ranked = all
    .filter(({ mode }) => inOrder(problem, mode.ops, pieces))
    .map((reading) => ({ reading, misfit: misfitOf(problem, rig, reading, pieces, spare) }));
  return ranked.sort((left, right) => left.misfit - right.misfit)[0]?.reading ?? null;
}

/** Whether pieces are ops of the row in its order, the pieces of one op together. */
function inOrder(problem: Problem, ops: readonly Op[], pieces: readonly Treat[]): boolean {
  let reached = 0;
  return pieces.every((piece) => {
    const found = ops.findIndex((op, at) => at >= reached && does(problem, op, piece));
    reached = Math.max(found, reached);
    return found >= 0;
  });
}

/** Counts what a reading leaves unexplained: draws of other compartments or amounts first, then ops that are not done, then time. */
function misfitOf(
  problem: Problem,
  rig: ProblemRig,
  { mode }: Reading,
  pieces: readonly Treat[],
  spare: readonly [number, number],
): number {
  const wrong = pieces.filter((piece) => {
    const op = mode.ops.find((each) => does(problem, each, piece));
    return op === undefined || !drawsFit(op, rig, piece) || lengthMs(piece) < servedMs(op, piece) - 0.5;
  });
  const undone = mode.ops.filter((op) => !pieces.some((piece) => does(problem, op, piece)));
  const over = Math.max(0, mode.beforeMs - spare[0]) + Math.max(0, mode.afterMs - spare[1]);
  return wrong.length * 1e15 + undone.length * 1e12 + over;
}

export function servedMs(op: Op, piece: Treat): number {
  const [from, to] = marks(piece);
  return Math.floor((op.serviceMs * to) / op.areaUnits) - Math.floor((op.serviceMs * from) / op.areaUnits);
}

/** Where a piece begins and ends, ft2. */
export function marks(piece: Treat): readonly [number, number] {
  const near = (area: number): number => (Math.abs(area - Math.round(area)) < 0.02 ? Math.round(area) : area);
  return [near(piece.doneSqFt), near(piece.doneSqFt + piece.areaSqFt)];
}

/** Parts that a piece has to draw from a compartment of the rig. */
export function dueParts(op: Op, compartment: number, piece: Treat): number {
  const [from, to] = marks(piece);
  const drawn = (all: number, x: number): number => Math.ceil((all * x) / op.areaUnits - 1e-9);
  return sum(
    op.draws
      .filter((draw) => draw.compartment === compartment)
      .map((draw) => drawn(draw.parts, to) - drawn(draw.parts, from)),
  );
}

/** Parts that a piece says it draws from a compartment of the rig. */
export function statedParts(rig: ProblemRig, compartment: number, piece: Treat): number {
  const id = rig.compartments[compartment]?.id;
  return sum(piece.draws.filter((draw) => draw.compartmentId === id).map((draw) => drawParts(rig, draw)));
}

/** Whether every compartment gives what the op draws for this piece. */
export function drawsFit(op: Op, rig: ProblemRig, piece: Treat): boolean {
  return rig.compartments.every(
    (_, number) => Math.abs(statedParts(rig, number, piece) - dueParts(op, number, piece)) <= 1.05,
  );
}
