/**
 * What the tests of `test-files.mjs` use of vitest, without its workers: the tests are gathered once and stay in memory, so that a
 * mutant costs no more than the tests themselves. `quick-runner.mjs` puts this in the place of the package.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { chai, expect as realExpect } from 'vitest';

/** The mutant that is switched on, -1 for none. Instrumented sources read it at every place that has a mutant. */
export let activeMutant = -1;
let hits = 0;
let mostHits = Number.POSITIVE_INFINITY;

export function switchOn(mutant, limit) {
  activeMutant = mutant;
  hits = 0;
  mostHits = limit ?? Number.POSITIVE_INFINITY;
}

/** Called where the mutant takes the place of the source; a loop that has lost its end is left by the exception. */
export function hitMutant() {
  hits += 1;
  if (hits > mostHits) throw new Error('this mutant goes on for ever');
  return true;
}

export const goesOn = () => hits > mostHits;

const counts = new Float64Array(100_000);

/** Called where mutants lie, in the first run alone: which test comes by which of them. */
export function countMutants(...mutants) {
  for (const mutant of mutants) counts[mutant] += 1;
}

/** How often each mutant was come by since the last call. */
export function takeCounts() {
  const found = {};
  counts.forEach((count, mutant) => {
    if (count > 0) found[mutant] = count;
  });
  counts.fill(0);
  return found;
}

/** Every test that was gathered, in order: its file, its name and what it does. */
export const tests = [];

let file = '';
let groups = [];
let running = '';

export async function gather(name, load) {
  file = name;
  await load();
}

export async function run(test) {
  running = test.file;
  await test.run();
}

chai.Assertion.addMethod('toMatchFileSnapshot', async function matchFile(name) {
  realExpect(this._obj).toBe(readFileSync(path.join(path.dirname(running), name), 'utf8'));
});

export const expect = realExpect;

/** The settings of a test may stand before what it does. */
const bodyOf = (words) => words.find((each) => typeof each === 'function');

const listed =
  (make) =>
  (cases) =>
  (name, ...words) => {
    cases.forEach((each, number) => {
      const values = Array.isArray(each) ? each : [each];
      make(`${name}, case ${number + 1}`, () => bodyOf(words)(...values));
    });
  };

export const describe = (name, ...words) => {
  groups.push(name);
  bodyOf(words)();
  groups = groups.slice(0, -1);
};
describe.each = listed(describe);

export const it = (name, ...words) => {
  tests.push({ file, name: [...groups, name].join(' > '), run: bodyOf(words) });
};
it.each = listed(it);
export const test = (name, ...words) => it(name, ...words);
