import { expect, it } from 'vitest';
import { CostFloor } from '../../../../core/plan/refills/floor.ts';
import { neighboursOf } from '../../../../core/plan/refills/neighbours.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import { leastOf } from '../../../../core/plan/refills/whole.ts';
import { casesOf } from '../../../support/cases.ts';
import { randomProblem } from '../random-problem.ts';

/** Above rounding: times are summed in seconds in the one and in milliseconds in the other. nano-dollars */
const ROUNDING = 1000;
const SEEDS = casesOf(40, 3);

it('the quick floor is never above what the linear programme finds, over neighbouring rows of refills', {
  timeout: 120_000,
}, () => {
  let compared = 0;
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const problem = randomProblem(seed, { jobs: 4, stations: 2, windows: 0.2, breaks: 0, thirst: 1.5, hours: 16 });
    const search = new RefillSearch(problem, 0);
    const jobs = problem.jobs.map((_, job) => job);
    const modes = jobs.map(() => 0);
    search.run(jobs, modes, jobs.length, { beam: 8, latestMs: Number.POSITIVE_INFINITY });
    const end = search.finals[0];
    if (end === undefined) continue;
    const floor = new CostFloor(search.chain);
    for (const events of neighboursOf(search.chain, search.eventsOf(end))) {
      const least = leastOf(search.chain, events, -1, Number.POSITIVE_INFINITY);
      if (!Number.isFinite(least)) continue;
      compared += 1;
      expect(floor.of(events, -1), `seed ${seed}`).toBeLessThanOrEqual(least + ROUNDING);
    }
  }
  expect(compared).toBeGreaterThan(SEEDS * 12);
});
