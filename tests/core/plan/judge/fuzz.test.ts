import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { type Plan, planSchema } from '../../../../core/plan/result/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { mutate, somePick } from './mutate.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

const CASES = casesOf(1500, 60);

describe('plans from anywhere', () => {
  it('are judged without throwing, and every violation has a place and words', () => {
    const problem = smallProblem();
    let judged = 0;
    fc.assert(
      fc.property(fc.array(somePick, { minLength: 1, maxLength: 8 }), (picks) => {
        const plan = mutate(smallPlan(), picks);
        if (!v.is(planSchema, plan)) return;
        judged += 1;
        const verdict = judgePlan(problem, plan as Plan);
        expect(verdict.feasible).toBe(verdict.violations.length === 0);
        for (const violation of verdict.violations) {
          expect(violation.where).not.toBe('');
          expect(violation.message).not.toBe('');
        }
      }),
      { numRuns: CASES, seed: 42 },
    );
    // Mutations that no longer follow the schema are not the judge's business; most still do.
    expect(judged).toBeGreaterThan(CASES * 0.45);
  });

  it('of any shape that the schema allows, also empty ones', () => {
    const empty = { ...smallPlan(), days: [], unplaced: [] };
    const verdict = judgePlan(smallProblem(), empty);
    expect(verdict.violations.filter((each) => each.code === 'task-missing')).toHaveLength(5);
    const idle = { ...smallPlan(), days: smallPlan().days.map((day) => ({ ...day, activities: [], stops: [] })) };
    expect(judgePlan(smallProblem(), idle).feasible).toBe(false);
  });
});
