import path from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { Book } from '../../../core/book/index.ts';
import type { OpenBook } from '../../../core/contract/index.ts';
import { startTestHost, type TestClient } from '../../electron/support/test-host.ts';
import type { Line } from './figures.ts';

const EDITS = 200;
const PLANS = 4;
/** How long the plan of the day may be searched for; the aim is on the whole, from the request to the plan that is stored. */
const SEARCH_SEC = 1;
const MIB = 1024 * 1024;

/** What the services behind the window take for a book file, asked without a window: opening, edits until they are on the disk, the plan of the day. */
export async function timeServices(file: string, root: string, times: number): Promise<readonly Line[]> {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const workerFile = path.join(root, 'dist/electron/plan-worker.cjs');
  const samplesFolder = path.join(root, 'sample-routes');
  const host = await startTestHost({ workerFile, samplesFolder, open: { kind: 'file', file } });
  const screen = host.screen('one');
  try {
    const info = await screen.must('app.info', {});
    const wish = info.openAtStart;
    if (wish?.kind !== 'file') throw new Error('the host does not name the book');
    const opening: number[] = [];
    let open: OpenBook | null = null;
    for (let time = 0; time < times; time += 1) {
      if (open !== null) await screen.must('book.close', { session: open.session });
      const from = performance.now();
      open = await screen.must('book.open', { token: wish.token });
      opening.push(performance.now() - from);
    }
    if (open === null) throw new Error('the book was never opened');
    const edits = await timeEdits(screen, open);
    const plans = await timePlans(screen, open);
    collect();
    const heap = process.memoryUsage().heapUsed / MIB;
    return [
      { what: 'services: book file opened', unit: 'ms', aim: 3000, figures: opening },
      { what: 'services: edit of a lawn until it is on the disk', unit: 'ms', aim: 50, figures: edits },
      {
        what: `services: first plan of the day, ${SEARCH_SEC} s of search with it`,
        unit: 'ms',
        aim: 5000,
        figures: plans.slice(0, 1),
      },
      { what: 'services: later plans of the day, the same', unit: 'ms', aim: 5000, figures: plans.slice(1) },
      { what: 'services: heap with the book open', unit: 'MiB', aim: 1024, figures: [heap] },
    ];
  } finally {
    await host.close();
  }
}

/** Edits of lawns from all over the list, as a window asks for them. */
async function timeEdits(screen: TestClient, { session, book, revision }: OpenBook): Promise<readonly number[]> {
  const taken: number[] = [];
  for (let number = 0; number < EDITS; number += 1) {
    const lawn = lawnAt(book, number * 7919);
    const action = { kind: 'put', table: 'properties', record: { ...lawn, note: `note ${number}` } } as const;
    const from = performance.now();
    await screen.must('book.apply', { session, action, baseRevision: revision + number });
    taken.push(performance.now() - from);
  }
  return taken;
}

function lawnAt({ properties }: Book, number: number): Book['properties'][number] {
  const lawn = properties[number % properties.length];
  if (lawn === undefined) throw new Error('the book has no lawns');
  return lawn;
}

/** The first has nothing that is known from an earlier one. */
async function timePlans(screen: TestClient, { session, book }: OpenBook): Promise<readonly number[]> {
  const roundId = book.rounds[0]?.id ?? '';
  const taken: number[] = [];
  for (let seed = 0; seed < PLANS; seed += 1) {
    const done = screen.next('job.done');
    const from = performance.now();
    await screen.must('job.startPlan', { session, roundId, seed, seconds: SEARCH_SEC });
    await done;
    taken.push(performance.now() - from);
  }
  return taken;
}
