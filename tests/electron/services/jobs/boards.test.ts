import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { BoardQuestion } from '../../../../core/contract/index.ts';
import { applyChange } from '../../../../core/plan/board/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { restName } from '../../../../core/plan/live/index.ts';
import { buildProblem, type Outage, type Problem } from '../../../../core/plan/problem/index.ts';
import { askedOf, type Plan } from '../../../../core/plan/result/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

let worker: Awaited<ReturnType<typeof bundleProgram>>;
beforeAll(async () => {
  worker = await bundleProgram('electron/services/jobs/plan-worker.ts');
}, 60_000);
afterAll(() => worker.remove());

describe('a plan changed by hand through the contract', { timeout: 60_000 }, () => {
  let host: TestHost;
  let screen: TestClient;
  let session = '';
  let plan: Plan;
  const book = sampleBook('mixed-day');
  const roundId = book.rounds[0]?.id ?? '';
  const today = '2020-01-01';
  beforeAll(async () => {
    host = await startTestHost({ workerFile: worker.file });
    screen = host.screen('one');
    ({ session } = await screen.must('book.openSample', { sampleId: 'mixed-day' }));
    await screen.must('job.startPlan', { session, roundId, seed: 1, iterations: 15, today });
    ({ plan } = await screen.next('job.done'));
  }, 60_000);
  afterAll(() => host.close());

  const ask = (stamp: string, question: BoardQuestion, whole: Plan | null = null) =>
    screen.must('board.ask', { session, roundId, today, stamp, plan: whole as never, question: question as never });
  const firstTask = (of: Plan) => {
    const [task] = of.days[0]?.stops[0]?.tasks ?? [];
    if (task === undefined) throw new Error('a plan without work');
    const { propertyId, zoneId, treatmentId, step } = task;
    return { propertyId, zoneId, treatmentId, step };
  };

  test('the plan is asked for once; then moves, and moves of what came of them, are answered and kept with the book', async () => {
    const { date = '', rigId = '' } = plan.days[0] ?? {};
    const question = { kind: 'breaches' } as const;
    expect(await ask('first', question)).toEqual({ kind: 'plan-unknown' });
    expect(await ask('first', question, plan)).toEqual({ kind: 'breaches', breaches: [] });
    const to = { kind: 'day', date, rigId, position: 2 } as const;
    const moved = await ask('first', { kind: 'move', newStamp: 'second', moves: [{ task: firstTask(plan), to }] });
    if (moved.kind !== 'moved') throw new Error(moved.kind);
    const second = applyChange(plan, moved.change);
    expect(second.days[0]?.stops[2]?.propertyId).toBe(firstTask(plan).propertyId);
    const out = await ask('second', {
      kind: 'move',
      newStamp: 'third',
      moves: [{ task: firstTask(plan), to: { kind: 'out' } }],
    });
    if (out.kind !== 'moved') throw new Error(out.kind);
    const third = applyChange(second, out.change);
    expect(judgePlan(problemOf(book), third).violations).toEqual([]);
    // Going back: the plan of an earlier stamp is kept with the book by its stamp alone.
    expect(await screen.must('board.keep', { session, roundId, stamp: 'second' })).toEqual({ known: true });
    expect((await screen.must('plan.read', { session, roundId }))?.plan).toEqual(second);
    expect(await screen.must('board.keep', { session, roundId, stamp: 'never' })).toEqual({ known: false });
  });

  test('planning again leaves out what was taken out, and does without a rig that is out', async () => {
    const [first, second] = plan.days;
    if (first === undefined || second === undefined) throw new Error('the mixed day has two rig days');
    await ask('again', { kind: 'breaches' }, plan);
    const moves = [{ task: firstTask(plan), to: { kind: 'out' } as const }];
    await ask('again', { kind: 'move', newStamp: 'without', moves });
    const outages = [{ date: second.date, rigId: second.rigId }];
    const keep = { first: 0, pinned: [] };
    await screen.must('job.startPlan', { session, roundId, seed: 1, iterations: 10, today, keep, outages });
    const { plan: again } = await screen.next('job.done');
    expect(again.days.map((day) => day.rigId)).toEqual([first.rigId]);
    const reasons = (propertyId: string) =>
      again.unplaced
        .filter((each) => each.propertyId === propertyId)
        .flatMap((each) => each.reasons.map(({ code }) => code));
    expect(new Set(reasons(firstTask(plan).propertyId))).toEqual(new Set(['taken-out-by-hand']));
    expect(judgePlan(without(outages), again).violations).toEqual([]);
    const { problemHash } = again;
    const fits = { session, roundId, problemHash, dates: [], evenUsdPerHour: 0 };
    expect(await screen.must('plan.fits', { ...fits, outages: [...(again.outages ?? [])] })).toEqual({ fits: true });
    expect(await screen.must('plan.fits', fits)).toEqual({ fits: false });
  });

  test('the plan of the rest of a day under way is judged, moved and kept beside that of the round', async () => {
    const day = plan.days[0];
    const [done, ...left] = day?.stops.map((stop) => stop.propertyId) ?? [];
    const parking = book.properties.find((each) => each.id === done)?.parking;
    if (day === undefined || done === undefined || parking === undefined) throw new Error('a day with stops');
    const { date, rigId } = day;
    const aboard = { hadBreak: false, compartments: [], waterGal: 60, bags: [] };
    const rigs = [{ rigId, nowMin: 540, at: { id: done, at: [...parking] as [number, number] }, ...aboard }];
    const rest = { date, propertyIds: left, rigs };
    await screen.must('job.startPlan', { session, roundId, seed: 1, iterations: 10, today, rest });
    const { plan: planned, roundId: name } = await screen.next('job.done');
    expect(name).toBe(restName(roundId, date));
    expect(planned.rest).toEqual(rest);
    const own = planned.days.find((each) => each.rigId === rigId);
    if (own === undefined) throw new Error('the rig goes on');
    expect(own.startSec).toBe(540 * 60);
    expect(await ask('rest', { kind: 'breaches' }, planned)).toEqual({ kind: 'breaches', breaches: [] });
    const { propertyId, tasks } = own.stops[0] ?? own.stops[1] ?? { propertyId: '', tasks: [] };
    const { zoneId = '', treatmentId = '', step = 0 } = tasks[0] ?? {};
    const to = { kind: 'day', date, rigId, position: 2 } as const;
    const moves = [{ task: { propertyId, zoneId, treatmentId, step }, to }];
    const moved = await ask('rest', { kind: 'move', newStamp: 'rest-moved', moves });
    if (moved.kind !== 'moved') throw new Error(moved.kind);
    const after = applyChange(planned, moved.change);
    expect(after.days.find((each) => each.rigId === rigId)?.stops[2]?.propertyId).toBe(propertyId);
    const problem = buildProblem(book, roundId, askedOf(after));
    if (!problem.ok) throw new Error(problem.error.detail);
    expect(judgePlan(problem.value, after).violations.map((each) => each.code)).toEqual(
      moved.breaches.map((each) => each.code),
    );
    // The plan of the round is still the one of the round.
    expect(await screen.must('board.keep', { session, roundId, stamp: 'rest-moved' })).toEqual({ known: true });
    expect((await screen.must('plan.read', { session, roundId: name }))?.plan).toEqual(after);
    expect((await screen.must('plan.read', { session, roundId }))?.plan.rest).toBeUndefined();
  });

  test('without a machine on a date nothing is done with it there, and who could take over is told with the reason', async () => {
    const day = plan.days.find((each) => methodsOf(each).length > 0);
    if (day === undefined) throw new Error('no machine at work');
    const machineId = methodsOf(day)[0] ?? '';
    const outage = { date: day.date, rigId: day.rigId, machineId };
    const told = await ask('first', { kind: 'takers', outage }, plan);
    if (told.kind !== 'takers') throw new Error(told.kind);
    expect(told.orphans.length).toBeGreaterThan(0);
    for (const { takers } of told.orphans) {
      expect(takers.map((each) => each.rigId).toSorted()).toEqual(book.rigs.map((each) => each.id).toSorted());
      for (const { words } of takers) expect(words).not.toBe('');
    }
    const keep = { first: 0, pinned: [] };
    await screen.must('job.startPlan', { session, roundId, seed: 1, iterations: 10, today, keep, outages: [outage] });
    const { plan: again } = await screen.next('job.done');
    for (const each of again.days.filter((one) => one.date === day.date && one.rigId === day.rigId))
      expect(methodsOf(each)).not.toContain(machineId);
    expect(again.days.some((each) => each.rigId === day.rigId)).toBe(true);
    expect(judgePlan(without([outage]), again).violations).toEqual([]);
  });

  test('who can go is told for every lawn and every method', async () => {
    const treatmentId = book.rounds[0]?.treatmentIds[0] ?? '';
    const table = await screen.must('fit.read', { session, roundId, treatmentId });
    expect(table?.rows).toHaveLength(book.properties.length);
    for (const { cells } of table?.rows ?? []) {
      expect(cells).toHaveLength(table?.columns.length ?? -1);
      for (const { minutes, words } of cells) expect(minutes === null ? words.length : minutes).toBeGreaterThan(0);
    }
    expect(await screen.must('fit.read', { session, roundId, treatmentId: 'none' })).toBeNull();
  });
});

function without(outages: readonly Outage[]): Problem {
  const book = sampleBook('mixed-day');
  const built = buildProblem(book, book.rounds[0]?.id ?? '', { outages });
  if (!built.ok) throw new Error(built.error.detail);
  return built.value;
}

function methodsOf(day: Plan['days'][number]): readonly string[] {
  const methods = day.stops.flatMap((stop) => stop.tasks.map((task) => task.method));
  return [...new Set(methods.flatMap((method) => (method.kind === 'machine' ? [method.machineId] : [])))];
}
