import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { writeBook } from '../../../../core/book/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { NO_LOG } from '../../../../electron/services/index.ts';
import { createBoards } from '../../../../electron/services/jobs/boards.ts';
import type { Session } from '../../../../electron/services/library/index.ts';
import { smallBook } from '../../../support/samples.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

/** Seeds on which the thread of these tests breaks down, or works on for ever and heeds nothing. */
const BREAKS = 666_001;
const STUCK = 666_002;
const SOUND = 3;
/** Days on which the thread of a board does so. */
const STUCK_DAY = '2020-02-01';
const BROKEN_DAY = '2020-02-02';

let worker: Awaited<ReturnType<typeof bundleProgram>>;
let folder = '';
let badWorker = '';
beforeAll(async () => {
  worker = await bundleProgram('electron/services/jobs/plan-worker.ts');
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-bad-threads-'));
  await mkdir(path.join(folder, 'samples'));
  await writeFile(path.join(folder, 'samples/small.json'), writeBook(smallBook('residential-day')));
  badWorker = path.join(folder, 'worker.cjs');
  await writeFile(
    badWorker,
    `const { parentPort, workerData } = require('node:worker_threads');
     const seed = workerData.wish?.seed;
     if (seed === ${BREAKS}) throw new Error('on purpose');
     if (seed === ${STUCK}) {
       parentPort.postMessage({ kind: 'searching' });
       parentPort.postMessage({ kind: 'progress', progress: { step: 'stuck', done: 0, total: 1, bestSoFar: '' } });
       for (;;);
     }
     if ('fit' in workerData || workerData.board?.today === '${STUCK_DAY}') for (;;);
     if (workerData.board?.today === '${BROKEN_DAY}') throw new Error('on purpose');
     require(${JSON.stringify(worker.file)});`,
  );
}, 60_000);
afterAll(async () => {
  await worker.remove();
  await rm(folder, { recursive: true, force: true });
});

describe('a planning thread', () => {
  let host: TestHost;
  let screen: TestClient;
  beforeEach(async () => {
    host = await startTestHost({ workerFile: badWorker, samplesFolder: path.join(folder, 'samples') });
    screen = host.screen('one');
  });
  afterEach(() => host.close());

  const roundId = smallBook('residential-day').rounds[0]?.id ?? '';
  const start = (session: string, seed: number) =>
    screen.must('job.startPlan', { session, roundId, seed, iterations: 5 });
  const rename = (session: string, baseRevision: number, name: string) =>
    screen.must('book.apply', { session, baseRevision, action: { kind: 'set', changes: { name } } });

  test('that breaks down is told of; the plan from before and every edit stay, and the next plan is made', async () => {
    const { session } = await screen.must('book.openSample', { sampleId: 'small' });
    await start(session, SOUND);
    const { plan, savedAt } = await screen.next('job.done');
    await rename(session, 0, 'Edited before');
    const { jobId } = await start(session, BREAKS);
    const failed = await screen.next('job.failed');
    expect(failed).toMatchObject({ jobId, session, roundId, error: { code: 'internal' } });
    expect(failed.error.detail).toContain('on purpose');
    expect(failed.error.hint).toMatch(/^Try another seed/);
    expect(await screen.must('plan.read', { session, roundId })).toEqual({ roundId, savedAt, plan });
    await rename(session, 1, 'Edited after');
    await start(session, SOUND);
    expect((await screen.next('job.done')).plan.totals).toEqual(plan.totals);
    await screen.must('book.close', { session });
    const again = await screen.must('book.openSample', { sampleId: 'small' });
    expect(again.book.name).toBe('Edited after');
    expect(again.plans).toHaveLength(1);
  });

  test('that is stuck holds nothing up, and is ended soon after somebody asks for it', async () => {
    const { session } = await screen.must('book.openSample', { sampleId: 'small' });
    const { jobId } = await start(session, STUCK);
    // The passes may be reckoned first.
    while ((await screen.next('job.progress')).step !== 'stuck');
    expect(await rename(session, 0, 'Edited meanwhile')).toMatchObject({ revision: 1 });
    const askedAt = performance.now();
    expect(await screen.must('job.cancel', { jobId })).toEqual({ done: true });
    // The answer to the wish does not wait for the thread.
    expect(screen.events.some(({ name }) => name === 'job.failed')).toBe(false);
    expect(await rename(session, 1, 'Edited while it ends')).toMatchObject({ revision: 2 });
    expect(await screen.next('job.failed')).toMatchObject({ jobId, error: { code: 'cancelled' } });
    const tookMs = performance.now() - askedAt;
    expect(tookMs).toBeGreaterThan(1500);
    // Two seconds on a quiet machine: npm run bench:cancel prints the figure.
    expect(tookMs).toBeLessThan(20_000);
    await start(session, SOUND);
    expect((await screen.next('job.done')).cancelled).toBe(false);
  });

  test('that is stuck does not keep the program from ending', async () => {
    const { session } = await screen.must('book.openSample', { sampleId: 'small' });
    await rename(session, 0, 'Edited last');
    await start(session, STUCK);
    await host.services.disconnect('one');
    const again = host.screen('two');
    expect((await again.must('book.openSample', { sampleId: 'small' })).book.name).toBe('Edited last');
  });

  test('that answers questions about a plan and breaks down is told of, and the next question gets another one', async () => {
    const { session } = await screen.must('book.openSample', { sampleId: 'small' });
    await start(session, SOUND);
    const { plan } = await screen.next('job.done');
    const ask = (today: string) =>
      screen.call('board.ask', {
        session,
        roundId,
        today,
        stamp: 'first',
        plan: plan as never,
        question: { kind: 'breaches' },
      });
    expect(await ask(BROKEN_DAY)).toMatchObject({ ok: false, error: { code: 'internal' } });
    expect(await ask('2020-01-01')).toEqual({ ok: true, value: { kind: 'breaches', breaches: [] } });
  });

  test('that is stuck over a question of a screen ends with the book', async () => {
    const { session } = await screen.must('book.openSample', { sampleId: 'small' });
    const treatmentId = smallBook('residential-day').treatments[0]?.id ?? '';
    const question = screen.call('fit.read', { session, roundId, treatmentId });
    await screen.must('book.close', { session });
    expect(await question).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });
});

test('a thread of a board that is stuck is given up after a while, and the next question gets another one', async () => {
  const book = smallBook('residential-day');
  const entry = { book: () => book, revision: () => 0, plans: () => [] };
  const session = { session: 's', clientId: 'c', entry } as unknown as Session;
  const drivesOf = async () => undefined;
  const boards = createBoards({ workerFile: badWorker, drivesOf, now: () => new Date(), log: NO_LOG, patienceMs: 300 });
  const request = { roundId: book.rounds[0]?.id ?? '', today: STUCK_DAY, stamp: 'first', plan: {} as Plan };
  const ask = () => boards.ask(session, { ...request, question: { kind: 'breaches' } });
  for (let time = 0; time < 2; time += 1) expect(await ask()).toMatchObject({ ok: false, error: { code: 'internal' } });
  await boards.end(() => true);
});
