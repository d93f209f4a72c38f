import { expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { Tours } from '../../../../core/routing/index.ts';
import { FleetModel } from '../../../../core/routing/models/fleet.ts';
import { RESTRICTED, readFleet } from '../fleet-instances.ts';

/** Two vehicles, both on the road: the first with customer 1, the second with customer 2. Bit k of `allowed`: vehicle k may go. */
function laidOut(allowed: readonly number[]) {
  const problem = readFleet(RESTRICTED);
  const fleet = { ...(problem.fleet as NonNullable<typeof problem.fleet>), allowed: Int32Array.from([3, ...allowed]) };
  const model = new FleetModel({ ...problem, fleet }, fleet, createRandom(1));
  const tours = new Tours(model);
  const routes = [0, 1].map((route) => ({ route, customers: [route + 1], ways: [], note: route }));
  model.takeUp(routes);
  for (const { route, customers } of routes) {
    tours.insert(customers[0] as number, tours.sentinel(route), 0);
    model.renew(route);
  }
  tours.mark();
  model.loosen();
  return { model, tours };
}

test('a route gets the vehicle that it needs from another that can take its own', () => {
  const { model, tours } = laidOut([3, 3, 2]);
  const before = model.cost;
  expect(model.admits(3, 0, Number.POSITIVE_INFINITY)).toBe(true);
  const added = model.price(3, 1, model.bound(3, 1));
  model.prepare(3, 1, model.way);
  tours.insert(3, 1, model.way);
  model.renew(0);
  expect([...model.vehicles.driver]).toEqual([1, 0]);
  expect([...model.vehicles.free]).toEqual([0, 0]);
  expect(model.cost).toBeCloseTo(before + added, 6);
  tours.undo();
  expect([...model.vehicles.driver]).toEqual([0, 1]);
  expect([...model.vehicles.free]).toEqual([0, 0]);
  expect(model.cost).toBeCloseTo(before, 6);
});

test('not where the other cannot take it', () => {
  expect(laidOut([3, 2, 2]).model.admits(3, 0, Number.POSITIVE_INFINITY)).toBe(false);
});

test('nor where the step has touched the other by then', () => {
  const { model, tours } = laidOut([3, 3, 2]);
  expect(model.admits(3, 0, Number.POSITIVE_INFINITY)).toBe(true);
  tours.remove(2);
  tours.insert(2, tours.sentinel(1), 1);
  model.renew(1);
  expect(model.vehicles.releases?.costOf(1, 0)).toBe(Number.POSITIVE_INFINITY);
});
