import type { Problem } from '../../../../core/plan/problem/index.ts';
import { cheapestOrder, type Order, ordersOfSlot } from './orders.ts';
import type { BestDay } from './refills.ts';

/** The best that can be done: fewest jobs left out, then least cost. */
export type Truth = {
  readonly unserved: number;
  /** nano-dollars */
  readonly cost: number;
  readonly days: readonly { readonly slot: number; readonly jobs: readonly number[]; readonly day: BestDay }[];
};

/** What is known about serving a set of jobs in one slot: a bound first, later the cheapest day itself. */
type Known = { least: number; orders: readonly Order[]; day: BestDay | null; exact: boolean };

/**
 * Plans by brute force: every split of the jobs over the slots, every order, every mode, every placing of refills with explicit
 * levels. Shares no code with the program's own search and refills. For at most about seven jobs.
 */
export function bruteForce(problem: Problem): Truth {
  const known = new Map<string, Known>();
  for (let left = 0; left <= problem.jobs.length; left += 1) {
    const splits = setsOfSize(problem.jobs.length, problem.jobs.length - left).flatMap((set) =>
      allSplits(set, problem.slots.length),
    );
    const best = cheapestSplit(problem, splits, known);
    if (best !== null) return { ...best, unserved: left };
  }
  throw new Error('leaving every job out is always possible');
}

function setsOfSize(count: number, size: number): number[][] {
  const sets = Array.from({ length: 1 << count }, (_, bits) =>
    Array.from({ length: count }, (__, job) => job).filter((job) => (bits & (1 << job)) !== 0),
  );
  return sets.filter((set) => set.length === size);
}

/** Every way to hand the jobs of a set to the slots: one list of jobs per slot. */
function allSplits(set: readonly number[], slots: number): number[][][] {
  let splits: number[][][] = [Array.from({ length: slots }, () => [])];
  for (const job of set) {
    splits = splits.flatMap((split) =>
      split.map((_, slot) => split.map((jobs, at) => (at === slot ? [...jobs, job] : jobs))),
    );
  }
  return splits;
}

/** The cheapest split: bounds are made exact one at a time until the cheapest one has no bound left in it. */
function cheapestSplit(
  problem: Problem,
  splits: readonly (readonly (readonly number[])[])[],
  known: Map<string, Known>,
): Omit<Truth, 'unserved'> | null {
  const parts = splits.map((split) =>
    split.flatMap((jobs, slot) =>
      jobs.length === 0 ? [] : [{ slot, jobs, known: knownOf(problem, slot, jobs, known) }],
    ),
  );
  for (;;) {
    let [best, least] = [-1, Number.POSITIVE_INFINITY];
    parts.forEach((split, index) => {
      const sum = split.reduce((total, part) => total + part.known.least, 0);
      if (sum < least) [best, least] = [index, sum];
    });
    const split = parts[best];
    if (split === undefined) return null;
    const open = split.find((part) => !part.known.exact);
    if (open === undefined) {
      const days = split.map(({ slot, jobs, known: { day } }) => ({ slot, jobs, day: day as BestDay }));
      return { cost: least, days };
    }
    open.known.day = cheapestOrder(problem, open.slot, open.known.orders);
    open.known.least = open.known.day?.cost ?? Number.POSITIVE_INFINITY;
    open.known.exact = true;
  }
}

function knownOf(problem: Problem, slot: number, jobs: readonly number[], known: Map<string, Known>): Known {
  const { rig, day } = problem.slots[slot] as Problem['slots'][number];
  // Days that differ in nothing cost the same.
  const terms = jobs.map((number) => {
    const job = problem.jobs[number];
    return [number, job?.dayAllowed[day], job?.lateCost[day], job?.treatHours?.[day]];
  });
  const key = JSON.stringify([rig, terms]);
  const found = known.get(key);
  if (found !== undefined) return found;
  const orders = ordersOfSlot(problem, slot, jobs);
  const fresh: Known = {
    orders,
    least: orders[0]?.least ?? Number.POSITIVE_INFINITY,
    day: null,
    exact: orders.length === 0,
  };
  known.set(key, fresh);
  return fresh;
}
