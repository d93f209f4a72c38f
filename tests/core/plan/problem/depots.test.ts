import { describe, expect, it } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { buildProblem } from '../../../../core/plan/problem/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

const residential = sampleBook('residential-day');
const home = residential.rigs[0]?.homeId ?? '';
const other = residential.fillPoints.find((each) => each.id !== home)?.id ?? '';
const endingAt = (endId: string): Book => ({
  ...residential,
  rigs: residential.rigs.map((rig) => ({ ...rig, endId })),
});

describe('a day that ends elsewhere than it starts', () => {
  it('sets out as from home and comes back as to its end', () => {
    const plain = problemOf(residential);
    const problem = problemOf(endingAt(other));
    const [rig] = problem.rigs;
    const count = problem.placeIds.length;
    expect(count).toBe(plain.placeIds.length + 1);
    expect(rig?.depot).toBe(count - 1);
    const [start, end] = [problem.placeIds.indexOf(home), problem.placeIds.indexOf(other)];
    for (const job of problem.jobs) {
      expect(problem.travelMs[(count - 1) * count + job.place]).toBe(problem.travelMs[start * count + job.place]);
      expect(problem.travelMs[job.place * count + count - 1]).toBe(problem.travelMs[job.place * count + end]);
      expect(problem.travelM[job.place * count + count - 1]).toBe(problem.travelM[job.place * count + end]);
    }
  });

  it('is planned so that the judge finds it there in the evening', () => {
    const book = endingAt(other);
    const problem = problemOf(book);
    const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 5 }));
    expect(judgePlan(problem, plan).violations).toEqual([]);
    const drives = plan.days.flatMap((day) => day.activities.filter((each) => each.kind === 'drive'));
    expect([drives[0]?.fromPlaceId, drives.at(-1)?.toPlaceId]).toEqual([home, other]);
  });

  it('is the same problem as one without an end where both are one', () => {
    expect(problemOf(endingAt(home)).hash).toBe(problemOf(residential).hash);
  });

  it('is refused where its end is no fill point of the book', () => {
    const built = buildProblem(endingAt('moon'), 'spring');
    expect(built.ok ? '' : built.error.code).toBe('reference-missing');
  });
});
