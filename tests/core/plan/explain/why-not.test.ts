import { describe, expect, test } from 'vitest';
import { explainUnserved, type Way, type WhyNot } from '../../../../core/plan/explain/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { Solution } from '../../../../core/plan/refills/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { replay } from '../refills/replay.ts';
import { placeWith, stepOf, withLimitMoved } from './counterfactual.ts';
import { closed, type Squeezed, squeezed } from './squeezed.ts';

type Case = { readonly problem: Problem; readonly solution: Solution; readonly whys: readonly WhyNot[] };

/** Days that are too short, and customers with hours; invented. */
const SHAPES: readonly ProblemShape[] = [
  { jobs: 20, rigs: 2, stations: 2, hours: 3 },
  { jobs: 12, stations: 2, windows: 0.7, breaks: 0.5, hours: 12 },
  { jobs: 7, days: 2, stations: 0, zones: 1, thirst: 2, noNurse: 0.5, heavy: 1, hours: 2, largest: 20 },
];
const SQUEEZED = ['time', 'payload', 'bag-places', 'nurse-tank', 'compartment'] as const;

const asked = ({ problem, solution }: Squeezed): Case => ({
  problem,
  solution,
  whys: explainUnserved(problem, solution),
});

const squeezes = SQUEEZED.flatMap((kind) =>
  [1, 2, 4, 14, 15].map((seed) => ({ kind, ...asked(squeezed(seed, kind)) })),
);
const cases: readonly Case[] = [
  ...squeezes,
  ...SHAPES.flatMap((shape) =>
    [1, 2, 3].map((seed) => {
      const problem = randomProblem(seed, shape);
      return asked({ problem, solution: solve(problem, { seed, iterations: 30 }) });
    }),
  ),
  ...[1, 2, 3, 4].map((seed) => asked(closedTooEarly(seed))),
];

/** A day of one rig with one stop taken out, whose customer closes in the middle of the night. */
function closedTooEarly(seed: number): Squeezed {
  const { problem, solution } = squeezed(seed, 'time');
  const job = solution.unserved[0] ?? 0;
  const roomy = { ...problem, rigs: problem.rigs.map((each) => ({ ...each, overtimeMs: 10 * 3_600_000 })) };
  const jobs = roomy.jobs.map((each, index) => (index === job ? { ...each, closeMs: 60_000 } : each));
  return { problem: { ...roomy, jobs }, solution };
}

type Said = { readonly one: Case; readonly why: WhyNot; readonly way: Way };
const said: readonly Said[] = cases.flatMap((one) =>
  one.whys.flatMap((why) => why.ways.map((way) => ({ one, why, way }))),
);

describe('reasons why a job has no place', () => {
  test('come for each job without a place and each rig', () => {
    for (const { problem, solution, whys } of cases) {
      const pairs = solution.unserved.flatMap((job) => problem.rigs.map((_, rig) => `${job} ${rig}`));
      expect(whys.map((why) => `${why.job} ${why.rig}`)).toEqual(pairs);
    }
  });

  test.each(SQUEEZED)('name %s where that is short', (kind) => {
    const named = squeezes.filter(
      (each) => each.kind === kind && each.whys[0]?.ways.some((way) => way.limit.kind === kind),
    );
    expect(named.length).toBeGreaterThan(0);
  });

  test('name the hours of a customer', () => {
    for (const seed of [1, 2, 3, 4]) {
      const { problem, solution } = closedTooEarly(seed);
      const [why] = explainUnserved(problem, solution);
      expect(why?.ways.map((way) => way.limit)).toEqual([{ kind: 'customer-hours', job: why?.job }]);
    }
  });

  test('with the limit moved as said the job fits, and the day holds when it is played anew', () => {
    for (const { one, why, way } of said) {
      const moved = withLimitMoved(one.problem, why, way);
      const placement = placeWith(moved, one.solution, why, way);
      expect(placement.kind, `${one.problem.hash} job ${why.job} ${way.limit.kind}`).toBe('placed');
      if (placement.kind === 'placed') expect(replay(moved, placement.outcome)).toEqual([]);
    }
  });

  test('without it the job does not fit there', () => {
    for (const { one, why, way } of said.filter((each) => each.way.limit.kind !== 'day')) {
      const placement = placeWith(one.problem, one.solution, why, way);
      expect(placement.kind, `${one.problem.hash} job ${why.job} ${way.limit.kind}`).toBe('impossible');
    }
  });

  test('one step less of tank, payload or bags is too little', () => {
    const counted = said.filter((each) => stepOf(each.way) > 0);
    expect(counted.length).toBeGreaterThan(10);
    for (const { one, why, way } of counted) {
      const less = withLimitMoved(one.problem, why, way, way.amount - stepOf(way));
      const placement = placeWith(less, one.solution, why, way);
      expect(placement.kind, `${one.problem.hash} job ${why.job} ${way.limit.kind}`).toBe('impossible');
    }
  });
});

