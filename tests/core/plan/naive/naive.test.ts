import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { explainPlan, type Plan, planSchema } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { casesOf, shareOf } from '../../../support/cases.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { BREAKERS, type Draft } from '../judge/breakers.ts';
import { mutate, somePick } from '../judge/mutate.ts';
import { smallPlan } from '../judge/small-plan.ts';
import { smallProblem } from '../judge/small-problem.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { naiveJudge } from './naive-judge.ts';
import { randomSolution } from './random-solution.ts';

const SUMS = [
  'paidSec',
  'overtimeSec',
  'driveSec',
  'distanceM',
  'treatedSqFt',
  'coveredSqFt',
  'handTrimSqFt',
  'notReachedSqFt',
  'stops',
  'refills',
] as const;

/** Both judges find the plan good, and the same figures; returns the cost in dollars. */
function expectAgreement(problem: Problem, plan: Plan, label: string): void {
  const naive = naiveJudge(problem, plan);
  const verdict = judgePlan(problem, plan);
  expect(naive.faults, label).toEqual([]);
  expect(naive.further, label).toEqual([]);
  expect(verdict.violations, label).toEqual([]);
  const cost = naive.days.reduce((sum, day) => sum + day.cost, 0) / 1e9;
  expect(Math.abs(cost - verdict.totals.costUsd), label).toBeLessThanOrEqual(0.005_000_1);
  for (const key of SUMS) {
    const found = naive.days.reduce((sum, day) => sum + day[key], 0);
    expect(Math.abs(found - verdict.totals[key]), `${label} ${key}`).toBeLessThan(1e-6 * (1 + found));
  }
}

const SHAPES: readonly (readonly [string, ProblemShape])[] = [
  ['plain days', { jobs: 6, stations: 1 }],
  ['thirsty days', { jobs: 5, stations: 2, thirst: 1.6, hours: 14 }],
  ['two rigs, two modes', { jobs: 7, rigs: 2, modes: 2, stations: 1 }],
  ['three days, late work', { jobs: 9, days: 3, stations: 1, zones: 1, hours: 4 }],
  ['four materials', { jobs: 5, stations: 2, materials: 4, hours: 14 }],
  ['windows and breaks', { jobs: 6, stations: 2, windows: 0.4, breaks: 0.7, thirst: 1.4 }],
  ['hours of treating', { jobs: 6, days: 2, stations: 1, breaks: 0.3, seconds: 0.3, treatHours: 0.5, thirst: 1.4 }],
  ['bags on the machine', { jobs: 5, stations: 1, materials: 4, thirst: 2, bagsAboard: 1, hours: 14 }],
  ['days that end elsewhere', { jobs: 5, rigs: 2, stations: 1, endsElsewhere: true }],
  ['two persons', { jobs: 4, stations: 1, zones: 3, seconds: 0.9, bagsAboard: 0.4, breaks: 0.3, hours: 14 }],
  ['payload', { jobs: 4, stations: 1, heavy: 1, thirst: 1.5 }],
  ['too little time', { jobs: 8, stations: 1, hours: 2 }],
  ['passes', { jobs: 5, stations: 1, zones: 3, driven: 0.7, seconds: 0.3, thirst: 1.4, hours: 14 }],
];

describe('a judge written from the page of the model', () => {
  it.each((['mixed-day', 'residential-day'] as const).slice(0, casesOf(2, 1)))(
    'agrees on the plan of %s',
    { timeout: 60_000 },
    (name) => {
      const book = sampleBook(name);
      const problem = problemOf(book);
      expectAgreement(
        problem,
        explainPlan(book, problem, solve(problem, { seed: 3, iterations: casesOf(100, 5) })),
        name,
      );
    },
  );

  it.each(SHAPES)('agrees on plans of %s', { timeout: 60_000 }, (name, shape) => {
    for (let seed = 101; seed <= 100 + shareOf(15, 5, 1); seed += 1) {
      const problem = randomProblem(seed, shape);
      const solution = randomSolution(problem, seed);
      const plan = explainPlan(emptyBook('invented', 'Invented'), problem, solution);
      expectAgreement(problem, plan, `${name} ${seed}`);
      expect(Math.abs(plan.totals.costUsd - solution.cost / 1e9), name).toBeLessThanOrEqual(0.005_000_1);
    }
  });

  it('agrees on the plan made by hand', () => {
    const { faults } = naiveJudge(smallProblem(), smallPlan());
    expect(faults).toEqual([]);
  });
});

describe('planted faults', () => {
  it.each(BREAKERS)('$code: $what', ({ code, run }) => {
    const plan = structuredClone(smallPlan()) as Draft<Plan>;
    run(plan);
    const codes = naiveJudge(smallProblem(), plan as Plan).faults.map((each) => each.code);
    expect(codes).toContain(code);
  });
});

/** A day made by hand, and days with everything that the model has. */
function goodPlans(): readonly (readonly [Problem, Plan])[] {
  const shape = {
    jobs: 5,
    rigs: 2,
    days: 2,
    modes: 2,
    stations: 2,
    materials: 4,
    windows: 0.3,
    breaks: 0.6,
    thirst: 1.4,
    bagsAboard: 0.5,
    seconds: 0.5,
    driven: 0.5,
  };
  const invented = [1, 2, 3, 4, 5].slice(0, casesOf(5, 1)).map((seed) => {
    const problem = randomProblem(seed, shape);
    return [problem, explainPlan(emptyBook('invented', 'Invented'), problem, randomSolution(problem, seed))] as const;
  });
  return [[smallProblem(), smallPlan()], ...invented];
}

describe('plans changed at random', () => {
  it('hold for both judges or for none', { timeout: 60_000 }, () => {
    const plans = goodPlans();
    let [good, bad] = [0, 0];
    fc.assert(
      fc.property(fc.nat(plans.length - 1), fc.array(somePick, { minLength: 1, maxLength: 2 }), (which, picks) => {
        const [problem, plan] = plans[which] as (typeof plans)[number];
        const changed = mutate(plan, picks);
        if (!v.is(planSchema, changed)) return;
        const { faults } = naiveJudge(problem, changed as Plan);
        const { violations } = judgePlan(problem, changed as Plan);
        expect([faults.length === 0, faults, violations]).toEqual([violations.length === 0, faults, violations]);
        if (faults.length === 0) good += 1;
        else bad += 1;
      }),
      { numRuns: casesOf(600, 150), seed: 7 },
    );
    // Members that no rule is about, such as names, may become anything.
    expect(good).toBeGreaterThan(0);
    expect(bad).toBeGreaterThan(good / 4);
  });
});
