import type { Violation } from '../../../../core/plan/judge/index.ts';
import type { Job, Mode, Op, Problem, ProblemRig, Station } from '../../../../core/plan/problem/index.ts';
import type { Plan, PlanActivity, PlanDay, PlanFill, PlanStockFill } from '../../../../core/plan/result/index.ts';

/** What a naive judge finds wrong: the codes of the published verdicts. */
export type Fault = { readonly code: Violation['code']; readonly where: string; readonly words: string };

export type OfKind<Kind extends PlanActivity['kind']> = Extract<PlanActivity, { readonly kind: Kind }>;
export type Treat = OfKind<'treat'>;
export type Refill = OfKind<'refill'>;
export type Pour = OfKind<'pour'>;

/** One way to read a visit: which job, and which of the rig's modes. */
export type Reading = { readonly job: Job; readonly mode: Mode };

/** A visit: its set-up and pack-up by number of activity, and the treats between them. `packUp` is -1 where there is none. */
export type VisitSpan = {
  readonly setUp: number;
  readonly packUp: number;
  readonly propertyId: string;
  readonly treats: readonly number[];
  readonly reading: Reading | null;
};

/** One change of what is in a compartment, in the order in which things happen. `index` is the activity. */
export type Change = {
  readonly index: number;
  readonly compartment: string;
  readonly kind: 'rinse' | 'fill' | 'draw';
  readonly parts: number;
  readonly materialId: string;
};

/** A day under judgement: its visits, what happens to compartments, and nothing that is carried along. */
export type DayFacts = {
  readonly problem: Problem;
  readonly plan: Plan;
  readonly day: PlanDay;
  readonly rig: ProblemRig;
  readonly rigNumber: number;
  readonly dayNumber: number;
  readonly visits: readonly VisitSpan[];
  readonly changes: readonly Change[];
};

export const TIME = 0.5;
export const PART = 0.05;
export const GROUND = 0.5;
export const WEIGHT = 50;

/** Seconds as milliseconds, gallons and pounds as parts; decimals that stand for a whole number are that number. */
export function ms(seconds: number): number {
  return nearly(seconds * 1000);
}

export function parts(amount: number): number {
  return nearly(amount * 100);
}

function nearly(figure: number): number {
  return Math.abs(figure - Math.round(figure)) < 0.02 ? Math.round(figure) : figure;
}

export function lengthMs(activity: PlanActivity): number {
  return ms(activity.endSec) - ms(activity.startSec);
}

export function sum(figures: readonly number[]): number {
  return figures.reduce((total, each) => total + each, 0);
}

export function isKind<Kind extends PlanActivity['kind']>(kind: Kind) {
  return (activity: PlanActivity): activity is OfKind<Kind> => activity.kind === kind;
}

export function taskNumber(problem: Problem, name: Treat | Plan['unplaced'][number]): number {
  return problem.tasks.findIndex(
    (task) =>
      task.propertyId === name.propertyId &&
      task.zoneId === name.zoneId &&
      task.treatmentId === name.treatmentId &&
      task.step === name.step,
  );
}

export function sameMethod(op: Op, treat: Treat): boolean {
  const { method } = treat;
  if (op.method.kind === 'machine')
    return method.kind === 'machine' && method.machineId === op.method.machineId && method.headId === op.method.headId;
  return method.kind === 'hand' && method.handMethodId === op.method.handMethodId;
}

export function does(problem: Problem, op: Op, treat: Treat): boolean {
  const trims = op.groundBefore !== undefined;
  return op.task === taskNumber(problem, treat) && sameMethod(op, treat) && (treat.handTrim === true) === trims;
}

/** The op of a treat in the reading of its visit; null where it has none. */
export function opOf(facts: DayFacts, index: number): Op | null {
  const treat = facts.day.activities[index];
  const visit = facts.visits.find((each) => each.treats.includes(index));
  if (treat?.kind !== 'treat' || visit === undefined) return null;
  const ops =
    visit.reading === null
      ? facts.problem.jobs
          .filter((job) => job.propertyId === visit.propertyId)
          .flatMap((job) => (job.modes[facts.rigNumber] ?? []).flatMap((mode) => mode.ops))
      : visit.reading.mode.ops;
  return ops.find((op) => does(facts.problem, op, treat)) ?? null;
}

/** The visit that an activity lies in: after its set-up and before its pack-up. */
export function visitAt(facts: DayFacts, index: number): VisitSpan | null {
  const ends = (visit: VisitSpan): number => (visit.packUp < 0 ? Number.POSITIVE_INFINITY : visit.packUp);
  return facts.visits.find((visit) => visit.setUp < index && index < ends(visit)) ?? null;
}

/** Where the rig is before an activity. */
export function placeBefore(facts: DayFacts, index: number): number {
  const drive = facts.day.activities.slice(0, index).findLast(isKind('drive'));
  if (drive === undefined) return facts.problem.stations[facts.rig.home]?.place ?? -1;
  return facts.problem.placeIds.indexOf(drive.toPlaceId);
}

export function stationOf(facts: DayFacts, refill: Refill): Station | undefined {
  return facts.problem.stations.find((each) => each.fillPointId === refill.fillPointId);
}

/** Parts that a fill moves; 0 for what does not exist or would take out. */
export function fillParts(facts: Pick<DayFacts, 'rig' | 'problem'>, fill: PlanFill): number {
  const vessel = facts.rig.compartments.find((each) => each.id === fill.compartmentId);
  if (vessel === undefined || stockOfFill(facts, fill) < 0) return 0;
  return parts(vessel.kind === 'tank' ? fill.volumeGal : fill.weightLb);
}

/** Number of the stock that a fill takes from; -1 where the material does not exist or does not go into such a compartment. */
export function stockOfFill(facts: Pick<DayFacts, 'rig' | 'problem'>, fill: PlanFill): number {
  const vessel = facts.rig.compartments.find((each) => each.id === fill.compartmentId);
  const stock = facts.problem.materials.find((each) => each.id === fill.materialId)?.stock ?? -1;
  const wet = facts.problem.stocks[stock]?.kind === 'water';
  return vessel === undefined || stock < 0 || wet !== (vessel.kind === 'tank') ? -1 : stock;
}

export function stockNumber(problem: Problem, fill: PlanStockFill): number {
  return problem.stocks.findIndex(
    (each) => each.kind === fill.stock && (each.kind === 'water' || each.productId === fill.productId),
  );
}

export function stockParts(fill: PlanStockFill): number {
  return parts(fill.stock === 'water' ? fill.volumeGal : fill.weightLb);
}

/** Parts of a draw; only the member of the compartment's kind is read. 0 where the rig has no such compartment. */
export function drawParts(rig: ProblemRig, draw: Treat['draws'][number]): number {
  const vessel = rig.compartments.find((each) => each.id === draw.compartmentId);
  if (vessel === undefined) return 0;
  return parts(vessel.kind === 'tank' ? draw.volumeGal : draw.weightLb);
}
