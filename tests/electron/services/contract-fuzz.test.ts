import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { writeBook } from '../../../core/book/index.ts';
import { CHANNEL_NAMES, type ChannelName, type OpenBook } from '../../../core/contract/index.ts';
import { buildIfStale } from '../../support/build-first.ts';
import { openTally, WHOLE_FUZZ } from '../../support/fuzz.ts';
import { mutateValue } from '../../support/mutate-value.ts';
import { SOUND_HANDLE, SOUND_REQUESTS } from '../../support/sound-requests.ts';
import { ROOT } from '../support/bundle.ts';
import { startTestHost, type TestClient, type TestHost } from '../support/test-host.ts';

/** Requests for each channel. */
const ROUNDS = WHOLE_FUZZ ? 1500 : 90;
/** These write files or start threads: fewer of them are sent. */
const COSTLY: readonly ChannelName[] = [
  'book.create',
  'book.saveCopy',
  'book.openSample',
  'job.startPlan',
  'plan.fits',
  'fit.read',
  'board.ask',
  'passes.reckon',
  'passes.draw',
];
/** No answer may take longer, ms; where a thread has to be started and a round reckoned first, no longer than a plan is waited for. */
const LONGEST_MS = 2000;
const LONGEST_COSTLY_MS = 30_000;

let host: TestHost;
let screen: TestClient;
let open: OpenBook;

beforeAll(async () => {
  buildIfStale();
  host = await startTestHost({
    workerFile: path.join(ROOT, 'dist/electron/plan-worker.cjs'),
    groundWorkerFile: path.join(ROOT, 'dist/electron/ground-worker.cjs'),
  });
  screen = host.screen('one');
  open = await screen.must('book.openSample', { sampleId: 'residential-day' });
}, 120_000);
afterAll(() => host.close());

/** Requests that reach something: the book is open, its lawns, rounds and zones are there. */
function reaching(name: ChannelName): unknown {
  const [lawn] = open.book.properties;
  const [round] = open.book.rounds;
  const text = JSON.stringify(SOUND_REQUESTS[name])
    .replaceAll(SOUND_HANDLE, name.endsWith('restore') || name.startsWith('backup') ? open.token : open.session)
    .replaceAll('"spring"', JSON.stringify(round?.id))
    .replaceAll('"lawn"', JSON.stringify(lawn?.id));
  const request = JSON.parse(text) as Record<string, unknown>;
  if (name !== 'book.apply') return request;
  const put = { kind: 'put', table: 'properties', record: lawn };
  return {
    ...request,
    action: { kind: 'several', label: 'Odd', actions: [put, { kind: 'set', changes: { note: 'x' } }] },
  };
}

test.each(CHANNEL_NAMES)(
  '%s answers whatever it is asked, and the book stays sound',
  async (name) => {
    const random = createRandom(CHANNEL_NAMES.indexOf(name) + 1);
    const isCostly = COSTLY.includes(name);
    const rounds = isCostly ? Math.ceil(ROUNDS / 10) : ROUNDS;
    const sound = reaching(name);
    const tally = openTally(`request, ${name}`);
    for (let round = 0; round < rounds; round += 1) {
      const request = mutateValue(sound, random);
      const begin = performance.now();
      const answer = await screen.call(name, request as never);
      const tookMs = performance.now() - begin;
      expect(tookMs, `${name}, round ${round}`).toBeLessThan(isCostly ? LONGEST_COSTLY_MS : LONGEST_MS);
      tally.note(answer.ok ? 'read' : answer.error.code, tookMs);
      if (answer.ok && name === 'job.startPlan') await screen.call('job.cancel', answer.value as never);
      if (!answer.ok) {
        // A fault of the program is answered with 'internal': none is allowed here.
        expect(answer.error.code, `${name}, round ${round}: ${answer.error.detail}`).not.toBe('internal');
        expect(answer.error.detail.length).toBeGreaterThan(0);
        expect(JSON.stringify(answer.error).length, `${name}, round ${round}`).toBeLessThan(4000);
      }
      if (name === 'book.close' || name === 'backup.restore') await reopen();
    }
    tally.close();
    expect(({} as { readonly polluted?: boolean }).polluted).toBeUndefined();
    await reopen();
    // What a reader of the file gets is what the host holds: nothing unreadable was ever stored.
    const other = host.screen('two');
    const again = await other.must('book.open', { token: open.token });
    expect(writeBook(again.book)).toBe(writeBook((await screen.must('book.read', { session: open.session })).book));
    await other.must('book.close', { session: again.session });
  },
  600_000,
);

async function reopen(): Promise<void> {
  if ((await screen.call('book.read', { session: open.session })).ok) return;
  open = await screen.must('book.open', { token: open.token });
}
