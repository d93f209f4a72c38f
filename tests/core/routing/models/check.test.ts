import { expect, test } from 'vitest';
import { judgeRoutes } from '../../../../core/routing/index.ts';
import { inventedInstance } from '../instances.ts';

const problem = inventedInstance(1, { customers: 3, capacity: 1000, vehicles: 2 });
const edge = (from: number, to: number) => problem.distances[from * 4 + to] as number;

test('adds up edges from the depot and back', () => {
  const { cost, faults } = judgeRoutes(problem, [[2, 1], [3]]);
  expect(cost).toBe(edge(0, 2) + edge(2, 1) + edge(1, 0) + edge(0, 3) + edge(3, 0));
  expect(faults).toEqual([]);
});

test('names what is wrong', () => {
  expect(judgeRoutes(problem, [[1], [2]]).faults).toEqual(['customer 3 is visited 0 times']);
  expect(judgeRoutes(problem, [[1, 2, 3, 2]]).faults).toEqual(['customer 2 is visited 2 times']);
  expect(judgeRoutes(problem, [[1], [2], [3]]).faults).toEqual(['3 routes for 2 vehicles']);
  expect(judgeRoutes(problem, [[1, 2, 3, 9]]).faults).toEqual(['there is no customer 9']);
  const load = [1, 2, 3].reduce((sum, each) => sum + (problem.demand[each] as number), 0);
  expect(judgeRoutes({ ...problem, capacity: load - 1 }, [[1, 2, 3]]).faults).toEqual([
    `route 1 carries ${load} of ${load - 1}`,
  ]);
  expect(judgeRoutes({ ...problem, mostLength: 1 }, [[1, 2, 3]]).faults[0]).toContain('1 at most');
  const windows = { open: new Int32Array(4), close: Int32Array.of(1000, 1000, 0, 1000) };
  expect(judgeRoutes({ ...problem, windows }, [[1, 2, 3]]).faults).toEqual(['route 1 is late at 2']);
});
