import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { Ruin } from '../../../../core/routing/engine/ruin.ts';
import { PlainModel, Tours } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

/** Most customers that one step takes out of any one route, over many steps. */
function mostFromOneRoute(vehicles: number): number {
  const tours = new Tours(new PlainModel(inventedInstance(3, { customers: 60, capacity: 10_000, vehicles })));
  for (let customer = 1; customer <= 60; customer += 1) tours.insert(customer, tours.sentinel(customer % vehicles), 0);
  const ruin = new Ruin(tours, createRandom(5));
  let most = 0;
  for (let step = 0; step < 300; step += 1) {
    const before = [...tours.size];
    tours.mark();
    ruin.run(new Int32Array(60), 0);
    before.forEach((size, route) => {
      most = Math.max(most, size - (tours.size[route] as number));
    });
    tours.undo();
  }
  return most;
}

test('of several routes each gives one string of ten at most; a single one is cut in several places', () => {
  expect(mostFromOneRoute(3)).toBeLessThanOrEqual(10);
  expect(mostFromOneRoute(1)).toBeGreaterThan(10);
});
