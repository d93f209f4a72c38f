import type { Station } from '../problem/index.ts';
import type { PlanActivity } from '../result/index.ts';
import type { DayState } from './day-state.ts';
import { closeLoad, drainSump, openLoad } from './loads.ts';
import { compartmentOf } from './lookup.ts';
import { needTime } from './need-time.ts';
import { checkBags } from './pour.ts';
import { type Standing, standingAt } from './standing.ts';
import { clockWords, GROUND_SLACK_SQ_FT, msOf, TIME_SLACK_MS } from './tolerance.ts';
import {
  addToStock,
  checkLoad,
  pourIn,
  type ReadFill,
  type ReadStockFill,
  readFills,
  readStockFills,
  rinse,
  stockName,
  stocksMoved,
  takeFromStock,
} from './vessels.ts';

type Refill = Extract<PlanActivity, { kind: 'refill' }>;

/** Plays one refill: where, when, for how long, from what, into what. */
export function refill(state: DayState, activity: Refill, index: number, where: string): void {
  const { ledger, lookup } = state;
  const standing = standingAt(state, index);
  const stated = readFills(state, activity.fills, where);
  const taken = readStockFills(state, activity.stock, where);
  state.sums.refills += 1;
  state.sums.refillMs += msOf(activity.endSec) - msOf(activity.startSec);
  if (standing.nextOp !== null && Math.abs(activity.afterSqFt - standing.doneUnits) > GROUND_SLACK_SQ_FT) {
    const words = `after ${activity.afterSqFt} ft² stated, ${standing.doneUnits} ft² are done`;
    ledger.add('figure-differs', where, words);
  }
  for (const id of activity.rinsedCompartmentIds) {
    const compartment = compartmentOf(state.rig, id);
    closeLoad(state, compartment);
    drainSump(state, compartment);
  }
  const rinsed = rinse(state, activity.rinsedCompartmentIds, where);
  if (activity.fillPointId === '') {
    fromRig(state, activity, standing, stated, taken, rinsed, where);
  } else {
    const number = lookup.stationOf.get(activity.fillPointId) ?? -1;
    const station = lookup.problem.stations[number];
    state.sums.stationRefills += 1;
    if (station === undefined) {
      ledger.add('fill-point-lacks-material', where, `no fill point is called "${activity.fillPointId}"`);
    } else {
      fromStation(state, activity, station, standing, stated, taken, rinsed, where);
    }
  }
  for (const fill of stated) {
    openLoad(state, fill.compartment, fill.material, fill.parts, activity.fillPointId, false);
    pourIn(state, fill, where);
  }
  for (const fill of taken) addToStock(state, fill);
  checkLoad(state, where);
  checkBags(state, where);
}

function fromRig(
  state: DayState,
  activity: Refill,
  standing: Standing,
  fills: readonly ReadFill[],
  taken: readonly ReadStockFill[],
  rinsed: readonly number[],
  where: string,
): void {
  const { rig, lookup, ledger } = state;
  if (taken.length > 0) {
    ledger.add('fill-point-lacks-material', where, 'stock is taken on where there is no fill point');
  }
  for (const fill of fills) {
    takeFromStock(state, lookup.problem.materials[fill.material]?.stock ?? -1, fill.parts, where);
  }
  rinseFromRig(state, rinsed, where);
  const least = rig.refillMs + (standing.midZone ? rig.midZoneMs : 0) + pourMs(state, fills) + rinseMs(state, rinsed);
  needTime(state, activity, least, where);
}

function fromStation(
  state: DayState,
  activity: Refill,
  station: Station,
  standing: Standing,
  fills: readonly ReadFill[],
  taken: readonly ReadStockFill[],
  rinsed: readonly number[],
  where: string,
): void {
  const { ledger, rig } = state;
  if (station.place !== state.place) ledger.add('time-not-possible', where, 'the rig is not at this fill point');
  const [start, end] = [msOf(activity.startSec), msOf(activity.endSec)];
  if (start < station.openMs - TIME_SLACK_MS || end > station.closeMs + TIME_SLACK_MS) {
    const hours = `${clockWords(station.openMs)} to ${clockWords(station.closeMs)}`;
    const words = `${station.fillPointId} is open ${hours}, not from ${clockWords(start)} to ${clockWords(end)}`;
    const isLate = end > station.closeMs + TIME_SLACK_MS;
    const excess = {
      subjectId: station.fillPointId,
      limit: (isLate ? station.closeMs : station.openMs) / 1000,
      found: (isLate ? end : start) / 1000,
      unit: 'clock',
    } as const;
    ledger.add('fill-point-closed', where, words, excess);
  }
  let least = station.visitMs + pourMs(state, fills) + rinseMs(state, rinsed);
  for (const [stock, parts] of stocksMoved(state, fills, taken)) {
    const perPart = station.msPerPart[stock] ?? -1;
    if (perPart >= 0) least += perPart * parts;
    else {
      const words = `${station.fillPointId} has no ${stockName(state, stock)}`;
      const excess = { subjectId: station.fillPointId, limit: 0, found: 0, unit: 'none' } as const;
      ledger.add('fill-point-lacks-material', where, words, excess);
    }
  }
  if (standing.midStop) least += (standing.nextOp?.reloadMs ?? 0) + (standing.midZone ? rig.midZoneMs : 0);
  if ((station.msPerPart[waterStock(state)] ?? -1) < 0) rinseFromRig(state, rinsed, where);
  needTime(state, activity, least, where);
}

function rinseFromRig(state: DayState, rinsed: readonly number[], where: string): void {
  const parts = rinsed.reduce((sum, material) => sum + (state.lookup.problem.materials[material]?.rinseParts ?? 0), 0);
  if (parts > 0) takeFromStock(state, waterStock(state), parts, where);
}

function waterStock(state: DayState): number {
  return state.lookup.stockOf.get('') ?? -1;
}

function rinseMs(state: DayState, rinsed: readonly number[]): number {
  return rinsed.reduce((sum, material) => sum + (state.lookup.problem.materials[material]?.rinseMs ?? 0), 0);
}

function pourMs(state: DayState, fills: readonly ReadFill[]): number {
  return fills.reduce(
    (sum, fill) => sum + Math.max(0, fill.parts) * (state.rig.compartments[fill.compartment]?.fillMsPerPart ?? 0),
    0,
  );
}
