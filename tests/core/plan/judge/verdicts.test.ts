import { expect, it } from 'vitest';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { BREAKERS, type Draft } from './breakers.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';
import { STRANGE_DAYS } from './strange-days.ts';
import { STRANGE_PLANS } from './strange-plans.ts';

const plans = [
  ...BREAKERS.map(({ what, run }) => ({ what, run, problem: undefined, figures: false })),
  ...[...STRANGE_PLANS, ...STRANGE_DAYS].map((each) => ({ ...each, figures: true })),
];

/**
 * Everything that the judge says of every strange plan, word by word, was read and found right. Of plans that are broken in BREAKERS,
 * figures that differ as well are not listed. After a change `npx vitest -u` writes the list anew: to be read again.
 */
it('strange plans are judged in these words', async () => {
  const lines = plans.flatMap(({ what, run, problem, figures }) => {
    const plan = structuredClone(smallPlan()) as Draft<Plan>;
    run?.(plan);
    const { violations } = judgePlan(problem?.(smallProblem()) ?? smallProblem(), plan as Plan);
    const told = violations.filter((each) => figures || each.code !== 'figure-differs');
    return [`# ${what}`, ...told.map((each) => `${each.code}, ${each.where}: ${each.message}`), ''];
  });
  await expect(lines.join('\n')).toMatchFileSnapshot('verdicts.txt');
});
