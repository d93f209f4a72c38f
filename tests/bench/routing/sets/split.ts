import { type RoutingProblem, SplitModel, search } from '../../../../core/routing/index.ts';
import type { BenchSet } from '../types.ts';

/**
 * Split delivery: like vehicles from one depot; a customer may be served by several. File: number of customers and capacity, the
 * demands, then a line of coordinates for the depot and for each customer. Distances are rounded to the nearest whole number.
 */
export type SplitInstance = {
  readonly capacity: number;
  /** Per customer; 0 for the depot, which comes first. */
  readonly demand: readonly number[];
  readonly points: readonly (readonly [number, number])[];
};
/** Customers and what each is brought. */
export type SplitRoute = readonly { readonly customer: number; readonly amount: number }[];

export const SETS: readonly BenchSet[] = ['split-set-1', 'split-set-2', 'split-set-3', 'split-set-4'].map((id) => ({
  id,
  prepare: (text) => {
    const instance = readSplit(text);
    const model = new SplitModel(problemOf(instance));
    return {
      solve: ({ clock, ...options }) => {
        const found = search(model, options, { clock });
        const routes = found.routes.map(({ customers, ways }) =>
          customers.map((part, at) => ({ customer: model.place[part] ?? 0, amount: ways[at] ?? 0 })),
        );
        const plain = routes.map((route) => route.map((each) => each.customer));
        return { routes: plain, iterations: found.iterations, ...checkSplit(instance, routes) };
      },
    };
  },
}));

export function readSplit(text: string): SplitInstance {
  const numbers = text.split(/\s+/).filter(Boolean).map(Number);
  const [customers = 0, capacity = 0, ...rest] = numbers;
  if (rest.length < 3 * customers + 2 || rest.some((each) => !Number.isFinite(each)))
    throw new Error('file is cut short');
  const points = Array.from({ length: customers + 1 }, (_, at) => {
    const from = customers + 2 * at;
    return [rest[from] as number, rest[from + 1] as number] as const;
  });
  return { capacity, demand: [0, ...rest.slice(0, customers)], points };
}

/** Costs routes anew and lists what is wrong with them. */
export function checkSplit(instance: SplitInstance, routes: readonly SplitRoute[]): { cost: number; faults: string[] } {
  const { capacity, demand, points } = instance;
  const faults: string[] = [];
  const brought = demand.map(() => 0);
  let cost = 0;
  routes.forEach((route, at) => {
    let load = 0;
    let here = points[0];
    for (const { customer, amount } of route) {
      const there = points[customer];
      if (customer < 1 || there === undefined || here === undefined) {
        faults.push(`there is no customer ${customer}`);
        continue;
      }
      if (!(amount > 0)) faults.push(`route ${at + 1} brings ${amount} to ${customer}`);
      brought[customer] = (brought[customer] ?? 0) + amount;
      load += amount;
      cost += Math.round(Math.hypot(there[0] - here[0], there[1] - here[1]));
      here = there;
    }
    const home = points[0];
    if (here !== undefined && home !== undefined) cost += Math.round(Math.hypot(home[0] - here[0], home[1] - here[1]));
    if (load > capacity) faults.push(`route ${at + 1} carries ${load} of ${capacity}`);
  });
  brought.forEach((amount, customer) => {
    if (amount !== demand[customer]) faults.push(`customer ${customer} is brought ${amount} of ${demand[customer]}`);
  });
  return { cost, faults };
}

/** The number of vehicles is free: enough for loads that are only two thirds full, and a few more. */
function problemOf({ capacity, demand, points }: SplitInstance): RoutingProblem {
  const customers = demand.length - 1;
  const width = customers + 1;
  const distances = new Float64Array(width * width);
  for (let from = 0; from < width; from += 1) {
    for (let to = 0; to < width; to += 1) {
      const [one, other] = [points[from] ?? [0, 0], points[to] ?? [0, 0]];
      distances[from * width + to] = Math.round(Math.hypot(one[0] - other[0], one[1] - other[1]));
    }
  }
  const cost = Int32Array.from(distances);
  const total = demand.reduce((sum, each) => sum + each, 0);
  return {
    name: 'split delivery',
    customers,
    cost,
    time: cost,
    distances,
    demand: Int32Array.from(demand),
    service: new Int32Array(width),
    windows: null,
    capacity,
    mostLength: Number.POSITIVE_INFINITY,
    vehicles: Math.ceil((1.5 * total) / capacity) + 8,
    costPerUnit: 1,
  };
}
