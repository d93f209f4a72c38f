import { expect, test } from 'vitest';
import { nearness } from '../../../../core/routing/models/neighbours.ts';
import type { RoutingProblem } from '../../../../core/routing/models/types.ts';

/** Four customers on a line at 1, 2, 3 and 4 from the depot; a day of 100. */
function line(open: readonly number[], close: readonly number[], allowed: readonly number[]): RoutingProblem {
  const cost = Int32Array.from({ length: 25 }, (_, at) => Math.abs(Math.floor(at / 5) - (at % 5)));
  return {
    name: 'line',
    customers: 4,
    cost,
    time: cost,
    distances: Float64Array.from(cost),
    demand: new Int32Array(5),
    service: new Int32Array(5),
    windows: { open: Int32Array.from(open), close: Int32Array.from(close) },
    capacity: 1,
    mostLength: Number.POSITIVE_INFINITY,
    vehicles: 2,
    costPerUnit: 1,
    fleet: {
      kinds: [0, 1].map((vehicle) => ({ vehicles: [vehicle], capacity: 1, fixed: 0, perLength: 1 })),
      allowed: Int32Array.from(allowed),
      release: undefined,
      mostDuration: Number.POSITIVE_INFINITY,
      reloads: false,
    },
  };
}

const ALL_DAY = [100, 100, 100, 100, 100];

function rowOf(problem: RoutingProblem, customer: number): readonly number[] {
  const { near, nearWidth } = nearness(problem);
  return [...near.subarray(customer * nearWidth, (customer + 1) * nearWidth)];
}

test('with windows and vehicles that suit everybody neighbours are sorted by distance', () => {
  expect(rowOf(line([0, 0, 0, 0, 0], ALL_DAY, [3, 3, 3, 3, 3]), 1)).toEqual([1, 2, 3, 4]);
});

test('customers that no vehicle may both go to come last', () => {
  expect(rowOf(line([0, 0, 0, 0, 0], ALL_DAY, [3, 1, 2, 1, 3]), 1)).toEqual([1, 3, 4, 2]);
});

test('customers between which a vehicle would wait for more than a tenth of the day come last', () => {
  const close = [100, 20, 100, 100, 100];
  // From customer 1, left at 20 at the latest, customer 2 is reached at 21 and customer 3 at 22.
  expect(rowOf(line([0, 0, 31, 0, 0], close, [3, 3, 3, 3, 3]), 1)).toEqual([1, 2, 3, 4]);
  expect(rowOf(line([0, 0, 32, 0, 0], close, [3, 3, 3, 3, 3]), 1)).toEqual([1, 3, 4, 2]);
});
