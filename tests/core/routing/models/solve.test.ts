import { describe, expect, test } from 'vitest';
import { judgeRoutes, type RoutingProblem, solveRouting } from '../../../../core/routing/index.ts';
import { inventedInstance, type Shape } from '../instances.ts';

/** Cheapest routes by trying every order and every way of cutting it, for up to seven customers. */
function bruteForce(problem: RoutingProblem): number {
  let best = Number.POSITIVE_INFINITY;
  const visit = (route: readonly number[], done: readonly (readonly number[])[], left: readonly number[]): void => {
    if (left.length === 0) {
      const judged = judgeRoutes(problem, [...done, route]);
      if (judged.faults.length === 0) best = Math.min(best, judged.cost);
      return;
    }
    for (const customer of left) {
      const rest = left.filter((each) => each !== customer);
      visit([...route, customer], done, rest);
      // Of routes that only change places one order is enough: a new route starts with a larger number.
      if (route.length > 0 && customer > (route[0] as number) && done.length + 1 < problem.vehicles) {
        visit([customer], [...done, route], rest);
      }
    }
  };
  const all = Array.from({ length: problem.customers }, (_, index) => index + 1);
  visit([], [], all);
  return best;
}

const SHAPES: readonly (readonly [string, Shape])[] = [
  ['capacity', { customers: 7, capacity: 15, vehicles: 7 }],
  ['few vehicles', { customers: 7, capacity: 22, vehicles: 2 }],
  ['windows', { customers: 6, capacity: 20, vehicles: 6, windows: 0.3 }],
  ['one-way costs', { customers: 6, capacity: 15, vehicles: 6, oneWay: true }],
];

describe.each(SHAPES)('small instances with %s', (_, shape) => {
  test('cost what brute force finds', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const problem = inventedInstance(seed, shape);
      const found = solveRouting(problem, { seed: 1, iterations: 3000 });
      const truth = bruteForce(problem);
      if (!Number.isFinite(truth)) expect(found.absent.length, `seed ${seed}`).toBeGreaterThan(0);
      else expect(found.cost, `seed ${seed}`).toBe(truth);
    }
  });
});

describe('larger instances', () => {
  const shapes: readonly Shape[] = [
    { customers: 60, capacity: 40, vehicles: 60 },
    { customers: 60, capacity: 60, vehicles: 8, windows: 0.4 },
    { customers: 60, capacity: 40, vehicles: 60, oneWay: true },
  ];

  test('every customer once or named as absent, nothing broken, the cost as the check adds it up', () => {
    for (const shape of shapes) {
      const problem = inventedInstance(5, shape);
      const found = solveRouting(problem, { seed: 2, iterations: 4000 });
      const { cost, faults } = judgeRoutes(problem, found.routes);
      const missing = found.absent.map((customer) => `customer ${customer} is visited 0 times`);
      expect([...faults].sort()).toEqual([...missing].sort());
      expect(cost).toBe(found.cost);
    }
  });

  test('same seed and iterations, same routes; another seed, others', () => {
    const problem = inventedInstance(7, { customers: 80, capacity: 30, vehicles: 80 });
    const once = solveRouting(problem, { seed: 3, iterations: 2000 });
    expect(solveRouting(problem, { seed: 3, iterations: 2000 })).toEqual(once);
    expect(solveRouting(problem, { seed: 4, iterations: 2000 }).routes).not.toEqual(once.routes);
  });

  test('more iterations are never dearer than the first routes, and a route length is kept', () => {
    const problem = { ...inventedInstance(9, { customers: 50, capacity: 500, vehicles: 50 }), mostLength: 260 };
    const first = solveRouting(problem, { seed: 1, iterations: 1 });
    const later = solveRouting(problem, { seed: 1, iterations: 5000 });
    expect(later.cost).toBeLessThan(first.cost);
    expect(judgeRoutes(problem, later.routes).faults).toEqual([]);
  });

  test('told to stop, it gives whole routes at once', () => {
    const problem = inventedInstance(11, { customers: 40, capacity: 30, vehicles: 40 });
    const found = solveRouting(problem, { seed: 1, iterations: 1_000_000 }, { signal: { stopped: () => true } });
    expect(found.iterations).toBe(0);
    expect(judgeRoutes(problem, found.routes).faults).toEqual([]);
  });
});

test('too few vehicles: the customers that cannot go along are named', () => {
  const problem = inventedInstance(3, { customers: 12, capacity: 10, vehicles: 2 });
  const found = solveRouting(problem, { seed: 1, iterations: 2000 });
  expect(found.absent.length).toBeGreaterThan(0);
  expect(found.routes.flat().length + found.absent.length).toBe(12);
});
