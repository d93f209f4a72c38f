import type { Op } from '../../../../core/plan/problem/index.ts';
import type { FixedRoute, FlatOp } from './route.ts';

/** What a compartment has to give from a point of the route on, while it may hold the same material. */
export type Run = {
  readonly material: number;
  /** Running sums after each op that draws on the compartment, parts. */
  readonly marks: readonly { readonly op: number; readonly sum: number }[];
  readonly total: number;
};

/** Parts that an op has drawn after `units` of its ground. Products of whole numbers far below 2^53, so that nothing is lost. */
export function drawn(op: Op, parts: number, units: number): number {
  return Math.floor((parts * units + op.areaUnits - 1) / op.areaUnits);
}

/** The runs of every compartment from op `at` on, `units` of which are done. */
export function allRuns(route: FixedRoute, at: number, units: number): readonly (readonly Run[])[] {
  const key = at * 1e7 + units;
  const known = route.runs.get(key);
  if (known !== undefined) return known;
  const found = route.rig.compartments.map((_, index) => runsOf(route, index, at, units));
  route.runs.set(key, found);
  return found;
}

/** The runs of one compartment from op `at` on, `units` of which are done. A run ends where another material is needed. */
function runsOf(route: FixedRoute, compartment: number, at: number, units: number): readonly Run[] {
  const runs: { material: number; marks: { op: number; sum: number }[]; total: number }[] = [];
  for (let index = at; index < route.ops.length; index += 1) {
    const { op } = route.ops[index] as FlatOp;
    for (const draw of op.draws) {
      if (draw.compartment !== compartment) continue;
      const done = index === at ? drawn(op, draw.parts, units) : 0;
      let run = runs.at(-1);
      if (run?.material !== op.material) {
        run = { material: op.material, marks: [], total: 0 };
        runs.push(run);
      }
      run.total += draw.parts - done;
      run.marks.push({ op: index, sum: run.total });
    }
  }
  return runs;
}

/** Parts of one stock that are still missing for the ops up to and with `last`, beyond what the compartments hold. */
export function shortOf(
  route: FixedRoute,
  runs: readonly (readonly Run[])[],
  levels: readonly number[],
  materials: readonly number[],
  stock: number,
  last: number,
): number {
  let short = 0;
  runs.forEach((list, compartment) => {
    list.forEach((run, index) => {
      if (route.problem.materials[run.material]?.stock !== stock) return;
      const need = run.marks.findLast((mark) => mark.op <= last)?.sum ?? 0;
      const bags = route.bags[compartment] as number;
      const inBags = index === 0 && materials[bags] === run.material ? (levels[bags] as number) : 0;
      const held = index === 0 && materials[compartment] === run.material ? (levels[compartment] as number) : 0;
      short += Math.max(0, need - held - inBags);
    });
  });
  return short;
}

/** Rinse water that the changes still to come may take, by change; the changes of one compartment are told by its runs. */
export function rinsesAhead(
  route: FixedRoute,
  runs: readonly (readonly Run[])[],
  materials: readonly number[],
): readonly number[] {
  const parts: number[] = [];
  runs.forEach((list, compartment) => {
    let held = materials[compartment] as number;
    for (const run of list) {
      if (held >= 0 && held !== run.material) parts.push(route.problem.materials[held]?.rinseParts ?? 0);
      held = run.material;
    }
  });
  return parts.filter((each) => each > 0);
}
