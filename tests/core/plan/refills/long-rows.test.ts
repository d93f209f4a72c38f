import { expect, it } from 'vitest';
import { RefillPlacer } from '../../../../core/plan/refills/index.ts';
import { shuffledVisits } from '../oracle/families.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { replay } from './replay.ts';

const OPENS_MS = 15 * 3_600_000;
const SHAPE: ProblemShape = {
  jobs: 11,
  stations: 1,
  thirst: 1.4,
  hours: 40,
  evenFlow: true,
  noNurse: 0.2,
  zones: 1,
  heavy: 0,
};

/** Seeds of long days on which something can be moved before the wait that would cost paid time after it. */
it.each([4, 7])('in long rows parts are moved before a wait, where they cost nothing, seed %i', (seed) => {
  const plain = randomProblem(seed, SHAPE);
  const visits = shuffledVisits(plain, seed);
  const late = visits[8]?.job;
  const opening = plain.jobs.map((job, j) => (j === late ? { ...job, openMs: OPENS_MS } : job));
  const problem = { ...plain, jobs: opening };
  const placer = new RefillPlacer(problem);
  const quick = placer.place(0, visits, 'quick');
  const careful = placer.place(0, visits, 'careful');
  if (quick.kind === 'impossible' || careful.kind === 'impossible') throw new Error('the day can be done');
  expect(careful.outcome.cost).toBeLessThan(quick.outcome.cost);
  expect(replay(problem, careful.outcome)).toEqual([]);
  // Without the wait nothing is to be had: flow is even, and the rows are too long to try refills elsewhere.
  const free = new RefillPlacer(plain);
  expect(free.place(0, visits, 'careful')).toEqual(free.place(0, visits, 'quick'));
});
