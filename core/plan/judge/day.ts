import type { PlanActivity } from '../result/index.ts';
import { packUp, setUp, swapHead, treat } from './at-stop.ts';
import { checkDayEnd } from './day-end.ts';
import type { DayState } from './day-state.ts';
import { openLoad } from './loads.ts';
import { travelBetween } from './lookup.ts';
import { needTime } from './need-time.ts';
import { busyUntil, dueStart, whoseWork } from './persons.ts';
import { checkBags, pour } from './pour.ts';
import { refill } from './refill.ts';
import { clockWords, DISTANCE_SLACK_M, msOf, TIME_SLACK_MS } from './tolerance.ts';
import {
  addToStock,
  checkAboard,
  checkLoad,
  pourIn,
  readFills,
  readStockFills,
  stockName,
  stocksMoved,
} from './vessels.ts';

/** Plays one day through, activity by activity, and reports whatever cannot be. */
export function playDay(state: DayState): void {
  state.plan.activities.forEach((activity, index) => {
    const where = `${state.label}, activity ${index + 1} (${activity.kind})`;
    state.ledger.standAt({ date: state.plan.date, rigId: state.plan.rigId, activity: index });
    checkSpan(state, activity, where);
    playActivity(state, activity, index, where);
    busyUntil(state.persons, whoseWork(activity), msOf(activity.endSec));
    state.clockMs = Math.max(...state.persons.untilMs);
  });
  state.ledger.standAt({ date: state.plan.date, rigId: state.plan.rigId, activity: -1 });
  checkDayEnd(state);
}

/** What each person does follows without gaps, and nothing ends before it starts. */
function checkSpan(state: DayState, activity: PlanActivity, where: string): void {
  const start = msOf(activity.startSec);
  const end = msOf(activity.endSec);
  if (end < start - TIME_SLACK_MS) {
    state.ledger.add('time-not-possible', where, `ends at ${clockWords(end)}, before it starts`);
  }
  const due = dueStart(state.persons, whoseWork(activity));
  if (Math.abs(start - due) > TIME_SLACK_MS) {
    const words = `starts at ${clockWords(start)}, what comes before ends at ${clockWords(due)}`;
    state.ledger.add('time-not-possible', where, words);
  }
  if (state.ended) state.ledger.add('time-not-possible', where, 'comes after the evening work');
  if (!state.begun && activity.kind !== 'morning') {
    state.ledger.add('time-not-possible', where, 'comes before the morning work');
    state.begun = true;
  }
}

function playActivity(state: DayState, activity: PlanActivity, index: number, where: string): void {
  switch (activity.kind) {
    case 'morning':
      morning(state, activity, where);
      break;
    case 'drive':
      drive(state, activity, where);
      break;
    case 'wait':
      state.waitedMs += msOf(activity.endSec) - msOf(activity.startSec);
      break;
    case 'break':
      takeBreak(state, activity);
      break;
    case 'set-up':
      setUp(state, activity, index, where);
      break;
    case 'swap-head':
      swapHead(state, activity);
      break;
    case 'treat':
      treat(state, activity, index, where);
      break;
    case 'refill':
      refill(state, activity, index, where);
      break;
    case 'pour':
      pour(state, activity, index, where);
      break;
    case 'pack-up':
      packUp(state, activity, where);
      break;
    case 'evening':
      evening(state, activity, where);
      break;
  }
}

function morning(state: DayState, activity: Extract<PlanActivity, { kind: 'morning' }>, where: string): void {
  if (state.begun) state.ledger.add('time-not-possible', where, 'the day has begun already');
  state.begun = true;
  needTime(state, activity, state.rig.morningMs, where);
  const fills = readFills(state, activity.fills, where);
  const taken = readStockFills(state, activity.stock, where);
  if (state.rig.begins === undefined) {
    const home = state.lookup.problem.stations[state.rig.home];
    for (const stock of stocksMoved(state, fills, taken).keys()) {
      if ((home?.msPerPart[stock] ?? -1) < 0) {
        const excess = { subjectId: home?.fillPointId ?? '', limit: 0, found: 0, unit: 'none' } as const;
        state.ledger.add('fill-point-lacks-material', where, `home has no ${stockName(state, stock)}`, excess);
      }
    }
  }
  for (const fill of fills) {
    openLoad(state, fill.compartment, fill.material, fill.parts, '', false);
    pourIn(state, fill, where);
  }
  for (const fill of taken) addToStock(state, fill);
  checkAboard(state, where);
  checkLoad(state, where);
  checkBags(state, where);
  state.arrivedMs = msOf(activity.endSec);
  state.waitedMs = 0;
}

function drive(state: DayState, activity: Extract<PlanActivity, { kind: 'drive' }>, where: string): void {
  const from = state.lookup.placeOf.get(activity.fromPlaceId) ?? -1;
  const to = state.lookup.placeOf.get(activity.toPlaceId) ?? -1;
  const travel = travelBetween(state.lookup.problem, from, to);
  state.sums.driveMs += msOf(activity.endSec) - msOf(activity.startSec);
  if (travel === null) {
    state.ledger.add('time-not-possible', where, 'one of its ends is no place of the problem');
  } else {
    needTime(state, activity, travel.ms, where);
    state.sums.distanceM += travel.metres;
    if (Math.abs(activity.distanceM - travel.metres) > DISTANCE_SLACK_M) {
      state.ledger.add('figure-differs', where, `${activity.distanceM} m stated, ${travel.metres} m worked out`);
    }
  }
  if (from !== state.place) {
    state.ledger.add('time-not-possible', where, `starts at "${activity.fromPlaceId}", where the rig is not`);
  }
  state.place = to;
  if (state.visit === null) {
    state.arrivedMs = msOf(activity.endSec);
    state.waitedMs = 0;
  }
}

/** A break counts when it is long enough and not taken before its time; anything else is waiting. */
function takeBreak(state: DayState, activity: Extract<PlanActivity, { kind: 'break' }>): void {
  const start = msOf(activity.startSec);
  const long = msOf(activity.endSec) - start >= state.rig.breakMs - TIME_SLACK_MS;
  if (long && start >= state.rig.breakAfterMs - TIME_SLACK_MS) state.breakTaken = true;
}

function evening(state: DayState, activity: Extract<PlanActivity, { kind: 'evening' }>, where: string): void {
  needTime(state, activity, state.rig.eveningMs, where);
  if (state.visit !== null) state.ledger.add('time-not-possible', where, 'the last stop was never packed up');
  if (state.place !== (state.lookup.problem.stations[state.rig.end]?.place ?? -1)) {
    state.ledger.add('time-not-possible', where, 'the rig is not where its day ends');
  }
  state.ended = true;
}
