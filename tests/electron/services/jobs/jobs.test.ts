import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Clock, Progress } from '../../../../core/base/index.ts';
import { type Book, writeBook } from '../../../../core/book/index.ts';
import type { JobDone, JobProgress } from '../../../../core/contract/index.ts';
import { measureProperty, treatableGround } from '../../../../core/measure/index.ts';
import { keptFigures, knownPassesWith } from '../../../../core/passes/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { lawnQuote } from '../../../../core/quote/index.ts';
import {
  type PlanJob,
  startPlanJob,
  startPlanning,
  throttleProgress,
} from '../../../../electron/services/jobs/index.ts';
import { problemOf, smallBook } from '../../../support/samples.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

const BOOK = smallBook('residential-day');

let worker: Awaited<ReturnType<typeof bundleProgram>>;
/** Holds the small book as a sample. */
let samplesFolder = '';
beforeAll(async () => {
  worker = await bundleProgram('electron/services/jobs/plan-worker.ts');
  samplesFolder = await mkdtemp(path.join(tmpdir(), 'swardway-samples-'));
  await writeFile(path.join(samplesFolder, 'small.json'), writeBook(BOOK));
}, 60_000);
afterAll(async () => {
  await worker.remove();
  await rm(samplesFolder, { recursive: true, force: true });
});

/** Waits until the search has a plan that can be kept. */
async function untilFirstPlan(screen: TestClient): Promise<void> {
  while ((await screen.next('job.progress')).bestSoFar === '');
}

