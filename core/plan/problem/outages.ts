import { canonicalJson } from '../../base/index.ts';
import { modesOf, type TaskOptions } from './modes.ts';
import type { TaskFacts } from './options.ts';
import type { EquippedRig } from './rigs.ts';
import type { Mode, Outage, Problem, RouteSlot } from './types.ts';

/** The problem with rigs and machines out on single dates: a rig that is out has no slot then. */
export function withOutages(parts: Omit<Problem, 'hash'>, outages: readonly Outage[]): Omit<Problem, 'hash'> {
  if (outages.length === 0) return parts;
  const isOut = ({ rig, day }: RouteSlot): boolean =>
    outages.some(
      ({ date, rigId, machineId }) =>
        machineId === undefined && date === parts.dates[day] && rigId === parts.rigs[rig]?.rigId,
    );
  return { ...parts, slots: parts.slots.filter((slot) => !isOut(slot)), outages };
}

/**
 * The ways in which a rig can do all tasks of a job, and for every date on which machines of it are out those that do without them. Which
 * ways belong to which date is for the planner to see: see `needsMachine`.
 */
export function modesWithOutages(
  equipped: EquippedRig,
  tasks: readonly TaskOptions[],
  materialOf: (facts: TaskFacts) => number,
  outages: readonly Outage[],
): readonly Mode[] {
  const whole = canAll(tasks) ? modesOf(equipped, tasks, materialOf) : [];
  const lacks = machinesOut(outages, equipped.rig.id);
  const others = lacks.flatMap((machines) => {
    const left = tasks.map((task) => ({
      ...task,
      options: task.options.filter(({ machineIds, method }) => {
        const own = method.kind === 'machine' ? [method.machineId] : [];
        return ![...machineIds, ...own].some((id) => machines.has(id));
      }),
    }));
    return canAll(left) ? modesOf(equipped, left, materialOf) : [];
  });
  return [...new Map([...whole, ...others].map((mode) => [canonicalJson(mode), mode])).values()];
}

function canAll(tasks: readonly TaskOptions[]): boolean {
  return tasks.every((each) => each.options.length > 0);
}

/** The machines that are out together, for every date that has any, each set once. */
function machinesOut(outages: readonly Outage[], rigId: string): readonly ReadonlySet<string>[] {
  const byDate = new Map<string, readonly string[]>();
  for (const { date, rigId: id, machineId } of outages) {
    if (id === rigId && machineId !== undefined) byDate.set(date, [...(byDate.get(date) ?? []), machineId]);
  }
  const sets = [...byDate.values()].map((machines) => [...new Set(machines)].toSorted());
  return [...new Map(sets.map((machines) => [canonicalJson(machines), new Set(machines)])).values()];
}

/** The machines of a rig that are out on a date. */
export function machinesOutOn({ outages = [] }: Problem, date: string, rigId: string): ReadonlySet<string> {
  return new Set(
    outages.flatMap((each) =>
      each.date === date && each.rigId === rigId && each.machineId !== undefined ? [each.machineId] : [],
    ),
  );
}

/** Whether a way of a rig needs one of some machines, to work or to draw from. */
export function needsMachine(problem: Problem, rig: number, mode: Mode, machines: ReadonlySet<string>): boolean {
  const owner = (compartment: number): string => problem.rigs[rig]?.compartments[compartment]?.id.split('/')[0] ?? '';
  return mode.ops.some(
    ({ method, draws }) =>
      (method.kind === 'machine' && machines.has(method.machineId)) ||
      draws.some((draw) => machines.has(owner(draw.compartment))),
  );
}
