import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { NearCombine } from '../../../../core/routing/engine/combine-near.ts';
import type { FoundRoute } from '../../../../core/routing/engine/contract.ts';
import { RoutePool } from '../../../../core/routing/engine/pool.ts';
import { PlainModel, Tours } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

const laidOut = () => {
  const problem = inventedInstance(3, { customers: 12, capacity: 1000, vehicles: 4 });
  const model = new PlainModel(problem);
  const tours = new Tours(model);
  const random = createRandom(1);
  const pool = new RoutePool(tours, random);
  const put = (routes: readonly (readonly number[])[]): readonly FoundRoute[] => {
    for (let customer = 1; customer <= 12; customer += 1) if (tours.routeOf[customer] !== -1) tours.remove(customer);
    routes.forEach((customers, route) => {
      for (const customer of [...customers].reverse()) tours.insert(customer, tours.sentinel(route), 0);
    });
    pool.changedAll();
    pool.note();
    return routes.map((customers, route) => ({ route, customers, ways: [], note: 0 }));
  };
  return { model, put, near: new NearCombine(tours, pool, random) };
};

const ROUTES = [
  [1, 2, 3],
  [4, 5, 6],
  [7, 8, 9],
  [10, 11, 12],
] as const;
const OTHER = [
  [3, 2, 1],
  [5, 4, 6],
  [9, 7, 10],
  [8, 11, 12],
] as const;

test('the better half of two solutions that share a border makes one solution', () => {
  const { model, put, near } = laidOut();
  put([...ROUTES.slice(0, 2), ...OTHER.slice(2)]);
  const mixed = model.cost;
  put([...OTHER.slice(0, 2), ...ROUTES.slice(2)]);
  const crossed = model.cost;
  put(OTHER);
  const other = model.cost;
  const found = put(ROUTES);
  const cheapest = Math.min(mixed, crossed, other);
  expect(cheapest).toBeLessThan(model.cost);
  const chosen = near.run(found);
  put(chosen.map((each) => each.customers));
  expect(model.cost).toBe(cheapest);
  expect(chosen.flatMap((each) => each.customers).sort((left, right) => left - right)).toEqual(
    Array.from({ length: 12 }, (_, at) => at + 1),
  );
});

test('from the cheapest choice on nothing cheaper is found', () => {
  const { put, near } = laidOut();
  put(OTHER);
  const chosen = near.run(put(ROUTES));
  expect(chosen).not.toEqual([]);
  expect(near.run(put(chosen.map((each) => each.customers)))).toEqual([]);
});
