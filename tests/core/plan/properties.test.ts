import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyBook } from '../../../core/book/index.ts';
import { judgePlan } from '../../../core/plan/judge/index.ts';
import type { Problem } from '../../../core/plan/problem/index.ts';
import type { Solution } from '../../../core/plan/refills/index.ts';
import { explainPlan, type Plan } from '../../../core/plan/result/index.ts';
import { solve } from '../../../core/plan/search/index.ts';
import { naiveJudge } from './naive/naive-judge.ts';
import { type ProblemShape, randomProblem } from './random-problem.ts';

/** What holds for every plan, whatever finds it: on days of all kinds, drawn by their seeds. */
const SHAPES: readonly ProblemShape[] = [
  { jobs: 9, stations: 1, zones: 1, materials: 3 },
  { jobs: 10, rigs: 2, modes: 2, stations: 1, zones: 1 },
  { jobs: 10, days: 2, stations: 1, zones: 1, hours: 4 },
  { jobs: 9, stations: 1, zones: 1, windows: 0.3, breaks: 0.5 },
  { jobs: 9, stations: 1, hours: 3, thirst: 1.5, heavy: 0.5 },
];
const ITERATIONS = 25;
const someProblem = fc
  .tuple(fc.integer({ min: 1, max: 10_000 }), fc.constantFrom(...SHAPES))
  .map(([seed, shape]) => randomProblem(seed, shape));

/** Stops after so many looks at the signal, and never polishes for long. */
function search(problem: Problem, seed = 1, looks = 60): Solution {
  let asked = 0;
  const signal = { stopped: () => asked++ >= looks };
  return solve(problem, { seed, iterations: ITERATIONS }, { signal });
}

function planOf(problem: Problem, solution: Solution): Plan {
  return explainPlan(emptyBook('invented', 'Invented'), problem, solution);
}

const settings = (numRuns: number) => ({ numRuns, seed: 20 });

describe('every plan', () => {
  it('has each task once in its days, or listed with a reason for every rig', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(someProblem, (problem) => {
        const plan = planOf(problem, search(problem));
        const done = plan.days.flatMap((day) => day.stops.flatMap((stop) => stop.tasks));
        const names = [...done, ...plan.unplaced].map((each) => `${each.propertyId} ${each.zoneId}`);
        const tasks = problem.tasks.map((each) => `${each.propertyId} ${each.zoneId}`);
        expect(names.sort()).toEqual(tasks.sort());
        for (const { reasons } of plan.unplaced) {
          expect(reasons.map((each) => each.rigId)).toEqual(problem.rigs.map((each) => each.rigId));
          for (const { code, words } of reasons) expect([code, words]).not.toContain('');
        }
      }),
      settings(12),
    );
  });

  it('keeps every level between empty and full, and costs what it says, for both judges', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(someProblem, (problem) => {
        const solution = search(problem);
        const plan = planOf(problem, solution);
        for (const line of plan.days.flatMap((day) => day.levels)) {
          expect(Math.min(...line.points.map(([, level]) => level)), line.id).toBeGreaterThanOrEqual(0);
          expect(Math.max(...line.points.map(([, level]) => level)), line.id).toBeLessThanOrEqual(line.capacity);
        }
        expect(judgePlan(problem, plan).violations).toEqual([]);
        const naive = naiveJudge(problem, plan);
        expect(naive.faults).toEqual([]);
        const cost = naive.days.reduce((sum, day) => sum + day.cost, 0);
        expect(Math.abs(cost - solution.cost)).toBeLessThanOrEqual(1 + Math.abs(cost) * 1e-12);
      }),
      settings(12),
    );
  });

  it('is whole and valid wherever the search is cancelled', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(someProblem, fc.nat(80), (problem, looks) => {
        const plan = planOf(problem, search(problem, 2, looks));
        expect(judgePlan(problem, plan).violations, `${looks} looks`).toEqual([]);
      }),
      settings(15),
    );
  });

  it('is the same to the byte for the same seed and iterations', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(someProblem, fc.nat(1000), (problem, seed) => {
        const text = (): string => JSON.stringify(planOf(problem, search(problem, seed)));
        expect(text()).toBe(text());
      }),
      settings(5),
    );
  });
});

/** The problem under other names, everything else as it was. */
function renamed(problem: Problem): Problem {
  const other = (id: string): string => `zz-${[...id].reverse().join('')}`;
  return {
    ...problem,
    placeIds: problem.placeIds.map(other),
    stocks: problem.stocks.map((each) => ({ ...each, productId: each.kind === 'water' ? '' : other(each.productId) })),
    materials: problem.materials.map((each) => ({ ...each, id: other(each.id) })),
    stations: problem.stations.map((each) => ({ ...each, fillPointId: other(each.fillPointId) })),
    rigs: problem.rigs.map((rig) => ({
      ...rig,
      rigId: other(rig.rigId),
      compartments: rig.compartments.map((each) => ({ ...each, id: other(each.id) })),
    })),
    tasks: problem.tasks.map((each) => ({ ...each, propertyId: other(each.propertyId), zoneId: other(each.zoneId) })),
    jobs: problem.jobs.map((each) => ({ ...each, propertyId: other(each.propertyId) })),
  };
}

const SHIFT_MS = 1_234_567;

/** Everything an odd while later: shifts, breaks, customers' hours and those of stations. */
function later(problem: Problem): Problem {
  const hours = <T extends { readonly openMs: number; readonly closeMs: number }>(each: T): T => ({
    ...each,
    openMs: each.openMs + SHIFT_MS,
    closeMs: each.closeMs + SHIFT_MS,
  });
  return {
    ...problem,
    stations: problem.stations.map(hours),
    jobs: problem.jobs.map(hours),
    rigs: problem.rigs.map((rig) => ({
      ...rig,
      shiftStartMs: rig.shiftStartMs + SHIFT_MS,
      breakAfterMs: rig.breakAfterMs < 0 ? -1 : rig.breakAfterMs + SHIFT_MS,
    })),
  };
}

function movedBack(solution: Solution): Solution {
  return {
    ...solution,
    routes: solution.routes.map((route) => ({
      ...route,
      activities: route.activities.map((each) => ({
        ...each,
        startMs: each.startMs - SHIFT_MS,
        endMs: each.endMs - SHIFT_MS,
      })),
    })),
  };
}

/** The jobs in reverse order, with their tasks. */
function turnedRound(problem: Problem): Problem {
  return { ...problem, jobs: [...problem.jobs].reverse() };
}

describe('what a plan does not depend on', () => {
  it('are the names of things', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(someProblem, (problem) => {
        expect(search(renamed(problem))).toEqual(search(problem));
      }),
      settings(6),
    );
  });

  it('is the time of day at which everything begins', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(someProblem, (problem) => {
        expect(movedBack(search(later(problem)))).toEqual(search(problem));
      }),
      settings(6),
    );
  });

  it('is the order in which jobs are numbered, where the best plan is found', { timeout: 60_000 }, () => {
    for (let seed = 1; seed <= 5; seed += 1) {
      const problem = randomProblem(seed, { jobs: 4, stations: 1, zones: 1, heavy: 0, evenFlow: true });
      const [forward, backward] = [problem, turnedRound(problem)].map((each) =>
        solve(each, { seed: 1, iterations: 60 }),
      );
      expect(backward?.unserved.length, `seed ${seed}`).toBe(forward?.unserved.length);
      expect(Math.abs((backward?.cost ?? 0) - (forward?.cost ?? 0)), `seed ${seed}`).toBeLessThanOrEqual(1);
    }
  });
});
