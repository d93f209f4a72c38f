import { beforeEach, describe, expect, test } from 'vitest';
import { ok } from '../../../core/base/index.ts';
import type { JobDone, JobProgress } from '../../../core/contract/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { todayHere } from '../../../renderer/format/index.ts';
import {
  cancelPlanning,
  isOlderThanBook,
  planDone,
  planFailed,
  planProgress,
  startPlanning,
  startPlans,
  useBook,
  useNotices,
  usePlans,
  useView,
} from '../../../renderer/stores/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { DISK_FULL, type FakeHost, installFakeHost, openBookOf, settle } from '../fake-host.ts';

const PLAN = { roundName: 'Spring', roundId: 'r1', days: [{}, {}] } as unknown as Plan;
const progress = (change: Partial<JobProgress>): JobProgress => ({
  jobId: 'j1',
  session: 's1',
  roundId: 'r1',
  step: 'Searching',
  done: 0,
  total: 10,
  bestSoFar: '',
  ...change,
});
const done = (change: Partial<JobDone> = {}): JobDone => ({
  jobId: 'j1',
  session: 's1',
  roundId: 'r1',
  plan: PLAN,
  cancelled: false,
  elapsedMs: 5,
  revision: 7,
  savedAt: '2027-03-16T10:42:00Z',
  ...change,
});

let host: FakeHost;
beforeEach(() => {
  host = installFakeHost();
  startPlans('s1', []);
  useNotices.setState(useNotices.getInitialState(), true);
  useView.setState({ room: 'ground' });
  host.answer('job.startPlan', () => ok({ jobId: 'j1' }));
  host.answer('job.cancel', () => ok({ done: true }));
});

describe('planning', () => {
  test('asks the host, follows its progress, and keeps the plan', async () => {
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    expect(host.asked[0]).toEqual({
      name: 'job.startPlan',
      request: { session: 's1', roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0, today: todayHere() },
    });
    planProgress(progress({ done: 4, bestSoFar: '2 days' }));
    expect(usePlans.getState().job).toMatchObject({ done: 4, total: 10, bestSoFar: '2 days' });
    // A quarter is said once, with what is found; the rest of the way to the next is not talked about.
    const { spoken, spokenSerial } = useNotices.getState();
    expect(spoken).toBe('Planning: 25 %, best so far 2 days');
    planProgress(progress({ done: 4.9, bestSoFar: '1 day' }));
    expect(useNotices.getState().spokenSerial).toBe(spokenSerial);
    planDone(done());
    expect(usePlans.getState().job).toBeNull();
    expect(usePlans.getState().plans.r1).toMatchObject({ plan: PLAN, madeOnRevision: 7 });
  });

  test('progress never goes back', async () => {
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    planProgress(progress({ done: 6 }));
    planProgress(progress({ done: 5 }));
    expect(usePlans.getState().job?.done).toBe(6);
  });

  test('a step begins with its own figures, whatever the one before it counted', async () => {
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    planProgress(progress({ step: 'Reckoning', done: 47, total: 47 }));
    planProgress(progress({ step: 'Searching', done: 0, total: 1 }));
    expect(usePlans.getState().job).toMatchObject({ step: 'Searching', done: 0, total: 1 });
  });

  test('only one at a time', async () => {
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    expect(host.asked.filter((each) => each.name === 'job.startPlan')).toHaveLength(1);
  });

  test('that ends before its start is answered is not left running', async () => {
    const starting = startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    planDone(done());
    await starting;
    expect(usePlans.getState().job).toBeNull();
    expect(usePlans.getState().plans.r1).toBeDefined();
  });

  test('what ended early in another session is forgotten', async () => {
    planDone(done());
    startPlans('s1', []);
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    expect(usePlans.getState().job?.jobId).toBe('j1');
  });

  test('can be stopped, and says that the best is kept', async () => {
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    await cancelPlanning();
    expect(usePlans.getState().job?.cancelling).toBe(true);
    expect(host.asked.at(-1)).toEqual({ name: 'job.cancel', request: { jobId: 'j1' } });
    planDone(done({ cancelled: true }));
    expect(useNotices.getState().notice).toMatchObject({ text: 'Stopped; the best plan so far is kept: 2 rig days' });
  });

  test('that fails is told with its round and can be started again', async () => {
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    planFailed({ jobId: 'j1', session: 's1', roundId: 'r1', error: DISK_FULL });
    expect(usePlans.getState()).toMatchObject({ job: null, failures: { r1: DISK_FULL } });
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    await settle();
    expect(usePlans.getState().failures).toEqual({});
  });

  test('that fails is told by a notice wherever the Round room does not show why', () => {
    const book = sampleBook('residential-day');
    useBook.setState({ open: openBookOf(book) });
    const roundId = book.rounds[0]?.id ?? '';
    const fail = () => planFailed({ jobId: 'j1', session: 's1', roundId, error: DISK_FULL });
    const told = () => useNotices.getState().notice;
    useView.setState({ room: 'round', views: {} });
    fail();
    expect(told()).toBeNull();
    useView.setState({ views: { round: 'buy' } });
    fail();
    expect(told()).toMatchObject({ kind: 'error' });
    useNotices.setState(useNotices.getInitialState(), true);
    useView.setState({ room: 'ground', views: {} });
    fail();
    expect(told()).toMatchObject({ kind: 'error' });
  });

  test('that is stopped before there is a plan keeps the one from before and is no failure', async () => {
    planDone(done());
    await startPlanning({ roundId: 'r1', seconds: 5, seed: 3, evenUsdPerHour: 0 });
    planFailed({ jobId: 'j1', session: 's1', roundId: 'r1', error: { ...DISK_FULL, code: 'cancelled' } });
    expect(usePlans.getState()).toMatchObject({ job: null, failures: {}, plans: { r1: { plan: PLAN } } });
    expect(useNotices.getState().notice).toMatchObject({ kind: 'news' });
  });

  test('of a book that is no longer open is left alone', () => {
    planDone(done({ session: 'older' }));
    expect(usePlans.getState().plans).toEqual({});
  });

  test('in the round room is not announced over the table that shows it', async () => {
    useView.setState({ room: 'round' });
    planDone(done());
    expect(useNotices.getState().notice).toBeNull();
    expect(useNotices.getState().spoken).toBe('Spring is planned: 2 rig days');
  });
});

describe('a plan of a large book is told as older than the book', () => {
  const book = { revision: 7, savedAt: '2027-03-16T10:42:00Z' };

  test('by the revision that it was made on', () => {
    expect(isOlderThanBook({ madeOnRevision: 6, savedAt: '2027-03-17T00:00:00Z' }, book)).toBe(true);
    expect(isOlderThanBook({ madeOnRevision: 7, savedAt: '2027-03-15T00:00:00Z' }, book)).toBe(false);
  });

  test('by the times at which both were stored, where it comes out of the book', () => {
    expect(isOlderThanBook({ madeOnRevision: null, savedAt: '2027-03-16T10:41:59Z' }, book)).toBe(true);
    expect(isOlderThanBook({ madeOnRevision: null, savedAt: '2027-03-16T10:42:01Z' }, book)).toBe(false);
    expect(
      isOlderThanBook({ madeOnRevision: null, savedAt: '2027-03-16T10:42:01Z' }, { revision: 0, savedAt: null }),
    ).toBe(false);
  });
});
