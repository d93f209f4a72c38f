import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { emptyBook } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { placeRefills, type Visit } from '../../../../core/plan/refills/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { shareOf } from '../../../support/cases.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';

const SHAPES: readonly (readonly [string, ProblemShape])[] = [
  ['plain', { jobs: 6, stations: 1 }],
  ['thirsty', { jobs: 4, stations: 2, thirst: 1.5 }],
  ['four materials', { jobs: 6, stations: 2, materials: 4 }],
  ['windows and breaks', { jobs: 5, stations: 2, windows: 0.4, breaks: 1, thirst: 1.5 }],
  ['bags on the machine', { jobs: 6, stations: 1, materials: 4, thirst: 2, bagsAboard: 1 }],
  [
    'bags on the machine, windows and breaks',
    { jobs: 5, stations: 1, windows: 0.4, breaks: 1, thirst: 2, bagsAboard: 1 },
  ],
  ['payload', { jobs: 4, stations: 1, heavy: 1, thirst: 1.5 }],
  ['ends elsewhere', { jobs: 4, stations: 1, endsElsewhere: true }],
  ['two persons', { jobs: 3, stations: 1, zones: 3, seconds: 0.9, bagsAboard: 0.4 }],
];
const SEEDS = shareOf(16, 6, 2);

describe('days with placed refills, written out as plans', () => {
  it.each(SHAPES)('%s: the judge agrees on all of it', { timeout: 120_000 }, (_, shape) => {
    let placedDays = 0;
    for (let seed = 1; seed <= SEEDS; seed += 1) {
      const problem = randomProblem(seed, shape);
      const random = createRandom(seed);
      const visits: Visit[] = problem.jobs.map((job, index) => ({
        job: index,
        mode: random.below(job.modes[0]?.length ?? 1),
      }));
      const placed = placeRefills(problem, 0, visits);
      if (placed.kind !== 'placed') continue;
      placedDays += 1;
      const solution = {
        problemHash: problem.hash,
        routes: [placed.outcome],
        unserved: [],
        cost: placed.outcome.cost,
        iterations: 0,
        seed,
      };
      const plan = explainPlan(emptyBook('invented', 'Invented'), problem, solution);
      const verdict = judgePlan(problem, plan);
      expect(verdict.violations, `seed ${seed}`).toEqual([]);
      expect(Math.abs(verdict.totals.costUsd - placed.outcome.cost / 1e9)).toBeLessThan(0.005_000_1);
      expect(plan.totals.costUsd).toBe(verdict.totals.costUsd);
      expect(verdict.totals.stops).toBe(problem.jobs.length);
    }
    expect(placedDays).toBeGreaterThanOrEqual(SEEDS / 2);
  });
});
