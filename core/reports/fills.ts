import type { PlanDay, PlanFill, PlanLoad } from '../plan/result/index.ts';

/** The load that each fill of a day begins. Loads are listed in the order of the fills; bags put on a machine begin none. */
export function loadsOfFills(day: PlanDay): ReadonlyMap<PlanFill, PlanLoad> {
  const waiting = [...day.loads];
  const found = new Map<PlanFill, PlanLoad>();
  for (const activity of day.activities.toSorted((one, other) => one.startSec - other.startSec)) {
    for (const fill of 'fills' in activity ? activity.fills : []) {
      const index = waiting.findIndex((load) => load.compartmentId === fill.compartmentId);
      const [load] = index < 0 ? [] : waiting.splice(index, 1);
      if (load !== undefined) found.set(fill, load);
    }
  }
  return found;
}
