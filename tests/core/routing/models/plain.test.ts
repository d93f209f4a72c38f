import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { PlainModel, Tours } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

/** Everything that lists and model keep, but for the random order of empty routes. */
const snapshot = (tours: Tours, model: PlainModel) => ({
  next: [...tours.next],
  prev: [...tours.prev],
  routeOf: [...tours.routeOf],
  size: [...tours.size],
  way: [...tours.way],
  used: tours.used,
  model: JSON.stringify(model, (_, value) => (ArrayBuffer.isView(value) ? [...(value as Int32Array)] : value)),
});

test('undo gives back every list, load, length and label, whatever was done', () => {
  const model = new PlainModel(inventedInstance(1, { customers: 30, capacity: 1000, vehicles: 6, windows: 0.5 }));
  const tours = new Tours(model);
  const random = createRandom(4);
  for (let customer = 1; customer <= 30; customer += 1) tours.insert(customer, tours.sentinel(random.below(6)), 0);
  for (let route = 0; route < 6; route += 1) model.renew(route);
  for (let round = 0; round < 200; round += 1) {
    const before = snapshot(tours, model);
    tours.mark();
    const out: number[] = [];
    for (let count = random.below(12); count > 0; count -= 1) {
      const customer = 1 + random.below(30);
      const route = tours.routeOf[customer] as number;
      if (route < 0) continue;
      tours.remove(customer);
      model.renew(route);
      out.push(customer);
    }
    for (const customer of out.filter(() => random.unit() < 0.7)) {
      const route = random.below(6);
      tours.insert(customer, tours.sentinel(route), 0);
      model.renew(route);
    }
    tours.undo();
    expect(snapshot(tours, model)).toEqual(before);
  }
});

test('the cost kept along the way is the sum of the edges', () => {
  const problem = inventedInstance(2, { customers: 20, capacity: 1000, vehicles: 3, oneWay: true });
  const model = new PlainModel(problem);
  const tours = new Tours(model);
  for (let customer = 1; customer <= 20; customer += 1) tours.insert(customer, tours.sentinel(customer % 3), 0);
  for (const customer of [4, 9, 15]) tours.remove(customer);
  const placeOf = (node: number) => (node > 20 ? 0 : node);
  let sum = 0;
  for (let route = 0; route < 3; route += 1) {
    let node = tours.sentinel(route);
    do {
      const follower = tours.next[node] as number;
      sum += problem.cost[placeOf(node) * 21 + placeOf(follower)] as number;
      node = follower;
    } while (node !== tours.sentinel(route));
  }
  expect(model.cost).toBe(sum);
  expect(tours.emptyRoute(0)).toBe(-1);
});
