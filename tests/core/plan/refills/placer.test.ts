import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { placeRefills, RefillPlacer, type Visit } from '../../../../core/plan/refills/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { greedyCost } from './greedy.ts';
import { replay } from './replay.ts';

/** Every job once, in an order that the seed decides. */
function shuffled(problem: Problem, seed: number): Visit[] {
  const random = createRandom(seed);
  const visits = problem.jobs.flatMap((job, index) =>
    (job.modes[0]?.length ?? 0) > 0 ? [{ job: index, mode: 0 }] : [],
  );
  for (let at = visits.length - 1; at > 0; at -= 1) {
    const other = random.below(at + 1);
    [visits[at], visits[other]] = [visits[other] as Visit, visits[at] as Visit];
  }
  return visits;
}

const SHAPES: readonly { readonly name: string; readonly shape: ProblemShape }[] = [
  { name: 'one mix and granules', shape: { jobs: 8, stations: 2, materials: 2, hours: 14 } },
  { name: 'two mixes, two dry products', shape: { jobs: 7, stations: 2, materials: 4, hours: 14 } },
  { name: 'thirsty, no nurse tank', shape: { jobs: 6, stations: 2, thirst: 2, noNurse: 1, hours: 16 } },
  { name: 'payload binds', shape: { jobs: 6, stations: 2, heavy: 1, hours: 14 } },
  { name: 'windows, hours and breaks', shape: { jobs: 6, stations: 2, windows: 0.5, breaks: 0.5, hours: 14 } },
];

const DAYS = casesOf(60, 6);

describe.each(SHAPES)('routes placed for $name', ({ shape }) => {
  it('hold when played with explicit levels, to the millisecond', { timeout: 120_000 }, () => {
    let placed = 0;
    for (let seed = 1; seed <= DAYS; seed += 1) {
      const problem = randomProblem(seed, shape);
      const placement = placeRefills(problem, 0, shuffled(problem, seed));
      if (placement.kind === 'impossible') continue;
      placed += 1;
      expect(replay(problem, placement.outcome), `seed ${seed}`).toEqual([]);
    }
    expect(placed).toBeGreaterThan(DAYS / 6);
  });
});

describe('reckoned cost', () => {
  it('is what the day costs where no time of day binds, or a little more', { timeout: 120_000 }, () => {
    let equal = 0;
    let placedDays = 0;
    for (let seed = 1; seed <= casesOf(120, 8); seed += 1) {
      const problem = randomProblem(seed, { jobs: 7, stations: 2, heavy: 0, hours: 14 });
      const visits = shuffled(problem, seed);
      const placer = new RefillPlacer(problem);
      const [jobs, modes] = [visits.map((each) => each.job), visits.map((each) => each.mode)];
      const reckoned = placer.estimate(0, jobs, modes, visits.length, 300);
      const placement = placer.place(0, visits, 'quick');
      expect(placement.kind === 'placed').toBe(Number.isFinite(reckoned));
      if (placement.kind === 'impossible') continue;
      placedDays += 1;
      // Moving a refill forward inside an op may save flow time that the labels do not see.
      expect(placement.outcome.cost).toBeLessThanOrEqual(reckoned + 1);
      expect(placement.outcome.cost).toBeGreaterThan(reckoned * 0.98);
      if (Math.abs(placement.outcome.cost - reckoned) <= 1) equal += 1;
    }
    expect(equal / placedDays).toBeGreaterThan(0.85);
  });
});

/**
 * `npm test` tries this many. Of 10,000 tried by hand none was dearer than the rule; with stations of uneven flow one was (seed 1440, by
 * 6 s of paid time): water of a cheaper station is not kept past a dearer one, see `placeRefills`.
 */
const SEQUENCES = casesOf(600, 12);

describe('the placed optimum', () => {
  it(`never costs more than filling when dry, ${SEQUENCES} sequences`, { timeout: 240_000 }, () => {
    const dearer: string[] = [];
    let compared = 0;
    for (let seed = 1; seed <= SEQUENCES; seed += 1) {
      const problem = randomProblem(seed, {
        jobs: 6,
        stations: 2,
        materials: 2,
        heavy: 0,
        hours: 16,
        largest: 15,
        evenFlow: true,
      });
      const visits = shuffled(problem, seed);
      const rule = greedyCost(problem, visits);
      if (rule === null) continue;
      compared += 1;
      const placement = new RefillPlacer(problem).place(0, visits, 'quick');
      const cost = placement.kind === 'placed' ? placement.outcome.cost : Number.POSITIVE_INFINITY;
      if (cost > rule + 1) dearer.push(`seed ${seed}: ${cost} against ${rule}`);
    }
    expect(compared).toBeGreaterThan(SEQUENCES / 3);
    expect(dearer).toEqual([]);
  });
});

describe('faults', () => {
  it('say by how much a day is too long', () => {
    const problem = randomProblem(3, { jobs: 10, hours: 2 });
    const placement = placeRefills(problem, 0, shuffled(problem, 3));
    expect(placement.kind === 'impossible' && placement.fault.kind).toBe('too-long');
    if (placement.kind === 'impossible' && placement.fault.kind === 'too-long') {
      expect(placement.fault.overMs).toBeGreaterThan(0);
    }
  });

  it('name the visit whose window is missed', () => {
    const plain = randomProblem(5, { jobs: 3, stations: 1, heavy: 0, noNurse: 0 });
    const shut = { ...plain, jobs: plain.jobs.map((job, j) => (j === 2 ? { ...job, closeMs: 1 } : job)) };
    const placement = placeRefills(
      shut,
      0,
      [0, 1, 2].map((job) => ({ job, mode: 0 })),
    );
    expect(placement).toEqual({ kind: 'impossible', fault: { kind: 'window-missed', visit: 2 } });
  });

  it('name the material that nobody holds', () => {
    const plain = randomProblem(5, { jobs: 2, stations: 0, heavy: 0, materials: 1 });
    const dry = { ...plain, stations: plain.stations.map((each) => ({ ...each, msPerPart: [-1, -1, -1] })) };
    const placement = placeRefills(
      dry,
      0,
      [0, 1].map((job) => ({ job, mode: 0 })),
    );
    expect(placement.kind === 'impossible' && placement.fault.kind).toBe('no-material');
  });

  it('a route without visits costs nothing', () => {
    const placement = placeRefills(randomProblem(1, { jobs: 2 }), 0, []);
    expect(placement.kind === 'placed' && placement.outcome.cost).toBe(0);
  });
});
