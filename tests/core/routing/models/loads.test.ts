import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { type Found, LoadsModel, type LoadsProblem, search } from '../../../../core/routing/index.ts';

type Shape = { readonly demands: number; readonly stores: number; readonly vehicles: number; readonly most: number };

/** An invented problem with two products: places in a square of 100 by 100, just enough stock. */
function invented(seed: number, { demands, stores, vehicles, most }: Shape): LoadsProblem {
  const random = createRandom(seed);
  const places = demands + stores + 1;
  const points = Array.from({ length: places }, () => [random.unit() * 100, random.unit() * 100] as const);
  const travel = Int32Array.from(
    points.flatMap((from) => points.map((to) => Math.round(Math.hypot(from[0] - to[0], from[1] - to[1])))),
  );
  const product = Int32Array.from({ length: demands + 1 }, () => random.below(2));
  const amount = Int32Array.from({ length: demands + 1 }, (_, at) => (at === 0 ? 0 : 1 + random.below(most)));
  const total = [0, 1].map((each) => amount.reduce((sum, one, at) => sum + (product[at] === each ? one : 0), 0));
  return {
    places,
    travel,
    products: 2,
    change: Int32Array.of(0, 20 + random.below(30), 20 + random.below(30), 0),
    demands: { place: Int32Array.from({ length: demands + 1 }, (_, at) => Math.max(0, at - 1)), product, amount },
    stores: {
      place: Int32Array.from({ length: stores }, (_, at) => demands + at),
      stock: Int32Array.from({ length: 2 * stores }, (_, cell) => Math.ceil((total[cell % 2] ?? 0) / stores)),
    },
    vehicles: {
      capacity: Int32Array.from({ length: vehicles }, () => 2 + random.below(2)),
      home: new Int32Array(vehicles).fill(places - 1),
      product: Int32Array.from({ length: vehicles }, () => random.below(2)),
    },
  };
}

/** Costs an answer from the problem alone; throws where a load, a stock or a demand is not kept. */
function reckon(problem: LoadsProblem, model: LoadsModel, found: Found): number {
  const { places, travel, change, products, demands, stores, vehicles } = problem;
  const stock = [...stores.stock];
  const wanted = [...demands.amount];
  let cost = 0;
  for (const { route, customers, ways } of found.routes) {
    const home = vehicles.home[route] as number;
    let [here, carried, last, load] = [home, vehicles.product[route] as number, -1, 0];
    const goTo = (place: number) => {
      cost += travel[here * places + place] as number;
      here = place;
    };
    customers.forEach((part, at) => {
      const demand = model.demandOf[part] as number;
      const product = demands.product[demand] as number;
      const id = (ways[at] as number) % model.loads;
      const amount = Math.floor((ways[at] as number) / model.loads);
      const store = model.storeOf[id] as number;
      if (id !== last) {
        goTo(stores.place[store] as number);
        cost += change[carried * products + product] as number;
        [carried, last, load] = [product, id, 0];
      }
      expect(model.productOf[id]).toBe(product);
      expect(amount).toBeGreaterThan(0);
      load += amount;
      expect(load).toBeLessThanOrEqual(vehicles.capacity[route] as number);
      const cell = store * products + product;
      stock[cell] = (stock[cell] as number) - amount;
      expect(stock[cell]).toBeGreaterThanOrEqual(0);
      wanted[demand] = (wanted[demand] as number) - amount;
      goTo(demands.place[demand] as number);
    });
    goTo(home);
  }
  if (found.absent.length === 0) expect(Math.max(...wanted)).toBe(0);
  return cost;
}

type State = {
  readonly vehicle: number;
  readonly place: number;
  readonly product: number;
  readonly load: number;
  readonly wanted: readonly number[];
  readonly stock: readonly number[];
};

/** Least cost by shortest path over every state of vehicles, stocks and demands. */
function leastCost({ places, travel, change, products, demands, stores, vehicles }: LoadsProblem): number {
  const queue: State[][] = [];
  const seen = new Set<string>();
  const away = (from: number, to: number) => travel[from * places + to] as number;
  const push = (cost: number, state: State) => {
    queue[cost] ??= [];
    queue[cost].push(state);
  };
  const take = (row: readonly number[], at: number, amount: number) =>
    row.map((each, index) => (index === at ? each - amount : each));
  const atHome = (vehicle: number) => ({
    vehicle,
    place: vehicles.home[vehicle] as number,
    product: vehicles.product[vehicle] as number,
    load: 0,
  });
  push(0, { ...atHome(0), wanted: [...demands.amount], stock: [...stores.stock] });
  for (let cost = 0; cost < queue.length; cost += 1) {
    for (const state of queue[cost] ?? []) {
      const key = JSON.stringify(state);
      if (seen.has(key)) continue;
      seen.add(key);
      const { vehicle, place, product, load, wanted, stock } = state;
      if (vehicle === vehicles.capacity.length) {
        if (wanted.every((each) => each === 0)) return cost;
        continue;
      }
      for (let demand = 1; demand < wanted.length; demand += 1) {
        if (demands.product[demand] !== product) continue;
        const to = demands.place[demand] as number;
        for (let amount = 1; amount <= Math.min(load, wanted[demand] as number); amount += 1) {
          const left = take(wanted, demand, amount);
          push(cost + away(place, to), { ...state, place: to, load: load - amount, wanted: left });
        }
      }
      if (load > 0) continue;
      push(cost + away(place, vehicles.home[vehicle] as number), { ...atHome(vehicle + 1), wanted, stock });
      stock.forEach((left, cell) => {
        const to = stores.place[Math.floor(cell / products)] as number;
        const next = cell % products;
        const step = away(place, to) + (change[product * products + next] as number);
        for (let amount = 1; amount <= Math.min(left, vehicles.capacity[vehicle] as number); amount += 1) {
          push(cost + step, { ...state, place: to, product: next, load: amount, stock: take(stock, cell, amount) });
        }
      });
    }
  }
  return Number.NaN;
}

test('as cheap as the shortest path over all states', () => {
  for (let seed = 1; seed <= 12; seed += 1) {
    const problem = invented(seed, {
      demands: 3,
      stores: 1 + (seed % 2),
      vehicles: 1 + (seed % 3 === 0 ? 1 : 0),
      most: 4,
    });
    const model = new LoadsModel(problem);
    const found = search(model, { seed, iterations: 1500 });
    expect(found.absent).toEqual([]);
    expect(reckon(problem, model, found)).toBe(found.cost);
    expect(found.cost, `seed ${seed}`).toBe(leastCost(problem));
  }
});

test('loads, stocks and the cost kept along are right on larger days; same seed, same routes', () => {
  const problem = invented(3, { demands: 40, stores: 3, vehicles: 5, most: 9 });
  const run = () => {
    const model = new LoadsModel(problem);
    const found = search(model, { seed: 2, iterations: 1500 });
    expect(reckon(problem, model, found)).toBe(found.cost);
    return found;
  };
  const found = run();
  expect(found.absent).toEqual([]);
  expect(run()).toEqual(found);
});

test('what the stores do not hold is left out', () => {
  const problem = invented(4, { demands: 6, stores: 1, vehicles: 2, most: 3 });
  const none = { ...problem, stores: { ...problem.stores, stock: new Int32Array(2) } };
  const model = new LoadsModel(none);
  const found = search(model, { seed: 1, iterations: 50 });
  expect(found.routes).toEqual([]);
  expect(new Set(found.absent.map((part) => model.demandOf[part])).size).toBe(6);
});
