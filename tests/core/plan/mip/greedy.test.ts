import { describe, expect, it } from 'vitest';
import { RefillPlacer } from '../../../../core/plan/refills/index.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { greedyCost } from '../refills/greedy.ts';

/**
 * Days too large for a proof: twelve stops of up to two zones. The placed refills never cost more than the rule of thumb, which
 * fills everything when something has run dry (see ../refills/greedy.ts; it knows one mix and one dry product). No source: the rule is
 * ours, and any day that it finds can be done.
 *
 * `npm test` takes 200 days, every fiftieth; `npm run test:mip` takes all 10,000.
 */
type Family = {
  readonly name: string;
  readonly days: number;
  readonly shape: ProblemShape;
};
const LARGE: ProblemShape = {
  jobs: 12,
  stations: 2,
  materials: 2,
  heavy: 0,
  hours: 12,
  largest: 10,
  thirst: 2,
  noNurse: 0.4,
};
const FAMILIES: readonly Family[] = [
  { name: 'stations of one price', days: 4000, shape: { ...LARGE, evenFlow: true } },
  { name: 'stations of different prices', days: 4000, shape: LARGE },
  { name: 'bags on the machine', days: 2000, shape: { ...LARGE, bagsAboard: 1 } },
];
const EVERY = process.env.npm_lifecycle_event === 'test:mip' ? 1 : 50;
/** Nano-dollars: what sums of broken figures may be off. */
const ROUNDING = 1;

describe.each(FAMILIES)('placed refills of twelve stops, $name', ({ days, shape }) => {
  it(`never cost more than filling when dry, ${days / EVERY} of ${days} days`, { timeout: 3_600_000 }, () => {
    const found: number[] = [];
    let [compared, cheaper] = [0, 0];
    for (let seed = EVERY; seed <= days; seed += EVERY) {
      const problem = randomProblem(seed, shape);
      const visits = problem.jobs.map((_, job) => ({ job, mode: 0 }));
      const rule = greedyCost(problem, visits);
      if (rule === null) continue;
      compared += 1;
      const placed = new RefillPlacer(problem).place(0, visits, 'careful');
      const cost = placed.kind === 'placed' ? placed.outcome.cost : Number.POSITIVE_INFINITY;
      if (cost < rule - ROUNDING) cheaper += 1;
      if (cost > rule + ROUNDING) found.push(seed);
    }
    expect(found).toEqual([]);
    expect(compared).toBe(days / EVERY);
    // The rule is a poor one often enough to be worth beating.
    expect(cheaper).toBeGreaterThan(compared / 2);
  });
});
