import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { type RouteModel, Tours } from '../../../../core/routing/index.ts';

/** A model that only counts: its cost is the number of customers in routes. */
function countingModel(customers: number, kinds: readonly number[]): RouteModel {
  return {
    customers,
    kindOf: Int32Array.from(kinds),
    near: new Int32Array(customers + 1),
    nearWidth: 1,
    orders: [{ weight: 1, key: null }],
    heat: { start: 1, end: 0.1 },
    cost: 0,
    way: 0,
    bind: () => undefined,
    linked() {
      this.cost += 1;
    },
    unlinked() {
      this.cost -= 1;
    },
    renew: () => undefined,
    holds: () => true,
    admits: () => true,
    bound: () => 0,
    price: () => 0,
    meanEdge: () => 1,
  };
}

const listsOf = (tours: Tours): number[][] =>
  Array.from({ length: tours.routes }, (_, route) => {
    const list: number[] = [];
    const sentinel = tours.sentinel(route);
    for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number)
      list.push(node);
    return list;
  });

test('routes that change places keep their customers in order, in both directions', () => {
  const tours = new Tours(countingModel(5, [0, 1, 2]));
  for (const customer of [3, 2, 1]) tours.insert(customer, tours.sentinel(0), 0);
  tours.insert(4, tours.sentinel(1), 7);
  tours.mark();
  tours.exchange(0, 1);
  tours.exchange(1, 2);
  expect(listsOf(tours)).toEqual([[4], [], [1, 2, 3]]);
  expect([4, 1, 2, 3].map((customer) => tours.routeOf[customer])).toEqual([0, 2, 2, 2]);
  expect([...tours.size]).toEqual([1, 0, 3]);
  expect(tours.emptyRoute(1)).toBe(1);
  expect(tours.emptyRoute(2)).toBe(-1);
  expect(tours.way[4]).toBe(7);
  tours.undo();
  expect(listsOf(tours)).toEqual([[1, 2, 3], [4], []]);
  expect(tours.emptyRoute(2)).toBe(2);
});

test('any row of changes is undone, exchanges and ways among them', () => {
  const random = createRandom(8);
  const model = countingModel(20, [0, 0, 1, 1, 2]);
  const tours = new Tours(model);
  for (let customer = 1; customer <= 20; customer += 1) {
    tours.insert(customer, tours.sentinel(random.below(5)), random.below(3));
  }
  for (let round = 0; round < 300; round += 1) {
    const before = [listsOf(tours), [...tours.way], [...tours.size], tours.used, model.cost];
    tours.mark();
    for (let change = random.below(10); change > 0; change -= 1) {
      const customer = 1 + random.below(20);
      if (random.unit() < 0.3) tours.exchange(random.below(2), 2 + random.below(3));
      else if (tours.routeOf[customer] === -1) tours.insert(customer, tours.sentinel(random.below(5)), random.below(3));
      else tours.remove(customer);
    }
    tours.undo();
    expect([listsOf(tours), [...tours.way], [...tours.size], tours.used, model.cost]).toEqual(before);
  }
});

test('a fixed customer fixes what lies before it', () => {
  const tours = new Tours(countingModel(4, [0]));
  for (const customer of [4, 3, 2, 1]) tours.insert(customer, tours.sentinel(0), 0);
  tours.fix([2]);
  expect([...tours.fixed.subarray(1, 5)]).toEqual([1, 1, 0, 0]);
  expect(tours.fixedSize[0]).toBe(2);
});
