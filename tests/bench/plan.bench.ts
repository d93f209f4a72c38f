import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createRandom } from '../../core/base/index.ts';
import { readBook } from '../../core/book/index.ts';
import { measureBook } from '../../core/measure/index.ts';
import { buildProblem, type Problem } from '../../core/plan/problem/index.ts';
import { RefillPlacer } from '../../core/plan/refills/index.ts';
import { solve } from '../../core/plan/search/index.ts';
import { type ProblemShape, randomProblem } from '../core/plan/random-problem.ts';

const DAY: ProblemShape = {
  jobs: 30,
  stations: 2,
  zones: 2,
  materials: 2,
  thirst: 0.8,
  largest: 8,
  hours: 16,
  heavy: 0,
  noNurse: 0,
  evenFlow: true,
  town: 3000,
};
const SHORT_S = 2;
const LONG_S = 60;
const TARGET = 0.01;

function residentialDay(): Problem {
  const text = readFileSync(new URL('../../sample-routes/residential-day.json', import.meta.url), 'utf8');
  const read = readBook(text, 'residential-day.json');
  if (!read.ok) throw new Error(read.error.detail);
  const { book } = read.value;
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const built = buildProblem(book, book.rounds[0]?.id ?? '', { measures });
  if (!built.ok) throw new Error(built.error.detail);
  return built.value;
}

function planFor(problem: Problem, seconds: number) {
  return solve(problem, { seed: 1, seconds }, { clock: { nowMs: () => performance.now() } });
}

test.each([
  ['the residential day of the samples', residentialDay],
  ['an invented day of 30 thirsty stops', () => randomProblem(1, DAY)],
])('%s: 2 s against 60 s', { timeout: 600_000 }, (name, problemOf) => {
  const problem = problemOf();
  const short = planFor(problem, SHORT_S);
  const long = planFor(problem, LONG_S);
  const gap = short.cost / long.cost - 1;
  console.log(
    `plan ${name}: ${SHORT_S} s $${(short.cost / 1e9).toFixed(2)} (${short.iterations} rounds), ` +
      `${LONG_S} s $${(long.cost / 1e9).toFixed(2)} (${long.iterations} rounds), ` +
      `gap ${(100 * gap).toFixed(2)} %, target ${100 * TARGET} %, ratio ${(gap / TARGET).toFixed(2)}`,
  );
  expect(short.unserved.length).toBe(long.unserved.length);
  expect(gap).toBeLessThan(TARGET);
});

test('routes reckoned per second', { timeout: 600_000 }, () => {
  const problem = randomProblem(1, DAY);
  const placer = new RefillPlacer(problem);
  const random = createRandom(1);
  const modes = problem.jobs.map(() => 0);
  for (const beam of [4, 16, 300]) {
    const rows = Array.from({ length: beam > 16 ? 30 : 300 }, () => shuffle(problem.jobs.length, random.below));
    const start = performance.now();
    for (const row of rows) placer.estimate(0, row, modes, row.length, beam);
    const spent = performance.now() - start;
    console.log(
      `reckon random rows of 30 stops, ${beam} labels: ${((1000 * rows.length) / spent).toFixed(0)} routes a second, ` +
        `${(spent / rows.length).toFixed(2)} ms each`,
    );
    expect(spent).toBeGreaterThan(0);
  }
});

function shuffle(count: number, below: (bound: number) => number): number[] {
  const row = Array.from({ length: count }, (_, at) => at);
  for (let at = count - 1; at > 0; at -= 1) {
    const other = below(at + 1);
    [row[at], row[other]] = [row[other] as number, row[at] as number];
  }
  return row;
}
