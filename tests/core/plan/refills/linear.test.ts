import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { LinearProgramme } from '../../../../core/plan/refills/linear.ts';

/** A condition in two variables: x * `x` + y * `y` is at least `bound`. */
type Condition = { readonly x: number; readonly y: number; readonly bound: number };

function programmeOf(costs: readonly [number, number], conditions: readonly Condition[]): LinearProgramme {
  const programme = new LinearProgramme(2);
  costs.forEach((cost, variable) => void programme.addCost(variable, cost));
  for (const { x, y, bound } of conditions) programme.atLeast(Float64Array.from([x, y, 0]), bound);
  return programme;
}

/** The least value over all points at which two of the lines (or axes) cross; where costs are positive the best point is one of them. */
function leastOverCrossings(costs: readonly [number, number], conditions: readonly Condition[]): number | null {
  const all = [...conditions, { x: 1, y: 0, bound: 0 }, { x: 0, y: 1, bound: 0 }];
  let least: number | null = null;
  for (const one of all) {
    for (const two of all) {
      const determinant = one.x * two.y - two.x * one.y;
      if (determinant === 0) continue;
      const x = (one.bound * two.y - two.bound * one.y) / determinant;
      const y = (one.x * two.bound - two.x * one.bound) / determinant;
      if (!all.every((each) => each.x * x + each.y * y >= each.bound - 1e-7)) continue;
      const value = costs[0] * x + costs[1] * y;
      if (least === null || value < least) least = value;
    }
  }
  return least;
}

describe('a linear programme', () => {
  it('takes of the cheaper first', () => {
    // 4 in all at 2 and 3 apiece, no more than 3 of the cheaper: 3 * 2 + 1 * 3 = 9.
    const programme = programmeOf([2, 3], [{ x: 1, y: 1, bound: 4 }]);
    programme.atMost(Float64Array.from([1, 0, 0]), 3);
    const result = programme.solve();
    expect(result?.objective).toBeCloseTo(9, 9);
    expect([...(result?.values ?? [])]).toEqual([3, 1]);
  });

  it('says when nothing can be found, and stops where it gets too dear', () => {
    const programme = programmeOf([1, 1], [{ x: 1, y: 0, bound: 2 }]);
    expect(programme.solve(1.5)).toBeNull();
    expect(programme.solve(2.5)?.objective).toBeCloseTo(2, 9);
    const mark = programme.mark();
    programme.atMost(Float64Array.from([1, 0, 0]), 1);
    expect(programme.solve()).toBeNull();
    programme.forget(mark);
    expect(programme.solve()?.objective).toBeCloseTo(2, 9);
  });

  it('finds the best crossing of 500 invented pairs of variables', () => {
    const random = createRandom(11);
    let possible = 0;
    for (let k = 0; k < 500; k += 1) {
      const costs: readonly [number, number] = [1 + random.below(9), 1 + random.below(9)];
      const conditions = Array.from({ length: 2 + random.below(5) }, () => ({
        x: random.below(15) - 7,
        y: random.below(15) - 7,
        bound: random.below(40) - 15,
      })).filter((each) => each.x !== 0 || each.y !== 0);
      const least = leastOverCrossings(costs, conditions);
      const found = programmeOf(costs, conditions).solve();
      expect(found === null, `programme ${k}`).toBe(least === null);
      if (found === null || least === null) continue;
      possible += 1;
      expect(found.objective, `programme ${k}`).toBeCloseTo(least, 6);
    }
    expect(possible).toBeGreaterThan(100);
  });
});
