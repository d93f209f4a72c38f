import type { Job, Mode, Problem } from '../../../../core/plan/problem/index.ts';
import { type BestDay, cheapestDay } from './refills.ts';
import { dayCost, fixRoute, homePlace, travel } from './route.ts';

type Pick = { readonly job: number; readonly mode: number };
type Order = { readonly picks: readonly Pick[]; readonly least: number };

/** The cheapest day that serves exactly these jobs in one slot, over every order and every mode; null where there is none. */
export function cheapestOrder(problem: Problem, slot: number, jobs: readonly number[]): BestDay | null {
  const { rig, day } = problem.slots[slot] as Problem['slots'][number];
  if (jobs.some((job) => problem.jobs[job]?.dayAllowed[day] !== 1)) return null;
  const orders = allOrders(problem, rig, day, jobs).sort((left, right) => left.least - right.least);
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
  const extend = (picks: readonly Pick[], left: readonly number[], place: number, ms: number, metres: number): void => {
    if (left.length === 0) {
      const leg = travel(problem, place, home);
      const route = fixRoute(problem, rigNumber, day, picks);
      const paid = ms + leg.ms + rig.eveningMs + leastRefills(problem, rigNumber, picks);
      const least = dayCost(route, paid - rig.shiftStartMs, metres + leg.m);
      if (Number.isFinite(least)) orders.push({ picks, least });
      return;
    }
    for (const number of left) {
      const job = problem.jobs[number] as Job;
      const leg = travel(problem, place, job.place);
      const ready = Math.max(ms + leg.ms, job.openMs);
      if (ready > job.closeMs) continue;
      (job.modes[rigNumber] ?? []).forEach((mode, index) => {
        const rest = left.filter((each) => each !== number);
        extend([...picks, { job: number, mode: index }], rest, job.place, ready + modeMs(mode), metres + leg.m);
      });
    }
  };
  extend([], jobs, home, rig.shiftStartMs + rig.morningMs, 0);
  return orders;
}

function modeMs(mode: Mode): number {
  return mode.beforeMs + mode.afterMs + mode.ops.reduce((sum, op) => sum + op.serviceMs, 0);
}

/** Time that refills take at least: what does not fit in the morning has to be poured, in events that hold no more than fits. */
function leastRefills(problem: Problem, rigNumber: number, picks: readonly Pick[]): number {
  const rig = problem.rigs[rigNumber] as Problem['rigs'][number];
  const event = Math.min(rig.refillMs, ...problem.stations.map((each) => each.visitMs));
  let [pouring, events] = [0, 0];
  rig.compartments.forEach((vessel, number) => {
    let need = 0;
    for (const pick of picks) {
      const mode = problem.jobs[pick.job]?.modes[rigNumber]?.[pick.mode] as Mode;
      for (const draw of mode.ops.flatMap((op) => op.draws)) if (draw.compartment === number) need += draw.parts;
    }
    pouring += Math.max(0, need - vessel.capacityParts) * vessel.fillMsPerPart;
    events = Math.max(events, Math.ceil(need / vessel.capacityParts) - 1);
  });
  return pouring + events * event;
}
