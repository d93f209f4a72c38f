import { test } from 'vitest';
import type { Problem } from '../../core/plan/problem/index.ts';
import { RefillPlacer, type Visit } from '../../core/plan/refills/index.ts';
import { type ProblemShape, randomProblem } from '../core/plan/random-problem.ts';
import { middle, share } from './spread.ts';

/**
 * What placing the refills of one row of visits takes, in its full form: every label that no other one beats is kept, up to 300 at a
 * time, the ends of the day are played to the millisecond, and amounts are settled. Rigs with a hopper and one tank, in the last family
 * with bags beside the hopper; a mix and a dry product, a shop and two fill points. Nothing is asserted: times differ by machine.
 */
const SHAPE: Omit<ProblemShape, 'jobs'> = { stations: 2, zones: 2, materials: 2, heavy: 0, largest: 8, hours: 24 };
const FAMILIES: readonly { readonly name: string; readonly shape: Omit<ProblemShape, 'jobs'> }[] = [
  { name: 'stations of one price', shape: { ...SHAPE, evenFlow: true } },
  { name: 'stations of different prices', shape: SHAPE },
  { name: 'thirsty, half without a nurse tank', shape: { ...SHAPE, thirst: 2, noNurse: 0.5 } },
  { name: 'payload binds', shape: { ...SHAPE, heavy: 1 } },
  { name: 'bags on the machine', shape: { ...SHAPE, thirst: 1.5, bagsAboard: 1 } },
];
const ROWS = 60;
/** Every row is placed so often, and its quickest run counts: the first ones warm the program up. */
const TIMES = 3;
const TARGETS_MS: ReadonlyMap<number, number> = new Map([
  [12, 3],
  [20, 15],
]);

test.each([...TARGETS_MS])('placing refills of %i stops', (stops, target) => {
  for (const { name, shape } of FAMILIES) {
    const days = problemsOf(stops, shape);
    const spent = days.map(([problem, visits]) => quickest(problem, visits));
    const ratio = middle(spent) / target;
    console.log(
      `refills of ${stops} stops, hopper and tank, ${name}: median ${middle(spent).toFixed(2)} ms, ` +
        `nine in ten ${share(spent, 0.9).toFixed(2)} ms, longest ${share(spent, 1).toFixed(2)} ms, ` +
        `target ${target} ms, ratio ${ratio.toFixed(2)}`,
    );
  }
});

/** The first rows whose rig has two compartments and whose day can be done. */
function problemsOf(
  stops: number,
  shape: Omit<ProblemShape, 'jobs'>,
): readonly (readonly [Problem, readonly Visit[]])[] {
  const found: (readonly [Problem, readonly Visit[]])[] = [];
  for (let seed = 1; found.length < ROWS; seed += 1) {
    const problem = randomProblem(seed, { ...shape, jobs: stops });
    if (problem.rigs[0]?.compartments.filter((each) => each.pours === undefined).length !== 2) continue;
    const visits = problem.jobs.map((_, job) => ({ job, mode: 0 }));
    if (new RefillPlacer(problem).place(0, visits, 'quick').kind === 'placed') found.push([problem, visits]);
  }
  return found;
}

function quickest(problem: Problem, visits: readonly Visit[]): number {
  const placer = new RefillPlacer(problem);
  const times = Array.from({ length: TIMES }, () => {
    // Time of the processor, so that other work on the machine does not count.
    const start = process.cpuUsage();
    placer.place(0, visits, 'careful');
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  return Math.min(...times);
}
