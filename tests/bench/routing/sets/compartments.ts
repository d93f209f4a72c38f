import { CompartmentModel, type CompartmentProblem, search } from '../../../../core/routing/index.ts';
import type { BenchSet } from '../types.ts';

/**
 * Flexible compartments (Henke, Speranza and Wäscher, European Journal of Operational Research 246(3), 2015): vehicles collect several
 * products, each in a compartment of its own whose size is a whole number of units. What a place has of one product is collected at
 * once, but several vehicles may come for several products. Distances are not rounded.
 */
export type CompartmentInstance = {
  readonly capacity: number;
  readonly vehicles: number;
  readonly compartments: number;
  /** The depot comes first. */
  readonly points: readonly (readonly [number, number])[];
  /** Per point and product. */
  readonly supply: readonly (readonly number[])[];
};
export type Collected = { readonly point: number; readonly product: number };

/**
 * The files do not say how large a unit is. With a tenth of the capacity all published optima come out; on eight of the instances
 * every assignment was tried, and a twentieth, an eighth, a fifth or a quarter gives other values.
 */
export const UNITS_OF_A_VEHICLE = 10;
/** Costs are searched in whole hundred-thousandths. */
const FINE = 100_000;

export const SETS: readonly BenchSet[] = [
  {
    id: 'mcvrp-henke',
    prepare: (text) => {
      const instance = readCompartments(text);
      const orders = instance.supply.flatMap((each, point) =>
        each.flatMap((amount, product) => (amount > 0 ? [{ point, product, amount }] : [])),
      );
      const model = new CompartmentModel(problemOf(instance, orders));
      return {
        solve: ({ clock, ...options }) => {
          const { routes: found, iterations } = search(model, options, { clock });
          const routes = found.map(({ customers }) => customers.flatMap((customer) => orders[customer - 1] ?? []));
          const { cost, faults } = checkCompartments(instance, routes);
          const plain = routes.map((route) => route.map((each) => each.point));
          return { routes: plain, cost: Math.round(100 * cost) / 100, faults, iterations };
        },
      };
    },
  },
];

export function readCompartments(text: string): CompartmentInstance {
  const header = (name: string) => Number(new RegExp(`^${name}\\s*:\\s*(\\d+)`, 'm').exec(text)?.[1] ?? Number.NaN);
  const section = (name: string, next: string) => {
    const body = text.slice(text.indexOf(name) + name.length, text.indexOf(next));
    const lines = body.split('\n').filter((line) => line.trim() !== '');
    return lines.map((line) => line.trim().split(/\s+/).slice(1).map(Number));
  };
  const points = section('NODE_COORD_SECTION', 'DEMAND_SECTION').map(([x = 0, y = 0]) => [x, y] as const);
  const supply = section('DEMAND_SECTION', 'DEPOT_SECTION');
  const capacity = header('CAPACITY');
  if (points.length !== header('DIMENSION') || supply.length !== points.length) throw new Error('file is cut short');
  if (!(capacity > 0)) throw new Error('file states no capacity');
  return { capacity, vehicles: header('VEHICLES'), compartments: header('COMPARTMENTS'), points, supply };
}

/** Costs routes anew and lists what is wrong with them. */
export function checkCompartments(
  { capacity, vehicles, compartments, points, supply }: CompartmentInstance,
  routes: readonly (readonly Collected[])[],
): { cost: number; faults: string[] } {
  const faults: string[] = [];
  const left = supply.map((each) => [...each]);
  const away = (from: number, to: number) => {
    const [one, other] = [points[from] ?? [Number.NaN, 0], points[to] ?? [Number.NaN, 0]];
    return Math.hypot(one[0] - other[0], one[1] - other[1]);
  };
  let cost = 0;
  if (routes.length > vehicles) faults.push(`${routes.length} routes for ${vehicles} vehicles`);
  routes.forEach((route, at) => {
    const units = new Map<number, number>();
    const unit = capacity / UNITS_OF_A_VEHICLE;
    let here = 0;
    for (const { point, product } of route) {
      const amount = left[point]?.[product] ?? 0;
      if (amount === 0) faults.push(`route ${at + 1} finds no product ${product + 1} at ${point}`);
      else (left[point] as number[])[product] = 0;
      units.set(product, (units.get(product) ?? 0) + amount);
      cost += away(here, point);
      here = point;
    }
    cost += away(here, 0);
    const size = [...units.values()].reduce((sum, amount) => sum + unit * Math.ceil(amount / unit), 0);
    if (size > capacity) faults.push(`route ${at + 1} needs ${size} of ${capacity}`);
    if (units.size > compartments) faults.push(`route ${at + 1} needs ${units.size} compartments of ${compartments}`);
  });
  left.forEach((each, point) => {
    each.forEach((amount, product) => {
      if (amount > 0) faults.push(`product ${product + 1} is left at ${point}`);
    });
  });
  return { cost, faults };
}

function problemOf(
  { capacity, vehicles, compartments, points }: CompartmentInstance,
  orders: readonly { readonly point: number; readonly product: number; readonly amount: number }[],
): CompartmentProblem {
  const places = [0, ...orders.map((order) => order.point)].map((point) => points[point] ?? [0, 0]);
  const distances = Float64Array.from(
    places.flatMap((from) => places.map((to) => Math.hypot(from[0] - to[0], from[1] - to[1]))),
  );
  const cost = Int32Array.from(distances, (each) => Math.round(FINE * each));
  return {
    name: 'flexible compartments',
    customers: orders.length,
    cost,
    time: cost,
    distances,
    demand: Int32Array.of(0, ...orders.map((order) => order.amount)),
    product: Int32Array.of(0, ...orders.map((order) => order.product)),
    service: new Int32Array(places.length),
    windows: null,
    capacity,
    unit: capacity / UNITS_OF_A_VEHICLE,
    compartments,
    mostLength: Number.POSITIVE_INFINITY,
    vehicles,
    costPerUnit: FINE,
  };
}
