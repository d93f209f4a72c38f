import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { RoutePool } from '../../../../core/routing/engine/pool.ts';
import { PlainModel, Tours } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

const laidOut = () => {
  const problem = inventedInstance(3, { customers: 12, capacity: 1000, vehicles: 3 });
  const model = new PlainModel(problem);
  const tours = new Tours(model);
  const pool = new RoutePool(tours, createRandom(1));
  const put = (route: number, customers: readonly number[]) => {
    tours.mark();
    for (const customer of customers) if (tours.routeOf[customer] !== -1) tours.remove(customer);
    for (const customer of [...customers].reverse()) tours.insert(customer, tours.sentinel(route), 0);
    pool.changed();
  };
  const costOf = (customers: readonly number[]) =>
    [0, ...customers].reduce((sum, from, at) => sum + (problem.cost[from * 13 + (customers[at] ?? 0)] as number), 0);
  return { pool, put, costOf };
};

const routesOf = (pool: RoutePool) =>
  Array.from({ length: pool.count }, (_, at) => ({
    customers: [...pool.customers.subarray(pool.first[at] as number, pool.first[at + 1] as number)],
    cost: pool.cost[at],
  }));

test('of a set of customers the cheapest order is kept, with its cost', () => {
  const { pool, put, costOf } = laidOut();
  const orders = [
    [1, 2, 3, 4],
    [2, 1, 4, 3],
    [4, 1, 3, 2],
  ];
  for (const order of orders) {
    put(0, order);
    pool.note();
  }
  const least = Math.min(...orders.map(costOf));
  const cheapest = orders.find((order) => costOf(order) === least);
  expect(routesOf(pool)).toEqual([{ customers: cheapest, cost: least }]);
});

test('routes that did not change are not added again, those that did are', () => {
  const { pool, put, costOf } = laidOut();
  put(0, [1, 2, 3]);
  put(1, [7, 5]);
  pool.note();
  put(1, [7, 5, 9]);
  pool.note();
  pool.note();
  const sets = routesOf(pool);
  expect(sets.map((route) => route.customers.length).sort()).toEqual([2, 3, 3]);
  for (const { customers, cost } of sets) expect(cost).toBe(costOf(customers));
});
