import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundleProgram } from '../electron/support/bundle.ts';
import { killRounds, type Seen, WORKS, type Work } from './rounds.ts';

/** Two thousand kills in all where that is asked for, some fifty otherwise. */
const ALL = process.env.npm_lifecycle_event === 'test:crash' ? 2000 : 50;
/** A plan takes a second or two to be searched for, so that a third as many of these are killed. */
const roundsOf = (work: Work): number => Math.ceil((3 * ALL) / (3 * WORKS.length - 2) / (work === 'plan' ? 3 : 1));
const SEED = 20_260_301;

let planWorker: Awaited<ReturnType<typeof bundleProgram>>;
let program: Awaited<ReturnType<typeof bundleProgram>>;
const found: (Seen & { readonly work: string })[] = [];

beforeAll(async () => {
  program = await bundleProgram('tests/crash/crash-program.ts');
  planWorker = await bundleProgram('electron/services/jobs/plan-worker.ts');
}, 60_000);
afterAll(async () => {
  await program.remove();
  await planWorker.remove();
  for (const { work, rounds, inWriting, told, longestMs } of found) {
    console.log(
      `${work}: ${rounds} kills, ${inWriting} of them in mid-write; ${told} things told to be stored, none lost, none half there; longest to open again ${Math.ceil(longestMs)} ms`,
    );
  }
});

test.each(WORKS)(
  'killed again and again in the work "%s" nothing that was told to be stored is lost and nothing is half there',
  async (work) => {
    const seen = await killRounds(program.file, planWorker.file, work, roundsOf(work), SEED);
    found.push({ work, ...seen });
    expect(seen.told).toBeGreaterThan(0);
    // Two seconds are the promise; the rest is for machines that are busy with other tests.
    expect(seen.longestMs).toBeLessThan(10_000);
    // A migration or a file is written in a few milliseconds, so that few kills fall into it.
    if (ALL >= 2000 ? work !== 'migrate' : !['migrate', 'export', 'restore'].includes(work))
      expect(seen.inWriting).toBeGreaterThan(0);
  },
  1_800_000,
);
