import { expect, test } from 'vitest';
import { CompartmentModel, type CompartmentProblem, search } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

/** Four customers at one place 10 from the depot: 11 of product 0 twice, 9 of product 1 twice. */
const distances = Float64Array.from({ length: 25 }, (_, at) => (at % 5 > 0 === at >= 5 ? 0 : 10));
const cost = Int32Array.from(distances);
const problem: CompartmentProblem = {
  ...inventedInstance(1, { customers: 4, capacity: 40, vehicles: 4 }),
  cost,
  time: cost,
  distances,
  demand: Int32Array.of(0, 11, 11, 9, 9),
  product: Int32Array.of(0, 0, 0, 1, 1),
  compartments: 2,
  unit: 1,
};
const costWith = (change: Partial<CompartmentProblem>) =>
  search(new CompartmentModel({ ...problem, ...change }), { seed: 1, iterations: 300 });

test('one route where walls can stand anywhere', () => {
  expect(costWith({})).toMatchObject({ cost: 20, absent: [] });
});

test('each product is rounded up by itself: 22 and 18 need 30 and 20 in units of ten', () => {
  expect(costWith({ unit: 10 })).toMatchObject({ cost: 40, absent: [] });
  expect(costWith({ unit: 10, capacity: 50 })).toMatchObject({ cost: 20, absent: [] });
});

test('no more products than compartments', () => {
  const found = costWith({ compartments: 1 });
  expect(found).toMatchObject({ cost: 40, absent: [] });
  const products = found.routes.map(({ customers }) => new Set(customers.map((each) => problem.product[each])).size);
  expect(products).toEqual([1, 1]);
});

test('what fits no vehicle is left out', () => {
  expect(costWith({ unit: 10, vehicles: 1 }).absent).toHaveLength(1);
  expect(costWith({ capacity: 10 }).absent).toHaveLength(2);
});
