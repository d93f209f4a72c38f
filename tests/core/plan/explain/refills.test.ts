import { describe, expect, it } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { judgePlan, type Violation } from '../../../../core/plan/judge/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { placeRefills } from '../../../../core/plan/refills/index.ts';
import { explainPlan, type Plan, type PlanActivity } from '../../../../core/plan/result/index.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';

type Refill = Extract<PlanActivity, { readonly kind: 'refill' }>;
type Case = { readonly problem: Problem; readonly plan: Plan };

const SHAPES: readonly ProblemShape[] = [
  { jobs: 4, stations: 2, thirst: 1.5 },
  { jobs: 4, stations: 1, thirst: 1.6, noNurse: 0, zones: 3, seconds: 0.8 },
  { jobs: 5, stations: 2, materials: 4, hours: 14 },
];
/** What breaks when a refill with this reason moves nothing; reasons that are about cost are not in it. */
const BROKEN: Partial<Record<Refill['reasonCode'], readonly Violation['code'][]>> = {
  'runs-dry': ['level-below-empty'],
  'stock-runs-out': ['stock-below-empty', 'level-below-empty'],
  'change-of-material': ['mixed-materials'],
};

function cases(): readonly Case[] {
  return SHAPES.flatMap((shape) =>
    [1, 2, 3].flatMap((seed): Case[] => {
      const problem = randomProblem(seed, shape);
      const visits = problem.jobs.map((_, job) => ({ job, mode: 0 }));
      const placed = placeRefills(problem, 0, visits);
      if (placed.kind !== 'placed') return [];
      const { outcome } = placed;
      const of = {
        problemHash: problem.hash,
        routes: [outcome],
        unserved: [],
        cost: outcome.cost,
        iterations: 0,
        seed,
      };
      return [{ problem, plan: explainPlan(emptyBook('invented', 'Invented'), problem, of) }];
    }),
  );
}

/** The plan with one refill that takes its time and moves nothing. */
function without(plan: Plan, refill: Refill): Plan {
  const idle = { ...refill, fills: [], stock: [], rinsedCompartmentIds: [] };
  const days = plan.days.map((day) => ({
    ...day,
    activities: day.activities.map((each) => (each === refill ? idle : each)),
  }));
  return { ...plan, days };
}

describe('the reason of a refill', () => {
  it('is what breaks without it', { timeout: 60_000 }, () => {
    const seen = new Set<string>();
    for (const { problem, plan } of cases()) {
      expect(judgePlan(problem, plan).violations).toEqual([]);
      const refills = plan.days.flatMap((day) => day.activities.filter((each) => each.kind === 'refill'));
      for (const refill of refills) {
        const expected = BROKEN[refill.reasonCode];
        if (expected === undefined) continue;
        seen.add(refill.reasonCode);
        const codes = judgePlan(problem, without(plan, refill)).violations.map((each) => each.code);
        expect(
          expected.some((code) => codes.includes(code)),
          `${problem.hash} ${refill.reasonCode}: ${codes}`,
        ).toBe(true);
      }
    }
    // Few days of this kind run out of stock before a compartment runs dry.
    expect([...seen]).toEqual(expect.arrayContaining(['runs-dry', 'change-of-material']));
  });
});
