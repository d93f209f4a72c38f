import { describe, expect, test } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { placeRefills, type RouteOutcome, type Solution } from '../../../../core/plan/refills/index.ts';
import { explainPlan, type Plan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { naiveJudge } from '../naive/naive-judge.ts';
import { randomSolution } from '../naive/random-solution.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { restOf } from './rest-of-day.ts';

const SHAPES: readonly (readonly [string, ProblemShape])[] = [
  ['plain days', { jobs: 6, stations: 1 }],
  ['thirsty days', { jobs: 5, stations: 2, thirst: 1.6, hours: 14 }],
  ['no nurse tank', { jobs: 5, stations: 2, thirst: 1.4, noNurse: 1, hours: 14 }],
  ['four materials', { jobs: 5, stations: 2, materials: 4, hours: 14 }],
  ['two mixes, one tank', { jobs: 5, stations: 1, materials: 2, tanks: 1, thirst: 1.4, hours: 14 }],
  ['bags on the machine', { jobs: 5, stations: 1, materials: 4, thirst: 2, bagsAboard: 1, hours: 14 }],
  ['days that end elsewhere', { jobs: 5, stations: 1, endsElsewhere: true }],
  ['two persons', { jobs: 4, stations: 1, zones: 3, seconds: 0.9, breaks: 0.3, hours: 14 }],
];

function solutionOf(problem: Problem, route: RouteOutcome): Solution {
  return { problemHash: problem.hash, routes: [route], unserved: [], cost: route.cost, iterations: 0, seed: 0 };
}

const book = emptyBook('b', 'B');

function expectGood(problem: Problem, plan: Plan, label: string): void {
  expect(judgePlan(problem, plan).violations, label).toEqual([]);
  const naive = naiveJudge(problem, plan);
  expect([...naive.faults, ...naive.further], label).toEqual([]);
}

describe.each(SHAPES)('the rest of a day under way: %s', (_, shape) => {
  test('can be done as it was planned, for no more than it had still to cost', () => {
    for (let seed = 1; seed <= casesOf(6, 2); seed += 1) {
      const problem = randomProblem(seed, shape);
      for (const route of randomSolution(problem, seed).routes) {
        for (let count = 1; count < route.visits.length; count += 1) {
          const rest = restOf(problem, route, count);
          const placed = placeRefills(rest.problem, 0, rest.visits);
          const label = `seed ${seed}, after ${count} of ${route.visits.length}`;
          if (placed.kind !== 'placed') throw new Error(`${label}: ${JSON.stringify(placed.fault)}`);
          expect(placed.outcome.cost, label).toBeLessThanOrEqual(rest.cost * (1 + 1e-9));
          expectGood(rest.problem, explainPlan(book, rest.problem, solutionOf(rest.problem, placed.outcome)), label);
        }
      }
    }
  });

  test('is searched like any other day', () => {
    for (let seed = 1; seed <= casesOf(4, 1); seed += 1) {
      const problem = randomProblem(seed, shape);
      const [route] = randomSolution(problem, seed).routes;
      if (route === undefined || route.visits.length < 3) continue;
      const rest = restOf(problem, route, 1);
      const found = solve(rest.problem, { seed, iterations: 60 });
      const label = `seed ${seed}`;
      // Bags that are aboard and not used take up room, which the search does not know until it places a day.
      expect(found.unserved.length, label).toBeLessThanOrEqual(shape.bagsAboard === undefined ? 0 : 1);
      if (found.unserved.length === 0) expect(found.cost, label).toBeLessThanOrEqual(rest.cost * (1 + 1e-9));
      expectGood(rest.problem, explainPlan(book, rest.problem, found), label);
    }
  });
});

describe('a day that begins with something aboard', () => {
  const problem = randomProblem(3, { jobs: 4, stations: 1 });
  const [route] = randomSolution(problem, 3).routes;
  const rest = restOf(problem, route as RouteOutcome, 1);
  const placed = placeRefills(rest.problem, 0, rest.visits);
  const plan = explainPlan(
    book,
    rest.problem,
    solutionOf(rest.problem, (placed as Extract<typeof placed, { readonly kind: 'placed' }>).outcome),
  );

  test('shows all of it from the first moment', () => {
    const begins = rest.problem.rigs[0]?.begins;
    const morning = plan.days[0]?.activities[0];
    if (morning?.kind !== 'morning') throw new Error('no beginning');
    const amounts = morning.fills.map((each) => Math.round(100 * (each.volumeGal + each.weightLb)));
    expect(amounts).toEqual(begins?.parts.filter((each) => each > 0));
    expect(morning.endSec).toBe(morning.startSec);
  });

  test.each(['more', 'less', 'another stock'] as const)('is named by both judges where it begins with %s', (what) => {
    const wrong = structuredClone(plan) as { -readonly [Key in keyof Plan]: Plan[Key] };
    const morning = wrong.days[0]?.activities[0] as unknown as {
      fills: { volumeGal: number; weightLb: number }[];
      stock: { volumeGal: number; weightLb: number; stock: string; productId: string; bags: number }[];
    };
    const [fill] = morning.fills;
    if (what === 'another stock') {
      morning.stock.push({ stock: 'water', productId: '', volumeGal: 0.5, weightLb: 0, bags: 0 });
    } else if (fill !== undefined) {
      const change = what === 'more' ? 0.05 : -0.05;
      if (fill.volumeGal > 0) fill.volumeGal += change;
      else fill.weightLb += change;
    }
    const codes = judgePlan(rest.problem, wrong).violations.map((each) => each.code);
    expect(codes).toContain('aboard-differs');
    expect(naiveJudge(rest.problem, wrong).faults.map((each) => each.code)).toContain('aboard-differs');
  });
});
