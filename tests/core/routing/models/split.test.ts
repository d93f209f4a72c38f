import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { type Found, type RoutingProblem, Search, SplitModel, search } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

type Visit = { readonly customer: number; readonly amount: number };

/** Costs and amounts of an answer, added up from the problem alone; throws where a load is too large. */
function reckon(problem: RoutingProblem, model: SplitModel, found: Found) {
  const width = problem.customers + 1;
  const brought = new Array<number>(width).fill(0);
  let cost = 0;
  for (const { customers, ways } of found.routes) {
    const visits: Visit[] = customers.map((part, at) => ({ customer: model.place[part] ?? 0, amount: ways[at] ?? 0 }));
    let load = 0;
    let here = 0;
    for (const { customer, amount } of visits) {
      expect(amount).toBeGreaterThan(0);
      brought[customer] = (brought[customer] ?? 0) + amount;
      load += amount;
      cost += problem.distances[here * width + customer] ?? 0;
      here = customer;
    }
    cost += problem.distances[here * width] ?? 0;
    expect(load).toBeLessThanOrEqual(problem.capacity);
  }
  return { cost, brought };
}

/** Least cost by trying every load of every route: for a handful of customers with small demands. */
function leastCost({ customers, demand, capacity, distances }: RoutingProblem): number {
  const width = customers + 1;
  const tour = (mask: number): number => {
    const least = (here: number, left: number): number => {
      if (left === 0) return distances[here * width] ?? 0;
      let best = Number.POSITIVE_INFINITY;
      for (let next = 1; next <= customers; next += 1) {
        if ((left & (1 << next)) === 0) continue;
        best = Math.min(best, (distances[here * width + next] ?? 0) + least(next, left & ~(1 << next)));
      }
      return best;
    };
    return least(0, mask);
  };
  const tours = Array.from({ length: 1 << width }, (_, mask) => tour(mask & ~1));
  const known = new Map<string, number>();
  const solve = (left: readonly number[]): number => {
    const first = left.findIndex((each) => each > 0);
    if (first < 0) return 0;
    const key = left.join();
    const kept = known.get(key);
    if (kept !== undefined) return kept;
    let best = Number.POSITIVE_INFINITY;
    const load = (at: number, room: number, mask: number, rest: readonly number[]): void => {
      if (at > customers) {
        if ((mask & (1 << first)) !== 0) best = Math.min(best, (tours[mask] ?? 0) + solve(rest));
        return;
      }
      for (let amount = Math.min(room, left[at] ?? 0); amount >= 0; amount -= 1) {
        const less = rest.map((each, index) => (index === at ? each - amount : each));
        load(at + 1, room - amount, amount > 0 ? mask | (1 << at) : mask, less);
      }
    };
    load(1, capacity, 0, left);
    known.set(key, best);
    return best;
  };
  return solve([...demand]);
}

test('three lots of two thirds of a load take two routes', () => {
  const distances = Float64Array.from({ length: 16 }, (_, at) => (at % 4 > 0 === at >= 4 ? 0 : 10));
  const cost = Int32Array.from(distances);
  const problem = { ...inventedInstance(1, { customers: 3, capacity: 3, vehicles: 3 }), cost, time: cost, distances };
  const demands = { ...problem, demand: Int32Array.of(0, 2, 2, 2) };
  const model = new SplitModel(demands);
  const found = search(model, { seed: 1, iterations: 200 });
  expect(found.cost).toBe(40);
  expect(reckon(demands, model, found)).toEqual({ cost: 40, brought: [0, 2, 2, 2] });
});

