import type { Job, Mode, Problem } from '../../../../core/plan/problem/index.ts';
import { leastOfDay } from './bounds.ts';
import { type BestDay, cheapestDay } from './refills.ts';
import { dayCost, endPlace, fixRoute, homePlace, onDay, personOf, travel } from './route.ts';

type Pick = { readonly job: number; readonly mode: number };
export type Order = { readonly picks: readonly Pick[]; readonly least: number };

/** Every order of these jobs in one slot, the most promising first; none where one of them is not allowed on that day. */
export function ordersOfSlot(problem: Problem, slot: number, jobs: readonly number[]): readonly Order[] {
  const { rig, day } = problem.slots[slot] as Problem['slots'][number];
  if (jobs.some((job) => problem.jobs[job]?.dayAllowed[day] !== 1)) return [];
  return allOrders(problem, rig, day, jobs).sort((left, right) => left.least - right.least);
}

/** The cheapest day among these orders, each with the best placing of refills; null where there is none. */
export function cheapestOrder(problem: Problem, slot: number, orders: readonly Order[]): BestDay | null {
  const { rig, day } = problem.slots[slot] as Problem['slots'][number];
  let best: BestDay | null = null;
  for (const order of orders) {
    const bound: number = best?.cost ?? Number.POSITIVE_INFINITY;
    if (order.least >= bound) break;
    best = cheapestDay(fixRoute(problem, rig, day, order.picks), bound) ?? best;
  }
  return best;
}

/** Every order with every choice of modes that could fit in the day, each with a cost that no refills can undercut. */
function allOrders(problem: Problem, rigNumber: number, day: number, jobs: readonly number[]): Order[] {
  const orders: Order[] = [];
  const rig = problem.rigs[rigNumber] as Problem['rigs'][number];
  const home = homePlace(problem, rig);
  // `ms` has the waiting in it, `busyMs` has not: refills may fall into the waiting, so that the two do not add up.
  const extend = (
    picks: readonly Pick[],
    left: readonly number[],
    place: number,
    ms: number,
    busyMs: number,
    metres: number,
  ): void => {
    if (left.length === 0) {
      const leg = travel(problem, place, endPlace(problem, rig));
      const route = fixRoute(problem, rigNumber, day, picks);
      const refills = leastOfDay(route);
      const paid = Math.max(ms, busyMs + refills.ms) + leg.ms + rig.eveningMs - rig.shiftStartMs;
      const least = dayCost(route, paid, metres + leg.m + refills.m);
      if (Number.isFinite(least)) orders.push({ picks, least });
      return;
    }
    for (const number of left) {
      const job = onDay(problem.jobs[number] as Job, day);
      const leg = travel(problem, place, job.place);
      const ready = Math.max(ms + leg.ms, job.openMs);
      if (ready > job.closeMs) continue;
      (job.modes[rigNumber] ?? []).forEach((mode, index) => {
        const rest = left.filter((each) => each !== number);
        const busy = busyMs + leg.ms + modeMs(mode);
        extend([...picks, { job: number, mode: index }], rest, job.place, ready + modeMs(mode), busy, metres + leg.m);
      });
    }
  };
  const start = rig.shiftStartMs + rig.morningMs;
  extend([], jobs, home, start, start, 0);
  return orders;
}

function modeMs(mode: Mode): number {
  const busy: [number, number] = [0, 0];
  for (const op of mode.ops) busy[personOf(op)] += op.serviceMs;
  return mode.beforeMs + mode.afterMs + Math.max(...busy);
}
