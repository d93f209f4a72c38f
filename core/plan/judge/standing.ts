import type { Op } from '../problem/index.ts';
import type { DayState } from './day-state.ts';

/** Where the visit stands when a refill or a pouring of bags begins. */
export type Standing = {
  /** True after the set-up and before the pack-up of a stop. */
  readonly midStop: boolean;
  /** True with an op begun and not finished. */
  readonly midZone: boolean;
  readonly nextOp: Op | null;
  readonly doneUnits: number;
};

/** The next treat of the visit in progress tells the next op and whether a begun one goes on. */
export function standingAt(state: DayState, index: number): Standing {
  if (state.visit === null) return { midStop: false, midZone: false, nextOp: firstOpAfter(state, index), doneUnits: 0 };
  const nextOp = nextOpOf(state, index);
  if (nextOp === null) return { midStop: true, midZone: false, nextOp, doneUnits: 0 };
  const doneUnits = state.doneUnits.get(nextOp) ?? 0;
  return { midStop: true, midZone: doneUnits > 0 && doneUnits < nextOp.areaUnits, nextOp, doneUnits };
}

function nextOpOf(state: DayState, index: number): Op | null {
  const activities = state.plan.activities;
  for (let at = index + 1; at < activities.length; at += 1) {
    const kind = activities[at]?.kind;
    if (kind === 'pack-up' || kind === 'set-up' || kind === 'evening') return null;
    if (kind === 'treat') return state.visit?.ops.get(at) ?? null;
  }
  return null;
}

/** Before a stop nothing of it is done; any op stands for "the next one, not begun". */
function firstOpAfter(state: DayState, index: number): Op | null {
  const next = state.plan.activities.slice(index + 1).find((each) => each.kind === 'set-up' || each.kind === 'evening');
  if (next?.kind !== 'set-up') return null;
  const job = state.lookup.problem.jobs[state.lookup.jobsOf.get(next.propertyId)?.[0] ?? -1];
  return job?.modes[state.rigNumber]?.[0]?.ops[0] ?? null;
}
