import { createRandom } from '../../../../core/base/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { RefillPlacer, type RouteOutcome, type Solution, type Visit } from '../../../../core/plan/refills/index.ts';

/**
 * A plan that nobody searched for: every job in a slot, mode and place of the row that the seed decides, as far as the days hold them.
 * Reasons of refills are not in it.
 */
export function randomSolution(problem: Problem, seed: number): Solution {
  const random = createRandom(seed);
  const placer = new RefillPlacer(problem);
  const rows: Visit[][] = problem.slots.map(() => []);
  const found: (RouteOutcome | undefined)[] = problem.slots.map(() => undefined);
  const unserved: number[] = [];
  problem.jobs.forEach((job, number) => {
    const slots = problem.slots.flatMap(({ rig, day }, slot) =>
      (job.modes[rig]?.length ?? 0) > 0 && job.dayAllowed[day] === 1 ? [slot] : [],
    );
    const slot = slots[random.below(Math.max(1, slots.length))];
    const rig = problem.slots[slot ?? -1]?.rig ?? -1;
    const mode = random.below(Math.max(1, job.modes[rig]?.length ?? 1));
    const row = rows[slot ?? -1] ?? [];
    const longer = row.toSpliced(random.below(row.length + 1), 0, { job: number, mode });
    const placement = slot === undefined ? null : placer.place(slot, longer, 'quick');
    if (slot === undefined || placement?.kind !== 'placed') unserved.push(number);
    else [rows[slot], found[slot]] = [longer, placement.outcome];
  });
  const routes = found.flatMap((each) => each ?? []);
  const cost = routes.reduce((sum, route) => sum + route.cost, 0);
  return { problemHash: problem.hash, routes, unserved, cost, iterations: 0, seed };
}
