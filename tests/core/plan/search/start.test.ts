import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { Solution } from '../../../../core/plan/refills/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { type Start, solve, startFrom } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { randomProblem } from '../random-problem.ts';

const TWO_DAYS = { jobs: 24, rigs: 2, days: 2, stations: 1, zones: 1, largest: 10, hours: 8 };

function startOf({ routes }: Solution, rest: Omit<Start, 'routes'> & { readonly keepFirst?: number } = {}): Start {
  const { keepFirst = 0, ...pinned } = rest;
  return { routes: routes.map(({ slot, visits }) => ({ slot, visits, keepFirst })), ...pinned };
}

function slotsOf({ routes }: Solution): ReadonlyMap<number, number> {
  return new Map(routes.flatMap(({ slot, visits }) => visits.map(({ job }) => [job, slot] as const)));
}

/** Another problem of the same jobs: every way takes a third longer, so that a plan of the old one does not suit it. */
function slower(problem: Problem): Problem {
  return {
    ...problem,
    travelMs: problem.travelMs.map((ms) => Math.ceil((4 * ms) / 3)),
    jobs: problem.jobs.map((job, index) => (index % 3 === 0 ? { ...job, lateCost: job.lateCost.map(() => 1e9) } : job)),
  };
}

describe('a search that begins with a plan', () => {
  it('never ends with a dearer one', { timeout: 60_000 }, () => {
    for (const seed of [1, 2, 3]) {
      const problem = randomProblem(seed, TWO_DAYS);
      const first = solve(problem, { seed, iterations: 300 });
      const again = solve(problem, { seed: seed + 9, iterations: 300, start: startOf(first) });
      expect(again.unserved.length, `seed ${seed}`).toBeLessThanOrEqual(first.unserved.length);
      if (again.unserved.length === first.unserved.length) expect(again.cost).toBeLessThanOrEqual(first.cost + 1);
    }
  });

  it('moves fewer jobs to another rig or day than one that begins anew', { timeout: 60_000 }, () => {
    let moved = 0;
    let movedAnew = 0;
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]) {
      const problem = randomProblem(seed, TWO_DAYS);
      const first = slotsOf(solve(problem, { seed, iterations: 2000 }));
      const changed = slower(problem);
      const away = (other: Solution): number =>
        [...slotsOf(other)].filter(([job, slot]) => first.get(job) !== slot).length;
      const start = startOf(solve(problem, { seed, iterations: 2000 }));
      moved += away(solve(changed, { seed: 5, iterations: 300, start }));
      movedAnew += away(solve(changed, { seed: 5, iterations: 300 }));
    }
    expect(moved).toBeLessThan(movedAnew);
  });

  it('keeps the first stops of every day in their order', { timeout: 60_000 }, () => {
    for (const seed of [1, 2, 3]) {
      const problem = randomProblem(seed, TWO_DAYS);
      const first = solve(problem, { seed, iterations: 50 });
      const again = solve(slower(problem), { seed, iterations: 500, start: startOf(first, { keepFirst: 3 }) });
      for (const { slot, visits } of first.routes) {
        const jobs = again.routes.find((each) => each.slot === slot)?.visits.map(({ job }) => job) ?? [];
        const kept = visits.slice(0, 3).map(({ job }) => job);
        expect(jobs.slice(0, kept.length), `seed ${seed}, slot ${slot}`).toEqual(kept);
      }
    }
  });

  it('leaves pinned jobs on their rig and day, and in the plan', { timeout: 60_000 }, () => {
    for (const seed of [1, 2, 3]) {
      const problem = randomProblem(seed, { ...TWO_DAYS, hours: 5 });
      const first = solve(problem, { seed, iterations: 50 });
      const slots = slotsOf(first);
      const pinned = [...slots.keys()].filter((job) => job % 3 === 1);
      expect(pinned.length).toBeGreaterThan(3);
      const again = solve(problem, { seed: 7, iterations: 800, start: startOf(first, { pinned }) });
      for (const job of pinned) expect(slotsOf(again).get(job), `seed ${seed}, job ${job}`).toBe(slots.get(job));
    }
  });

  it('leaves a whole day of pinned jobs and kept orders as it is', { timeout: 60_000 }, () => {
    const problem = randomProblem(5, TWO_DAYS);
    const first = solve(problem, { seed: 1, iterations: 200 });
    const again = solve(problem, { seed: 2, iterations: 400, start: startOf(first, { keepFirst: 99 }) });
    const plain = ({ routes }: Solution) => routes.map(({ slot, visits }) => [slot, visits.map(({ job }) => job)]);
    expect(plain(again)).toEqual(plain(first));
  });

  it('takes up a start that is none of this problem as far as it goes', () => {
    const problem = randomProblem(6, TWO_DAYS);
    const visit = { job: 2, mode: 99 };
    const routes = [
      { slot: 0, visits: [visit, visit, { job: 999, mode: 0 }, { job: -1, mode: 0 }], keepFirst: 9 },
      { slot: 0, visits: [{ job: 3, mode: 0 }] },
      { slot: 77, visits: [{ job: 4, mode: 0 }] },
    ];
    const { unserved } = solve(problem, { seed: 1, iterations: 50, start: { routes, pinned: [999] } });
    expect(unserved.length).toBeLessThan(problem.jobs.length);
  });
});

describe('the start that a plan gives', () => {
  it.each(['residential-day', 'mixed-day', 'four-day-round'] as const)(
    'has the visits of %s',
    { timeout: 60_000 },
    (name) => {
      const book = sampleBook(name);
      const problem = problemOf(book);
      const solution = solve(problem, { seed: 1, iterations: 300 });
      const start = startFrom(problem, explainPlan(book, problem, solution), { keepFirst: 2, pinned: 'all' });
      const plain = (routes: Start['routes']) => routes.map(({ slot, visits }) => [slot, visits]);
      expect(plain(start.routes)).toEqual(plain(solution.routes));
      expect(start.pinned).toHaveLength(problem.jobs.length);
      expect(start.routes.every((route) => route.keepFirst === 2)).toBe(true);
    },
  );
});
