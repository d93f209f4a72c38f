import type { Book } from '../../book/index.ts';
import { formatDuration, quantity } from '../../units/index.ts';
import { buildProblem, type Mode, needsMachine, type Outage, type Problem, visitMs } from '../problem/index.ts';
import type { Names, Plan, PlanStop, PlanWriter } from '../result/index.ts';
import { aloneIn, refusalWords } from './refusal.ts';
import type { TaskName } from './types.ts';

/** Who could take a lawn over. */
export type Taker = {
  readonly rigId: string;
  /** Time of the visit by the quickest way that is left, without refills; null where there is none. */
  readonly visitSec: number | null;
  readonly words: string;
};
/** A task that is left without its rig or machine, at stop `number` of the plan, and who could take it. */
export type Orphan = {
  readonly task: TaskName;
  readonly name: string;
  readonly number: number;
  readonly takers: readonly Taker[];
};

/** The lawns that a rig or machine was to do on a date, with every rig that works on that date: its minutes, or the reason. */
export function takersFor(
  book: Book,
  problem: Problem,
  plan: Plan,
  writer: PlanWriter,
  outage: Outage,
): readonly Orphan[] {
  const day = plan.days.find((each) => each.date === outage.date && each.rigId === outage.rigId);
  const needsIt = (stop: PlanStop): boolean => {
    const { machineId } = outage;
    if (machineId === undefined) return true;
    return (
      stop.tasks.some(({ method }) => method.kind === 'machine' && method.machineId === machineId) ||
      drawsOn(stop, machineId)
    );
  };
  const drawsOn = (stop: PlanStop, machineId: string): boolean =>
    (day?.activities ?? []).some(
      (each) =>
        each.kind === 'treat' &&
        each.propertyId === stop.propertyId &&
        each.draws.some((draw) => draw.compartmentId.startsWith(`${machineId}/`)),
    );
  const onDate = problem.dates.indexOf(outage.date);
  const rigs = problem.slots.filter((slot) => slot.day === onDate).map((slot) => slot.rig);
  return (day?.stops ?? []).filter(needsIt).flatMap((stop) => {
    const [first] = stop.tasks;
    if (first === undefined) return [];
    const { propertyId, zoneId, treatmentId, step } = first;
    const task = { propertyId, zoneId, treatmentId, step };
    const job = writer.jobWith(task);
    const takers = rigs.flatMap((rig) => takerOf({ book, problem, names: writer.names, outage, task, job }, rig) ?? []);
    return [{ task, name: stop.name, number: stop.number, takers }];
  });
}

type Question = {
  readonly book: Book;
  readonly problem: Problem;
  readonly names: Names;
  readonly outage: Outage;
  readonly task: TaskName;
  readonly job: number;
};

function takerOf({ book, problem, names, outage, task, job }: Question, rig: number): Taker | null {
  const { rigId = '' } = problem.rigs[rig] ?? {};
  const isOwn = rigId === outage.rigId;
  if (isOwn && outage.machineId === undefined) return null;
  const machines = new Set(isOwn && outage.machineId !== undefined ? [outage.machineId] : []);
  const modes = isOwn ? ownModes(book, problem, task, outage) : (problem.jobs[job]?.modes[rig] ?? []);
  const best = quickest(modes);
  if (best === null) {
    const words = refusalWords(lacking(book, rigId, machines), problem.roundId, task, rigId);
    return { rigId, visitSec: null, words };
  }
  const methods = new Set(
    best.ops.map(({ method }) => names.method(method.kind === 'machine' ? method.machineId : method.handMethodId)),
  );
  const visitSec = visitMs(best) / 1000;
  return { rigId, visitSec, words: `${formatDuration(quantity(visitSec))} with ${[...methods].join(' and ')}` };
}

/** What is left to the rig itself, found by building its part of the problem without the machine. */
function ownModes(book: Book, { roundId }: Problem, task: TaskName, outage: Outage): readonly Mode[] {
  const built = buildProblem(aloneIn(book, roundId, task, outage.rigId), roundId, { outages: [outage] });
  if (!built.ok) return [];
  const machines = new Set(outage.machineId === undefined ? [] : [outage.machineId]);
  const { value } = built;
  const all = value.jobs.length === 1 && value.unplaceable.length === 0 ? (value.jobs[0]?.modes[0] ?? []) : [];
  return all.filter((mode) => !needsMachine(value, 0, mode, machines));
}

function quickest(modes: readonly Mode[]): Mode | null {
  const [first, ...others] = modes;
  if (first === undefined) return null;
  return others.reduce((best, each) => (visitMs(each) < visitMs(best) ? each : best), first);
}

function lacking(book: Book, rigId: string, machines: ReadonlySet<string>): Book {
  const rigs = book.rigs.map((rig) =>
    rig.id === rigId ? { ...rig, machines: rig.machines.filter((each) => !machines.has(each.machineId)) } : rig,
  );
  return { ...book, rigs };
}
