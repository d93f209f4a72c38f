import { describe, expect, it } from 'vitest';
import type { Progress } from '../../../../core/base/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { Solution } from '../../../../core/plan/refills/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { replay } from '../refills/replay.ts';

const SHAPES: readonly { readonly name: string; readonly shape: ProblemShape; readonly iterations: number }[] = [
  { name: 'one day of 20 stops', shape: { jobs: 20, stations: 2, zones: 1, largest: 10, hours: 14 }, iterations: 300 },
  { name: 'two rigs', shape: { jobs: 14, rigs: 2, stations: 1, modes: 2, largest: 12 }, iterations: 300 },
  { name: 'three days', shape: { jobs: 24, days: 3, stations: 2, zones: 1, largest: 15, hours: 6 }, iterations: 300 },
  { name: 'too little time', shape: { jobs: 20, days: 2, stations: 1, hours: 2 }, iterations: 200 },
  {
    name: 'windows',
    shape: { jobs: 12, stations: 2, windows: 0.4, breaks: 0.5, zones: 1, hours: 12 },
    iterations: 200,
  },
  { name: 'a tiny problem', shape: { jobs: 5, stations: 1, zones: 1 }, iterations: 60 },
];

/** What is wrong with a solution: every job exactly once or unserved, on allowed days, routes that hold. */
function faultsOf(problem: Problem, solution: Solution): string[] {
  const times = new Int32Array(problem.jobs.length);
  const faults: string[] = [];
  for (const route of solution.routes) {
    const day = problem.slots[route.slot]?.day ?? -1;
    faults.push(...replay(problem, route));
    for (const { job } of route.visits) {
      times[job] = (times[job] as number) + 1;
      if (problem.jobs[job]?.dayAllowed[day] !== 1) faults.push(`job ${job} on day ${day}`);
    }
  }
  for (const job of solution.unserved) times[job] = (times[job] as number) + 1;
  times.forEach((count, job) => {
    if (count !== 1) faults.push(`job ${job} appears ${count} times`);
  });
  const cost = solution.routes.reduce((sum, route) => sum + route.cost, 0);
  if (Math.abs(cost - solution.cost) > 1) faults.push(`costs ${cost}, says ${solution.cost}`);
  return faults;
}

describe.each(SHAPES)('plans of $name', ({ shape, iterations }) => {
  it('have every job once or unserved, and hold', { timeout: 60_000 }, () => {
    for (const seed of [1, 2, 3]) {
      const problem = randomProblem(seed, shape);
      expect(faultsOf(problem, solve(problem, { seed, iterations })), `seed ${seed}`).toEqual([]);
    }
  });

  it('are the same bytes for the same seed', { timeout: 60_000 }, () => {
    const problem = randomProblem(4, shape);
    const first = JSON.stringify(solve(problem, { seed: 9, iterations }));
    expect(JSON.stringify(solve(problem, { seed: 9, iterations }))).toBe(first);
  });

  it('hold when the search is stopped at any moment', { timeout: 120_000 }, () => {
    const problem = randomProblem(5, shape);
    for (const ticks of [0, 1, 2, 5, 20, 60]) {
      let asked = 0;
      const signal = { stopped: () => asked++ >= ticks };
      expect(faultsOf(problem, solve(problem, { seed: 1, iterations }, { signal })), `${ticks} ticks`).toEqual([]);
    }
  });
});

describe('progress', () => {
  it('never goes backwards, comes at least every 100 ms or so and ends at the total', () => {
    const problem = randomProblem(1, { jobs: 20, stations: 1, zones: 1, largest: 10, hours: 14 });
    let now = 0;
    const seen: { at: number; progress: Progress }[] = [];
    solve(
      problem,
      { seed: 1, seconds: 2 },
      {
        // Every look at the clock takes 7 ms.
        clock: { nowMs: () => (now += 7) },
        onProgress: (progress) => seen.push({ at: now, progress }),
      },
    );
    const done = seen.map((each) => each.progress.done);
    expect(done).toEqual([...done].sort((left, right) => left - right));
    expect(done.at(-1)).toBe(seen.at(-1)?.progress.total);
    const searching = seen.slice(0, -1);
    const gaps = searching.slice(1).map((each, at) => each.at - (searching[at]?.at ?? 0));
    expect(searching.length).toBeGreaterThan(8);
    expect(Math.max(...gaps)).toBeLessThan(150);
  });
});

describe('more capacity', () => {
  it('never makes the best plan of a small problem dearer', { timeout: 120_000 }, () => {
    for (let seed = 1; seed <= 8; seed += 1) {
      const problem = randomProblem(seed, { jobs: 4, stations: 1, zones: 1, thirst: 1.3, heavy: 0, evenFlow: true });
      const larger = {
        ...problem,
        rigs: problem.rigs.map((rig) => ({
          ...rig,
          nurseParts: Math.ceil(rig.nurseParts * 1.5),
          compartments: rig.compartments.map((each) => ({
            ...each,
            capacityParts: Math.ceil(each.capacityParts * 1.3),
          })),
        })),
      };
      const before = solve(problem, { seed: 1, iterations: 400 });
      const after = solve(larger, { seed: 1, iterations: 400 });
      expect(after.unserved.length, `seed ${seed}`).toBeLessThanOrEqual(before.unserved.length);
      if (after.unserved.length === before.unserved.length) expect(after.cost).toBeLessThanOrEqual(before.cost + 1);
    }
  });
});
