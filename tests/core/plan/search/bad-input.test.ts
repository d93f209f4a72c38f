import { expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { randomProblem } from '../random-problem.ts';
import { replay } from '../refills/replay.ts';

/** Problems with one thing wrong: jobs are placed as they can be done, or left out; the search ends, and never throws. */
type Change = (problem: Problem) => Problem;

const DAY = 86_400_000;
const MOST_MS = 2_000_000_000;

const allJobs =
  (change: (job: Problem['jobs'][number], index: number) => Partial<Problem['jobs'][number]>): Change =>
  (problem) => ({ ...problem, jobs: problem.jobs.map((job, index) => ({ ...job, ...change(job, index) })) });
const allRigs =
  (change: (rig: Problem['rigs'][number]) => Partial<Problem['rigs'][number]>): Change =>
  (problem) => ({ ...problem, rigs: problem.rigs.map((rig) => ({ ...rig, ...change(rig) })) });
const allOps = (change: (op: Problem['jobs'][number]['modes'][number][number]['ops'][number]) => object): Change =>
  allJobs(({ modes }) => ({
    modes: modes.map((ways) =>
      ways.map((mode) => ({ ...mode, ops: mode.ops.map((op) => ({ ...op, ...change(op) })) })),
    ),
  }));
const cutOff: Change = (problem) => {
  const places = problem.placeIds.length;
  const lost = places - 1;
  const travelMs = problem.travelMs.slice();
  for (let place = 0; place < lost; place += 1) {
    travelMs[place * places + lost] = MOST_MS;
    travelMs[lost * places + place] = MOST_MS;
  }
  return { ...problem, travelMs };
};

const CASES: readonly [name: string, change: Change, left: 'all' | 'some' | 'any'][] = [
  ['windows that close before they open', allJobs(() => ({ openMs: DAY / 2, closeMs: DAY / 3 })), 'all'],
  ['one such window', allJobs((job, index) => (index === 0 ? { openMs: job.closeMs + 1 } : {})), 'some'],
  [
    'tanks and hoppers that hold nothing',
    allRigs((rig) => ({ compartments: rig.compartments.map((each) => ({ ...each, capacityParts: 0 })) })),
    'any',
  ],
  [
    'lawns that take more than any day brings',
    allOps((op: { draws: readonly object[] }) => ({ draws: op.draws.map((each) => ({ ...each, parts: 50_000_000 })) })),
    'any',
  ],
  ['days of no length', allRigs(() => ({ shiftMs: 0, overtimeMs: 0 })), 'all'],
  ['a payload of nothing', allRigs(() => ({ cargoLimit: 0 })), 'any'],
  ['a place that nothing leads to', cutOff, 'some'],
  ['work of no number of minutes', allOps(() => ({ serviceMs: Number.NaN })), 'all'],
  ['work without end', allOps(() => ({ serviceMs: Number.POSITIVE_INFINITY })), 'all'],
  ['lateness of no price', allJobs(({ lateCost }) => ({ lateCost: lateCost.map(() => Number.NaN) })), 'all'],
  [
    'no rigs',
    (problem) => ({ ...problem, rigs: [], slots: [], jobs: problem.jobs.map((job) => ({ ...job, modes: [] })) }),
    'all',
  ],
  ['no days', (problem) => ({ ...problem, dates: [], slots: [] }), 'all'],
  ['no day allowed', allJobs(({ dayAllowed }) => ({ dayAllowed: dayAllowed.map(() => 0) })), 'all'],
  ['no jobs', (problem) => ({ ...problem, jobs: [], tasks: [] }), 'any'],
  ['one job', (problem) => ({ ...problem, jobs: problem.jobs.slice(0, 1) }), 'any'],
];

it.each(CASES)('%s', { timeout: 60_000 }, (_name, change, left) => {
  for (const jobs of [5, 14]) {
    const problem = change(randomProblem(3, { jobs, rigs: 2, stations: 1, zones: 1, largest: 10 }));
    const { routes, unserved } = solve(problem, { seed: 1, iterations: 40 });
    const placed = routes.flatMap((route) => route.visits.map(({ job }) => job));
    expect([...placed, ...unserved].sort((one, other) => one - other)).toEqual([...problem.jobs.keys()]);
    expect(routes.flatMap((route) => replay(problem, route))).toEqual([]);
    if (left === 'all') expect(unserved).toHaveLength(problem.jobs.length);
    if (left === 'some') expect(unserved).toHaveLength(1);
  }
});
