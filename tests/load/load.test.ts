import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Property } from '../../core/book/index.ts';
import type { OpenBook } from '../../core/contract/index.ts';
import { ROOT } from '../electron/support/bundle.ts';
import { startTestHost, type TestClient, type TestHost } from '../electron/support/test-host.ts';
import { buildIfStale } from '../support/build-first.ts';
import type { SampleName } from '../support/samples.ts';

/** A season in one process: 50,000 edits and 200 plans where that is asked for, a share of it otherwise. */
const IS_WHOLE = process.env.npm_lifecycle_event === 'test:load';
const EDITS = IS_WHOLE ? 50_000 : 1500;
const PLANS = IS_WHOLE ? 200 : 6;
/** What counts as no growth, MiB: the heap is never twice the same. */
const HEAP_SLACK_MIB = 24;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

let host: TestHost;
let screen: TestClient;

beforeAll(async () => {
  buildIfStale();
  host = await startTestHost({ workerFile: path.join(ROOT, 'dist/electron/plan-worker.cjs') });
  screen = host.screen('one');
}, 120_000);
afterAll(() => host.close());

type State = { readonly heapMib: number; readonly handles: number };

/** What the process holds once nothing is under way. */
async function stateNow(): Promise<State> {
  for (let round = 0; round < 3; round += 1) {
    await new Promise((done) => setTimeout(done, 50));
    collect();
  }
  // Open files, sockets and pipes; where the system does not list them, what keeps the process alive.
  const open = await readdir('/proc/self/fd').catch(() => process.getActiveResourcesInfo());
  return { heapMib: process.memoryUsage().heapUsed / 1024 / 1024, handles: open.length };
}

/** Two states of the same process, the second after much more work than the first. */
function expectNoGrowth(before: State, after: State): void {
  expect(after.heapMib - before.heapMib).toBeLessThan(HEAP_SLACK_MIB);
  expect(after.handles).toBeLessThanOrEqual(before.handles + 2);
}

/** "heap 51 -> 55 -> 58 MiB, handles 23 -> 23 -> 23". */
function course(...states: readonly State[]): string {
  const heap = states.map((each) => each.heapMib.toFixed(0)).join(' -> ');
  return `heap ${heap} MiB, handles ${states.map((each) => each.handles).join(' -> ')}`;
}

function openSample(sampleId: SampleName = 'residential-day'): Promise<OpenBook> {
  return screen.must('book.openSample', { sampleId });
}

/** Bytes of everything that belongs to the book, once it is closed. */
async function sizeOfBook(): Promise<number> {
  const folder = path.join(host.folder, 'samples');
  const sizes = (await readdir(folder)).map(async (name) => (await stat(path.join(folder, name))).size);
  return (await Promise.all(sizes)).reduce((sum, each) => sum + each, 0);
}

async function edit(open: OpenBook, from: number, to: number): Promise<void> {
  const [lawn] = open.book.properties;
  if (lawn === undefined) throw new Error('the sample has a lawn');
  for (let number = from; number < to; number += 1) {
    const record: Property = { ...lawn, note: `note ${number}` };
    const request = {
      session: open.session,
      action: { kind: 'put', table: 'properties', record } as const,
      baseRevision: number,
    };
    await screen.must('book.apply', request);
    screen.forget();
  }
}

describe('a long season in one process', () => {
  test(`${EDITS} edits leave no more memory, handles or bytes than the first thousand`, async () => {
    let open = await openSample();
    await edit(open, 0, 1000);
    await screen.must('book.close', { session: open.session });
    const bytes = await sizeOfBook();
    open = await openSample();
    const before = await stateNow();
    const middle = 1000 + (EDITS - 1000) / 2;
    await edit(open, 1000, middle);
    const half = await stateNow();
    await edit(open, middle, EDITS);
    const after = await stateNow();
    await screen.must('book.close', { session: open.session });
    expectNoGrowth(before, after);
    expect(await sizeOfBook()).toBeLessThan(bytes * 1.2);
    const again = await openSample();
    expect(again.revision).toBe(EDITS);
    expect(again.book.properties[0]?.note).toBe(`note ${EDITS - 1}`);
    await screen.must('book.close', { session: again.session });
    console.log(`${EDITS} edits: ${course(before, half, after)}, file ${bytes} -> ${await sizeOfBook()} bytes`);
  }, 3_600_000);

  test(`${PLANS} plans leave no more memory or handles than the first two`, async () => {
    // What a plan leaves behind does not depend on how long it is searched for.
    const open = await openSample(IS_WHOLE ? 'residential-day' : 'mixed-day');
    const roundId = open.book.rounds[0]?.id ?? '';
    const plan = async (seed: number): Promise<void> => {
      const done = screen.next('job.done');
      await screen.must('job.startPlan', { session: open.session, roundId, seed, iterations: 20 });
      await done;
      screen.forget();
    };
    for (let seed = 0; seed < 2; seed += 1) await plan(seed);
    const before = await stateNow();
    for (let seed = 2; seed < PLANS / 2; seed += 1) await plan(seed);
    const half = await stateNow();
    for (let seed = PLANS / 2; seed < PLANS; seed += 1) await plan(seed);
    const after = await stateNow();
    await screen.must('book.close', { session: open.session });
    expectNoGrowth(before, after);
    console.log(`${PLANS} plans: ${course(before, half, after)}`);
  }, 3_600_000);
});
