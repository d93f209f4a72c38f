import { describe, expect, it } from 'vitest';
import { solve } from '../../../../core/plan/search/index.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { replay } from '../refills/replay.ts';
import { bruteForce } from './oracle.ts';

/**
 * Two hundred small invented problems, each planned by the program and by brute force with its own refills: the same number of jobs
 * left out, and the same cost. No source: the brute force is the measure.
 *
 * `npm test` takes every fourth seed; `npm run test:exact` takes all.
 *
 * Tried once by hand: seeds 1 to 440 of every family, 3,930 problems for which the brute force needs no more than some seconds. Dearer
 * were 8: "six stops, two rigs" 76 ($4.21), "two ways to do a stop" 355 ($0.09), "two rigs, two zones" 62 ($0.002), "windows and
 * breaks" 47 ($10.07), 220 ($0.94), 297 ($0.02), 320 ($0.39) and 355 ($0.12). Cheaper were 20, all of them days that hold when
 * replayed: the brute force looks for refills inside an op only where a compartment has run dry.
 */
type Family = {
  readonly name: string;
  readonly shape: ProblemShape;
  readonly count: number;
  /** Seeds that keep the brute force busy for minutes; the next ones are taken in their place. */
  readonly tooSlow?: readonly number[];
  /** Seeds in which the program finds a cheaper day, which holds when replayed and costs what it says: see above. */
  readonly cheaper?: readonly number[];
};
const FAMILIES: readonly Family[] = [
  {
    name: 'seven stops, one rig',
    count: 40,
    tooSlow: [4, 38],
    shape: { jobs: 7, zones: 1, stations: 1, evenFlow: true, thirst: 1.2, heavy: 0 },
  },
  { name: 'five stops of up to two zones', count: 32, shape: { jobs: 5, stations: 1, evenFlow: true, heavy: 0 } },
  {
    name: 'six stops, two rigs',
    count: 32,
    shape: { jobs: 6, rigs: 2, zones: 1, stations: 1, thirst: 1.2, heavy: 0 },
    tooSlow: [15, 32],
  },
  { name: 'two ways to do a stop', count: 20, shape: { jobs: 4, modes: 2, stations: 1, heavy: 0 } },
  { name: 'two rigs, two zones', count: 16, shape: { jobs: 4, rigs: 2, stations: 1, evenFlow: true, heavy: 0 } },
  { name: 'two days', count: 12, shape: { jobs: 4, days: 2, zones: 1, stations: 1, heavy: 0, hours: 3 } },
  {
    name: 'windows and breaks',
    count: 28,
    shape: { jobs: 5, zones: 1, stations: 1, heavy: 0, windows: 0.4, breaks: 0.3 },
  },
  {
    name: 'hours of treating',
    count: 16,
    shape: { jobs: 4, days: 2, zones: 1, stations: 1, heavy: 0, treatHours: 0.6 },
    // Refills before a wait, where there is still some in the tank.
    cheaper: [2],
  },
  {
    name: 'two persons at a stop',
    count: 16,
    shape: { jobs: 3, stations: 1, evenFlow: true, heavy: 0, seconds: 0.9, modes: 2, largest: 20 },
  },
  {
    name: 'days that end elsewhere',
    count: 12,
    shape: { jobs: 4, rigs: 2, zones: 1, stations: 1, heavy: 0, endsElsewhere: true },
  },
  { name: 'payload binds', count: 12, shape: { jobs: 3, zones: 1, stations: 1, heavy: 1, thirst: 1.5 } },
  { name: 'two stations of uneven flow', count: 8, shape: { jobs: 4, zones: 1, stations: 2, heavy: 0, thirst: 1.5 } },
];
const ITERATIONS = 400;
const STEP = process.env.npm_lifecycle_event === 'test:exact' ? 1 : 4;

describe.each(FAMILIES)('plans of $name', ({ shape, count, tooSlow = [], cheaper = [] }) => {
  it(`cost what brute force finds, ${count / STEP} of ${count} seeds`, { timeout: 600_000 }, () => {
    const differences: string[] = [];
    for (const seed of seedsOf(count, tooSlow)) {
      const problem = randomProblem(seed, shape);
      const found = solve(problem, { seed: 1, iterations: ITERATIONS }, {});
      const truth = bruteForce(problem);
      const left = found.unserved.length;
      const faults = found.routes.flatMap((route) => replay(problem, route));
      if (faults.length > 0) differences.push(`seed ${seed}: ${faults.join('; ')}`);
      // Costs are sums of whole nano-dollars; beyond 2^53 a sum may be one off.
      const isCheaper = left === truth.unserved && found.cost < truth.cost - 1;
      const isSame = left === truth.unserved && Math.abs(found.cost - truth.cost) <= 1;
      if (isCheaper === cheaper.includes(seed) && (isCheaper || isSame)) continue;
      const dollars = (found.cost - truth.cost) / 1e9;
      const story = truth.days.map((each) => `slot ${each.slot}: ${each.day.story.join('; ')}`).join(' || ');
      differences.push(
        `seed ${seed}: ${left} left out against ${truth.unserved}, $${dollars.toFixed(4)} dearer; ${story}`,
      );
    }
    expect(differences).toEqual([]);
  });
});

function seedsOf(count: number, tooSlow: readonly number[]): readonly number[] {
  const seeds = Array.from({ length: count + tooSlow.length }, (_, index) => index + 1);
  return seeds.filter((seed) => !tooSlow.includes(seed)).filter((_, index) => index % STEP === 0);
}
