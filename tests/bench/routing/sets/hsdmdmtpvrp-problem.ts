/**
 * Deliveries over several days from several depots by vehicles of several types: each customer wants a number of visits on one of its
 * sets of days, by vehicles of the types that may serve it; a vehicle makes several trips a day. Source: the README beside the files,
 * after Vieira, Alvarez and Beasley, Computers and Operations Research 153, 2023.
 *
 * What the README leaves open is read on the strict side: the demand is that of each visit; all trips of a vehicle on a day start and
 * end at one depot; a vehicle keeps its depot on all days; the loading time of a customer counts once for each visit.
 */
export type PeriodicFleetProblem = {
  /** Place 0 is unused, 1 to n are the customers, then the depots. */
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly customers: number;
  readonly depots: number;
  readonly days: number;
  /** Most hours of a vehicle on a day, driving and loading. */
  readonly mostDuration: number;
  readonly types: readonly VehicleType[];
  /** Per place: load of one visit, hours of one visit. */
  readonly demand: readonly number[];
  readonly loading: readonly number[];
  /** Per place: sets of days that may be chosen, as bit masks with the first day as bit 0. */
  readonly patterns: readonly (readonly number[])[];
  /** Per place: types that may serve it, as a bit mask with the first type as bit 0. */
  readonly allowedTypes: readonly number[];
};

type VehicleType = {
  readonly count: number;
  readonly capacity: number;
  /** Distance per hour. */
  readonly speed: number;
  /** For each day of use. */
  readonly fixedCost: number;
  readonly costPerDistance: number;
};

/** What one vehicle does on one day. */
export type PeriodicFleetRoute = {
  readonly day: number;
  readonly type: number;
  /** 0 for the first depot. */
  readonly depot: number;
  readonly trips: readonly (readonly number[])[];
};

export function readPeriodicFleet(text: string): PeriodicFleetProblem {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => line.split(/\s+/).map(Number));
  const [days = 0, typeCount = 0, customers = 0, depots = 0, mostDuration = 0] = lines[0] ?? [];
  const types = lines.slice(1, 1 + typeCount);
  const rows = lines.slice(1 + typeCount, 1 + typeCount + customers);
  const homes = lines.slice(1 + typeCount + customers);
  if (homes.length !== depots || lines.flat().some(Number.isNaN)) throw new Error('the lines are not as announced');
  const none = [0, ...homes.map(() => 0)];
  const padded = <T>(values: readonly T[], blank: T): readonly T[] => [
    blank,
    ...values,
    ...none.slice(1).map(() => blank),
  ];
  return {
    points: [[0, 0], ...[...rows, ...homes].map(([, x = 0, y = 0]) => [x, y] as const)],
    customers,
    depots,
    days,
    mostDuration,
    types: types.map(([, count = 0, capacity = 0, speed = 0, fixedCost = 0, costPerDistance = 0]) => {
      return { count, capacity, speed, fixedCost, costPerDistance };
    }),
    demand: padded(
      rows.map((row) => row[3] ?? 0),
      0,
    ),
    loading: padded(
      rows.map((row) => row[4] ?? 0),
      0,
    ),
    patterns: padded(
      rows.map((row) => row.slice(7, 7 + (row[6] ?? 0)).map((code) => mirrored(code, days))),
      [],
    ),
    allowedTypes: padded(
      rows.map((row) => mirrored(row[7 + (row[6] ?? 0)] ?? 0, typeCount)),
      0,
    ),
  };
}

/** The file writes the first day, and the first type, as the highest bit. */
function mirrored(code: number, bits: number): number {
  let mask = 0;
  for (let bit = 0; bit < bits; bit += 1) if (((code >> bit) & 1) === 1) mask |= 1 << (bits - 1 - bit);
  return mask;
}

/** Fixed and distance costs of all days, and what is wrong. */
export function checkPeriodicFleet(
  problem: PeriodicFleetProblem,
  routes: readonly PeriodicFleetRoute[],
): { readonly cost: number; readonly faults: readonly string[] } {
  const faults: string[] = [];
  const visited = new Array<number>(problem.points.length).fill(0);
  const used = new Map<string, number>();
  let cost = 0;
  for (const route of routes) {
    if (!(route.day >= 0 && route.day < problem.days)) faults.push(`there is no day ${route.day}`);
    cost += checkDay(problem, route, faults);
    const key = `${route.type} ${route.depot} ${route.day}`;
    used.set(key, (used.get(key) ?? 0) + 1);
    for (const customer of route.trips.flat()) {
      if (((visited[customer] ?? 0) >> route.day) & 1) faults.push(`customer ${customer} twice on day ${route.day}`);
      visited[customer] = (visited[customer] ?? 0) | (1 << route.day);
    }
  }
  problem.types.forEach(({ count }, type) => {
    let needed = 0;
    for (let depot = 0; depot < problem.depots; depot += 1) {
      let most = 0;
      for (let day = 0; day < problem.days; day += 1) most = Math.max(most, used.get(`${type} ${depot} ${day}`) ?? 0);
      needed += most;
    }
    if (needed > count) faults.push(`${needed} vehicles of type ${type + 1}, ${count} at most`);
  });
  for (let customer = 1; customer <= problem.customers; customer += 1) {
    const days = visited[customer] ?? 0;
    if (!problem.patterns[customer]?.includes(days)) {
      faults.push(`customer ${customer} is visited on days ${days.toString(2)}`);
    }
  }
  return { cost, faults };
}

function checkDay(problem: PeriodicFleetProblem, route: PeriodicFleetRoute, faults: string[]): number {
  const type = problem.types[route.type];
  const home = problem.points[problem.customers + 1 + route.depot];
  const name = `a vehicle of type ${route.type + 1} on day ${route.day}`;
  if (type === undefined || home === undefined || route.depot < 0) {
    faults.push(`${name} at depot ${route.depot + 1} does not exist`);
    return Number.NaN;
  }
  let [distance, loading] = [0, 0];
  for (const trip of route.trips) {
    let [from, load] = [home, 0];
    for (const customer of trip) {
      const to = problem.points[customer];
      if (to === undefined || customer < 1 || customer > problem.customers) {
        faults.push(`there is no customer ${customer}`);
        continue;
      }
      if ((((problem.allowedTypes[customer] ?? 0) >> route.type) & 1) === 0)
        faults.push(`${name} may not serve ${customer}`);
      distance += Math.hypot(from[0] - to[0], from[1] - to[1]);
      loading += problem.loading[customer] ?? Number.NaN;
      load += problem.demand[customer] ?? Number.NaN;
      from = to;
    }
    distance += Math.hypot(from[0] - home[0], from[1] - home[1]);
    if (!(load <= type.capacity)) faults.push(`${name} carries ${load} of ${type.capacity}`);
  }
  const hours = distance / type.speed + loading;
  if (!(hours <= problem.mostDuration + 1e-9)) faults.push(`${name} takes ${hours} h, ${problem.mostDuration} at most`);
  return type.fixedCost + type.costPerDistance * distance;
}
