import type { Job, Problem } from '../problem/index.ts';
import { type Placement, RefillPlacer, type RouteOutcome, type Visit } from '../refills/index.ts';
import { type Insertion, type PlanFacts, visitsOf } from './insertions.ts';

/** Labels kept where it is only asked whether a row can be done at all. */
const BEAM = 8;

/**
 * Places single insertions in changed copies of a problem. Each copy is cut down to the jobs of the one route, so that trying is
 * cheap however large the round is. Counts what it does: `left` falls with every placement by one and one more for every refill that
 * the row is likely to need.
 */
export class Trials {
  readonly facts: PlanFacts;
  left: number;
  private readonly efforts = new Map<string, number>();
  private readonly placers = new WeakMap<Problem, Map<string, RefillPlacer>>();

  constructor(facts: PlanFacts, most: number) {
    this.facts = facts;
    this.left = most;
  }

  /** The route with the job in it; null where it cannot be done. `problem` is the plan's own or a copy with a limit moved. */
  place(problem: Problem, job: number, insertion: Insertion): RouteOutcome | null {
    this.left -= this.effort(job, insertion);
    const placement = this.placer(problem, job, insertion.slot).place(
      insertion.slot,
      this.visits(job, insertion),
      'quick',
    );
    return placement.kind === 'placed' ? placement.outcome : null;
  }

  /** Whether the refill programme sees a way; quicker than `place`, and proves nothing where times of day bind. */
  seems(problem: Problem, job: number, insertion: Insertion): boolean {
    return Number.isFinite(this.roughPaidMs(problem, job, insertion));
  }

  /** Length of the paid day as the refill programme sees it; Infinity where it sees no way. */
  roughPaidMs(problem: Problem, job: number, insertion: Insertion): number {
    this.left -= this.effort(job, insertion) / 4;
    const visits = this.visits(job, insertion);
    const rig = problem.slots[insertion.slot]?.rig ?? 0;
    const jobs = visits.map((each) => each.job);
    const modes = visits.map((each) => each.mode);
    const placer = this.placer(problem, job, insertion.slot);
    const cost = placer.estimate(insertion.slot, jobs, modes, jobs.length, BEAM);
    return Number.isFinite(cost) ? placer.lastEndMs(insertion.slot) - (problem.rigs[rig]?.shiftStartMs ?? 0) : cost;
  }

  /** Whether the route can be done, told by a look first and proved by placing. */
  fits(problem: Problem, job: number, insertion: Insertion): boolean {
    return this.seems(problem, job, insertion) && this.place(problem, job, insertion) !== null;
  }

  /** The job on a day that has nothing else. */
  placeAlone(job: number, slot: number, mode: number): Placement {
    this.left -= 1;
    const { problem } = this.facts;
    const own = { ...problem, jobs: [problem.jobs[job] as Job] };
    return new RefillPlacer(own).place(slot, [{ job: 0, mode }], 'quick');
  }

  private effort(job: number, { slot, mode }: Insertion): number {
    const key = `${slot} ${job} ${mode}`;
    const known = this.efforts.get(key) ?? effortOf(this.facts, job, slot, mode);
    this.efforts.set(key, known);
    return known;
  }

  /** Visits of the cut-down problem: its jobs are those of the route in order, then the new one. */
  private visits(job: number, { slot, position, mode }: Insertion): readonly Visit[] {
    const route = visitsOf(this.facts, slot).map((visit, at): Visit => ({ job: at, mode: visit.mode }));
    const added = job < 0 ? [] : [{ job: route.length, mode }];
    return [...route.slice(0, position), ...added, ...route.slice(position)];
  }

  private placer(problem: Problem, job: number, slot: number): RefillPlacer {
    const known = this.placers.get(problem) ?? new Map<string, RefillPlacer>();
    this.placers.set(problem, known);
    const key = `${slot} ${job}`;
    const placer = known.get(key) ?? new RefillPlacer(this.cutDown(problem, job, slot));
    known.set(key, placer);
    return placer;
  }

  private cutDown(problem: Problem, job: number, slot: number): Problem {
    const numbers = [...visitsOf(this.facts, slot).map((visit) => visit.job), ...(job < 0 ? [] : [job])];
    return { ...problem, jobs: numbers.map((number) => problem.jobs[number] as Job) };
  }
}

/** One, and one for each time that the row empties a compartment. */
function effortOf(facts: PlanFacts, job: number, slot: number, mode: number): number {
  const { problem } = facts;
  const number = problem.slots[slot]?.rig ?? -1;
  const compartments = problem.rigs[number]?.compartments ?? [];
  const visits = [...visitsOf(facts, slot), { job, mode }];
  const draws = visits
    .flatMap((visit) => problem.jobs[visit.job]?.modes[number]?.[visit.mode]?.ops ?? [])
    .flatMap((op) => op.draws);
  const capacity = (compartment: number): number => Math.max(1, compartments[compartment]?.capacityParts ?? 1);
  return 1 + draws.reduce((sum, draw) => sum + draw.parts / capacity(draw.compartment), 0);
}
