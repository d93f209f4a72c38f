import type { Job, Mode, Op, Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import type { Run } from './needs.ts';

/** One op of a fixed route, with where it lies. */
export type FlatOp = {
  readonly op: Op;
  readonly visit: number;
  readonly firstOfVisit: boolean;
  readonly lastOfVisit: boolean;
  /** Head swap before it, ms; 0 where the head is on already. */
  readonly swapMs: number;
  /** What it adds to its stop at least: its time, or what of it cannot fall beside the other person's work. ms */
  readonly addsMs: number;
};

/** A fixed order of visits for one rig on one day. */
export type FixedRoute = {
  readonly problem: Problem;
  readonly rig: ProblemRig;
  readonly jobs: readonly Job[];
  readonly modes: readonly Mode[];
  /** [visit]: when its last op has to be over. ms */
  readonly doneMs: readonly number[];
  readonly ops: readonly FlatOp[];
  /** [compartment]: the compartment of the bags that are poured into it, -1 for none. */
  readonly bags: readonly number[];
  /** True where nothing but what is needed limits a load: see `isGenerous`. */
  readonly generous: boolean;
  /** True where payload and bag places take everything at once, so that more aboard is never worse than less. */
  readonly roomy: boolean;
  /** What `allRuns` has worked out before. */
  readonly runs: Map<number, readonly (readonly Run[])[]>;
  /** What the bounds have worked out before: least detours by op and stock. */
  readonly detours: Map<number, { readonly ms: number; readonly m: number }>;
  /** Lateness of its jobs on its day, nano-dollars. */
  readonly lateCost: number;
  /** From op i on: ms of driving, set-up, treating, packing up and the evening, without waiting, breaks and refills. */
  readonly restMs: readonly number[];
  /** From op i on: metres without detours. */
  readonly restM: readonly number[];
};

export function travel(problem: Problem, from: number, to: number): { readonly ms: number; readonly m: number } {
  const cell = from * problem.placeIds.length + to;
  return { ms: problem.travelMs[cell] as number, m: problem.travelM[cell] as number };
}

export function homePlace(problem: Problem, rig: ProblemRig): number {
  return (problem.stations[rig.home] as { readonly place: number }).place;
}

export function endPlace(problem: Problem, rig: ProblemRig): number {
  return (problem.stations[rig.end] as { readonly place: number }).place;
}

/** Lays the ops of a route out in one row. `picks` are job and mode numbers. */
export function fixRoute(
  problem: Problem,
  rigNumber: number,
  day: number,
  picks: readonly { readonly job: number; readonly mode: number }[],
): FixedRoute {
  const rig = problem.rigs[rigNumber] as ProblemRig;
  const jobs = picks.map((pick) => onDay(problem.jobs[pick.job] as Job, day));
  const modes = jobs.map((job, index) => job.modes[rigNumber]?.[picks[index]?.mode ?? -1] as Mode);
  const ops: FlatOp[] = [];
  const heads = new Map<number, number>();
  modes.forEach((mode, visit) => {
    const busy: [number, number] = [0, 0];
    mode.ops.forEach((op, index) => {
      const fitted = heads.get(op.machine);
      const swap = op.machine >= 0 && op.head >= 0 && fitted !== undefined && fitted !== op.head;
      if (op.machine >= 0 && op.head >= 0) heads.set(op.machine, op.head);
      const swapMs = swap ? op.swapMs : 0;
      const before = Math.max(...busy);
      busy[personOf(op)] += swapMs + op.serviceMs;
      ops.push({
        op,
        visit,
        firstOfVisit: index === 0,
        lastOfVisit: index === mode.ops.length - 1,
        swapMs,
        addsMs: Math.max(...busy) - before,
      });
    });
  });
  const lateCost = jobs.reduce((sum, job) => sum + (job.lateCost[day] ?? 0), 0);
  const roomy = heaviest(problem, rig) <= rig.cargoLimit && bagsFit(problem, rig, ops);
  const generous = roomy && isGenerous(problem, rig);
  const bags = rig.compartments.map((_, number) => rig.compartments.findIndex((each) => each.pours?.into === number));
  const route = {
    problem,
    rig,
    bags,
    jobs,
    modes,
    doneMs: jobs.map((job) => job.treatHours?.[day]?.closeMs ?? Number.POSITIVE_INFINITY),
    ops,
    lateCost,
    generous,
    roomy,
    runs: new Map(),
    detours: new Map(),
  };
  return { ...route, ...restOf(route) };
}

/** A job with the opening of its hours of treating. */
export function onDay(job: Job, day: number): Job {
  return { ...job, openMs: Math.max(job.openMs, job.treatHours?.[day]?.openMs ?? 0) };
}

/** Sums from the end; entry i stands for "op i not begun, on site and set up". */
function restOf(route: Omit<FixedRoute, 'restMs' | 'restM'>): { restMs: number[]; restM: number[] } {
  const { problem, rig, jobs, modes, ops } = route;
  const restMs: number[] = [];
  const restM: number[] = [];
  const home = endPlace(problem, rig);
  let [ms, metres] = [0, 0];
  for (let index = ops.length - 1; index >= 0; index -= 1) {
    const { visit, lastOfVisit, addsMs } = ops[index] as FlatOp;
    if (lastOfVisit) {
      const last = visit === jobs.length - 1;
      const here = (jobs[visit] as Job).place;
      const leg = travel(problem, here, last ? home : (jobs[visit + 1] as Job).place);
      ms += (modes[visit] as Mode).afterMs + leg.ms + (last ? rig.eveningMs : (modes[visit + 1] as Mode).beforeMs);
      metres += leg.m;
    }
    ms += addsMs;
    restMs[index] = ms;
    restM[index] = metres;
  }
  return { restMs, restM };
}

/** Cost of a whole day in nano-dollars; infinite beyond shift and overtime. */
export function dayCost(route: FixedRoute, paidMs: number, metres: number): number {
  const { rig } = route;
  if (paidMs > rig.shiftMs + rig.overtimeMs) return Number.POSITIVE_INFINITY;
  const overtime = Math.max(0, paidMs - rig.shiftMs);
  return (
    rig.costPerDay + paidMs * rig.costPerMs + overtime * rig.overtimeCostPerMs + metres * rig.costPerM + route.lateCost
  );
}

/**
 * True where larger loads never cost more than smaller ones: every station is as quick as any other, and no hours make it matter
 * when parts are moved. Then a load is as large as fits and is still needed.
 */
function isGenerous(problem: Problem, rig: ProblemRig): boolean {
  const DAY_MS = 86_400_000;
  const anyTime =
    rig.breakAfterMs < 0 &&
    problem.jobs.every((job) => job.treatHours === undefined) &&
    problem.jobs.every((job) => job.openMs <= rig.shiftStartMs && job.closeMs >= DAY_MS) &&
    problem.stations.every((station) => station.openMs <= rig.shiftStartMs && station.closeMs >= DAY_MS);
  const even = problem.stocks.every(
    (_, stock) => new Set(problem.stations.map((each) => each.msPerPart[stock]).filter((ms) => ms !== -1)).size <= 1,
  );
  return anyTime && even;
}

/** Weight with every vessel full, ten-thousandths of a pound. */
function heaviest(problem: Problem, rig: ProblemRig): number {
  const water = Math.max(0, ...problem.stocks.map((each) => (each.kind === 'water' ? each.weightPerPart : 0)));
  const dry = Math.max(0, ...problem.stocks.map((each) => (each.kind === 'dry' ? each.weightPerPart : 0)));
  const bag = Math.max(0, ...problem.stocks.map((each) => each.bagParts * each.weightPerPart));
  const vessels = rig.compartments.reduce(
    (sum, each) => sum + each.capacityParts * (each.kind === 'tank' ? water : dry),
    0,
  );
  return vessels + rig.nurseParts * water + rig.bagPlaces * bag;
}

/** True where the bag places take all dry goods of the day at once. */
function bagsFit(problem: Problem, rig: ProblemRig, ops: readonly FlatOp[]): boolean {
  const parts = problem.stocks.map(() => 0);
  for (const { op } of ops) {
    const stock = problem.materials[op.material]?.stock;
    if (stock === undefined) continue;
    for (const draw of op.draws) parts[stock] = (parts[stock] as number) + draw.parts;
  }
  const bags = problem.stocks.map((stock, index) =>
    stock.kind === 'dry' ? Math.ceil((parts[index] as number) / stock.bagParts) : 0,
  );
  return bags.filter((each) => each > 0).length <= 1 || bags.reduce((sum, each) => sum + each, 0) <= rig.bagPlaces;
}

/** Who does an op: 0 the first person, 1 the second one beside. */
export function personOf(op: Op): 0 | 1 {
  return op.second ? 1 : 0;
}
