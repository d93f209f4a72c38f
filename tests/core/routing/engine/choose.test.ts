import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { chooseRoutes } from '../../../../core/routing/engine/choose.ts';
import type { Choice } from '../../../../core/routing/engine/prices.ts';

type Route = { readonly customers: readonly number[]; readonly cost: number };

/** A route costs `dearer[kind]` times as much as its cost. */
function choiceOf(routes: readonly Route[], most: readonly number[], dearer: readonly number[] = [1]): Choice {
  const first = new Int32Array(routes.length + 1);
  routes.forEach((route, at) => {
    first[at + 1] = (first[at] as number) + route.customers.length;
  });
  return {
    count: routes.length,
    most: Int32Array.from(most),
    cost: Float64Array.from(routes.flatMap((route) => dearer.map((times) => times * route.cost))),
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

/** Least cost of at most so many routes of each kind that serve everyone once, by trying all of them. */
function leastCost(
  routes: readonly Route[],
  customers: number,
  most: readonly number[],
  dearer: readonly number[] = [1],
): number {
  const masks = routes.map((route) => route.customers.reduce((mask, each) => mask | (1 << each), 0));
  const all = 2 ** (customers + 1) - 2;
  let best = Number.POSITIVE_INFINITY;
  const extend = (served: number, cost: number, left: readonly number[]): void => {
    if (served === all) best = Math.min(best, cost);
    if (served === all) return;
    let customer = 1;
    while (((served >> customer) & 1) === 1) customer += 1;
    routes.forEach((route, at) => {
      const mask = masks[at] as number;
      if (((mask >> customer) & 1) === 0 || (mask & served) !== 0) return;
      dearer.forEach((times, kind) => {
        if (left[kind] === 0) return;
        const after = left.map((count, each) => (each === kind ? count - 1 : count));
        extend(served | mask, cost + times * route.cost, after);
      });
    });
  };
  extend(0, 0, most);
  return best;
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])('the choice costs as little as any choice does: seed %i', (seed) => {
  const routes = inventedRoutes(seed, 10, 60);
  for (const most of [10, 4]) {
    const least = leastCost(routes, 10, [most]);
    const chosen = chooseRoutes(choiceOf(routes, [most]), 10, 201, 1_000_000);
    if (least > 200) {
      expect(chosen).toEqual([]);
      continue;
    }
    const sets = chosen.map((at) => routes[at] as Route);
    const served = sets.flatMap((route) => route.customers).sort((left, right) => left - right);
    expect(served).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(chosen.length).toBeLessThanOrEqual(most);
    expect(sets.reduce((sum, route) => sum + route.cost, 0)).toBe(least);
    expect(chooseRoutes(choiceOf(routes, [most]), 10, least, 1_000_000)).toEqual([]);
  }
});

test.each([1, 2, 3, 4])('no more of a kind are chosen than there are: seed %i', (seed) => {
  const routes = inventedRoutes(seed, 8, 30);
  const dearer = [1, 2];
  const most = [2, 8];
  const least = leastCost(routes, 8, most, dearer);
  const picks = chooseRoutes(choiceOf(routes, most, dearer), 8, 1000, 1_000_000);
  const chosen = picks.map((pick) => ({ ...(routes[Math.floor(pick / 2)] as Route), kind: pick % 2 }));
  const served = chosen.flatMap((route) => route.customers).sort((left, right) => left - right);
  expect(served).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(chosen.filter((route) => route.kind === 0)).toHaveLength(2);
  expect(chosen.reduce((sum, route) => sum + (dearer[route.kind] as number) * route.cost, 0)).toBe(least);
});

test('without effort nothing is chosen', () => {
  expect(chooseRoutes(choiceOf(inventedRoutes(1, 10, 60), [10]), 10, 201, 0)).toEqual([]);
});
