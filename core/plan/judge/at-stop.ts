import type { Op, TreatHours } from '../problem/index.ts';
import type { PlanActivity } from '../result/index.ts';
import { cover } from './coverage.ts';
import type { DayState } from './day-state.ts';
import { addGround, groundOf } from './ground.ts';
import { coverWithLoad } from './loads.ts';
import { taskKey } from './lookup.ts';
import { needTime } from './need-time.ts';
import { checkOrderOfWork } from './order-of-work.ts';
import { AMOUNT_SLACK, clockWords, GROUND_SLACK_SQ_FT, marksOf, msOf, TIME_SLACK_MS } from './tolerance.ts';
import type { Excess } from './types.ts';
import { drawForOp, drawnParts, serviceBetween } from './vessels.ts';
import { matchVisit } from './visits.ts';

type Treat = Extract<PlanActivity, { kind: 'treat' }>;

/** The visit starts: place, window, day, break, and which way of working it follows. */
export function setUp(
  state: DayState,
  activity: Extract<PlanActivity, { kind: 'set-up' }>,
  index: number,
  where: string,
): void {
  const { ledger, lookup } = state;
  if (state.visit !== null) ledger.add('time-not-possible', where, 'the stop before it was never packed up');
  checkBreak(state, where);
  const visit = matchVisit(lookup, state.rigNumber, state.plan.activities, index);
  state.visit = visit;
  state.doneUnits.clear();
  state.lastOp = null;
  state.pastHours = false;
  state.sums.stops += 1;
  state.stops.push({
    propertyId: activity.propertyId,
    arriveMs: state.arrivedMs,
    leaveMs: msOf(activity.endSec),
    done: [],
  });
  if (visit === null) {
    ledger.add('task-unknown', where, `nothing is to be done at "${activity.propertyId}"`);
    return;
  }
  checkVisit(state, activity, where);
}

function checkVisit(state: DayState, activity: Extract<PlanActivity, { kind: 'set-up' }>, where: string): void {
  const { visit, ledger, lookup, dayNumber } = state;
  if (visit === null) return;
  if (state.place !== visit.place) ledger.add('time-not-possible', where, 'the rig is not there');
  needTime(state, activity, visit.beforeMs, where);
  // The break comes after the waiting and does not move the moment that the window asks for.
  const ready = state.arrivedMs + state.waitedMs;
  if (msOf(activity.startSec) < visit.openMs - TIME_SLACK_MS || ready > visit.closeMs + TIME_SLACK_MS) {
    const window = `${clockWords(visit.openMs)} to ${clockWords(visit.closeMs)}`;
    const limit = (ready > visit.closeMs ? visit.closeMs : visit.openMs) / 1000;
    const excess = { subjectId: '', limit, found: ready / 1000, unit: 'clock' } as const;
    ledger.add('window-missed', where, `ready at ${clockWords(ready)}, allowed ${window}`, excess);
  }
  checkOpening(state, activity, where);
  if (!visit.orderKnown) {
    ledger.add('time-not-possible', where, 'this rig cannot do these tasks in this order in one visit');
  }
  for (const number of visit.jobs) {
    const job = lookup.problem.jobs[number];
    if (job === undefined || dayNumber < 0) continue;
    if (job.dayAllowed[dayNumber] !== 1) {
      const why = job.closed?.[dayNumber]?.words ?? '';
      const excess = { subjectId: '', limit: 0, found: dayNumber, unit: 'none', why } as const;
      const words = `${visit.propertyId} is not to be visited on ${state.plan.date}${why === '' ? '' : `: ${why}`}`;
      ledger.add('day-not-allowed', where, words, excess);
    }
    if (!state.lateJobs.has(number)) state.sums.cost += job.lateCost[dayNumber] ?? 0;
    state.lateJobs.add(number);
  }
}

/** Hours of treating of the visit's jobs on the day; where several are worked on at once, all of them count. */
function treatHoursOf({ visit, lookup, dayNumber }: DayState): readonly TreatHours[] {
  return (visit?.jobs ?? []).flatMap((number) => lookup.problem.jobs[number]?.treatHours?.[dayNumber] ?? []);
}

