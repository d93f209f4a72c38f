import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { RefillPlacer, type RouteOutcome, type Visit } from '../../../../core/plan/refills/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { replay } from './replay.ts';

const SHAPES: readonly { readonly name: string; readonly shape: ProblemShape }[] = [
  { name: 'stations of uneven flow', shape: { jobs: 5, stations: 2, heavy: 0, thirst: 1.5, hours: 14 } },
  { name: 'windows and breaks', shape: { jobs: 4, stations: 1, windows: 0.4, breaks: 0.5, thirst: 1.5, hours: 14 } },
  { name: 'four materials', shape: { jobs: 4, stations: 2, materials: 4, hours: 14 } },
  { name: 'payload', shape: { jobs: 3, stations: 1, heavy: 1, thirst: 1.5, hours: 14 } },
];
const ALL_SEEDS = 60;
const SEEDS = casesOf(ALL_SEEDS, 4);

function inOrder(problem: Problem): Visit[] {
  return problem.jobs.flatMap((job, index) => ((job.modes[0]?.length ?? 0) > 0 ? [{ job: index, mode: 0 }] : []));
}

function refillsOf(outcome: RouteOutcome) {
  return outcome.activities.filter((each) => each.kind === 'refill');
}

describe.each(SHAPES)('days placed with all care, $name', ({ shape }) => {
  it('hold, move something at every refill, and cost no more than the labels find; some less', {
    timeout: 120_000,
  }, () => {
    let cheaper = 0;
    for (let seed = 1; seed <= SEEDS; seed += 1) {
      const problem = randomProblem(seed, shape);
      const visits = inOrder(problem);
      const placer = new RefillPlacer(problem);
      const quick = placer.place(0, visits, 'quick');
      const careful = placer.place(0, visits, 'careful');
      expect(careful.kind, `seed ${seed}`).toBe(quick.kind);
      if (quick.kind === 'impossible' || careful.kind === 'impossible') continue;
      expect(careful.outcome.cost, `seed ${seed}`).toBeLessThanOrEqual(quick.outcome.cost);
      expect(replay(problem, careful.outcome), `seed ${seed}`).toEqual([]);
      for (const refill of refillsOf(careful.outcome)) {
        expect(refill.fills.length + refill.stock.length + refill.rinsed.length, `seed ${seed}`).toBeGreaterThan(0);
      }
      if (careful.outcome.cost < quick.outcome.cost) cheaper += 1;
    }
    if (SEEDS === ALL_SEEDS) expect(cheaper).toBeGreaterThan(0);
  });
});
