import { type Job, machinesOutOn, needsMachine, type Problem, type RouteSlot } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';

/** A problem for the search without the ways that need a machine which is out, and what it finds in the numbers of the whole problem. */
export type Reduced = { readonly problem: Problem; readonly back: (solution: Solution) => Solution };

/** A rig that lacks a machine on a date is another rig there, with the ways that are left; it carries as much as before. */
export function withoutMachinesOut(problem: Problem): Reduced {
  const rigs = [...problem.rigs];
  const variants = new Map<string, number>();
  const lacking: { readonly rig: number; readonly machines: ReadonlySet<string> }[] = [];
  const slots = problem.slots.map((slot): RouteSlot => {
    const rig = problem.rigs[slot.rig];
    const machines = machinesOutOn(problem, problem.dates[slot.day] ?? '', rig?.rigId ?? '');
    if (rig === undefined || machines.size === 0) return slot;
    const name = JSON.stringify([slot.rig, ...[...machines].toSorted()]);
    const known = variants.get(name) ?? rigs.length;
    if (!variants.has(name)) {
      variants.set(name, known);
      rigs.push(rig);
      lacking.push({ rig: slot.rig, machines });
    }
    return { ...slot, rig: known };
  });
  if (lacking.length === 0) return { problem, back: (solution) => solution };
  const left = problem.jobs.map((job) => lacking.map(({ rig, machines }) => modesLeft(problem, job, rig, machines)));
  const jobs = problem.jobs.map((job, number): Job => {
    const added = lacking.map(({ rig }, variant) =>
      (left[number]?.[variant] ?? []).flatMap((mode) => job.modes[rig]?.[mode] ?? []),
    );
    return { ...job, modes: [...job.modes, ...added] };
  });
  const back = (solution: Solution): Solution => ({
    ...solution,
    routes: solution.routes.map((route) => {
      const variant = (slots[route.slot]?.rig ?? 0) - problem.rigs.length;
      if (variant < 0) return route;
      const visits = route.visits.map(({ job, mode }) => ({ job, mode: left[job]?.[variant]?.[mode] ?? mode }));
      return { ...route, visits };
    }),
  });
  return { problem: { ...problem, rigs, slots, jobs }, back };
}

/** Numbers of the modes in which a rig can do a job without some machines. */
function modesLeft(problem: Problem, job: Job, rig: number, machines: ReadonlySet<string>): readonly number[] {
  return (job.modes[rig] ?? []).flatMap((mode, number) => (needsMachine(problem, rig, mode, machines) ? [] : [number]));
}

/** Numbers of the modes in which a job can be done in a slot: without the machines that are out there. */
export function modesAt(problem: Problem, job: number, slot: number): readonly number[] {
  const { rig = -1, day = -1 } = problem.slots[slot] ?? {};
  const out = machinesOutOn(problem, problem.dates[day] ?? '', problem.rigs[rig]?.rigId ?? '');
  const wanted = problem.jobs[job];
  return wanted === undefined ? [] : modesLeft(problem, wanted, rig, out);
}
