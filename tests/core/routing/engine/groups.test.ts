import { expect, test } from 'vitest';
import { ReloadModel, type ReloadProblem, search } from '../../../../core/routing/index.ts';
import { bruteRoute, inventedReloads } from '../reload-instances.ts';

/** Two days; visits 1 and 2 belong together on both, 3 to 6 stand alone on either. */
const GROUPS = {
  firstOf: Int32Array.from([0, 1, 1, 3, 4, 5, 6]),
  countOf: Int32Array.from([0, 2, 0, 1, 1, 1, 1]),
  patterns: [[], [0b11], [], [0b01, 0b10], [0b01, 0b10], [0b01, 0b10], [0b01, 0b10]],
};
const twoDays = (seed: number) =>
  inventedReloads(seed, { visits: 6, kinds: [{ day: 0 }, { day: 1 }], kindOf: [0, 1], groups: GROUPS });

test('visits of a group lie on one of its sets of days, and the days are the best there are', () => {
  for (let seed = 1; seed <= 5; seed += 1) {
    const problem = twoDays(seed);
    const found = search(new ReloadModel(problem), { seed, iterations: 1500 });
    expect(found.absent).toEqual([]);
    expect(found.cost).toBeCloseTo(best(problem), 4);
    const both = found.routes.filter(({ customers }) => customers.includes(1) || customers.includes(2));
    expect(both).toHaveLength(2);
  }
});

test('sets of days that leave no choice are kept, and a group that fits nowhere is absent as a whole', () => {
  const problem = twoDays(3);
  const fixed = { ...GROUPS, patterns: [[], [0b11], [], [0b10], [0b10], [0b01], [0b01]] };
  const kept = search(new ReloadModel({ ...problem, groups: fixed }), { seed: 1, iterations: 300 });
  const dayOf = (visit: number) => kept.routes.find((each) => each.customers.includes(visit))?.route;
  expect([3, 4, 5, 6].map(dayOf)).toEqual([1, 1, 0, 0]);

  const none = { ...GROUPS, patterns: [[], [0b101], [], [0b01], [0b01], [0b01], [0b01]] };
  const found = search(new ReloadModel({ ...problem, groups: none }), { seed: 1, iterations: 300 });
  expect(found.absent).toEqual([1]);
  expect(found.routes.flatMap((each) => each.customers).sort()).toEqual([3, 4, 5, 6]);
});

test('the same seed and iterations give the same days', () => {
  const once = () => search(new ReloadModel(twoDays(7)), { seed: 4, iterations: 500 });
  expect(once()).toEqual(once());
});

/** Least cost over every choice of days and every order. */
function best(problem: ReloadProblem): number {
  let least = Number.POSITIVE_INFINITY;
  for (let choice = 0; choice < 16; choice += 1) {
    const days = [0, 1].map((day) => [1 + day, ...[3, 4, 5, 6].filter((each) => ((choice >> (each - 3)) & 1) === day)]);
    const cost = days.reduce((sum, visits, day) => sum + bestOrder(problem, day, [], visits), 0);
    least = Math.min(least, cost);
  }
  return least;
}

function bestOrder(problem: ReloadProblem, day: number, order: readonly number[], rest: readonly number[]): number {
  if (rest.length === 0) return bruteRoute(problem, problem.kinds[day] as never, order);
  return Math.min(
    ...rest.map((visit) =>
      bestOrder(
        problem,
        day,
        [...order, visit],
        rest.filter((each) => each !== visit),
      ),
    ),
  );
}
