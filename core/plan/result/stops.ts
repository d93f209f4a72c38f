import { fromParts, toSeconds } from './amounts.ts';
import type { Names } from './names.ts';
import { reckonedOf } from './reckoned.ts';
import { isHandTrim, personOf, type RouteView } from './route.ts';
import type { PlanActivity, PlanLoad, PlanStop, PlanTask } from './types.ts';
import { methodWords } from './words.ts';

type Treat = Extract<PlanActivity, { readonly kind: 'treat' }>;

/** The visits of a day in order, each with its tasks, times and the loads that cover them. */
export function stopsOf(
  view: RouteView,
  names: Names,
  activities: readonly PlanActivity[],
  loads: readonly PlanLoad[],
  otherWays: readonly PlanStop['otherWays'][],
): readonly PlanStop[] {
  const spans = visitSpans(view);
  return view.route.visits.map((_, index) => {
    const { job, mode } = view.visit(index);
    const span = spans[index] ?? EMPTY_SPAN;
    return {
      number: index + 1,
      propertyId: job.propertyId,
      name: names.property(job.propertyId),
      arriveSec: toSeconds(span.arriveMs),
      leaveSec: toSeconds(span.leaveMs),
      driveSec: toSeconds(span.driveMs),
      distanceM: span.distanceM,
      tasks: mode.ops.map((_op, opIndex) => planTask(view, names, index, opIndex, activities, loads)),
      otherWays: otherWays[index] ?? [],
    };
  });
}

type VisitSpan = { arriveMs: number; leaveMs: number; driveMs: number; distanceM: number };
const EMPTY_SPAN: VisitSpan = { arriveMs: 0, leaveMs: 0, driveMs: 0, distanceM: 0 };

/** When each visit is reached and left, and what was driven to get there, detours by fill points included. */
function visitSpans(view: RouteView): readonly VisitSpan[] {
  const spans: VisitSpan[] = [];
  let drive = { ms: 0, metres: 0 };
  let arriveMs = 0;
  for (const activity of view.route.activities) {
    if (activity.kind === 'drive') {
      drive = { ms: drive.ms + activity.endMs - activity.startMs, metres: drive.metres + activity.distanceM };
      arriveMs = activity.endMs;
    } else if (activity.kind === 'set-up') {
      spans.push({
        arriveMs: Math.min(arriveMs, activity.startMs),
        leaveMs: activity.endMs,
        driveMs: drive.ms,
        distanceM: drive.metres,
      });
      drive = { ms: 0, metres: 0 };
    } else if (activity.kind === 'pack-up') {
      const span = spans.at(-1);
      if (span !== undefined) span.leaveMs = activity.endMs;
      arriveMs = activity.endMs;
      drive = { ms: 0, metres: 0 };
    }
  }
  return spans;
}

function planTask(
  view: RouteView,
  names: Names,
  visit: number,
  opIndex: number,
  activities: readonly PlanActivity[],
  loads: readonly PlanLoad[],
): PlanTask {
  const { op, task } = view.op(visit, opIndex);
  const same = (each: {
    readonly propertyId: string;
    readonly zoneId: string;
    readonly treatmentId: string;
  }): boolean =>
    each.propertyId === task.propertyId && each.zoneId === task.zoneId && each.treatmentId === task.treatmentId;
  const trims = isHandTrim(op);
  const pieces = activities.filter(
    (each): each is Treat =>
      each.kind === 'treat' && each.step === task.step && (each.handTrim === true) === trims && same(each),
  );
  const compartments = new Set(op.draws.map((draw) => view.rig.compartments[draw.compartment]?.id));
  const parts = (kind: 'tank' | 'dry'): number =>
    op.draws.reduce((sum, draw) => sum + (view.rig.compartments[draw.compartment]?.kind === kind ? draw.parts : 0), 0);
  return {
    propertyId: task.propertyId,
    zoneId: task.zoneId,
    treatmentId: task.treatmentId,
    step: task.step,
    method: op.method,
    person: personOf(op),
    ...(trims ? { handTrim: true } : {}),
    ...reckonedOf(op, names),
    startSec: pieces[0]?.startSec ?? 0,
    endSec: pieces.at(-1)?.endSec ?? 0,
    areaSqFt: op.areaUnits,
    volumeGal: fromParts(parts('tank')),
    weightLb: fromParts(parts('dry')),
    loadNumbers: loads
      .filter((load) => compartments.has(load.compartmentId) && load.covers.some(same))
      .map((load) => load.number),
    why: methodWords(view, names, visit, opIndex),
  };
}
