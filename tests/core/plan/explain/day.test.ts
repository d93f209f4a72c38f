import { describe, expect, test } from 'vitest';
import { explainDay } from '../../../../core/plan/explain/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { placeRefills } from '../../../../core/plan/refills/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { randomProblem } from '../random-problem.ts';

const HOUR_MS = 3_600_000;

function withTank(problem: Problem, rig: number, compartment: number, parts: number): Problem {
  const grown = (each: Problem['rigs'][number]) =>
    each.compartments.map((tank, at) =>
      at === compartment ? { ...tank, capacityParts: tank.capacityParts + parts } : tank,
    );
  return {
    ...problem,
    rigs: problem.rigs.map((each, at) => (at === rig ? { ...each, compartments: grown(each) } : each)),
  };
}

describe('one more gallon', () => {
  const problem = problemOf(sampleBook('residential-day'));
  const solution = solve(problem, { seed: 3, iterations: 200 });
  const tanks = explainDay(problem, solution, 0).filter((each) => each.what === 'compartment');

  test('is told for each tank that the day draws on', () => {
    expect(tanks.length).toBeGreaterThan(0);
    for (const each of tanks) expect(problem.rigs[0]?.compartments[each.compartment]?.kind).toBe('tank');
  });

  test('saves what it says when the day is placed with it', () => {
    const [route] = solution.routes;
    if (route === undefined) throw new RangeError('no route');
    for (const { compartment, amount, savedCost } of tanks) {
      expect(amount).toBe(100);
      const placement = placeRefills(withTank(problem, 0, compartment, amount), 0, route.visits);
      if (placement.kind !== 'placed') throw new RangeError('not placed');
      // The figure may come from a quicker placing; with all care a day is never dearer.
      expect(route.cost - placement.outcome.cost).toBeGreaterThanOrEqual(savedCost - 1);
    }
  });
});

describe('one more hour of shift', () => {
  const problem = randomProblem(3, { jobs: 16, stations: 1, zones: 1, hours: 3 });
  const solution = solve(problem, { seed: 1, iterations: 60 });
  const [hour] = explainDay(problem, solution, 0);
  const longer: Problem = { ...problem, rigs: problem.rigs.map((rig) => ({ ...rig, shiftMs: rig.shiftMs + HOUR_MS })) };
  const fitsIn = (among: Problem, job: number): boolean => {
    const visits = solution.routes[0]?.visits ?? [];
    return [...visits, null].some((_, at) => {
      const row = [...visits.slice(0, at), { job, mode: 0 }, ...visits.slice(at)];
      return placeRefills(among, 0, row).kind === 'placed';
    });
  };

  test('saves at least the overtime pay of that hour', () => {
    const [route] = solution.routes;
    const [rig] = problem.rigs;
    if (route === undefined || rig === undefined) throw new RangeError('no route');
    const overtime = Math.min(HOUR_MS, Math.max(0, route.paidMs - rig.shiftMs));
    expect(overtime).toBeGreaterThan(0);
    expect(hour?.savedCost).toBeGreaterThanOrEqual(overtime * rig.overtimeCostPerMs);
  });

  test('lets in the work that it names, and some of it does not fit without', () => {
    expect(hour?.jobs.length).toBeGreaterThan(0);
    for (const job of hour?.jobs ?? []) {
      expect(fitsIn(longer, job), `job ${job} with the hour`).toBe(true);
    }
    const without = (hour?.jobs ?? []).filter((job) => !fitsIn(problem, job));
    expect(without.length).toBeGreaterThan(0);
  });
});

test('a slot without a route has no figures', () => {
  const problem = randomProblem(3, { jobs: 3, stations: 0, zones: 1, days: 2 });
  const solution = { ...solve(problem, { seed: 1, iterations: 10 }), routes: [] };
  expect(explainDay(problem, solution, 0)).toEqual([]);
});
