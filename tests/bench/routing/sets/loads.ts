import { LoadsModel, type LoadsProblem, search } from '../../../../core/routing/index.ts';
import type { BenchSet } from '../types.ts';

/**
 * Several products with a cost of change: each vehicle starts at its garage, loads one product at a depot, delivers it, loads again,
 * and ends at its garage. Depots have so much of each product. A station may be supplied by several loads. Cost: distances, not
 * rounded, and the changes of product, the first from the product that the vehicle carried last. Lines of a file: numbers of
 * products, depots, garages, stations and vehicles; costs of change; vehicles (capacity, garage, product), depots (place, stocks),
 * garages (place), stations (place, demands), each after its own number.
 */
export type LoadsInstance = {
  /** Per product and next product. */
  readonly change: readonly (readonly number[])[];
  readonly vehicles: readonly { readonly capacity: number; readonly garage: number; readonly product: number }[];
  readonly depots: readonly Site[];
  readonly garages: readonly Site[];
  readonly stations: readonly Site[];
};
/** `amounts`: stock or demand per product; none for a garage. */
type Site = { readonly point: readonly [number, number]; readonly amounts: readonly number[] };

/** All numbers from 0. */
export type VehicleDay = {
  readonly vehicle: number;
  readonly loads: readonly {
    readonly depot: number;
    readonly product: number;
    readonly deliveries: readonly { readonly station: number; readonly amount: number }[];
  }[];
};

/** Costs are searched in whole ten-thousandths. */
const FINE = 10_000;

export const SETS: readonly BenchSet[] = [
  {
    id: 'mpvrp-cc',
    prepare: (text) => {
      const instance = readLoads(text);
      const { problem, stationOf } = problemOf(instance);
      const model = new LoadsModel(problem);
      return {
        solve: ({ clock, ...options }) => {
          const { routes: found, iterations } = search(model, options, { clock });
          const days = found.map(({ route, customers, ways }) => {
            const loads: { depot: number; product: number; deliveries: { station: number; amount: number }[] }[] = [];
            let last = -1;
            customers.forEach((part, at) => {
              const way = ways[at] ?? 0;
              const load = way % model.loads;
              const [depot, product] = [model.storeOf[load] ?? 0, model.productOf[load] ?? 0];
              if (load !== last) loads.push({ depot, product, deliveries: [] });
              last = load;
              const station = stationOf[model.demandOf[part] ?? 0] ?? 0;
              loads.at(-1)?.deliveries.push({ station, amount: Math.floor(way / model.loads) });
            });
            return { vehicle: route, loads };
          });
          const routes = days.map(({ loads }) =>
            loads.flatMap(({ deliveries }) => [0, ...deliveries.map((each) => each.station + 1)]),
          );
          const { cost, faults } = checkLoads(instance, days);
          return { routes, cost: Math.round(100 * cost) / 100, faults, iterations };
        },
      };
    },
  },
];

export function readLoads(text: string): LoadsInstance {
  const lines = text.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const rows = lines.map((line) => line.trim().split(/\s+/).map(Number));
  const [products = 0, depots = 0, garages = 0, stations = 0, vehicles = 0] = rows[0] ?? [];
  let from = 1;
  const take = (count: number, width: number) => {
    const taken = rows.slice(from, from + count);
    from += count;
    if (taken.length < count || taken.some((row) => row.length < width || row.some((each) => !Number.isFinite(each)))) {
      throw new Error('file is cut short');
    }
    return taken;
  };
  const site = ([, x = 0, y = 0, ...amounts]: readonly number[]): Site => ({ point: [x, y], amounts });
  return {
    change: take(products, products),
    vehicles: take(vehicles, 4).map(([, capacity = 0, garage = 0, product = 0]) => ({
      capacity,
      garage: garage - 1,
      product: product - 1,
    })),
    depots: take(depots, 3 + products).map(site),
    garages: take(garages, 3).map(site),
    stations: take(stations, 3 + products).map(site),
  };
}

