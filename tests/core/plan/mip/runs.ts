import type { Material } from '../../../../core/plan/problem/index.ts';
import { type FixedRoute, travel } from '../oracle/route.ts';

/** One material in one compartment, from its first op to its last: between two runs of a compartment lies a rinse. */
export type Run = {
  readonly material: Material;
  readonly first: number;
  readonly last: number;
  readonly total: number;
  /** What was in the compartment before; null in the morning. */
  readonly before: Material | null;
};

/** The runs of every compartment in the order of the day. */
export function runsOf(route: FixedRoute): readonly (readonly Run[])[] {
  return route.rig.compartments.map((_, compartment) => {
    const runs: Run[] = [];
    route.ops.forEach(({ op }, at) => {
      const material = route.problem.materials[op.material];
      const parts = op.draws.find((draw) => draw.compartment === compartment)?.parts ?? 0;
      if (material === undefined || parts === 0) return;
      const open = runs.at(-1);
      if (open?.material === material) runs[runs.length - 1] = { ...open, last: at, total: open.total + parts };
      else runs.push({ material, first: at, last: at, total: parts, before: open?.material ?? null });
    });
    return runs;
  });
}

/** A point of the day where refills may lie: before op `op` (`split` 0), or inside it after so many stretches of work. */
export type Gap = { readonly op: number; readonly split: number };

/** A way to one or two stations from where the rig is to where it works next, beyond going there straight. */
export type Path = { readonly stations: readonly number[]; readonly ms: number; readonly metres: number };

/** Every way by one or two different stations at a gap. Times hold drives, visits, reloads and what a refill inside an op costs. */
export function pathsAt(route: FixedRoute, gap: Gap): readonly Path[] {
  const { problem, rig } = route;
  const { from, to, extraMs } = surroundings(route, gap);
  const numbers = problem.stations.map((_, number) => number);
  const rows = numbers.flatMap((one) => [[one], ...numbers.filter((two) => two !== one).map((two) => [one, two])]);
  return rows.map((stations) => {
    const places = [from, ...stations.map((number) => problem.stations[number]?.place ?? -1), to];
    const legs = places.slice(1).map((place, at) => travel(problem, places[at] as number, place));
    const straight = travel(problem, from, to);
    const mid = gap.split > 0 ? rig.midZoneMs : 0;
    const visits = stations.reduce((sum, number) => sum + (problem.stations[number]?.visitMs ?? 0) + extraMs + mid, 0);
    return {
      stations,
      ms: legs.reduce((sum, leg) => sum + leg.ms, -straight.ms) + visits,
      metres: legs.reduce((sum, leg) => sum + leg.m, -straight.m),
    };
  });
}

/** Before the first op of a visit the station lies on the way there; anywhere later it is a trip and back. */
function surroundings(route: FixedRoute, gap: Gap): { from: number; to: number; extraMs: number } {
  const flat = route.ops[gap.op];
  if (flat === undefined) throw new RangeError('no such op');
  const here = route.jobs[flat.visit]?.place ?? -1;
  if (!flat.firstOfVisit || gap.split > 0) return { from: here, to: here, extraMs: flat.op.reloadMs };
  const home = route.problem.stations[route.rig.home]?.place ?? -1;
  return { from: flat.visit === 0 ? home : (route.jobs[flat.visit - 1]?.place ?? -1), to: here, extraMs: 0 };
}
