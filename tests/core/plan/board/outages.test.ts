import { describe, expect, it } from 'vitest';
import { Board, improveFrom } from '../../../../core/plan/board/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { buildProblem, needsMachine, type Outage } from '../../../../core/plan/problem/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { taskOf, toDay } from './hands.ts';

const book = sampleBook('mixed-day');
const whole = problemOf(book);
const [date = ''] = whole.dates;
const rig = whole.rigs.findIndex(
  (each) => (book.rigs.find(({ id }) => id === each.rigId)?.handMethodIds.length ?? 0) > 0,
);
const rigId = whole.rigs[rig]?.rigId ?? '';
const machineId = book.rigs.find((each) => each.id === rigId)?.machines[0]?.machineId ?? '';

function problemWith(outages: readonly Outage[]) {
  const built = buildProblem(book, whole.roundId, { outages });
  if (!built.ok) throw new Error(built.error.detail);
  return built.value;
}

describe('a machine that is out of order on a date', () => {
  const outage = { date, rigId, machineId };
  const problem = problemWith([outage]);
  const machines = new Set([machineId]);
  const reduced = improveFrom(book, problem, null);
  const plan = reduced.told(
    explainPlan(book, problem, reduced.back(solve(reduced.problem, { seed: 1, iterations: 40 }))),
  );

  it('adds the ways that do without it, where the rig has such ways, and takes none away', () => {
    problem.jobs.forEach((job, number) => {
      const before = whole.jobs[number]?.modes[rig] ?? [];
      expect(job.modes[rig]?.slice(0, before.length)).toEqual(before);
    });
    const free = problem.jobs.filter((job) =>
      job.modes[rig]?.some((mode) => !needsMachine(problem, rig, mode, machines)),
    );
    expect(free.length).toBeGreaterThan(0);
  });

  it('is not used by the plan then, which the judge accepts and which names it', () => {
    const used = plan.days.flatMap((day) => day.stops.flatMap((stop) => stop.tasks.map((task) => task.method)));
    expect(used.some((method) => method.kind === 'machine' && method.machineId === machineId)).toBe(false);
    expect(judgePlan(problem, plan).violations).toEqual([]);
    expect(plan.outages).toEqual([outage]);
    expect(plan.problemHash).not.toBe(whole.hash);
  });

  it('is in no reason and no other way that the plan tells', () => {
    const reasons = plan.unplaced.flatMap((each) => each.reasons.filter((reason) => reason.rigId === rigId));
    for (const { code, ways } of reasons) {
      expect(['machine-out', 'out-of-reach']).toContain(code);
      expect(ways).toEqual([]);
    }
    const ways = plan.days.flatMap((day) => day.stops.flatMap((stop) => stop.otherWays));
    const methods = ways.filter((way) => way.rigId === rigId).flatMap((way) => way.methods);
    expect(methods.some((method) => method.kind === 'machine' && method.machineId === machineId)).toBe(false);
  });

  it('keeps a stop that needs it from being moved there, with that as the reason', () => {
    const board = new Board(book, problem);
    const job = problem.jobs.find(
      ({ modes }) =>
        (modes[rig]?.length ?? 0) > 0 && modes[rig]?.every((mode) => needsMachine(problem, rig, mode, machines)),
    );
    if (job === undefined) return;
    const { propertyId = '', zoneId = '', treatmentId = '', step = 0 } = problem.tasks[job.tasks[0] ?? -1] ?? {};
    const answer = board.move(plan, [toDay({ propertyId, zoneId, treatmentId, step }, date, rigId, 0)]);
    expect(answer.kind === 'refused' && answer.refusals[0]?.words).toMatch(/without .*, out of order on/);
  });

  it('leaves the rig itself among those who can take over, in another way', () => {
    const board = new Board(book, whole);
    const before = explainPlan(book, whole, solve(whole, { seed: 1, iterations: 40 }));
    const orphans = board.takers(before, outage);
    expect(orphans.length).toBeGreaterThan(0);
    const own = orphans.flatMap((each) => each.takers.filter((taker) => taker.rigId === rigId));
    expect(own).toHaveLength(orphans.length);
    for (const { visitSec, words } of own) expect(visitSec === null ? words : words).not.toMatch(machineId);
    expect(own.some((each) => each.visitSec !== null)).toBe(true);
  });
});

describe('a rig that is out of order on a date', () => {
  const problem = problemWith([{ date, rigId }]);

  it('has no slot then, and is no goal of a move', () => {
    expect(problem.slots.every((slot) => slot.rig !== rig || problem.dates[slot.day] !== date)).toBe(true);
    const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 30 }));
    const stop = plan.days[0]?.stops[0];
    const answer = new Board(book, problem).move(plan, [toDay(taskOf(stop), date, rigId, 0)]);
    expect(answer.kind === 'refused' && answer.refusals[0]?.words).toMatch(/does not work on|cannot do/);
  });
});
