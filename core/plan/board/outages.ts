import type { Job, Mode, Problem, ProblemRig, RouteSlot } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';

/** A rig that does not go on a date, or that goes without one of its machines. */
export type Outage = {
  readonly date: string;
  readonly rigId: string;
  /** Absent: the whole rig is out. */
  readonly machineId?: string;
};

/** A problem without what is out, and its solutions in the numbers of the whole problem. */
export type Reduced = { readonly problem: Problem; readonly back: (solution: Solution) => Solution };

/**
 * The problem with rigs and machines out on single dates. A rig that lacks a machine on a date is another rig there, with the ways that
 * are left; it carries as much as before. What is found is a solution of the whole problem.
 */
export function withoutOutages(problem: Problem, outages: readonly Outage[]): Reduced {
  if (outages.length === 0) return { problem, back: (solution) => solution };
  const slots: RouteSlot[] = [];
  const slotBack: number[] = [];
  const rigs: ProblemRig[] = [...problem.rigs];
  const variants = new Map<string, number>();
  const lacking: { readonly rig: number; readonly machines: ReadonlySet<string> }[] = [];
  problem.slots.forEach((slot, number) => {
    const rig = problem.rigs[slot.rig];
    const here = outages.filter((each) => each.date === problem.dates[slot.day] && each.rigId === rig?.rigId);
    if (rig === undefined || here.some((each) => each.machineId === undefined)) return;
    slotBack.push(number);
    const machines = here.flatMap((each) => each.machineId ?? []).toSorted();
    if (machines.length === 0) {
      slots.push(slot);
      return;
    }
    const name = JSON.stringify([slot.rig, ...machines]);
    const known = variants.get(name) ?? rigs.length;
    if (!variants.has(name)) {
      variants.set(name, known);
      rigs.push(rig);
      lacking.push({ rig: slot.rig, machines: new Set(machines) });
    }
    slots.push({ ...slot, rig: known });
  });
  const left = problem.jobs.map((job) => lacking.map(({ rig, machines }) => modesWithout(problem, job, rig, machines)));
  const jobs = problem.jobs.map((job, number): Job => {
    const added = (left[number] ?? []).map((each) => each.map(({ mode }) => mode));
    return { ...job, modes: [...job.modes, ...added] };
  });
  const back = (solution: Solution): Solution => ({
    ...solution,
    routes: solution.routes.map((route) => {
      const variant = (slots[route.slot]?.rig ?? 0) - problem.rigs.length;
      const modeOf = (job: number, mode: number): number =>
        variant < 0 ? mode : (left[job]?.[variant]?.[mode]?.number ?? mode);
      const visits = route.visits.map(({ job, mode }) => ({ job, mode: modeOf(job, mode) }));
      return { ...route, slot: slotBack[route.slot] ?? route.slot, visits };
    }),
  });
  return { problem: { ...problem, rigs, slots, jobs }, back };
}

/** The modes of a rig that need none of some machines, neither to work nor to draw from, with their numbers. */
export function modesWithout(
  problem: Problem,
  job: Job,
  rig: number,
  machines: ReadonlySet<string>,
): readonly { readonly mode: Mode; readonly number: number }[] {
  const owner = (compartment: number): string => problem.rigs[rig]?.compartments[compartment]?.id.split('/')[0] ?? '';
  return (job.modes[rig] ?? [])
    .map((mode, number) => ({ mode, number }))
    .filter(({ mode }) =>
      mode.ops.every(
        ({ method, draws }) =>
          !(method.kind === 'machine' && machines.has(method.machineId)) &&
          draws.every((draw) => !machines.has(owner(draw.compartment))),
      ),
    );
}
