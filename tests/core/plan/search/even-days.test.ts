import { describe, expect, it } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { buildProblem, daysAboveMs, type Problem, unevenCost } from '../../../../core/plan/problem/index.ts';
import { RefillPlacer, type Solution, type Visit } from '../../../../core/plan/refills/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { sampleBook } from '../../../support/samples.ts';
import { naiveJudge } from '../naive/naive-judge.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';

const HOUR_MS = 3_600_000;
const BOOK = emptyBook('invented', 'Invented');

/** An invented problem with a price of so many dollars on each hour above the mean day. */
function priced(seed: number, shape: ProblemShape, usdPerHour: number): Problem {
  const costPerMs = Math.round((usdPerHour * 1e9) / HOUR_MS);
  return { ...randomProblem(seed, shape), evenDays: { usdPerHour, costPerMs } };
}

const lengthsOf = (solution: Solution): readonly number[] => solution.routes.map((each) => each.paidMs);

describe('how unlike days are', () => {
  it.each([
    [[], 0],
    [[5], 0],
    [[0, 7, 7, 0], 0],
    // The mean of 10, 4 and 4 is 6; a day that is not used does not count.
    [[10, 4, 0, 4], 4],
    // The mean of 3 and 4 is 3.5, rounded up to 4.
    [[3, 4], 0],
    [[9, 8, 2, 1], 7],
  ])('%j: %i ms above the mean', (lengths, above) => {
    expect(daysAboveMs(lengths)).toBe(above);
  });
});

describe('a problem with a price on days of unlike length', () => {
  const round = (usdPerHour: number): Problem => {
    const built = buildProblem(sampleBook('four-day-round'), 'spring', { evenUsdPerHour: usdPerHour });
    if (!built.ok) throw new Error(built.error.detail);
    return built.value;
  };

  it('is another problem, and without one the same as ever', () => {
    const [none, some, more] = [round(0), round(5), round(6)];
    expect('evenDays' in none).toBe(false);
    // 5 dollars an hour: 5e9 nano-dollars by 3.6e6 ms.
    expect(some.evenDays).toEqual({ usdPerHour: 5, costPerMs: 1389 });
    expect(new Set([none.hash, some.hash, more.hash]).size).toBe(3);
  });

  it('notes a price above the pay of a crew', () => {
    const noted = (usdPerHour: number): boolean =>
      round(usdPerHour).issues.some((each) => each.code === 'even-days-above-pay');
    expect([noted(5), noted(900)]).toEqual([false, true]);
  });
});

const SHAPES: readonly (readonly [string, ProblemShape])[] = [
  ['small', { jobs: 7, days: 3, stations: 1, zones: 1, hours: 6 }],
  ['two rigs, two days', { jobs: 26, rigs: 2, days: 2, stations: 1, zones: 1, largest: 12, hours: 9 }],
  ['five days', { jobs: 30, days: 5, stations: 2, zones: 1, largest: 15, hours: 7 }],
];

describe.each(SHAPES)('plans of %s', (_, shape) => {
  it('cost what routes and days of unlike length cost, and both judges find the same', { timeout: 60_000 }, () => {
    for (const seed of [1, 2]) {
      const problem = priced(seed, shape, 25);
      const solution = solve(problem, { seed, iterations: 300 });
      const alone = solution.routes.reduce((sum, each) => sum + each.cost, 0);
      expect(solution.cost).toBe(alone + unevenCost(problem, lengthsOf(solution)));
      const plan = explainPlan(BOOK, problem, solution);
      expect(judgePlan(problem, plan).violations).toEqual([]);
      expect(naiveJudge(problem, plan).faults).toEqual([]);
      expect(Math.abs(plan.totals.costUsd - solution.cost / 1e9)).toBeLessThanOrEqual(0.005_000_1);
      const days = plan.days.reduce((sum, day) => sum + day.costUsd, 0);
      const stated = plan.evenDays?.costUsd ?? Number.NaN;
      expect(Math.abs(days + stated - plan.totals.costUsd)).toBeLessThan(0.006 * (plan.days.length + 1));
    }
  });

  it('are the same bytes for the same seed', { timeout: 60_000 }, () => {
    const problem = priced(4, shape, 25);
    const first = JSON.stringify(solve(problem, { seed: 9, iterations: 200 }));
    expect(JSON.stringify(solve(problem, { seed: 9, iterations: 200 }))).toBe(first);
  });
});