describe('planning through the contract', () => {
  let host: TestHost;
  let screen: TestClient;
  beforeEach(async () => {
    host = await startTestHost({ workerFile: worker.file, samplesFolder });
    screen = host.screen('one');
  });
  afterEach(() => host.close());

  const open = () => screen.must('book.openSample', { sampleId: 'small' });
  const roundId = BOOK.rounds[0]?.id ?? '';

  test('makes a plan that the judge accepts, tells its progress, and keeps it with the book', async () => {
    const { session } = await open();
    const { jobId } = await screen.must('job.startPlan', { session, roundId, seed: 1, seconds: 1.5 });
    const done = await screen.next('job.done');
    expect(done).toMatchObject({ jobId, session, roundId, cancelled: false, revision: 0 });
    const verdict = judgePlan(problemOf(BOOK), done.plan);
    expect(verdict.violations).toEqual([]);

    const told = screen.events.filter(({ name }) => name === 'job.progress');
    expect(told.length).toBeGreaterThan(2);
    // The worker keeps 100 ms; on the way between threads some are held up and then come closer to the next.
    const tookMs = (told.at(-1)?.atMs ?? 0) - (told[0]?.atMs ?? 0);
    expect(told.length).toBeLessThanOrEqual(tookMs / 100 + 3);
    told.slice(1).forEach(({ payload }, index) => {
      const before = told[index];
      if (before === undefined) throw new Error('unreachable');
      const [now, then] = [payload as JobProgress, before.payload as JobProgress];
      if (now.step === then.step) expect(now.done).toBeGreaterThanOrEqual(then.done);
      expect(now.jobId).toBe(jobId);
    });

    expect(await screen.must('plan.read', { session, roundId })).toEqual({
      roundId,
      savedAt: done.savedAt,
      plan: done.plan,
    });
    await screen.must('book.close', { session });
    // Through text, since a file knows no negative zero.
    const kept = JSON.parse(JSON.stringify(done.plan)) as unknown;
    expect((await open()).plans).toEqual([{ roundId, savedAt: done.savedAt, plan: kept }]);
  });

  test('tells whether a plan is still one of the book', async () => {
    const { session, book } = await open();
    await screen.must('job.startPlan', { session, roundId, seed: 1, iterations: 1 });
    const { plan } = await screen.next('job.done');
    const dates = [...new Set(plan.days.map((day) => day.date))];
    const asked = { session, roundId, problemHash: plan.problemHash, dates, evenUsdPerHour: 0 };
    expect(await screen.must('plan.fits', asked)).toEqual({ fits: true });
    const [rig] = book.rigs;
    const record = { ...rig!, stopMin: rig!.stopMin + 1 };
    const action = { kind: 'put', table: 'rigs', record } as const;
    await screen.must('book.apply', { session, action, baseRevision: 0 });
    expect(await screen.must('plan.fits', asked)).toEqual({ fits: false });
    const strange = await screen.call('plan.fits', { ...asked, roundId: 'no-such-round' });
    expect(strange).toMatchObject({ ok: false, error: { code: 'reference-missing' } });
  });

  test('lays the passes of a head over a zone, and says why where it cannot', async () => {
    const { session, book } = await open();
    const [machine] = book.machines;
    const [property] = book.properties;
    const wish = {
      propertyId: property!.id,
      zoneId: property!.zones[0]!.id,
      machineId: machine!.id,
      headId: machine!.heads[0]!.id,
    };
    const heads = (passes: object | null) =>
      machine!.heads.map(({ passes: _, ...head }) => (passes === null ? head : { ...head, passes }));
    const put = (passes: object | null) =>
      ({ kind: 'put', table: 'machines', record: { ...machine!, heads: heads(passes) } }) as never;
    await screen.must('book.apply', { session, action: put(null), baseRevision: 0 });
    const draw = async (...wanted: (typeof wish)[]) => (await screen.must('passes.draw', { session, wanted })).drawings;
    expect(await draw(wish)).toMatchObject([{ ok: false, error: { code: 'nothing-to-do' } }]);
    await screen.must('book.apply', {
      session,
      action: put({ overlapFt: 1, trimPasses: 1, turnSec: 4 }),
      baseRevision: 1,
    });
    // What cannot be laid stands in its place among the others.
    const drawings = await draw({ ...wish, zoneId: 'none' }, wish, { ...wish, headId: 'none' });
    const missing = { ok: false, error: { code: 'reference-missing' } };
    expect(drawings).toMatchObject([missing, { ok: true }, missing]);
    const picture = drawings[1]?.ok === true ? drawings[1].value : null;
    expect(picture!.legs.filter((leg) => leg.kind === 'swath')).toHaveLength(picture!.swathCount);
    expect(picture!.swathCount).toBeGreaterThan(0);
  });

  test('reckons the passes over a property for whoever asks, once', async () => {
    const { session, book } = await open();
    const [machine] = book.machines;
    const [property] = book.properties;
    const passes = { overlapFt: 1.25, trimPasses: 1, turnSec: 4 };
    const record = { ...machine!, heads: machine!.heads.map((head) => ({ ...head, passes })) };
    await screen.must('book.apply', {
      session,
      action: { kind: 'put', table: 'machines', record } as never,
      baseRevision: 0,
    });
    const asked = { session, propertyId: property!.id };
    const { figures } = await screen.must('passes.reckon', asked);
    const mine = figures.filter(([key]) => key.includes('"overlapFt":1.25'));
    expect(mine.length).toBeGreaterThan(0);
    for (const [, each] of mine) expect(each!.minutes).toBeGreaterThan(0);
    // Kept in this process: what is asked again, and what a quote of the lawn needs, is known.
    expect((await screen.must('passes.reckon', asked)).figures).toEqual(figures);
    const known = knownPassesWith(treatableGround);
    const changed = { ...book, machines: book.machines.map((each) => (each.id === machine!.id ? record : each)) };
    const quote = lawnQuote(changed, property!, measureProperty(property!), known.passes);
    expect(quote.visits.length).toBeGreaterThan(0);
    expect(known.isComplete()).toBe(true);
    expect(known.asked().length).toBeGreaterThan(0);
    expect(await screen.call('passes.reckon', { session, propertyId: 'none' })).toMatchObject({
      ok: false,
      error: { code: 'reference-missing' },
    });
  });

  test('gives the same plan for the same seed and iterations', async () => {
    const { session } = await open();
    const plan = async (seed: number) => {
      await screen.must('job.startPlan', { session, roundId, seed, iterations: 60 });
      return (await screen.next('job.done')).plan;
    };
    expect(await plan(5)).toEqual(await plan(5));
  });

  test('gives the best plan so far soon after a cancel', async () => {
    const { session } = await open();
    const { jobId } = await screen.must('job.startPlan', { session, roundId, seed: 1, seconds: 600 });
    await untilFirstPlan(screen);
    const askedAt = performance.now();
    await screen.must('job.cancel', { jobId });
    const done: JobDone = await screen.next('job.done');
    expect(performance.now() - askedAt).toBeLessThan(30_000);
    expect(done.cancelled).toBe(true);
    expect(judgePlan(problemOf(BOOK), done.plan).feasible).toBe(true);
    expect(await screen.call('job.cancel', { jobId })).toMatchObject({ ok: false, error: { code: 'job-unknown' } });
  });

  test('fails with a reason for a round that is not there, and belongs to its own window', async () => {
    const { session } = await open();
    await screen.must('job.startPlan', { session, roundId: 'no-such-round', seed: 1, iterations: 1 });
    expect((await screen.next('job.failed')).error.code).toBe('reference-missing');
    const { jobId } = await screen.must('job.startPlan', { session, roundId, seed: 1, seconds: 600 });
    const other = host.screen('two');
    expect(await other.call('job.cancel', { jobId })).toMatchObject({ ok: false, error: { code: 'job-unknown' } });
    expect(await other.call('job.startPlan', { session, roundId, seed: 1 })).toMatchObject({
      ok: false,
      error: { code: 'not-allowed' },
    });
  });

  test('a window that goes away leaves the best plan so far in the book', async () => {
    const { session } = await open();
    await screen.must('job.startPlan', { session, roundId, seed: 1, seconds: 600 });
    await untilFirstPlan(screen);
    await host.services.disconnect('one');
    const again = host.screen('two');
    expect((await again.must('book.openSample', { sampleId: 'small' })).plans).toHaveLength(1);
  });
});

