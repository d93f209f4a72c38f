import { describe, expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { judgeRoutes, solveRouting } from '../../../../core/routing/index.ts';
import { FleetModel } from '../../../../core/routing/models/fleet.ts';
import { inventedFleet, MIXED, RESTRICTED, readFleet } from '../fleet-instances.ts';
import { expectToBeginAgain } from './begin-again.ts';

describe('routes of a fleet', () => {
  test('the cheapest use of a mixed fleet', () => {
    // One vehicle of each kind: (10 + 4) + (12.5 + 2 * 20) = 66.5. The small ones alone take 2 + 3 and 4: customers 3 and 1 make
    // 2 + sqrt(13) + 5 long, so 10 + 10.61 + 10 + 20 = 50.61.
    const answer = solveRouting(readFleet(MIXED), { seed: 1, iterations: 200 });
    const { cost, faults } = judgeRoutes(readFleet(MIXED), answer.routes);
    expect(faults).toEqual([]);
    expect(cost).toBeCloseTo(10 + 2 + Math.hypot(3, 2) + 5 + 10 + 20, 9);
    expect(answer.routes).toHaveLength(3);
    expect(answer.routes[1]).toEqual([]);
  });

  test('who may go where decides', () => {
    const answer = solveRouting(readFleet(RESTRICTED), { seed: 1, iterations: 200 });
    expect(judgeRoutes(readFleet(RESTRICTED), answer.routes)).toEqual({ cost: 24, faults: [] });
  });

  test.each([
    [1, 0],
    [2, 0],
    [3, 0.4],
    [4, 0.4],
  ])('what the search reckons is what the judge reckons: seed %i, windows %d', (seed, windows) => {
    const problem = inventedFleet(seed, 40, windows);
    const answer = solveRouting(problem, { seed, iterations: 3000 });
    const { cost, faults } = judgeRoutes(problem, answer.routes);
    expect(answer.absent).toEqual([]);
    expect(faults).toEqual([]);
    expect(cost).toBeCloseTo(answer.cost / problem.costPerUnit, 6);
    expect(solveRouting(problem, { seed, iterations: 3000 })).toEqual(answer);
  });

  test('a customer that no vehicle may serve stays absent', () => {
    const text = RESTRICTED.replace('1 2 3\n2 3 4', '1 2\n2 4');
    const answer = solveRouting(readFleet(text), { seed: 1, iterations: 200 });
    expect(answer.absent).toEqual([2]);
  });

  test.each([0, 0.4])('a search begins where another one ended, with the same vehicles: windows %d', (windows) => {
    const problem = inventedFleet(5, 40, windows);
    const model = (): FleetModel =>
      new FleetModel(problem, problem.fleet as NonNullable<typeof problem.fleet>, createRandom(1));
    const { found, again } = expectToBeginAgain(problem, model);
    expect(again.routes.map(({ route, note }) => [route, note])).toEqual(
      found.routes.map(({ route, note }) => [route, note]),
    );
    expect(new Set(found.routes.map(({ note }) => note)).size).toBeGreaterThan(1);
  });
});
