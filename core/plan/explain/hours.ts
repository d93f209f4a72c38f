import type { Problem } from '../problem/index.ts';
import type { Activity, RouteOutcome } from '../refills/index.ts';
import type { Hours } from './lift.ts';

/** Work outside somebody's hours: `subject` is a visit of the route, or a station of the problem. */
export type Broken = { readonly subject: number; readonly hours: Hours; readonly outsideMs: number };

/** Visits of a route that start outside given hours: one pair of times for every visit, in the order of the route. */
export function brokenVisits(route: RouteOutcome, hours: readonly Hours[]): readonly Broken[] {
  return route.activities.flatMap((each, at) => {
    if (each.kind !== 'set-up') return [];
    const start = startOf(route.activities, at);
    return outside(each.visit, hours[each.visit], { fromMs: start, toMs: start });
  });
}

/** Stations of a route that are used outside their hours; each once. */
export function brokenStations(problem: Problem, route: RouteOutcome): readonly Broken[] {
  const found = new Map<number, Broken>();
  for (const each of route.activities) {
    if (each.kind !== 'refill' || each.station < 0) continue;
    const { openMs = 0, closeMs = 0 } = problem.stations[each.station] ?? {};
    const used = { fromMs: each.startMs, toMs: each.endMs };
    for (const broken of outside(each.station, { fromMs: openMs, toMs: closeMs }, used)) {
      const known = found.get(each.station);
      found.set(each.station, known === undefined ? broken : joined(known, broken));
    }
  }
  return [...found.values()];
}

/** Arrival and wait come before the break, the break before the set-up: the hours count when the wait is over. */
function startOf(activities: readonly Activity[], setUp: number): number {
  const before = activities[setUp - 1];
  if (before?.kind === 'break') return before.startMs;
  return activities[setUp]?.startMs ?? 0;
}

function outside(subject: number, allowed: Hours | undefined, used: Hours): readonly Broken[] {
  if (allowed === undefined) return [];
  const early = Math.max(0, allowed.fromMs - used.fromMs);
  const late = Math.max(0, used.toMs - allowed.toMs);
  if (early + late === 0) return [];
  const hours = { fromMs: Math.min(allowed.fromMs, used.fromMs), toMs: Math.max(allowed.toMs, used.toMs) };
  return [{ subject, hours, outsideMs: early + late }];
}

function joined(left: Broken, right: Broken): Broken {
  const hours = {
    fromMs: Math.min(left.hours.fromMs, right.hours.fromMs),
    toMs: Math.max(left.hours.toMs, right.hours.toMs),
  };
  return { subject: left.subject, hours, outsideMs: Math.max(left.outsideMs, right.outsideMs) };
}
