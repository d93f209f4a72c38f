/**
 * Vehicles with intermediate replenishment: one base where vehicles start and end, and depots (the base among them) where they may
 * refill on the way. Source of the rules: the file itself, after Crevier, Cordeau and Laporte, European Journal of Operational
 * Research 176, 2007.
 */
export type ReplenishmentProblem = {
  /** Place 0 is the base, 1 to n the customers, then the other depots. */
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly customers: number;
  /** Per place; 0 for depots. */
  readonly demand: readonly number[];
  readonly service: readonly number[];
  readonly vehicles: number;
  readonly capacity: number;
  /** Most travel, service and docking of one vehicle. */
  readonly mostDuration: number;
  /** Time of one refill. */
  readonly docking: number;
};

type File = {
  readonly vehicles: number;
  readonly maxRotationDuration: number;
  readonly capacity: number;
  readonly dockingTime: number;
  readonly base: readonly [number, number];
  readonly intermediate: readonly (readonly [number, number])[];
  readonly customers: readonly {
    readonly x: number;
    readonly y: number;
    readonly service: number;
    readonly demand: number;
  }[];
};

export function readReplenishment(text: string): ReplenishmentProblem {
  const file = JSON.parse(text) as File;
  const rest = file.intermediate.map(() => 0);
  return {
    points: [file.base, ...file.customers.map(({ x, y }) => [x, y] as const), ...file.intermediate],
    customers: file.customers.length,
    demand: [0, ...file.customers.map((each) => each.demand), ...rest],
    service: [0, ...file.customers.map((each) => each.service), ...rest],
    vehicles: file.vehicles,
    capacity: file.capacity,
    mostDuration: file.maxRotationDuration,
    docking: file.dockingTime,
  };
}

/**
 * Travel of all vehicles, and what is wrong. A route lists the places between leaving the base and coming back to it; a depot in it, the
 * base as well, is a refill.
 */
export function checkReplenishment(
  problem: ReplenishmentProblem,
  routes: readonly (readonly number[])[],
): { readonly cost: number; readonly faults: readonly string[] } {
  const { customers, vehicles, capacity, mostDuration } = problem;
  const faults: string[] = [];
  const visits = new Array<number>(problem.points.length).fill(0);
  let cost = 0;
  if (routes.length > vehicles) faults.push(`${routes.length} routes for ${vehicles} vehicles`);
  routes.forEach((route, at) => {
    let [from, load, travel, other] = [0, 0, 0, 0];
    for (const place of route) {
      const point = problem.points[place];
      if (point === undefined) {
        faults.push(`there is no place ${place}`);
        continue;
      }
      travel += between(problem, from, place);
      from = place;
      if (place >= 1 && place <= customers) {
        visits[place] = (visits[place] ?? 0) + 1;
        load += problem.demand[place] ?? Number.NaN;
        other += problem.service[place] ?? Number.NaN;
        if (!(load <= capacity)) faults.push(`route ${at + 1} carries ${load} of ${capacity} at ${place}`);
      } else {
        load = 0;
        other += problem.docking;
      }
    }
    travel += between(problem, from, 0);
    if (!(travel + other <= mostDuration + 1e-6)) {
      faults.push(`route ${at + 1} takes ${travel + other}, ${mostDuration} at most`);
    }
    cost += travel;
  });
  for (let customer = 1; customer <= customers; customer += 1) {
    if (visits[customer] !== 1) faults.push(`customer ${customer} is visited ${visits[customer]} times`);
  }
  return { cost, faults };
}

function between({ points }: ReplenishmentProblem, from: number, to: number): number {
  const [start, end] = [points[from], points[to]];
  if (start === undefined || end === undefined) return Number.NaN;
  return Math.hypot(start[0] - end[0], start[1] - end[1]);
}
