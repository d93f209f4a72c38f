import { describe, expect, test } from 'vitest';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Problem, TreatHours } from '../../../../core/plan/problem/index.ts';
import { naiveJudge } from '../naive/naive-judge.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

const plan = smallPlan();
const [day] = plan.days;
const setUp = day?.activities.find((each) => each.kind === 'set-up' && each.propertyId === 'birch');
const treats = day?.activities.filter((each) => each.kind === 'treat' && each.propertyId === 'birch') ?? [];
const packUp = day?.activities.find((each) => each.kind === 'pack-up' && each.propertyId === 'birch');
const startMs = (setUp?.startSec ?? 0) * 1000;
const doneMs = (treats.at(-1)?.endSec ?? 0) * 1000;
const dayNumber = smallProblem().dates.indexOf(day?.date ?? '');

function withHours(hours: Omit<TreatHours, 'words'>): Problem {
  const problem = smallProblem();
  const treatHours = problem.dates.map((_, at) => (at === dayNumber ? { ...hours, words: 'wind 18 mph' } : null));
  return { ...problem, jobs: problem.jobs.map((job) => (job.propertyId === 'birch' ? { ...job, treatHours } : job)) };
}

/** What both judges find wrong beside what they find in the plan as it is. */
function codes(hours: Omit<TreatHours, 'words'>): readonly string[] {
  const problem = withHours(hours);
  const judged = judgePlan(problem, plan).violations.map((each) => each.code);
  const naive = naiveJudge(problem, plan).faults.map((each) => each.code);
  expect(new Set(naive)).toEqual(new Set(judged));
  return judged;
}

describe('hours of treating', () => {
  test('are those from the set-up to the end of the last op, to the millisecond', () => {
    expect(treats.length).toBeGreaterThan(1);
    expect(packUp?.endSec).toBeGreaterThan(doneMs / 1000);
    expect(codes({ openMs: startMs, closeMs: doneMs })).toEqual([]);
    expect(codes({ openMs: startMs + 1 })).toEqual(['weather-closed']);
    expect(codes({ openMs: 0, closeMs: doneMs - 1 })).toEqual(['weather-closed']);
    expect(codes({ openMs: startMs + 1, closeMs: doneMs - 1 })).toEqual(['weather-closed', 'weather-closed']);
  });

  test('that are over before a visit begins are told once', () => {
    expect(codes({ openMs: 0, closeMs: startMs })).toEqual(['weather-closed']);
  });

  test('are told with the reason and both times', () => {
    const [found] = judgePlan(withHours({ openMs: 0, closeMs: doneMs - 60_000 }), plan).violations;
    expect(found?.message).toMatch(/^treats until .*, weather allows work until /);
    expect(found?.excess).toMatchObject({ unit: 'clock', found: doneMs / 1000, why: 'wind 18 mph' });
  });
});
