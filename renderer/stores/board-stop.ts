import { create } from 'zustand';
import type { StopMove, TaskName } from '../../core/plan/board/index.ts';
import type { Outage } from '../../core/plan/problem/index.ts';
import type { PlanDay, PlanStop } from '../../core/plan/result/index.ts';
import { improveFromHere, moveStops } from './board.ts';
import { currentDay, shownPlan } from './current.ts';
import { useHost } from './host.ts';
import { usePlans } from './plans.ts';
import { selectDay, selectStop, useSelection } from './selection.ts';

type BoardViewState = {
  /** The question that is open about the plan of a day: where a stop should go, or what is out of order. */
  readonly question: 'places' | 'out' | null;
  /** A date of the round that no rig works on and the board shows all the same; null: the date of the day that is looked at. */
  readonly emptyDate: string | null;
};

/** What the board shows besides the plan. */
export const useBoardView = create<BoardViewState>(() => ({ question: null, emptyDate: null }));

export function askOnBoard(question: BoardViewState['question']): void {
  useBoardView.setState({ question });
}

export function taskKey({ propertyId, zoneId, treatmentId, step }: TaskName): string {
  return JSON.stringify([propertyId, zoneId, treatmentId, step]);
}

export function taskOfStop(stop: PlanStop): TaskName {
  const { zoneId = '', treatmentId = '', step = 0 } = stop.tasks[0] ?? {};
  return { propertyId: stop.propertyId, zoneId, treatmentId, step };
}

export type DayStop = { readonly day: PlanDay; readonly stop: PlanStop };

/**
 * The stop of the selected lawn on the date that is looked at, on the rig that is looked at before others; or null. Numbers change with
 * every move, so that the number tells only which of two visits of one lawn is meant.
 */
export function selectedStop(): DayStop | null {
  const day = currentDay();
  if (day === null || useBoardView.getState().emptyDate !== null) return null;
  const { stopNumber, propertyId } = useSelection.getState();
  const here = day.stops.filter((stop) => stop.propertyId === propertyId);
  const own = here.find((stop) => stop.number === stopNumber) ?? here[0];
  if (own !== undefined) return { day, stop: own };
  for (const each of shownPlan()?.known.plan.days ?? []) {
    const stop = each.date === day.date && each.stops.find((one) => one.propertyId === propertyId);
    if (stop) return { day: each, stop };
  }
  return null;
}

/** Moves stops of a plan, and selects the one with this key where it is then. */
export async function moveAndFollow(name: string, moves: readonly StopMove[], key: string): Promise<void> {
  await moveStops(name, moves);
  for (const day of usePlans.getState().plans[name]?.plan.days ?? []) {
    const stop = day.stops.find((each) => taskKey(taskOfStop(each)) === key);
    if (stop === undefined) continue;
    selectDay(day.date, day.rigId);
    selectStop(stop.number, stop.propertyId);
  }
}

/** Takes the selected stop out of its day. */
export async function takeStopOut(): Promise<void> {
  const found = selectedStop();
  const name = shownPlan()?.name;
  if (found === null || name === undefined) return;
  const task = taskOfStop(found.stop);
  await moveAndFollow(name, [{ task, to: { kind: 'out' } }], taskKey(task));
}

/** Plans the shown plan again from where it is, by the seconds of the settings. */
export async function improveShownPlan(outages?: readonly Outage[]): Promise<void> {
  const name = shownPlan()?.name;
  if (name !== undefined) await improveFromHere(name, useHost.getState().settings.planSeconds, outages);
}