function checkOpening(state: DayState, activity: Extract<PlanActivity, { kind: 'set-up' }>, where: string): void {
  const startMs = msOf(activity.startSec);
  const early = treatHoursOf(state).find((each) => startMs < each.openMs - TIME_SLACK_MS);
  if (early === undefined) return;
  const words = `sets up at ${clockWords(startMs)}, weather allows work from ${clockWords(early.openMs)}`;
  state.ledger.add('weather-closed', where, words, weatherExcess(early.openMs, startMs, early));
}

/** Once a visit: of several ops that end too late the first one. */
function checkClosing(state: DayState, activity: Treat, where: string): void {
  if (state.pastHours) return;
  const endMs = msOf(activity.endSec);
  const over = treatHoursOf(state).find(({ closeMs }) => closeMs !== undefined && endMs > closeMs + TIME_SLACK_MS);
  if (over?.closeMs === undefined) return;
  state.pastHours = true;
  const words = `treats until ${clockWords(endMs)}, weather allows work until ${clockWords(over.closeMs)}`;
  state.ledger.add('weather-closed', where, words, weatherExcess(over.closeMs, endMs, over));
}

function weatherExcess(limitMs: number, foundMs: number, { words: why }: TreatHours): Excess {
  return { subjectId: '', limit: limitMs / 1000, found: foundMs / 1000, unit: 'clock', why };
}

/** The break is due before the first visit whose arrival is at or after its time. */
function checkBreak(state: DayState, where: string): void {
  const { breakAfterMs } = state.rig;
  if (breakAfterMs < 0 || state.breakTaken || state.arrivedMs < breakAfterMs - TIME_SLACK_MS) return;
  const words = `arrives at ${clockWords(state.arrivedMs)} and takes no break, due from ${clockWords(breakAfterMs)}`;
  state.ledger.add('time-not-possible', where, words);
  state.breakTaken = true;
}

export function swapHead(state: DayState, activity: Extract<PlanActivity, { kind: 'swap-head' }>): void {
  const ms = msOf(activity.endSec) - msOf(activity.startSec);
  const same = state.swap?.machineId === activity.machineId && state.swap.headId === activity.headId;
  state.swap = { machineId: activity.machineId, headId: activity.headId, ms: ms + (same ? (state.swap?.ms ?? 0) : 0) };
}

/** Ground is treated: the right op, head, time, draws and levels. */
export function treat(state: DayState, activity: Treat, index: number, where: string): void {
  const { ledger, lookup } = state;
  const task = lookup.taskOf.get(taskKey(activity));
  const [from, to] = marksOf(activity);
  const place = `${where}, ${activity.propertyId} ${activity.zoneId}`;
  state.sums.treatMs += msOf(activity.endSec) - msOf(activity.startSec);
  const op = state.visit?.ops.get(index) ?? null;
  checkClosing(state, activity, place);
  const ground = groundOf(op, activity.areaSqFt, activity.handTrim === true);
  addGround(state.sums, ground);
  state.stops.at(-1)?.done.push({ treat: activity, op });
  if (activity.areaSqFt < -GROUND_SLACK_SQ_FT || activity.doneSqFt < -GROUND_SLACK_SQ_FT) {
    ledger.add('ground-not-covered', place, 'ground is negative');
  }
  if (task === undefined) {
    ledger.add('task-unknown', place, 'the problem has no such task');
    return;
  }
  const before = op?.groundBefore ?? 0;
  cover(state.coverage, task, before + from, before + to, place);
  const known = lookup.problem.tasks[task];
  if (known !== undefined) {
    state.worked.push({ task: known, startMs: msOf(activity.startSec), endMs: msOf(activity.endSec) });
  }
  if (state.visit === null) {
    ledger.add('time-not-possible', place, 'treats without having set up');
  } else if (state.visit.propertyId !== activity.propertyId || state.place !== state.visit.place) {
    ledger.add('time-not-possible', place, 'treats ground where the rig is not');
  }
  if (op === null) {
    ledger.add('out-of-reach', place, 'the rig has no such way to do this task');
    return;
  }
  needTime(state, activity, serviceBetween(op, from, to), place);
  checkPerson(state, activity, op, place);
  fitHead(state, op, place);
  checkDraws(state, activity, op, from, to, place);
  drawForOp(state, op, from, to, place);
  for (const draw of op.draws) coverWithLoad(state, draw.compartment, ground.treatedSqFt);
  state.doneUnits.set(op, to);
  state.lastOp = op;
}

