import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import { createRandom, type Random } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { type PlanJob, startPlanJob, startPlanning } from '../../../electron/services/jobs/index.ts';
import type { PlanMessage, PlanOrder, PlanWish } from '../../../electron/services/jobs/messages.ts';
import { sampleBook } from '../../support/samples.ts';
import { drawnRound } from '../drawn-round.ts';
import { type Line, tableOf } from '../load/figures.ts';
import { inventRound } from '../rounds.ts';

/**
 * How soon a search that is told to end answers, at random moments of it, and how soon one that heeds nothing is ended by force:
 * npm run bench:cancel -- [--times 20]
 *
 * It needs the built program.
 */
const { values } = parseArgs({ options: { times: { type: 'string', default: '20' } } });
const times = Number(values.times);
const workerFile = path.join(process.cwd(), 'dist/electron/plan-worker.cjs');

type Taken = { readonly heeded: number; readonly answered: number };
const wishFor = (book: Book): PlanWish => {
  const roundId = book.rounds[0]?.id ?? '';
  return { book, roundId, dates: null, seed: 1, seconds: 600, iterations: null };
};

/** Milliseconds from the wish to end, so long after the search began, until it has seen it, and until its best plan so far is there. */
async function endSearch(book: Book, afterMs: number): Promise<Taken> {
  const flag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const order: PlanOrder = { wish: wishFor(book), stopFlag: flag, seat: null };
  const worker = new Worker(workerFile, { workerData: order });
  let askedAt = Number.POSITIVE_INFINITY;
  let heeded = 0;
  let begin: () => void = () => undefined;
  const searching = new Promise<void>((settle) => {
    begin = settle;
  });
  const answered = new Promise<number>((settle, fail) => {
    worker.on('error', fail);
    worker.on('message', (message: PlanMessage) => {
      if (message.kind === 'searching') begin();
      else if (message.kind === 'stopping') heeded = performance.now() - askedAt;
      else if (message.kind !== 'progress') settle(performance.now() - askedAt);
    });
  });
  await searching;
  await sleep(afterMs);
  askedAt = performance.now();
  Atomics.store(new Int32Array(flag), 0, 1);
  const taken = await answered;
  await worker.terminate();
  return { heeded, answered: taken };
}

/** Milliseconds from the wish to end until the answer, so long after the start: before the search has begun. */
async function endStart(book: Book, afterMs: number): Promise<number> {
  const job = startPlanJob(workerFile, wishFor(book), () => undefined);
  await sleep(afterMs);
  return answerTo(job);
}

async function answerTo(job: PlanJob): Promise<number> {
  const from = performance.now();
  job.cancel();
  const outcome = await job.outcome;
  if (!outcome.ok && outcome.error.code !== 'cancelled') throw new Error(outcome.error.detail);
  return performance.now() - from;
}

async function searches(what: string, book: Book, random: Random): Promise<readonly Line[]> {
  const taken: Taken[] = [];
  const starts: number[] = [];
  for (let time = 0; time < times; time += 1) {
    starts.push(await endStart(book, 100 * random.unit()));
    taken.push(await endSearch(book, 3000 * random.unit()));
  }
  return [
    { what: `${what}: before the search, answered`, unit: 'ms', aim: 200, figures: starts },
    { what: `${what}: seen by the search`, unit: 'ms', aim: 200, figures: taken.map(({ heeded }) => heeded) },
    {
      ...{ what: `${what}: its best plan, with reasons`, unit: 'ms', aim: null },
      figures: taken.map(({ answered }) => answered),
    },
  ];
}

async function reckonings(what: string, random: Random): Promise<Line> {
  const figures: number[] = [];
  // Other lawns each time, or their passes would be known.
  for (let time = 0; time < times; time += 1) {
    const book = drawnRound({ lawns: 150, rigs: 2, days: 4 }, 100 + time);
    const job = startPlanning(workerFile, wishFor(book), () => undefined);
    await sleep(1500 * random.unit());
    figures.push(await answerTo(job));
  }
  return { what, unit: 'ms', aim: 200, figures };
}

/** A thread that never looks whether it should end. */
async function stuck(): Promise<Line> {
  const figures: number[] = [];
  for (let time = 0; time < Math.min(times, 5); time += 1) {
    const file = path.join(process.cwd(), 'tests/bench/cancel/stuck.cjs');
    const job = startPlanJob(file, wishFor(sampleBook('residential-day')), () => undefined);
    await sleep(300);
    figures.push(await answerTo(job));
  }
  return { what: 'a thread that heeds nothing, ended by force', unit: 'ms', aim: 2100, figures };
}

const random = createRandom(1);
console.log(
  tableOf([
    ...(await searches('residential day', sampleBook('residential-day'), random)),
    ...(await searches('200 lawns', inventRound({ lawns: 200, rigs: 2, days: 6 }, 3), random)),
    ...(await searches('2,000 lawns', inventRound({ lawns: 2000, rigs: 4, days: 20 }, 3), random)),
    await reckonings('150 drawn lawns, while their passes are reckoned', random),
    await stuck(),
  ]),
);
