import { createRandom } from '../../../../core/base/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { Visit } from '../../../../core/plan/refills/index.ts';
import type { ProblemShape } from '../random-problem.ts';

/** Days of one kind, small enough for brute force over their refills. */
export type Family = {
  readonly name: string;
  readonly shape: ProblemShape;
  readonly seeds: readonly [number, number];
  /**
   * Seeds in which the program finds a cheaper day than the brute force, which looks for refills inside an op only where a compartment
   * has run dry: an earlier one may fall before a wait and cost nothing, or leave more of one person's work beside the other's. Every
   * other seed has to be equal; all days are replayed.
   */
  readonly cheaper?: readonly number[];
};
export const FAMILIES: readonly Family[] = [
  {
    name: 'thirsty',
    shape: { jobs: 4, stations: 2, evenFlow: true, heavy: 0, thirst: 1.5 },
    seeds: [1, 60],
  },
  { name: 'dry and wet', shape: { jobs: 3, stations: 2, evenFlow: true, heavy: 0, materials: 4 }, seeds: [1, 30] },
  { name: 'uneven flow', shape: { jobs: 3, stations: 2, heavy: 0, thirst: 1.5 }, seeds: [1, 40] },
  {
    name: 'windows',
    shape: { jobs: 3, stations: 1, heavy: 0, thirst: 1.5, windows: 0.4, breaks: 0.4 },
    seeds: [1, 40],
    cheaper: [23],
  },
  {
    // Less is filled at the first stop than could be, so that the rig is at the second one before the break falls due.
    name: 'a break passed by',
    shape: { jobs: 2, stations: 1, heavy: 0, zones: 2, seconds: 1, windows: 0.6, breaks: 1 },
    seeds: [339, 339],
  },
  {
    name: 'two persons',
    shape: { jobs: 2, stations: 1, evenFlow: true, heavy: 0, zones: 3, seconds: 0.9, largest: 20 },
    seeds: [1, 60],
    cheaper: [30],
  },
  {
    name: 'two persons, thirsty',
    shape: { jobs: 2, stations: 1, evenFlow: true, heavy: 0, zones: 2, seconds: 1, largest: 25, thirst: 1.5 },
    seeds: [1, 40],
    cheaper: [21],
  },
  {
    name: 'two persons, windows',
    shape: { jobs: 2, stations: 1, heavy: 0, zones: 2, seconds: 1, windows: 0.4, breaks: 0.4 },
    seeds: [1, 40],
    cheaper: [17, 38],
  },
  {
    name: 'hours of treating',
    shape: { jobs: 3, stations: 1, heavy: 0, thirst: 1.5, windows: 0.2, breaks: 0.3, treatHours: 0.6 },
    seeds: [1, 40],
    cheaper: [23, 27, 39],
  },
  {
    name: 'ends elsewhere',
    shape: { jobs: 3, stations: 2, evenFlow: true, heavy: 0, endsElsewhere: true },
    seeds: [1, 30],
  },
  {
    name: 'bags on the machine',
    shape: { jobs: 3, stations: 1, heavy: 0, thirst: 1.5, evenFlow: true, bagsAboard: 1 },
    seeds: [1, 30],
    // The brute force does not share a scarce stock out between a hopper and its bags; the mixed-integer program finds the same as here.
    cheaper: [2, 7, 10, 15, 21],
  },
  { name: 'payload', shape: { jobs: 2, stations: 1, evenFlow: true, heavy: 1, thirst: 1.5 }, seeds: [1, 40] },
];

/** Every job once, in an order and with modes that the seed decides. */
export function shuffledVisits(problem: Problem, seed: number): Visit[] {
  const random = createRandom(seed);
  const visits = problem.jobs.flatMap((job, index) => {
    const modes = job.modes[0]?.length ?? 0;
    return modes === 0 ? [] : [{ job: index, mode: random.below(modes) }];
  });
  for (let index = visits.length - 1; index > 0; index -= 1) {
    const other = random.below(index + 1);
    [visits[index], visits[other]] = [visits[other] as Visit, visits[index] as Visit];
  }
  return visits;
}