describe('planning with passes', () => {
  /** Lawns that no other test has: the swath is of no other width. */
  const driven = (swathFt: number): Book => {
    const book = BOOK;
    const passes = { overlapFt: 0.5, trimPasses: 1, turnSec: 4, handTrimFromSqFt: 1000 };
    const machines = book.machines.map((machine) => ({
      ...machine,
      heads: machine.heads.map((head) => ({ ...head, swathFt, passes })),
    }));
    return { ...book, machines };
  };
  const order = (book: Book) => ({
    book,
    roundId: book.rounds[0]?.id ?? '',
    dates: null,
    seed: 1,
    seconds: null,
    iterations: 2,
  });

  test('reckons them once in a process, whoever asks', { timeout: 120_000 }, async () => {
    const book = driven(7.9);
    const before = keptFigures().length;
    const told: Progress[] = [];
    const outcome = await startPlanning(worker.file, order(book), (each) => told.push(each)).outcome;
    if (!outcome.ok) throw new Error(outcome.error.detail);
    const reckoning = told.filter(({ step }) => step === 'Reckoning the work');
    expect(reckoning.length).toBeGreaterThan(0);
    // The lawns are dealt out to threads; what they do is told of together.
    expect(reckoning.every(({ done, total }) => done < total)).toBe(true);
    expect(reckoning.map(({ total }) => total).toSorted((one, other) => one - other)).toEqual(
      reckoning.map(({ total }) => total),
    );
    expect(keptFigures().length).toBeGreaterThan(before + 10);
    const kept = keptFigures().length;
    // Here, in this thread, nothing is left to be reckoned.
    const problem = problemOf(book);
    expect(keptFigures()).toHaveLength(kept);
    expect(problem.hash).toBe(outcome.value.plan.problemHash);
    expect(judgePlan(problem, outcome.value.plan).violations).toEqual([]);
  });

  test('can be cancelled meanwhile', { timeout: 60_000 }, async () => {
    const job = startPlanning(worker.file, order(driven(7.7)), () => job.cancel());
    expect(await job.outcome).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });

  test('ends with a failure where the thread cannot start', async () => {
    const outcome = await startPlanning(path.join(tmpdir(), 'absent.cjs'), order(driven(7.6)), () => undefined).outcome;
    expect(outcome).toMatchObject({ ok: false, error: { code: 'internal' } });
  });
});

test('several threads give the best of their plans, the same one every time', { timeout: 180_000 }, async () => {
  const wish = { book: BOOK, roundId: BOOK.rounds[0]?.id ?? '' };
  const planned = async (workers: number, seed: number) => {
    const order = { ...wish, dates: null, seed, seconds: null, iterations: 40, workers, figures: keptFigures() };
    const outcome = await startPlanJob(worker.file, order, () => undefined).outcome;
    if (!outcome.ok) throw new Error(outcome.error.detail);
    return outcome.value.plan;
  };
  problemOf(wish.book);
  const three = await planned(3, 1);
  expect(await planned(3, 1)).toEqual(three);
  const alone = await planned(1, 1);
  expect(three.totals.costUsd).toBeLessThanOrEqual(alone.totals.costUsd);
  // The seed in the plan finds it again by itself.
  expect(await planned(1, three.seed)).toEqual(three);
});

