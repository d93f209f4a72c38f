import { expect, test } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { Tours } from '../../../core/routing/tours.ts';
import { inventedInstance } from './instances.ts';

const snapshot = (tours: Tours) => ({
  next: [...tours.next],
  prev: [...tours.prev],
  edge: [...tours.edge],
  routeOf: [...tours.routeOf],
  load: [...tours.load],
  size: [...tours.size],
  length: [...tours.length],
  cost: tours.cost,
  used: tours.used,
});

test('undo gives back every list, load, length and label, whatever was done', () => {
  const problem = inventedInstance(1, { customers: 30, capacity: 1000, vehicles: 6, windows: 0.5 });
  const tours = new Tours(problem);
  const random = createRandom(4);
  for (let customer = 1; customer <= 30; customer += 1) tours.insert(customer, tours.sentinel(random.below(6)));
  for (let route = 0; route < 6; route += 1) tours.relabel(route);
  const labels = () => [...tours.departs, ...tours.latest];
  for (let round = 0; round < 200; round += 1) {
    const before = snapshot(tours);
    const labelsBefore = labels();
    tours.mark();
    const out: number[] = [];
    for (let count = random.below(12); count > 0; count -= 1) {
      const customer = 1 + random.below(30);
      const route = tours.routeOf[customer] as number;
      if (route < 0) continue;
      tours.remove(customer);
      tours.relabel(route);
      out.push(customer);
    }
    for (const customer of out.filter(() => random.unit() < 0.7)) {
      const route = random.below(6);
      tours.insert(customer, tours.sentinel(route));
      tours.relabel(route);
    }
    tours.undo();
    expect(snapshot(tours)).toEqual(before);
    expect(labels()).toEqual(labelsBefore);
  }
});

test('the cost kept along the way is the sum of the edges', () => {
  const problem = inventedInstance(2, { customers: 20, capacity: 1000, vehicles: 3, oneWay: true });
  const tours = new Tours(problem);
  for (let customer = 1; customer <= 20; customer += 1) tours.insert(customer, tours.sentinel(customer % 3));
  for (const customer of [4, 9, 15]) tours.remove(customer);
  let sum = 0;
  for (let route = 0; route < 3; route += 1) {
    let node = tours.sentinel(route);
    do {
      const follower = tours.next[node] as number;
      sum += problem.cost[(tours.place[node] as number) * 21 + (tours.place[follower] as number)] as number;
      node = follower;
    } while (node !== tours.sentinel(route));
  }
  expect(tours.cost).toBe(sum);
  expect(tours.emptyRoute()).toBe(-1);
});
