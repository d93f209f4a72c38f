import { describe, expect, test } from 'vitest';
import { explainChoices, type OtherWay } from '../../../../core/plan/explain/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { type Problem, unevenCost } from '../../../../core/plan/problem/index.ts';
import { placeRefills, type RouteOutcome, type Solution, type Visit } from '../../../../core/plan/refills/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

const AMPLE = 1000;
const book = sampleBook('mixed-day');
const problem = problemOf(book);
const solution = solve(problem, { seed: 2, iterations: 60 });
const asked = solution.routes.flatMap((route) =>
  explainChoices(problem, solution, route.slot, AMPLE).map((way) => ({ route, way })),
);

/** The whole plan with one visit done as said, every changed day placed anew; null where a day cannot be done. */
function redone(route: RouteOutcome, way: OtherWay): Solution | null {
  const job = route.visits[way.visit]?.job ?? -1;
  const changed = new Map<number, readonly Visit[]>();
  const visitsOf = (slot: number): readonly Visit[] =>
    changed.get(slot) ?? solution.routes.find((each) => each.slot === slot)?.visits ?? [];
  changed.set(route.slot, visitsOf(route.slot).toSpliced(way.visit, 1));
  changed.set(way.slot, visitsOf(way.slot).toSpliced(way.position, 0, { job, mode: way.mode }));
  const placed = [...changed].map(([slot, visits]) => placeRefills(problem, slot, visits));
  const outcomes = placed.flatMap((each) => (each.kind === 'placed' ? [each.outcome] : []));
  if (outcomes.length < changed.size) return null;
  const routes = [...solution.routes.filter((each) => !changed.has(each.slot)), ...outcomes];
  return { ...solution, routes, cost: routes.reduce((sum, each) => sum + each.cost, 0) };
}

const paid = (of: Solution): number => of.routes.reduce((sum, each) => sum + each.paidMs, 0);

describe('what a stop would take another way', () => {
  test('is told of other machines and of the other rig', () => {
    expect(asked.some(({ route, way }) => way.slot === route.slot)).toBe(true);
    expect(asked.some(({ route, way }) => way.slot !== route.slot)).toBe(true);
  });

  test('is what the plan takes when it is done so, and the judge agrees', () => {
    for (const [index, { route, way }] of asked.entries()) {
      const other = redone(route, way);
      const where = `slot ${route.slot}, visit ${way.visit} in slot ${way.slot}, mode ${way.mode}`;
      expect(other, where).not.toBeNull();
      if (other === null) continue;
      expect(Math.abs(other.cost - solution.cost - way.addedCost), where).toBeLessThanOrEqual(2);
      expect(paid(other) - paid(solution), where).toBe(way.addedMs);
      // Writing a plan takes long beside all else here.
      if (index % 6 > 0) continue;
      const verdict = judgePlan(problem, explainPlan(book, problem, other));
      expect(verdict.violations, where).toEqual([]);
      expect(Math.abs(verdict.totals.costUsd - (solution.cost + way.addedCost) / 1e9), where).toBeLessThan(0.011);
    }
  });

  test('holds what days of unlike length then cost more or less', () => {
    const priced = { ...problem, evenDays: { usdPerHour: 20, costPerMs: 5556 } };
    const lengths = (of: Solution): readonly number[] => of.routes.map((each) => each.paidMs);
    let moved = 0;
    for (const { route, way } of asked) {
      const same = explainChoices(priced, solution, route.slot, AMPLE).find(
        (each) =>
          each.visit === way.visit &&
          each.slot === way.slot &&
          each.position === way.position &&
          each.mode === way.mode,
      );
      const other = redone(route, way);
      if (same === undefined || other === null) continue;
      const uneven = unevenCost(priced, lengths(other)) - unevenCost(priced, lengths(solution));
      expect(Math.abs(same.addedCost - way.addedCost - uneven)).toBeLessThanOrEqual(2);
      if (uneven !== 0) moved += 1;
      if (moved >= 6) break;
    }
    expect(moved).toBe(6);
  });

  test('stops after as many days as it may place', () => {
    const slot = solution.routes[0]?.slot ?? 0;
    expect(explainChoices(problem, solution, slot, 0)).toEqual([]);
    expect(explainChoices(problem, solution, slot, 3).length).toBeLessThanOrEqual(3);
  });
});

describe('a plan', () => {
  test('says it in words with the figures', () => {
    const plan = explainPlan(book, problem, solution);
    const ways = plan.days.flatMap((day) => day.stops.flatMap((stop) => stop.otherWays));
    expect(ways.length).toBeGreaterThan(0);
    for (const way of ways) {
      expect(way.words).toMatch(/ (more|less)|no difference/);
      if (Math.abs(way.addedUsd) >= 1) expect(way.words).toContain(`$${Math.abs(way.addedUsd).toFixed(2)}`);
      expect(way.methods.length).toBeGreaterThan(0);
    }
  });

  test('names what comes first on the same ground', () => {
    const ordered = explainPlan(book, problem, solution).days.flatMap((day) =>
      day.stops.flatMap((stop) => stop.tasks.filter((task) => task.why.includes('Comes after'))),
    );
    const rankOf = (of: Problem, treatmentId: string): number =>
      of.tasks.find((each) => each.treatmentId === treatmentId)?.rank ?? -1;
    const highest = Math.max(...problem.tasks.map((each) => each.rank));
    expect(ordered.length).toBeGreaterThan(0);
    for (const task of ordered) expect(rankOf(problem, task.treatmentId)).toBe(highest);
  });
});
