import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundleProgram } from '../electron/support/bundle.ts';
import { killRounds, type Seen, WORKS } from './rounds.ts';

/** Two thousand kills in all where that is asked for, some fifty otherwise. */
const ALL = process.env.npm_lifecycle_event === 'test:crash' ? 2000 : 56;
const ROUNDS = Math.ceil(ALL / WORKS.length);
const SEED = 20_260_301;

let program: Awaited<ReturnType<typeof bundleProgram>>;
const found: (Seen & { readonly work: string })[] = [];

beforeAll(async () => {
  program = await bundleProgram('tests/crash/crash-program.ts');
}, 60_000);
afterAll(async () => {
  await program.remove();
  for (const { work, rounds, inWriting, told, longestMs } of found) {
    console.log(
      `${work}: ${rounds} kills, ${inWriting} of them in mid-write; ${told} things told to be stored, none lost, none half there; longest to open again ${Math.ceil(longestMs)} ms`,
    );
  }
});

test.each(WORKS)(
  `killed ${ROUNDS} times in the work "%s" nothing that was told to be stored is lost and nothing is half there`,
  async (work) => {
    const seen = await killRounds(program.file, work, ROUNDS, SEED);
    found.push({ work, ...seen });
    expect(seen.told).toBeGreaterThan(0);
    // A migration is over in a few milliseconds, so that few kills fall into it.
    if (work !== 'migrate') expect(seen.inWriting).toBeGreaterThan(0);
  },
  1_800_000,
);