test('work that overruns a day by more than another one is told by the least that it does, and nothing is tried', () => {
  const problem = randomProblem(1, { jobs: 2, stations: 1, zones: 1, largest: 8 });
  const [rig] = problem.rigs;
  const mostMs = (rig?.shiftMs ?? 0) + (rig?.overtimeMs ?? 0);
  const hour = 3_600_000;
  const longer = (serviceMs: number): Problem => ({
    ...problem,
    jobs: problem.jobs.map((job) => ({
      ...job,
      modes: job.modes.map((modes) =>
        modes.map((mode) => ({ ...mode, ops: mode.ops.map((op) => ({ ...op, serviceMs })) })),
      ),
    })),
  });
  const nothing: Solution = { ...solve(problem, { seed: 1, iterations: 1 }), routes: [], unserved: [0, 1] };
  const far = explainUnserved(longer(mostMs + 24 * hour), nothing);
  expect(far.map((why) => [why.kind, why.tried])).toEqual([
    ['far-too-long', 0],
    ['far-too-long', 0],
  ]);
  for (const { alone } of far) {
    // The work alone is a day more, and there is driving, setting up and the morning besides.
    expect(alone.kind === 'too-long' ? alone.overMs : 0).toBeGreaterThan(24 * hour);
    expect(alone.kind === 'too-long' ? alone.overMs : 0).toBeLessThan(27 * hour);
  }
  expect(explainUnserved(longer(mostMs + 20 * hour), nothing).map((why) => why.kind)).not.toContain('far-too-long');
});

test('where a job would fit as things are, that is said instead of a reason', () => {
  const problem = randomProblem(1, { jobs: 4, stations: 1, zones: 1, largest: 8 });
  const nothing: Solution = { ...solve(problem, { seed: 1, iterations: 1 }), routes: [], unserved: [0, 1, 2, 3] };
  expect(explainUnserved(problem, nothing).map((why) => why.kind)).toEqual(['room', 'room', 'room', 'room']);
});

test('two limits that are too small by themselves are no single cause', () => {
  // The job of this seed takes 7.26 gal; the tank holds one, nothing refills it, and the day is a minute long.
  const problem = randomProblem(2, { jobs: 1, stations: 0, zones: 1, largest: 8, materials: 1 });
  expect(problem.jobs[0]?.modes[0]?.[0]?.ops[0]?.draws).toEqual([{ compartment: 1, parts: 726 }]);
  const solution: Solution = { ...solve(problem, { seed: 1, iterations: 1 }), routes: [], unserved: [0] };
  const rigs = problem.rigs.map((each) => ({
    ...each,
    nurseParts: 0,
    shiftMs: 60_000,
    overtimeMs: 0,
    compartments: each.compartments.map((tank) => ({ ...tank, capacityParts: 100 })),
  }));
  const both: Problem = { ...closed(problem), rigs };
  expect(explainUnserved(both, solution)).toMatchObject([{ kind: 'no-single-cause', ways: [] }]);
});

test('a day on which the job is not allowed is named where only that is in the way', () => {
  const problem = randomProblem(2, { jobs: 1, stations: 0, zones: 1, largest: 8 });
  const [job] = problem.jobs;
  if (job === undefined) throw new RangeError('no job');
  const forbidden: Problem = { ...problem, jobs: [{ ...job, dayAllowed: Uint8Array.of(0) }] };
  const solution: Solution = { ...solve(problem, { seed: 1, iterations: 1 }), routes: [], unserved: [0] };
  expect(explainUnserved(forbidden, solution)[0]?.ways.map((way) => way.limit.kind)).toEqual(['day']);
});
