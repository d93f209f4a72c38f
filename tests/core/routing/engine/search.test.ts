import { expect, test } from 'vitest';
import { PlainModel, Search, search } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

const problem = inventedInstance(12, { customers: 40, capacity: 30, vehicles: 40 });
const model = () => new PlainModel(problem);

test('a start with little heat is kept close to, and never made dearer', () => {
  const good = search(model(), { seed: 1, iterations: 4000 });
  const again = search(model(), { seed: 2, iterations: 200, start: good.routes, heat: 0.05 });
  expect(again.cost).toBeLessThanOrEqual(good.cost);
  expect(search(model(), { seed: 2, iterations: 1, start: good.routes }).cost).toBeLessThanOrEqual(good.cost);
});

test('fixed customers stay where they are, in their order, whatever it costs', () => {
  const bad = [{ route: 0, customers: [1, 2, 3, 4], ways: [0, 0, 0, 0] }];
  const found = search(model(), { seed: 1, iterations: 3000, start: bad, fixed: [3] });
  expect(found.routes.find((each) => each.route === 0)?.customers.slice(0, 3)).toEqual([1, 2, 3]);
  expect(found.absent).toEqual([]);
});

test('a search in pieces is the search in one piece', () => {
  const whole = search(model(), { seed: 5, iterations: 1000 });
  const pieces = new Search(model(), { seed: 5, iterations: 1000 });
  for (const until of [1, 250, 251, 900]) pieces.run(until);
  pieces.run();
  expect(pieces.found()).toEqual(whole);
});

test('a search goes on from routes that another one found', () => {
  const good = search(model(), { seed: 1, iterations: 4000 });
  const other = new Search(model(), { seed: 3, iterations: 4000 });
  other.run(50);
  expect(other.found().cost).toBeGreaterThan(good.cost);
  other.adopt(good.routes);
  expect(other.found()).toMatchObject({ cost: good.cost, routes: good.routes });
  other.run();
  expect(other.found().cost).toBeLessThanOrEqual(good.cost);
});

test('without gain for so many iterations it ends', () => {
  const found = search(model(), { seed: 1, iterations: 1_000_000, withoutGain: 500 });
  expect(found.iterations).toBeLessThan(100_000);
});

test('places that lie in clumps are all served: a whole clump is no reason to leave its customers out', () => {
  // Three clumps of 60, far apart: the forty nearest of each customer lie in its own clump.
  const clumps = inventedInstance(4, { customers: 180, capacity: 5000, vehicles: 1 });
  const width = clumps.customers + 1;
  const cost = clumps.cost.map((each, at) => {
    const [from, to] = [Math.floor(at / width), at % width];
    return each + (from > 0 && to > 0 && from % 3 !== to % 3 ? 10_000 : 0);
  });
  const found = search(new PlainModel({ ...clumps, cost, time: cost }), { seed: 1, iterations: 400 });
  expect(found.absent).toEqual([]);
});