test('is as cheap as trying everything, demands above a load included', () => {
  for (let seed = 1; seed <= 20; seed += 1) {
    const random = createRandom(seed);
    const problem: RoutingProblem = {
      ...inventedInstance(seed, { customers: 4, capacity: 4, vehicles: 8 }),
      demand: Int32Array.from({ length: 5 }, (_, at) => (at === 0 ? 0 : 1 + random.below(seed % 3 === 0 ? 6 : 4))),
    };
    const model = new SplitModel(problem);
    const found = search(model, { seed, iterations: 1500 });
    const { cost, brought } = reckon(problem, model, found);
    expect(brought).toEqual([...problem.demand]);
    expect(found.absent).toEqual([]);
    expect(cost).toBe(found.cost);
    expect(cost, `seed ${seed}`).toBe(leastCost(problem));
  }
});

test('same seed, same routes; the cost kept along is the cost of the routes', () => {
  const problem: RoutingProblem = {
    ...inventedInstance(5, { customers: 40, capacity: 10, vehicles: 40 }),
    demand: Int32Array.from({ length: 41 }, (_, at) => (at === 0 ? 0 : 5 + (at % 5))),
  };
  const run = () => {
    const model = new SplitModel(problem);
    const found = search(model, { seed: 3, iterations: 2000 });
    const { cost, brought } = reckon(problem, model, found);
    expect(cost).toBe(found.cost);
    expect(brought).toEqual([...problem.demand]);
    return found;
  };
  expect(run()).toEqual(run());
});

test('an answer can be taken up again, and none of it is left out', () => {
  const problem = inventedInstance(7, { customers: 30, capacity: 9, vehicles: 30 });
  const first = search(new SplitModel(problem), { seed: 1, iterations: 1 });
  const model = new SplitModel(problem);
  const second = new Search(model, { seed: 2, iterations: 500, start: first.routes });
  expect(second.found()).toMatchObject({ absent: [], cost: first.cost });
  const better = search(new SplitModel(problem), { seed: 9, iterations: 5000 });
  second.adopt(better.routes);
  expect(second.found()).toMatchObject({ absent: [], cost: better.cost });
});

test('what no route has room for is left out', () => {
  const problem = inventedInstance(2, { customers: 6, capacity: 5, vehicles: 1 });
  const demands = { ...problem, demand: Int32Array.of(0, 3, 3, 3, 3, 3, 3) };
  const model = new SplitModel(demands);
  const found = search(model, { seed: 1, iterations: 300 });
  const { brought } = reckon(demands, model, found);
  const left = new Set(found.absent.map((part) => model.place[part]));
  expect(brought.filter((amount, customer) => customer > 0 && amount < 3).length).toBe(left.size);
  expect(left.size).toBe(5);
});

test('loads, what is missing and the cost are those of the routes as they stand, after steps taken and steps taken back', () => {
  const problem: RoutingProblem = {
    ...inventedInstance(11, { customers: 25, capacity: 10, vehicles: 40 }),
    demand: Int32Array.from({ length: 26 }, (_, at) => (at === 0 ? 0 : 4 + (at % 6))),
  };
  const model = new SplitModel(problem);
  const engine = new Search(model, { seed: 4, iterations: 600 });
  let splits = 0;
  for (let until = 20; until <= 600; until += 20) {
    engine.run(until);
    const { tours } = engine;
    const load = new Int32Array(model.kindOf.length);
    const missing = problem.demand.slice();
    let cost = 0;
    for (let route = 0; route < load.length; route += 1) {
      let here = 0;
      for (let node = tours.next[tours.sentinel(route)] ?? 0; ; node = tours.next[node] ?? 0) {
        const there = model.place[node] ?? 0;
        cost += problem.distances[here * 26 + there] ?? 0;
        here = there;
        if (node === tours.sentinel(route)) break;
        const amount = tours.way[node] ?? 0;
        expect(amount).toBeGreaterThan(0);
        load[route] = (load[route] ?? 0) + amount;
        missing[there] = (missing[there] ?? 0) - amount;
      }
    }
    splits += tours.placed - 25;
    expect(model.load).toEqual(load);
    expect(model.missing).toEqual(missing);
    expect(model.cost).toBe(cost);
  }
  expect(splits).toBeGreaterThan(0);
});
