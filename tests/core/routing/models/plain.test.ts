import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { PlainModel, Tours, UNSCREENED } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

/** Everything that lists and model keep, but for the random order of empty routes. */
const snapshot = (tours: Tours, model: PlainModel) => ({
  next: [...tours.next],
  prev: [...tours.prev],
  routeOf: [...tours.routeOf],
  size: [...tours.size],
  way: [...tours.way],
  used: tours.used,
  model: JSON.stringify({ ...model, tours: null }, (_, value) =>
    ArrayBuffer.isView(value) ? [...(value as Int32Array)] : value,
  ),
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

test.each([false, true])(
  'the screen passes over no position that is better than it says, one-way costs: %s',
  (oneWay) => {
    const model = new PlainModel(inventedInstance(6, { customers: 40, capacity: 1000, vehicles: 5, oneWay }));
    const tours = new Tours(model);
    const random = createRandom(8);
    for (let customer = 1; customer <= 40; customer += 1) tours.insert(customer, tours.sentinel(random.below(5)), 0);
    for (const customer of [3, 11, 27, 40]) tours.remove(customer);
    const { near, nearWidth, screen } = model;
    for (const customer of [3, 11, 27, 40]) {
      const rankOf = (node: number) => near.indexOf(node, customer * nearWidth) - customer * nearWidth;
      for (let rank = 1; rank < nearWidth; rank += 1) {
        const away = screen.away[customer * nearWidth + rank] as number;
        const node = near[customer * nearWidth + rank] as number;
        if (tours.routeOf[node] === -1) continue;
        const before = tours.prev[node] as number;
        const after = tours.next[node] as number;
        if (before > 40) expect(screen.into[node]).toBe(UNSCREENED);
        else if (rankOf(before) > rank) {
          expect(away - (screen.into[node] as number)).toBeLessThanOrEqual(model.bound(customer, before));
        }
        if (after > 40) expect(screen.onward[node]).toBe(UNSCREENED);
        else if (rankOf(after) > rank) {
          expect(away - (screen.onward[node] as number)).toBeLessThanOrEqual(model.bound(customer, node));
        }
      }
    }
  },
);
