import { expect, test } from 'vitest';
import { PlainModel, solveRouting, Tours } from '../../../../core/routing/index.ts';
import { judgeRoutes } from '../../../../core/routing/models/check.ts';
import { Overload } from '../../../../core/routing/models/overload.ts';
import { inventedInstance } from '../instances.ts';

test('load beyond the capacity costs its rate, and what it would cost is said beforehand', () => {
  const overload = new Overload(100, Int32Array.of(0, 30, 50), 2);
  expect(overload.carry(0, 120)).toBe(0);
  expect(overload.excess).toBe(20);
  // The first look sets the rate to a mean edge over a mean demand, 80 / 40, for the 20 that are too much.
  expect(overload.look(0, 80)).toBe(40);
  expect(overload.most).toBe(110);
  expect(overload.extra(0, 5)).toBe(10);
  expect(overload.extra(1, 100)).toBe(0);
  expect(overload.extra(1, 103)).toBe(6);
  expect(overload.carry(0, -15)).toBe(-30);
  expect(overload.carry(0, -15)).toBe(-10);
  expect(overload.excess).toBe(0);
});

test('the rate rises while routes carry too much and falls while they never do', () => {
  const overload = new Overload(100, Int32Array.of(0, 40), 1);
  overload.look(0, 80);
  overload.carry(0, 110);
  let added = 0;
  for (let look = 0; look < 20; look += 1) added += overload.look(0, 80);
  // Multiples of 1/64: 2.4 is 154/64.
  expect(added).toBeCloseTo(10 * (154 / 64 - 2), 9);
  overload.carry(0, -110);
  for (let look = 0; look < 60; look += 1) overload.look(0, 80);
  expect(overload.extra(0, 101)).toBeLessThan(2);
});

test('a step that carries too much is taken back with its cost', () => {
  const model = new PlainModel(inventedInstance(1, { customers: 20, capacity: 60, vehicles: 20 }));
  const tours = new Tours(model);
  for (let customer = 1; customer <= 20; customer += 1) tours.insert(customer, tours.sentinel(customer - 1), 0);
  model.ease(0);
  const { cost } = model;
  tours.mark();
  for (let customer = 2; customer <= 20; customer += 1) {
    tours.remove(customer);
    tours.insert(customer, tours.sentinel(0), 0);
  }
  expect(model.excess).toBeGreaterThan(0);
  tours.undo();
  expect(model.cost).toBe(cost);
  expect(model.excess).toBe(0);
});

test.each([1, 2])('in tight fleets no route of the answer carries too much: seed %i', (seed) => {
  const loose = inventedInstance(seed, { customers: 40, capacity: 100, vehicles: 40 });
  const total = loose.demand.reduce((sum, each) => sum + each, 0);
  const problem = { ...loose, capacity: Math.ceil(total / 4 / 0.97), vehicles: 4 };
  const { routes, absent, cost } = solveRouting(problem, { seed, iterations: 30_000 });
  expect(absent).toEqual([]);
  const judged = judgeRoutes(problem, routes);
  expect(judged.faults).toEqual([]);
  expect(judged.cost).toBe(cost / problem.costPerUnit);
});

test('where more is asked for than can be carried, the routes still keep to the capacity', () => {
  const problem = inventedInstance(5, { customers: 30, capacity: 40, vehicles: 3 });
  const { routes, absent } = solveRouting(problem, { seed: 1, iterations: 20_000 });
  expect(absent.length).toBeGreaterThan(0);
  for (const route of routes) {
    const load = route.reduce((sum, customer) => sum + (problem.demand[customer] as number), 0);
    expect(load).toBeLessThanOrEqual(40);
  }
});
