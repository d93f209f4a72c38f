/**
 * Collection over several days: every customer wants a number of visits, evenly spaced over the days; vehicles empty themselves at
 * intermediate facilities on the way, and always before they come home. Times in whole minutes between all places, one-way streets
 * included. Source: github.com/iolab-uniud/pvrpif-instances, files and their solution reports.
 */
export type CollectionProblem = {
  /** Place 0 is the depot, 1 to n the customers, then the facilities. */
  readonly places: number;
  readonly customers: number;
  /** Row-major [from * places + to], minutes; what is minimised. */
  readonly travel: Float64Array;
  /** Per place: load of one visit, minutes of one visit, visits over all days. */
  readonly demand: readonly number[];
  readonly service: readonly number[];
  readonly frequency: readonly number[];
  readonly days: number;
  /** Vehicles of each day. */
  readonly vehicles: number;
  readonly capacity: number;
  /** Most minutes of a vehicle on a day, travel and service. */
  readonly mostDuration: number;
};

/** What one vehicle does on one day: the places between leaving the depot and coming back to it. */
export type CollectionRoute = { readonly day: number; readonly stops: readonly number[] };

type File = {
  readonly info: {
    readonly numVehicles: number;
    readonly maxDuration: number;
    readonly maxCapacity: number;
    readonly planningHorizon: number;
  };
  readonly features: readonly {
    readonly properties: {
      readonly id: number;
      readonly type: 'depot' | 'customer' | 'intermediateFacility';
      readonly frequency: number;
      readonly demand: number;
      readonly service: number;
    };
  }[];
  readonly duration: readonly (readonly number[])[];
};

const ORDER = ['depot', 'customer', 'intermediateFacility'] as const;

export function readCollection(text: string): CollectionProblem {
  const { info, features, duration } = JSON.parse(text) as File;
  const nodes = features.map((each) => each.properties);
  const inOrder = nodes.every(
    ({ id, type }, at) => id === at && ORDER.indexOf(type) >= ORDER.indexOf(nodes[at - 1]?.type ?? 'depot'),
  );
  if (!inOrder || nodes[0]?.type !== 'depot') throw new Error('depot, customers and facilities are not in this order');
  return {
    places: nodes.length,
    customers: nodes.filter((each) => each.type === 'customer').length,
    travel: Float64Array.from(duration.flat()),
    demand: nodes.map((each) => each.demand),
    service: nodes.map((each) => each.service),
    frequency: nodes.map((each) => each.frequency),
    days: info.planningHorizon,
    vehicles: info.numVehicles,
    capacity: info.maxCapacity,
    mostDuration: info.maxDuration,
  };
}

/** Sets of days, as bit masks, that give a number of visits evenly spaced. */
export function evenlySpaced(days: number, frequency: number): readonly number[] {
  const gap = days / frequency;
  if (!Number.isInteger(gap)) return [];
  return Array.from({ length: gap }, (_, first) => {
    let mask = 0;
    for (let day = first; day < days; day += gap) mask |= 1 << day;
    return mask;
  });
}

/** Minutes of travel on all days, and what is wrong. */
export function checkCollection(
  problem: CollectionProblem,
  routes: readonly CollectionRoute[],
): { readonly cost: number; readonly faults: readonly string[] } {
  const faults: string[] = [];
  const visited = Array.from({ length: problem.places }, () => [] as number[]);
  const used = new Array<number>(problem.days).fill(0);
  let cost = 0;
  for (const { day, stops } of routes) {
    if (used[day] === undefined) faults.push(`there is no day ${day}`);
    used[day] = (used[day] ?? 0) + 1;
    cost += checkVehicle(problem, day, stops, faults);
    for (const place of stops) visited[place]?.push(day);
  }
  used.forEach((count, day) => {
    if (count > problem.vehicles) faults.push(`day ${day} has ${count} routes for ${problem.vehicles} vehicles`);
  });
  for (let customer = 1; customer <= problem.customers; customer += 1) {
    const days = [...(visited[customer] ?? [])].sort((left, right) => left - right);
    const frequency = problem.frequency[customer] ?? 0;
    const gap = problem.days / frequency;
    const regular = days.every((day, at) => at === 0 || day - (days[at - 1] ?? 0) === gap);
    if (days.length !== frequency || !regular) faults.push(`customer ${customer} is visited on days ${days.join(' ')}`);
  }
  return { cost, faults };
}

function checkVehicle(problem: CollectionProblem, day: number, stops: readonly number[], faults: string[]): number {
  const name = `a route of day ${day}`;
  let [from, load, travel, service] = [0, 0, 0, 0];
  for (const place of [...stops, 0]) {
    if (!(place >= 0 && place < problem.places)) faults.push(`there is no place ${place}`);
    travel += problem.travel[from * problem.places + place] ?? Number.NaN;
    service += problem.service[place] ?? Number.NaN;
    if (place > problem.customers) load = 0;
    else load += problem.demand[place] ?? Number.NaN;
    if (!(load <= problem.capacity)) faults.push(`${name} carries ${load} of ${problem.capacity} at ${place}`);
    from = place;
  }
  if (load > 0) faults.push(`${name} comes home with a load of ${load}`);
  if (!(travel + service <= problem.mostDuration)) {
    faults.push(`${name} takes ${travel + service}, ${problem.mostDuration} at most`);
  }
  return travel;
}
