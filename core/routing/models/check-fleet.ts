import type { Fleet, RoutingProblem, VehicleKind } from './types.ts';

/**
 * Reckons the routes of a fleet, the k-th list by vehicle k of the file: who may go where, loads between two stops at the depot, goods
 * that are there in time, windows, and the shortest day that the routes allow. Returns the cost in the file's own unit and adds what
 * is wrong to `faults`.
 */
export function judgeFleetRoutes(
  problem: RoutingProblem,
  fleet: Fleet,
  routes: readonly (readonly number[])[],
  faults: string[],
): number {
  const kindOf = new Map<number, number>();
  fleet.kinds.forEach(({ vehicles }, kind) => {
    for (const vehicle of vehicles) kindOf.set(vehicle, kind);
  });
  let cost = 0;
  routes.forEach((route, vehicle) => {
    if (route.length === 0) return;
    const at = kindOf.get(vehicle);
    const name = `vehicle ${vehicle + 1}`;
    const kind = fleet.kinds[at ?? -1];
    if (at === undefined || kind === undefined) {
      faults.push(`there is no ${name}`);
      return;
    }
    for (const node of route) {
      if (((fleet.allowed[node] ?? 0) & (1 << at)) === 0 && node !== 0) faults.push(`${name} may not go to ${node}`);
    }
    const trips = tripsOf(route);
    if (trips.length > 1 && !fleet.reloads) faults.push(`${name} comes back for more`);
    for (const trip of trips) judgeLoad(problem, kind, trip, name, faults);
    judgeTimes(problem, fleet, trips, name, faults);
    cost += costOf(problem, kind, route);
  });
  return cost;
}

/** The customers between two stops at the depot. */
function tripsOf(route: readonly number[]): readonly (readonly number[])[] {
  const trips: number[][] = [[]];
  for (const node of route) {
    if (node === 0) trips.push([]);
    else trips[trips.length - 1]?.push(node);
  }
  return trips;
}

function costOf(problem: RoutingProblem, { fixed, perLength }: VehicleKind, route: readonly number[]): number {
  let [length, from] = [0, 0];
  for (const node of [...route, 0]) {
    length += problem.distances[from * (problem.customers + 1) + node] ?? Number.NaN;
    from = node;
  }
  return fixed + perLength * length;
}

function judgeLoad(
  { demand }: RoutingProblem,
  { capacity }: VehicleKind,
  trip: readonly number[],
  name: string,
  faults: string[],
): void {
  const load = trip.reduce((sum, node) => sum + (demand[node] ?? 0), 0);
  if (load > capacity) faults.push(`${name} carries ${load} of ${capacity}`);
}

type Halt = { readonly node: number; readonly open: number; readonly close: number; readonly service: number };

/**
 * Drives the whole day as early as can be, which finds lateness; then back from its end as late as can be, which finds the latest
 * start that still ends as early: the difference is the shortest day.
 */
function judgeTimes(
  problem: RoutingProblem,
  fleet: Fleet,
  trips: readonly (readonly number[])[],
  name: string,
  faults: string[],
): void {
  const { windows, time, customers } = problem;
  const halt = (node: number, open: number): Halt => ({
    node,
    open: Math.max(open, windows?.open[node] ?? 0),
    close: windows?.close[node] ?? Number.POSITIVE_INFINITY,
    service: problem.service[node] ?? 0,
  });
  const released = (trip: readonly number[]): number => Math.max(0, ...trip.map((node) => fleet.release?.[node] ?? 0));
  const halts = trips.flatMap((trip) => [halt(0, released(trip)), ...trip.map((node) => halt(node, 0))]);
  halts.push(halt(0, 0));
  const travel = (from: Halt, to: Halt): number => time[from.node * (customers + 1) + to.node] ?? Number.NaN;
  const starts: number[] = [];
  halts.forEach((each, at) => {
    const before = halts[at - 1];
    const arrival = before === undefined ? 0 : (starts[at - 1] ?? 0) + before.service + travel(before, each);
    starts.push(Math.max(arrival, each.open));
    if (Math.max(arrival, each.open) > each.close) faults.push(`${name} is late at ${each.node}`);
  });
  if (fleet.mostDuration === Number.POSITIVE_INFINITY) return;
  const end = starts[starts.length - 1] ?? 0;
  let latest = end;
  for (let at = halts.length - 2; at >= 0; at -= 1) {
    const [each, after] = [halts[at] as Halt, halts[at + 1] as Halt];
    latest = Math.min(latest - travel(each, after) - each.service, each.close);
  }
  if (end - latest > fleet.mostDuration)
    faults.push(`${name} is out for ${end - latest}, ${fleet.mostDuration} at most`);
}
