import { expect, test } from 'vitest';
import { explainPlan, groundWords } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf } from '../../../support/samples.ts';
import { DRIVEN, oneLawn, PASSES, withoutTools } from '../problem/one-lawn.ts';

const area = (sqFt: number): string => `${Math.round(sqFt)} ft²`;

function planned(book: ReturnType<typeof oneLawn>) {
  const problem = problemOf(book);
  const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 20 }));
  const task = problem.tasks[0]!;
  const ops = problem.jobs[0]!.modes[0]![0]!.ops;
  return { plan, day: plan.days[0]!, areaUnits: task.areaUnits, ops };
}

test('a day and its plan tell the ground treated, covered and trimmed by hand', () => {
  const { plan, day, areaUnits, ops } = planned(DRIVEN(oneLawn(120, 80)));
  const [machine, trim] = ops;
  expect(day).toMatchObject({
    treatedSqFt: areaUnits,
    coveredSqFt: (machine?.ground?.coveredUnits ?? 0) + (trim?.areaUnits ?? 0),
    handTrimSqFt: trim?.areaUnits,
    notReachedSqFt: 0,
  });
  expect(plan.totals).toMatchObject({ treatedSqFt: day.treatedSqFt, coveredSqFt: day.coveredSqFt });
  expect(plan.totals.handTrimSqFt).toBe(day.handTrimSqFt);
});

test('ground that is not reached is not treated', () => {
  const { plan, day, areaUnits, ops } = planned(withoutTools(DRIVEN(oneLawn(120, 80), { ...PASSES, trimPasses: 1 })));
  const left = ops[0]?.ground?.leftUnits ?? 0;
  expect(left).toBeGreaterThan(0);
  expect(day).toMatchObject({ treatedSqFt: areaUnits - left, notReachedSqFt: left, handTrimSqFt: 0 });
  expect(plan.totals).toMatchObject({ treatedSqFt: areaUnits - left, notReachedSqFt: left });
});

test('words say what there is to say besides the ground treated', () => {
  const all = { treatedSqFt: 5960, coveredSqFt: 6500, handTrimSqFt: 120, notReachedSqFt: 40 };
  expect(groundWords(all, area)).toBe('6500 ft² covered, 120 ft² by hand trim, 40 ft² not reached');
  expect(groundWords({ treatedSqFt: 5960, coveredSqFt: 5960.2, handTrimSqFt: 0, notReachedSqFt: 0 }, area)).toBe('');
});
