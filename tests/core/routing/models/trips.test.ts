import { describe, expect, test } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { judgeRoutes, type RoutingProblem, solveRouting } from '../../../../core/routing/index.ts';
import { TripsModel } from '../../../../core/routing/models/trips.ts';
import { readFleet, SEVERAL_LOADS } from '../fleet-instances.ts';
import { inventedInstance } from '../instances.ts';
import { expectToBeginAgain } from './begin-again.ts';

/** Fewer vehicles than loads, goods that come during the day, and wide windows. */
function inventedTrips(seed: number): RoutingProblem {
  const problem = inventedInstance(seed, { customers: 30, capacity: 25, vehicles: 4, windows: 0.5 });
  const vehicles = [0, 1, 2, 3, 4];
  return {
    ...problem,
    costPerUnit: 100,
    vehicles: vehicles.length,
    fleet: {
      kinds: [{ vehicles, capacity: 25, fixed: 0, perLength: 1 }],
      allowed: new Int32Array(31).fill(1),
      release: Int32Array.from(
        { length: 31 },
        (_, node) => (node % 2) * Math.floor((problem.windows?.open[node] ?? 0) / 2),
      ),
      mostDuration: Number.POSITIVE_INFINITY,
      reloads: true,
    },
  };
}

describe('vehicles that come back for more', () => {
  test('one vehicle does alone what two loads take', () => {
    const problem = readFleet(SEVERAL_LOADS.replace('VEHICLES: 2', 'VEHICLES: 1').replace('2 1\nEOF', 'EOF'));
    const answer = solveRouting(problem, { seed: 1, iterations: 200 });
    // Customers 1 and 2 make a load, 3 another, which must go first: its window closes at 30.
    expect(judgeRoutes(problem, answer.routes)).toEqual({ cost: 24, faults: [] });
    expect(answer.routes).toHaveLength(1);
    expect([...(answer.routes[0] ?? [])].slice(0, 2)).toEqual([3, 0]);
  });

  test.each([1, 2, 3])('what the search reckons is what the judge reckons: seed %i', (seed) => {
    const problem = inventedTrips(seed);
    const answer = solveRouting(problem, { seed, iterations: 3000 });
    const { cost, faults } = judgeRoutes(problem, answer.routes);
    expect(answer.absent).toEqual([]);
    expect(faults).toEqual([]);
    expect(cost).toBeCloseTo(answer.cost / problem.costPerUnit, 6);
    expect(answer.routes.flat()).toContain(0);
    expect(solveRouting(problem, { seed, iterations: 3000 })).toEqual(answer);
  });

  test('goods that come too late for their customer leave it absent', () => {
    const problem = readFleet(SEVERAL_LOADS.replace('4 10', '4 29'));
    const answer = solveRouting(problem, { seed: 1, iterations: 200 });
    expect(answer.absent).toEqual([3]);
  });

  test('a search begins where another one ended, with the same trips by the same vehicles', () => {
    const problem = inventedTrips(4);
    const model = (): TripsModel =>
      new TripsModel(problem, problem.fleet as NonNullable<typeof problem.fleet>, createRandom(1));
    expectToBeginAgain(problem, model);
  });
});
