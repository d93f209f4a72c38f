import { describe, expect, it } from 'vitest';
import { Board, type Breach, type StopMove } from '../../../../core/plan/board/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Job, Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../../../core/plan/result/index.ts';
import { formatClock, formatDuration, quantity } from '../../../../core/units/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { moved } from './hands.ts';

/** Each rule is planted by itself in the problem of a sample; then lawns are put into a day that had none. */
const book = sampleBook('residential-day');
const sound = problemOf(book);
const [date = ''] = sound.dates;
const rigId = sound.rigs[0]?.rigId ?? '';
const HOUR_MS = 3_600_000;

function planted(
  change: Partial<Problem>,
  lawns: number,
): { readonly plan: Plan; readonly breaches: readonly Breach[]; readonly problem: Problem } {
  const problem: Problem = { ...sound, ...change };
  const empty = explainPlan(book, problem, {
    problemHash: problem.hash,
    routes: [],
    unserved: [...problem.jobs.keys()],
    cost: 0,
    iterations: 0,
    seed: 1,
  });
  const moves = problem.jobs.slice(0, lawns).map((job, position): StopMove => {
    const task = problem.tasks[job.tasks[0] ?? -1];
    if (task === undefined) throw new Error('a job without work');
    const { propertyId, zoneId, treatmentId, step } = task;
    return { task: { propertyId, zoneId, treatmentId, step }, to: { kind: 'day', date, rigId, position } };
  });
  const { plan, breaches } = moved(new Board(book, problem), empty, moves);
  expect(judgePlan(problem, plan).violations.map((each) => each.code)).toEqual(breaches.map((each) => each.code));
  return { plan, breaches, problem };
}

const rigWith = (change: Partial<ProblemRig>): Partial<Problem> => ({
  rigs: sound.rigs.map((rig) => ({ ...rig, ...change })),
});
const jobWith = (number: number, change: Partial<Job>): Partial<Problem> => ({
  jobs: sound.jobs.map((job, at) => (at === number ? { ...job, ...change } : job)),
});
const nameOf = (number: number): string =>
  book.properties.find((each) => each.id === sound.jobs[number]?.propertyId)?.name ?? '';
const time = (seconds: number): string => formatDuration(quantity(seconds));

describe('a rule that a move breaks is said with the stop, the limit and by how much', () => {
  it('nothing where nothing is broken', () => {
    expect(planted({}, 5).breaches).toEqual([]);
  });

  it('a customer reached too late', () => {
    const closeMs = 8 * HOUR_MS;
    const { plan, breaches } = planted(jobWith(4, { openMs: 0, closeMs }), 5);
    const late = (plan.days[0]?.stops[4]?.arriveSec ?? 0) - 8 * 3600;
    const ready = formatClock(plan.days[0]?.stops[4]?.arriveSec ?? 0);
    expect(breaches.map((each) => each.words)).toEqual([
      `${nameOf(4)}: ready at ${ready}, work is allowed until ${formatClock(8 * 3600)}: ${time(late)} too late`,
    ]);
    expect(breaches[0]).toMatchObject({ code: 'window-missed', date, rigId, propertyId: sound.jobs[4]?.propertyId });
  });

  it('a day longer than shift and overtime', () => {
    const { plan, breaches, problem } = planted(rigWith({ shiftMs: HOUR_MS, overtimeMs: HOUR_MS / 2 }), 5);
    const ends = (problem.rigs[0]?.shiftStartMs ?? 0) / 1000 + 5400;
    const done = plan.days[0]?.endSec ?? 0;
    expect(breaches.map((each) => each.words)).toEqual([
      `${plan.days[0]?.rigName}, ${date}: done at ${formatClock(done)}, shift and overtime end at ${formatClock(ends)}: ${time(done - ends)} too late`,
    ]);
  });

  it('a day that somebody does not allow, and one that a label does not', () => {
    const never = planted(jobWith(1, { dayAllowed: Uint8Array.of(0) }), 3);
    expect(never.breaches.map((each) => each.words)).toEqual([`${nameOf(1)}: not to be visited on ${date}`]);
    const label = { code: 'label', words: 'its label allows it from 1 April on', isPassing: false } as const;
    const soon = planted(jobWith(1, { dayAllowed: Uint8Array.of(0), closed: [label] }), 3);
    expect(soon.breaches.map((each) => each.words)).toEqual([
      `${nameOf(1)}: not to be visited on ${date}: its label allows it from 1 April on`,
    ]);
  });

  it('more aboard than the payload', () => {
    const limitLb = 0;
    const { breaches } = planted(rigWith({ cargoLimit: limitLb * 10_000 }), 1);
    expect(breaches.length).toBeGreaterThan(0);
    for (const { code, words } of breaches) {
      expect(code).toBe('over-payload');
      const [, aboard, allowed, over] =
        /: ([\d.,]+) lb aboard, ([\d.,]+) lb allowed: ([\d.,]+) lb too much$/.exec(words) ?? [];
      expect(Number(allowed)).toBe(limitLb);
      expect(Math.abs(Number(aboard) - Number(allowed) - Number(over))).toBeLessThan(0.11);
    }
  });

  it('a fill point outside its hours', () => {
    const stations = sound.stations.map((each) => ({ ...each, openMs: 0, closeMs: HOUR_MS }));
    // Without a nurse tank, and with tanks of a third, every refill is at a fill point.
    const compartments = (sound.rigs[0]?.compartments ?? []).map((each) => ({
      ...each,
      capacityParts: Math.floor(each.capacityParts / 3),
    }));
    const { breaches } = planted({ ...rigWith({ nurseParts: 0, compartments }), stations }, 6);
    expect(breaches.length).toBeGreaterThan(0);
    for (const { code, words } of breaches) {
      expect(code).toBe('fill-point-closed');
      expect(words).toMatch(/is used at \d+:\d\d .* open until 1:00 .*: \d.* too late$/);
    }
  });

  it('a fill point that does not have what is needed', () => {
    const stations = sound.stations.map((each) => ({ ...each, msPerPart: each.msPerPart.map(() => -1) }));
    const { breaches } = planted({ stations }, 3);
    expect(breaches.length).toBeGreaterThan(0);
    for (const { code, words } of breaches) {
      expect(code).toBe('fill-point-lacks-material');
      expect(words).toMatch(/does not have what is needed there$/);
    }
  });

  it('several at once, all of them', () => {
    const closed = jobWith(4, { openMs: 0, closeMs: 8 * HOUR_MS });
    const { breaches } = planted({ ...closed, ...rigWith({ shiftMs: HOUR_MS, overtimeMs: 0 }) }, 5);
    expect(breaches.map((each) => each.code).toSorted()).toEqual(['day-too-long', 'window-missed']);
  });
});