/** Costs the days of all vehicles anew and lists what is wrong with them. */
export function checkLoads(instance: LoadsInstance, days: readonly VehicleDay[]): { cost: number; faults: string[] } {
  const { change, vehicles, depots, garages, stations } = instance;
  const faults: string[] = [];
  const stock = depots.map((each) => [...each.amounts]);
  const wanted = stations.map((each) => [...each.amounts]);
  const out = new Set<number>();
  const NOWHERE = [Number.NaN, Number.NaN] as const;
  let cost = 0;
  for (const { vehicle, loads } of days) {
    const { capacity = 0, garage = -1, product: first = -1 } = vehicles[vehicle] ?? {};
    if (out.has(vehicle) || capacity === 0) faults.push(`vehicle ${vehicle + 1} is not there, or sent out twice`);
    out.add(vehicle);
    const home = garages[garage]?.point ?? NOWHERE;
    let here = home;
    let carried = first;
    const goTo = (point: readonly [number, number]) => {
      cost += Math.hypot(point[0] - here[0], point[1] - here[1]);
      here = point;
    };
    for (const { depot, product, deliveries } of loads) {
      goTo(depots[depot]?.point ?? NOWHERE);
      cost += change[carried]?.[product] ?? Number.NaN;
      carried = product;
      let load = 0;
      for (const { station, amount } of deliveries) {
        goTo(stations[station]?.point ?? NOWHERE);
        if (!(amount > 0)) faults.push(`vehicle ${vehicle + 1} brings ${amount}`);
        load += amount;
        const row = wanted[station];
        if (row !== undefined) row[product] = (row[product] ?? 0) - amount;
      }
      if (load > capacity) faults.push(`vehicle ${vehicle + 1} carries ${load} of ${capacity}`);
      const row = stock[depot];
      if (row !== undefined) row[product] = (row[product] ?? 0) - load;
    }
    goTo(home);
  }
  if (Number.isNaN(cost)) faults.push('a route goes to a place that is not there');
  stock.forEach((row, depot) => {
    row.forEach((left, product) => {
      if (left < 0) faults.push(`depot ${depot + 1} lacks ${-left} of product ${product + 1}`);
    });
  });
  wanted.forEach((row, station) => {
    row.forEach((left, product) => {
      if (left !== 0) faults.push(`station ${station + 1} misses ${left} of product ${product + 1}`);
    });
  });
  return { cost, faults };
}

/** Places: stations, then depots, then garages. */
function problemOf({ change, vehicles, depots, garages, stations }: LoadsInstance): {
  problem: LoadsProblem;
  stationOf: readonly number[];
} {
  const points = [...stations, ...depots, ...garages].map((each) => each.point);
  const wanted = stations.flatMap(({ amounts }, station) =>
    amounts.flatMap((amount, product) => (amount > 0 ? [{ station, product, amount }] : [])),
  );
  const fine = (each: number) => Math.round(FINE * each);
  const problem: LoadsProblem = {
    places: points.length,
    travel: Int32Array.from(
      points.flatMap((from) => points.map((to) => fine(Math.hypot(from[0] - to[0], from[1] - to[1])))),
    ),
    products: change.length,
    change: Int32Array.from(change.flat(), fine),
    demands: {
      place: Int32Array.of(0, ...wanted.map((each) => each.station)),
      product: Int32Array.of(0, ...wanted.map((each) => each.product)),
      amount: Int32Array.of(0, ...wanted.map((each) => each.amount)),
    },
    stores: {
      place: Int32Array.from(depots, (_, depot) => stations.length + depot),
      stock: Int32Array.from(depots.flatMap((each) => each.amounts)),
    },
    vehicles: {
      capacity: Int32Array.from(vehicles, (each) => each.capacity),
      home: Int32Array.from(vehicles, (each) => stations.length + depots.length + each.garage),
      product: Int32Array.from(vehicles, (each) => each.product),
    },
  };
  return { problem, stationOf: [-1, ...wanted.map((each) => each.station)] };
}
