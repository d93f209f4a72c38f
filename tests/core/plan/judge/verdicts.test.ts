import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { BREAKERS, type Draft } from './breakers.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';
import { STRANGE_PLANS } from './strange-plans.ts';

/**
 * What the judge has to say of every strange plan, word by word. Of plans that are broken in BREAKERS, figures that differ as well are
 * not listed.
 */
const verdicts = JSON.parse(readFileSync(new URL('verdicts.json', import.meta.url), 'utf8')) as Record<string, unknown>;

const plans = [
  ...BREAKERS.map(({ what, run }) => ({ what, run, problem: undefined, figures: false })),
  ...STRANGE_PLANS.map((each) => ({ ...each, figures: true })),
];

it.each(plans)('$what', ({ what, run, problem, figures }) => {
  const plan = structuredClone(smallPlan()) as Draft<Plan>;
  run?.(plan);
  const { violations } = judgePlan(problem?.(smallProblem()) ?? smallProblem(), plan as Plan);
  const told = violations.filter((each) => figures || each.code !== 'figure-differs');
  expect(told.map((each) => `${each.code}, ${each.where}: ${each.message}`)).toEqual(verdicts[what]);
});

it('no verdict is left from a plan that is gone', () => {
  expect(Object.keys(verdicts).sort()).toEqual(plans.map((each) => each.what).sort());
});
