import { describe, expect, it } from 'vitest';
import type { Job, Problem } from '../../../../core/plan/problem/index.ts';
import { RefillPlacer } from '../../../../core/plan/refills/index.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import { casesOf } from '../../../support/cases.ts';
import { FAMILIES, shuffledVisits } from '../oracle/families.ts';
import { randomProblem } from '../random-problem.ts';

const SEEDS = Array.from({ length: casesOf(8, 3) }, (_, index) => index + 1);
const ENDLESS = { beam: 300, latestMs: Number.POSITIVE_INFINITY };

function days() {
  return FAMILIES.flatMap(({ shape }) =>
    SEEDS.map((seed) => {
      const problem = randomProblem(seed, shape);
      const visits = shuffledVisits(problem, seed);
      return { problem, visits, jobs: visits.map((each) => each.job), modes: visits.map((each) => each.mode) };
    }),
  );
}

/** With the shift so short that about half of the days cannot be done. */
function latestOf(problem: Problem, seed: number): number {
  const rig = problem.rigs[0];
  return (rig?.shiftStartMs ?? 0) + (rig?.shiftMs ?? 0) * (0.2 + 0.1 * (seed % 8));
}

describe('a run without an event that begins in the middle', () => {
  it('costs what a run from the beginning costs', () => {
    let compared = 0;
    for (const { problem, jobs, modes } of days()) {
      const search = new RefillSearch(problem, 0);
      const fresh = new RefillSearch(problem, 0);
      search.run(jobs, modes, jobs.length, { ...ENDLESS, marked: true });
      for (const event of search.finals[0] === undefined ? [] : search.eventsOf(search.finals[0])) {
        const whole = fresh.run(jobs, modes, jobs.length, { ...ENDLESS, without: event });
        expect(search.runWithout(event, ENDLESS)).toBe(whole);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(days().length);
  });
});

describe('a hasty run', () => {
  it('finds a day where there is one, and none where there is none', () => {
    const found = [0, 0];
    days().forEach(({ problem, jobs, modes }, index) => {
      const search = new RefillSearch(problem, 0);
      const limits = { beam: 300, latestMs: latestOf(problem, index) };
      const there = Number.isFinite(search.run(jobs, modes, jobs.length, limits));
      expect(Number.isFinite(search.run(jobs, modes, jobs.length, { ...limits, hasty: true }))).toBe(there);
      found[there ? 1 : 0] = (found[there ? 1 : 0] ?? 0) + 1;
    });
    expect(Math.min(...found)).toBeGreaterThan(10);
  });
});

function withoutEnd({ treatHours, ...job }: Job): Job {
  const opening = treatHours?.map((each) => (each === null ? null : { openMs: each.openMs, words: each.words }));
  return { ...job, closeMs: Number.POSITIVE_INFINITY, ...(opening === undefined ? {} : { treatHours: opening }) };
}

describe('customers who are missed whatever is done', () => {
  it('are those that have to be let wait one after the other until the row can be done', () => {
    let most = 0;
    for (const { problem: plain, visits } of days()) {
      // Every second customer closes soon after the shift begins.
      const early = (plain.rigs[0]?.shiftStartMs ?? 0) + 3_600_000;
      const problem = { ...plain, jobs: plain.jobs.map((job, j) => (j % 2 === 0 ? { ...job, closeMs: early } : job)) };
      const missed = new RefillPlacer(problem).missed(0, visits);
      const waiting: number[] = [];
      while (waiting.length < visits.length) {
        const jobs = problem.jobs.map((job, j) =>
          waiting.some((visit) => visits[visit]?.job === j) ? withoutEnd(job) : job,
        );
        const placement = new RefillPlacer({ ...problem, jobs }).place(0, visits, 'quick');
        if (placement.kind === 'placed' || placement.fault.kind !== 'window-missed') break;
        waiting.push(placement.fault.visit);
      }
      expect(missed).toEqual(waiting);
      most = Math.max(most, missed.length);
    }
    expect(most).toBeGreaterThan(2);
  });
});
