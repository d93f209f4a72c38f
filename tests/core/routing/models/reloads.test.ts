import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { ReloadModel, type ReloadProblem, search, Tours } from '../../../../core/routing/index.ts';
import { bruteRoute, inventedReloads } from '../reload-instances.ts';

const KINDS = [{}, { lastReload: true, openingCost: 40, costPerDistance: 0.5, capacity: 12 }] as const;

/** Visits of a route in order. */
const orderOf = (tours: Tours, route: number): number[] => {
  const list: number[] = [];
  const sentinel = tours.sentinel(route);
  for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) list.push(node);
  return list;
};

/** Some of the visits in two routes, in an order by chance. */
function chanceTours(problem: ReloadProblem, seed: number, placed: number): { model: ReloadModel; tours: Tours } {
  const random = createRandom(seed);
  const model = new ReloadModel(problem);
  const tours = new Tours(model);
  for (let visit = 1; visit <= placed; visit += 1) {
    const route = random.below(2);
    const order = orderOf(tours, route);
    tours.insert(visit, order[random.below(order.length + 1)] ?? tours.sentinel(route), 0);
  }
  for (const route of [0, 1]) model.renew(route);
  return { model, tours };
}

test('reloads of a route in its order are the best of all choices of gaps and facilities', () => {
  for (let seed = 1; seed <= 60; seed += 1) {
    const problem = inventedReloads(seed, { visits: 12, kinds: KINDS, kindOf: [0, 1] });
    const { model, tours } = chanceTours(problem, seed, seed % 13);
    const brute = [0, 1].map((route) => bruteRoute(problem, problem.kinds[route] as never, orderOf(tours, route)));
    expect(model.cost).toBeCloseTo((brute[0] ?? 0) + (brute[1] ?? 0), 4);
  }
});

test('the price of an insertion is what it then adds, and the bound is no more', () => {
  let dearer = 0;
  for (let seed = 1; seed <= 40; seed += 1) {
    const problem = inventedReloads(seed, { visits: 14, kinds: KINDS, kindOf: [0, 1] });
    const { model, tours } = chanceTours(problem, seed, seed % 14);
    for (const route of [0, 1]) {
      for (const after of [tours.sentinel(route), ...orderOf(tours, route)]) {
        const [before, bound, price] = [model.cost, model.bound(14, after), model.price(14, after)];
        tours.mark();
        tours.insert(14, after, 0);
        model.renew(route);
        expect(price).toBeCloseTo(model.cost - before, 4);
        expect(bound).toBeLessThanOrEqual(price + 1e-9);
        if (price > bound + 1e-6) dearer += 1;
        tours.undo();
        expect(model.cost).toBe(before);
      }
    }
  }
  expect(dearer).toBeGreaterThan(50);
});

test('a price is infinite exactly where the route then takes too long', () => {
  let long = 0;
  for (let seed = 1; seed <= 40; seed += 1) {
    const kinds = KINDS.map((kind) => ({ ...kind, mostTime: 450 }));
    const problem = inventedReloads(seed, { visits: 10, kinds, kindOf: [0, 1] });
    const { model, tours } = chanceTours(problem, seed, 9);
    for (const route of [0, 1]) {
      for (const after of [tours.sentinel(route), ...orderOf(tours, route)]) {
        const price = model.price(10, after);
        tours.mark();
        tours.insert(10, after, 0);
        model.renew(route);
        expect(model.holds(route)).toBe(price !== Number.POSITIVE_INFINITY);
        if (!model.holds(route)) long += 1;
        tours.undo();
      }
    }
  }
  expect(long).toBeGreaterThan(50);
});

test('the stops of a route name the facilities, and cost what the route costs', () => {
  for (let seed = 1; seed <= 30; seed += 1) {
    const problem = inventedReloads(seed, { visits: 12, kinds: KINDS, kindOf: [0, 1] });
    const { model, tours } = chanceTours(problem, seed, 12);
    let cost = 0;
    for (const route of [0, 1]) {
      const kind = problem.kinds[route] as (typeof problem.kinds)[number];
      const order = orderOf(tours, route);
      if (order.length === 0) continue;
      let [place, load, length] = [kind.start, 0, 0];
      const stops = model.stopsOf(route);
      expect(stops.filter((stop) => stop > 0)).toEqual(order);
      for (const stop of [...stops, 0]) {
        const next = stop > 0 ? (problem.placeOf[stop] ?? 0) : stop < 0 ? -1 - stop : kind.end;
        length += problem.distances[place * problem.places + next] ?? 0;
        load = stop < 0 ? 0 : load + (problem.demand[stop] ?? 0) * (stop === 0 ? 0 : 1);
        expect(load).toBeLessThanOrEqual(kind.capacity);
        place = next;
      }
      if (kind.lastReload) expect(stops.at(-1)).toBeLessThan(0);
      cost += kind.openingCost + kind.costPerDistance * length;
    }
    expect(model.cost).toBeCloseTo(cost, 4);
  }
});

test('a changed route goes to the kind that does it for the least, and comes back with the step', () => {
  let moved = 0;
  for (let seed = 1; seed <= 30; seed += 1) {
    const kinds = [
      { capacity: 12, openingCost: 5 },
      { capacity: 30, costPerDistance: 1.1 },
      { capacity: 10, costPerDistance: 0.9, lastReload: true },
      { capacity: 90, costPerDistance: 0.1, mostTime: 100 },
    ];
    const instead = kinds.map((_, kind) => [0, 1, 2, 3].filter((other) => other !== kind));
    const problem = { ...inventedReloads(seed, { visits: 8, kinds, kindOf: [0, 1, 2, 3] }), instead };
    const model = new ReloadModel(problem);
    const tours = new Tours(model);
    for (let visit = 1; visit < 8; visit += 1) tours.insert(visit, tours.sentinel(0), 0);
    model.renew(0);
    const before = model.cost;
    tours.mark();
    tours.insert(8, tours.sentinel(0), 0);
    model.renew(0);
    const order = orderOf(tours, 0);
    model.settle();
    const least = Math.min(...[0, 1, 2].map((kind) => bruteRoute(problem, problem.kinds[kind] as never, order)));
    expect(model.cost).toBeCloseTo(least, 4);
    if (tours.size[0] === 0) moved += 1;
    tours.undo();
    expect(model.cost).toBe(before);
    expect(orderOf(tours, 0)).toHaveLength(7);
  }
  expect(moved).toBeGreaterThan(5);
  expect(moved).toBeLessThan(30);
});

test('five visits by two vehicles are planned as cheaply as any plan is', () => {
  for (let seed = 1; seed <= 5; seed += 1) {
    const problem = inventedReloads(seed, { visits: 5, kinds: KINDS, kindOf: [0, 1] });
    const found = search(new ReloadModel(problem), { seed, iterations: 800 });
    expect(found.absent).toEqual([]);
    expect(found.cost).toBeCloseTo(best(problem, 1, [[], []]), 4);
  }
});

/** Every way of putting the visits from one on into the routes. */
function best(problem: ReloadProblem, visit: number, routes: readonly (readonly number[])[]): number {
  if (visit > problem.visits) {
    return routes.reduce((sum, each, at) => sum + bruteRoute(problem, problem.kinds[at] as never, each), 0);
  }
  let least = Number.POSITIVE_INFINITY;
  routes.forEach((route, at) => {
    for (let to = 0; to <= route.length; to += 1) {
      const longer = routes.map((each, other) => (other === at ? route.toSpliced(to, 0, visit) : each));
      least = Math.min(least, best(problem, visit + 1, longer));
    }
  });
  return least;
}
