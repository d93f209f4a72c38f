import type { Problem } from '../problem/index.ts';
import type { Visit } from '../refills/index.ts';

/** A day to begin with. */
export type StartRoute = {
  readonly slot: number;
  readonly visits: readonly Visit[];
  /** How many of the first visits stay as they are, in their order; 0 unless told. */
  readonly keepFirst?: number;
};

/** A plan to begin with, and what of it has to stay. */
export type Start = {
  readonly routes: readonly StartRoute[];
  /** Jobs that stay with the rig and day that they start with; their order is free. */
  readonly pinned?: readonly number[];
};

/** A start in the terms of the search: slots are routes, customers are jobs + 1. */
export type LaidStart = {
  readonly routes: readonly {
    readonly route: number;
    readonly customers: readonly number[];
    readonly ways: readonly number[];
  }[];
  /** [slot]: how many visits are kept in order. */
  readonly kept: Int32Array;
  /** The last kept visit of each slot that has one. */
  readonly fixed: readonly number[];
  /** Customers that have to stay in the plan. */
  readonly held: readonly number[];
  /** [job]: the slot that it has to stay in, or -1. */
  readonly pinned: Int32Array;
};

/** Takes a start up as far as it is one of this problem: visits that are impossible or listed twice are left out. */
export function layOutStart(problem: Problem, start: Start | undefined): LaidStart {
  const kept = new Int32Array(problem.slots.length);
  const pinned = new Int32Array(problem.jobs.length).fill(-1);
  const wanted = new Set(start?.pinned ?? []);
  const seen = new Set<number>();
  const fixed: number[] = [];
  const held: number[] = [];
  const routes: { route: number; customers: number[]; ways: number[] }[] = [];
  for (const { slot, visits, keepFirst = 0 } of start?.routes ?? []) {
    const at = problem.slots[slot];
    if (at === undefined || routes.some((each) => each.route === slot)) continue;
    const route = { route: slot, customers: [] as number[], ways: [] as number[] };
    visits.forEach(({ job, mode }, index) => {
      const modes = problem.jobs[job]?.modes[at.rig] ?? [];
      if (seen.has(job) || modes.length === 0 || problem.jobs[job]?.dayAllowed[at.day] !== 1) return;
      seen.add(job);
      route.customers.push(job + 1);
      route.ways.push(mode < modes.length ? mode : 0);
      if (index < keepFirst) kept[slot] = route.customers.length;
      if (index >= keepFirst && !wanted.has(job)) return;
      pinned[job] = slot;
      held.push(job + 1);
    });
    const last = route.customers[(kept[slot] as number) - 1];
    if (last !== undefined) fixed.push(last);
    routes.push(route);
  }
  return { routes, kept, fixed, held, pinned };
}
