import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { type Choice, chooseRoutes } from '../../../../core/routing/engine/choose.ts';

type Route = { readonly customers: readonly number[]; readonly cost: number };

function choiceOf(routes: readonly Route[]): Choice {
  const first = new Int32Array(routes.length + 1);
  routes.forEach((route, at) => {
    first[at + 1] = (first[at] as number) + route.customers.length;
  });
  return {
    count: routes.length,
    cost: Float64Array.from(routes, (route) => route.cost),
    first,
    customers: Int32Array.from(routes.flatMap((route) => route.customers)),
  };
}

/** Every customer alone, and sets by chance whose costs are a little by chance. */
function inventedRoutes(seed: number, customers: number, sets: number): readonly Route[] {
  const random = createRandom(seed);
  const routes: Route[] = Array.from({ length: customers }, (_, at) => ({ customers: [at + 1], cost: 20 }));
  for (let set = 0; set < sets; set += 1) {
    const chosen = new Set(Array.from({ length: 2 + random.below(3) }, () => 1 + random.below(customers)));
    routes.push({ customers: [...chosen], cost: 10 + 6 * chosen.size + random.below(12) });
  }
  return routes;
}

/** Least cost of at most so many routes that serve everyone once, by trying all of them. */
function leastCost(routes: readonly Route[], customers: number, most: number): number {
  const masks = routes.map((route) => route.customers.reduce((mask, each) => mask | (1 << each), 0));
  const all = 2 ** (customers + 1) - 2;
  let best = Number.POSITIVE_INFINITY;
  const extend = (served: number, cost: number, left: number): void => {
    if (served === all) best = Math.min(best, cost);
    if (served === all || left === 0) return;
    let customer = 1;
    while (((served >> customer) & 1) === 1) customer += 1;
    routes.forEach((route, at) => {
      const mask = masks[at] as number;
      if (((mask >> customer) & 1) === 0 || (mask & served) !== 0) return;
      extend(served | mask, cost + route.cost, left - 1);
    });
  };
  extend(0, 0, most);
  return best;
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])('the choice costs as little as any choice does: seed %i', (seed) => {
  const routes = inventedRoutes(seed, 10, 60);
  for (const most of [10, 4]) {
    const least = leastCost(routes, 10, most);
    const chosen = chooseRoutes(choiceOf(routes), 10, most, 201, 1_000_000);
    if (least > 200) {
      expect(chosen).toEqual([]);
      continue;
    }
    const sets = chosen.map((at) => routes[at] as Route);
    const served = sets.flatMap((route) => route.customers).sort((left, right) => left - right);
    expect(served).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(chosen.length).toBeLessThanOrEqual(most);
    expect(sets.reduce((sum, route) => sum + route.cost, 0)).toBe(least);
    expect(chooseRoutes(choiceOf(routes), 10, most, least, 1_000_000)).toEqual([]);
  }
});

test('without effort nothing is chosen', () => {
  expect(chooseRoutes(choiceOf(inventedRoutes(1, 10, 60)), 10, 10, 201, 0)).toEqual([]);
});