test('threads that exchange their best on the way give the same plan every time', { timeout: 180_000 }, async () => {
  const book = BOOK;
  const planned = async () => {
    const order = { book, roundId: book.rounds[0]?.id ?? '', dates: null, seed: 1, seconds: null, workers: 2 };
    // The last of the searches is two sevenths of it, and they meet after each 1,024 iterations of that.
    const outcome = await startPlanJob(worker.file, { ...order, iterations: 8000 }, () => undefined).outcome;
    if (!outcome.ok) throw new Error(outcome.error.detail);
    return outcome.value.plan;
  };
  expect(await planned()).toEqual(await planned());
});

describe('a worker that misbehaves', () => {
  let folder = '';
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-worker-'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));
  /** Tells that the search has begun, and by a sign of progress that it has told so. */
  const SEARCHING = `
    const { parentPort, workerData } = require('node:worker_threads');
    parentPort.postMessage({ kind: 'searching' });
    parentPort.postMessage({ kind: 'progress', progress: { step: '', done: 0, total: 1, bestSoFar: '' } });`;
  const order = {
    book: BOOK,
    roundId: 'r',
    dates: null,
    seed: 1,
    seconds: null,
    iterations: 1,
  };
  const start = async (code: string, heedMs = 100, onProgress: () => void = () => undefined) => {
    const file = path.join(folder, 'worker.cjs');
    await writeFile(file, code);
    return startPlanJob(file, order, onProgress, { heedMs, writeMs: 10_000 });
  };
  const startSearch = (code: string, heedMs: number) =>
    new Promise<PlanJob>((settle, fail) => {
      const job = start(`${SEARCHING}${code}`, heedMs, () => settle(job));
      job.catch(fail);
    });

  test.each([
    ['throws', 'throw new Error("on purpose")'],
    ['ends without a word', 'process.exit(0)'],
  ])('and %s is a failure, not a crash', async (_name, code) => {
    expect(await (await start(code)).outcome).toMatchObject({ ok: false, error: { code: 'internal' } });
  });

  test('and has not begun to search has nothing to lose, and is ended at once', async () => {
    const job = await start('for (;;);', 60_000);
    job.cancel();
    expect(await job.outcome).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });

  test('and does not heed the cancel is ended by force', async () => {
    const job = await startSearch('for (;;);', 100);
    job.cancel();
    expect(await job.outcome).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });

  test('and has seen the cancel may take longer to tell what it has', async () => {
    const job = await startSearch(
      `
      const flag = new Int32Array(workerData.stopFlag);
      while (Atomics.load(flag, 0) === 0);
      parentPort.postMessage({ kind: 'stopping' });
      const error = { code: 'no-plan', where: '', detail: 'told late', hint: '' };
      setTimeout(() => parentPort.postMessage({ kind: 'failed', error }), 400);
    `,
      10_000,
    );
    job.cancel();
    job.cancel();
    expect(await job.outcome).toMatchObject({ ok: false, error: { detail: 'told late' } });
  });

  test('and cannot be loaded is a failure', async () => {
    const job = startPlanJob(path.join(folder, 'absent.cjs'), order, () => undefined);
    expect(await job.outcome).toMatchObject({ ok: false, error: { code: 'internal' } });
  });
});

test('progress is passed on ten times a second at most, and never falls within a step', () => {
  let now = 0;
  const clock: Clock = { nowMs: () => now };
  const sent: Progress[] = [];
  const pass = throttleProgress((progress) => sent.push(progress), clock);
  const tell = (atMs: number, step: string, done: number) => {
    now = atMs;
    pass({ step, done, total: 100, bestSoFar: '' });
  };
  tell(0, 'search', 1);
  tell(50, 'search', 9);
  tell(100, 'search', 5);
  tell(199, 'search', 20);
  tell(200, 'search', 19);
  tell(300, 'explain', 2);
  expect(sent.map(({ step, done }) => `${step} ${done}`)).toEqual(['search 1', 'search 9', 'search 20', 'explain 2']);
});