it('days become alike, and the price is what decides how much', { timeout: 60_000 }, () => {
  const shape: ProblemShape = { jobs: 30, days: 5, rigs: 1, stations: 2, zones: 1, largest: 15, hours: 8 };
  let [free, cheap, dear] = [0, 0, 0];
  for (const seed of [1, 2, 3, 4]) {
    const above = (usdPerHour: number): number => {
      const problem = usdPerHour === 0 ? randomProblem(seed, shape) : priced(seed, shape, usdPerHour);
      return daysAboveMs(lengthsOf(solve(problem, { seed, iterations: 1500 })));
    };
    free += above(0);
    cheap += above(4);
    dear += above(40);
  }
  expect(dear).toBeLessThan(0.35 * free);
  expect(cheap).toBeLessThan(free);
  expect(dear).toBeLessThanOrEqual(cheap);
});

/** The least cost of any plan: every job in every slot, every order, refills placed with all care. */
function leastCost(problem: Problem): number {
  const placer = new RefillPlacer(problem);
  const orders = (jobs: readonly number[]): readonly (readonly number[])[] =>
    jobs.length === 0
      ? [[]]
      : jobs.flatMap((job) => orders(jobs.filter((each) => each !== job)).map((rest) => [job, ...rest]));
  const known = new Map<string, readonly (readonly [cost: number, paidMs: number])[]>();
  /** Cost and length of every order of these jobs that can be driven. */
  const ways = (slot: number, jobs: readonly number[]): readonly (readonly [number, number])[] => {
    const key = `${slot} ${jobs.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const day = problem.slots[slot]?.day ?? 0;
    const allowed = jobs.every((job) => problem.jobs[job]?.dayAllowed[day] === 1);
    const found = (allowed ? orders(jobs) : []).flatMap((order): (readonly [number, number])[] => {
      const visits: readonly Visit[] = order.map((job) => ({ job, mode: 0 }));
      const placement = placer.place(slot, visits, 'careful');
      return placement.kind === 'placed' ? [[placement.outcome.cost, placement.outcome.paidMs]] : [];
    });
    known.set(key, found);
    return found;
  };
  let best = Number.POSITIVE_INFINITY;
  const { slots, jobs } = problem;
  for (let choice = 0; choice < slots.length ** jobs.length; choice += 1) {
    const of = jobs.map((_, job) => Math.trunc(choice / slots.length ** job) % slots.length);
    const rows = slots.map((_, slot) =>
      ways(
        slot,
        [...jobs.keys()].filter((job) => of[job] === slot),
      ),
    );
    const [first, second] = rows;
    for (const one of first ?? []) {
      for (const two of second ?? []) {
        best = Math.min(best, one[0] + two[0] + unevenCost(problem, [one[1], two[1]]));
      }
    }
  }
  return best;
}

it('small plans cost no more than the best of all there are', { timeout: 120_000 }, () => {
  const shape: ProblemShape = { jobs: 4, days: 2, stations: 1, zones: 1, hours: 10, modes: 1 };
  let alike = 0;
  for (const seed of [1, 2, 3, 4, 5]) {
    const problem = priced(seed, shape, 12);
    const solution = solve(problem, { seed: 1 });
    expect(solution.unserved).toEqual([]);
    expect(solution.cost, `seed ${seed}`).toBeLessThanOrEqual(leastCost(problem));
    if (unevenCost(problem, lengthsOf(solution)) > 0) alike += 1;
  }
  // Else the price had no say in what was compared.
  expect(alike).toBeGreaterThan(0);
});

it('a figure of unlike days that is not what the days come to is found by both judges', () => {
  const problem = priced(1, SHAPES[0]?.[1] ?? { jobs: 7 }, 25);
  const plan = explainPlan(BOOK, problem, solve(problem, { seed: 1, iterations: 200 }));
  const { evenDays, ...without } = plan;
  if (evenDays === undefined) throw new Error('the plan says nothing of its days');
  for (const key of ['usdPerHour', 'meanSec', 'shortestSec', 'longestSec', 'aboveSec', 'costUsd'] as const) {
    const wrong = { ...plan, evenDays: { ...evenDays, [key]: evenDays[key] + 1 } };
    expect(
      judgePlan(problem, wrong).violations.map((each) => each.code),
      key,
    ).toEqual(['figure-differs']);
    expect(
      naiveJudge(problem, wrong).faults.map((each) => each.code),
      key,
    ).toEqual(['figure-differs']);
  }
  expect(judgePlan(problem, without).violations.map((each) => each.where)).toEqual(['evenDays']);
  expect(naiveJudge(problem, without).faults.map((each) => each.where)).toEqual(['evenDays']);
});
