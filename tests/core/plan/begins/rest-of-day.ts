import type { Aboard, Problem } from '../../../../core/plan/problem/index.ts';
import type { Activity, RouteOutcome, Visit } from '../../../../core/plan/refills/index.ts';

/** The rest of a route after so many of its visits, as a problem of its own, and what the route has still to pay for it. */
export type Rest = {
  readonly problem: Problem;
  readonly visits: readonly Visit[];
  /** Of the route as it is: pay, overtime and distance from there on. nano-dollars */
  readonly cost: number;
};

/**
 * Cuts a route after `count` visits: the rig stands where it then stands, with what it then has aboard, and the jobs still to come are all the jobs
 * there are. Written for the tests from core/plan/problem/types.ts alone.
 */
export function restOf(problem: Problem, route: RouteOutcome, count: number): Rest {
  const slot = problem.slots[route.slot];
  const rig = problem.rigs[slot?.rig ?? -1];
  if (slot === undefined || rig === undefined) throw new RangeError('no such route');
  const cut = route.activities.findIndex((each) => each.kind === 'pack-up' && each.visit === count - 1) + 1;
  const before = route.activities.slice(0, cut);
  const nowMs = Math.max(...before.map((each) => each.endMs));
  const place = problem.jobs[route.visits[count - 1]?.job ?? -1]?.place ?? 0;
  const spentMs = nowMs - rig.shiftStartMs;
  const shiftMs = Math.max(0, rig.shiftMs - spentMs);
  const here = {
    fillPointId: 'here',
    place,
    openMs: 0,
    closeMs: 86_400_000,
    visitMs: 86_400_000,
    msPerPart: problem.stocks.map(() => -1),
  };
  const left = route.visits.slice(count);
  const jobs = left.flatMap(({ job }) => problem.jobs.slice(job, job + 1));
  const tasks = jobs.flatMap((job) => job.tasks);
  const home = problem.stations[rig.end]?.place ?? 0;
  const size = problem.placeIds.length;
  /** A place from which all ways are those from here, and to which all are those to where the day ends. */
  const joined = (table: Int32Array): Int32Array =>
    Int32Array.from({ length: (size + 1) ** 2 }, (_, cell) => {
      const [from, to] = [Math.floor(cell / (size + 1)), cell % (size + 1)];
      if (from === to) return 0;
      return table[(from === size ? place : from) * size + (to === size ? home : to)] as number;
    });
  const rest: Problem = {
    ...problem,
    hash: 'rest',
    dates: problem.dates.slice(slot.day, slot.day + 1),
    placeIds: [...problem.placeIds, 'day'],
    travelMs: joined(problem.travelMs),
    travelM: joined(problem.travelM),
    stations: [...problem.stations, here],
    materials: problem.materials.map(({ reserveParts: _, ...each }) => each),
    rigs: problem.rigs.map((each, number) => ({
      ...each,
      ...(number === slot.rig
        ? {
            home: problem.stations.length,
            depot: size,
            shiftStartMs: nowMs,
            shiftMs,
            overtimeMs: Math.max(0, rig.shiftMs + rig.overtimeMs - spentMs - shiftMs),
            morningMs: 0,
            breakAfterMs: before.some((activity) => activity.kind === 'break') ? -1 : rig.breakAfterMs,
            costPerDay: 0,
            begins: aboardAfter(problem, route, before),
          }
        : {}),
    })),
    slots: [{ rig: slot.rig, day: 0 }],
    tasks: tasks.flatMap((task) => problem.tasks.slice(task, task + 1)),
    jobs: jobs.map((job) => ({
      ...job,
      tasks: job.tasks.map((task) => tasks.indexOf(task)),
      modes: job.modes.map((modes) =>
        modes.map((mode) => ({
          ...mode,
          ops: mode.ops.map((op) => ({ ...op, task: tasks.indexOf(op.task) })),
        })),
      ),
      dayAllowed: Uint8Array.of(1),
      lateCost: Float64Array.of(0),
    })),
    unplaceable: [],
  };
  const metres = route.activities
    .slice(cut)
    .reduce((sum, each) => sum + (each.kind === 'drive' ? each.distanceM : 0), 0);
  const over = Math.max(0, route.paidMs - Math.max(rig.shiftMs, spentMs));
  const cost = (route.paidMs - spentMs) * rig.costPerMs + over * rig.overtimeCostPerMs + metres * rig.costPerM;
  return { problem: rest, visits: left.map(({ mode }, job) => ({ job, mode })), cost };
}

/** What is in every vessel when these activities are over. */
export function aboardAfter(problem: Problem, route: RouteOutcome, activities: readonly Activity[]): Aboard {
  const rigNumber = problem.slots[route.slot]?.rig ?? -1;
  const rig = problem.rigs[rigNumber];
  const parts = (rig?.compartments ?? []).map(() => 0);
  const materials = parts.map(() => -1);
  const stockParts = problem.stocks.map(() => 0);
  const add = (list: number[], at: number, more: number): void => {
    list[at] = (list[at] ?? 0) + more;
  };
  for (const each of activities) {
    if (each.kind === 'refill') {
      for (const c of each.rinsed) {
        const old = problem.materials[materials[c] ?? -1];
        const water = problem.stocks.findIndex((stock) => stock.kind === 'water');
        const given = (problem.stations[each.station]?.msPerPart[water] ?? -1) >= 0;
        if (old !== undefined && !given) add(stockParts, water, -old.rinseParts);
        parts[c] = 0;
        materials[c] = -1;
      }
    }
    if (each.kind === 'morning' || each.kind === 'refill') {
      for (const fill of each.fills) {
        add(parts, fill.compartment, fill.parts);
        materials[fill.compartment] = fill.material;
        if (each.kind === 'refill' && each.station < 0)
          add(stockParts, problem.materials[fill.material]?.stock ?? -1, -fill.parts);
      }
      for (const fill of each.stock) add(stockParts, fill.stock, fill.parts);
    }
    if (each.kind === 'pour') {
      add(parts, each.from, -each.parts);
      add(parts, each.into, each.parts);
    }
    if (each.kind === 'treat') {
      const { job, mode } = route.visits[each.visit] ?? { job: -1, mode: -1 };
      const op = problem.jobs[job]?.modes[rigNumber]?.[mode]?.ops[each.op];
      for (const draw of op?.draws ?? []) {
        const drawn = (units: number): number => Math.ceil((draw.parts * units) / (op?.areaUnits ?? 1) - 1e-9);
        add(parts, draw.compartment, drawn(each.fromUnits) - drawn(each.toUnits));
      }
    }
  }
  return { parts, materials, stockParts };
}