/** Work that the problem gives to one person is not done by the other: there would be two who ride, or none. */
function checkPerson(state: DayState, activity: Treat, op: Op, where: string): void {
  const due = op.second ? 2 : 1;
  if (activity.person === due) return;
  state.ledger.add('time-not-possible', where, `done by person ${activity.person}, this is work of person ${due}`);
}

/** A machine leaves home with the head of its first op; later another head needs its swap time. */
function fitHead(state: DayState, op: Op, where: string): void {
  const swap = state.swap;
  state.swap = null;
  if (op.machine < 0 || op.head < 0) return;
  const fitted = state.heads.get(op.machine);
  state.heads.set(op.machine, op.head);
  if (fitted === undefined || fitted === op.head || op.swapMs === 0) return;
  const right = op.method.kind === 'machine' && swap?.machineId === op.method.machineId;
  const spent = right && op.method.kind === 'machine' && swap?.headId === op.method.headId ? swap.ms : 0;
  if (spent < op.swapMs - TIME_SLACK_MS) {
    const words = `the head takes ${(op.swapMs / 1000).toFixed(1)} s to swap, ${(spent / 1000).toFixed(1)} s are spent`;
    state.ledger.add('time-not-possible', where, words);
  }
}

/** The draws that the plan states are those of the op. */
function checkDraws(state: DayState, activity: Treat, op: Op, from: number, to: number, where: string): void {
  const stated = new Map<string, number>();
  for (const draw of activity.draws) {
    const vessel = state.rig.compartments.find((each) => each.id === draw.compartmentId);
    const amount = vessel?.kind === 'dry' ? draw.weightLb : draw.volumeGal;
    stated.set(draw.compartmentId, (stated.get(draw.compartmentId) ?? 0) + amount);
    const material = state.lookup.materialOf.get(draw.materialId) ?? -1;
    if (material !== op.material) {
      state.ledger.add('mixed-materials', where, `draws "${draw.materialId}", which is not what this work applies`);
    }
  }
  for (const draw of op.draws) {
    const id = state.rig.compartments[draw.compartment]?.id ?? '';
    const due = drawnParts(op, draw.parts, from, to) / 100;
    compareDraw(state, id, stated.get(id) ?? 0, due, where);
    stated.delete(id);
  }
  for (const [id, amount] of stated) compareDraw(state, id, amount, 0, where);
}

function compareDraw(state: DayState, id: string, stated: number, due: number, where: string): void {
  if (Math.abs(stated - due) > AMOUNT_SLACK) {
    state.ledger.add('figure-differs', where, `draws ${stated} from ${id}, ${due.toFixed(2)} worked out`);
  }
}

/** The visit ends. */
export function packUp(state: DayState, activity: Extract<PlanActivity, { kind: 'pack-up' }>, where: string): void {
  const { visit, ledger } = state;
  const stop = state.stops.at(-1);
  if (stop !== undefined) stop.leaveMs = msOf(activity.endSec);
  state.arrivedMs = msOf(activity.endSec);
  state.waitedMs = 0;
  checkOrderOfWork(state, where);
  if (visit === null) {
    ledger.add('time-not-possible', where, 'packs up without having set up');
    return;
  }
  if (visit.propertyId !== activity.propertyId || state.place !== visit.place) {
    ledger.add('time-not-possible', where, 'packs up where the rig is not');
  }
  needTime(state, activity, visit.afterMs, where);
  state.visit = null;
  state.doneUnits.clear();
  state.lastOp = null;
}
