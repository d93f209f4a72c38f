import type { Problem } from '../../../../core/plan/problem/index.ts';
import { cheapestOrder } from './orders.ts';
import type { BestDay } from './refills.ts';

/** The best that can be done: fewest jobs left out, then least cost. */
export type Truth = {
  readonly unserved: number;
  /** nano-dollars */
  readonly cost: number;
  readonly days: readonly { readonly slot: number; readonly jobs: readonly number[]; readonly day: BestDay }[];
};

/**
 * Plans by brute force: every split of the jobs over the slots, every order, every mode, every placing of refills with explicit
 * levels. Shares no code with the program's own search and refills. For at most about seven jobs.
 */
export function bruteForce(problem: Problem): Truth {
  const all = (1 << problem.jobs.length) - 1;
  let best: (Truth | null)[] = Array.from({ length: all + 1 }, (_, set) =>
    set === 0 ? { unserved: 0, cost: 0, days: [] } : null,
  );
  const twins = new Map<string, (BestDay | null)[]>();
  for (const [slot, { rig, day }] of problem.slots.entries()) {
    // Days that differ in nothing cost the same.
    const terms = problem.jobs.map((job) => [job.dayAllowed[day], job.lateCost[day]]);
    const key = JSON.stringify([rig, terms]);
    const days = twins.get(key) ?? daysOf(problem, slot, all);
    twins.set(key, days);
    best = withSlot(best, days, slot, all);
  }
  return best.reduce<Truth>(
    (winner, each, set) => {
      if (each === null) return winner;
      const truth = { ...each, unserved: problem.jobs.length - bits(set) };
      const better =
        truth.unserved < winner.unserved || (truth.unserved === winner.unserved && truth.cost < winner.cost);
      return better ? truth : winner;
    },
    { unserved: problem.jobs.length, cost: 0, days: [] },
  );
}

function daysOf(problem: Problem, slot: number, all: number): (BestDay | null)[] {
  return Array.from({ length: all + 1 }, (_, set) => (set === 0 ? null : cheapestOrder(problem, slot, members(set))));
}

function withSlot(
  best: readonly (Truth | null)[],
  days: readonly (BestDay | null)[],
  slot: number,
  all: number,
): (Truth | null)[] {
  const next = [...best];
  for (let set = 1; set <= all; set += 1) {
    for (let part = set; part > 0; part = (part - 1) & set) {
      const [rest, day] = [best[set ^ part], days[part]];
      if (rest == null || day == null) continue;
      const cost = rest.cost + day.cost;
      if (cost < (next[set]?.cost ?? Number.POSITIVE_INFINITY)) {
        next[set] = { unserved: 0, cost, days: [...rest.days, { slot, jobs: members(part), day }] };
      }
    }
  }
  return next;
}

function members(set: number): number[] {
  return Array.from({ length: 31 }, (_, bit) => bit).filter((bit) => (set & (1 << bit)) !== 0);
}

function bits(set: number): number {
  return members(set).length;
}
