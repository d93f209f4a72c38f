import type { Book } from '../../book/index.ts';
import { MS_PER_SECOND } from '../../units/index.ts';
import { daysAboveMs, type Problem } from '../problem/index.ts';
import type { RouteOutcome } from '../refills/index.ts';
import { evenDaysOf } from './even-days.ts';
import { type Names, namesOf } from './names.ts';
import { planDay } from './plan-day.ts';
import { totalsOf } from './totals.ts';
import type { Plan, PlanDay, UnplacedTask } from './types.ts';

const NANO_PER_CENT = 10_000_000;

/** Writes single days of a plan anew; everything else stays as it is. */
export class PlanWriter {
  readonly names: Names;
  private readonly book: Book;
  private readonly problem: Problem;
  private readonly jobOf: ReadonlyMap<string, number>;

  constructor(book: Book, problem: Problem) {
    this.book = book;
    this.problem = problem;
    this.names = namesOf(book, problem);
    this.jobOf = new Map(
      problem.jobs.flatMap(({ tasks }, job) =>
        tasks.flatMap((task) => {
          const named = problem.tasks[task];
          return named === undefined ? [] : [[taskName(named), job] as const];
        }),
      ),
    );
  }

  /** The job that a task of a plan belongs to; -1 where the problem has no such task, or none that a rig can do. */
  jobWith(task: TaskName): number {
    return this.jobOf.get(taskName(task)) ?? -1;
  }

  /** The plan with other routes in the days of some slots; a route without visits takes its day away. */
  change(plan: Plan, routes: readonly RouteOutcome[], unplaced: readonly UnplacedTask[]): Plan {
    const { problem } = this;
    const slotOf = (day: PlanDay): number =>
      problem.slots.findIndex(({ rig, day: at }) => problem.dates[at] === day.date && this.rigId(rig) === day.rigId);
    const changed = new Set(routes.map((each) => each.slot));
    const kept = plan.days.map((day) => ({ day, slot: slotOf(day) })).filter(({ slot }) => !changed.has(slot));
    const written = routes
      .filter((route) => route.visits.length > 0)
      .map((route) => ({ day: this.day(route), slot: route.slot }));
    const ordered = [...kept, ...written].sort((left, right) => left.slot - right.slot);
    const days = ordered.map(({ day }) => day);
    const lengths = days.map((day) => Math.round(day.paidSec * MS_PER_SECOND));
    const uneven = (problem.evenDays?.costPerMs ?? 0) * daysAboveMs(lengths);
    const cost = ordered.reduce((sum, { day, slot }) => sum + this.costOf(day, slot), uneven);
    return {
      ...plan,
      days,
      unplaced,
      totals: totalsOf(days, unplaced.length, cost / NANO_PER_CENT),
      ...evenDaysOf(
        problem,
        lengths.map((paidMs) => ({ paidMs })),
      ),
    };
  }

  private day(route: RouteOutcome): PlanDay {
    const otherWays = route.visits.map(() => []);
    return planDay(this.book, this.problem, this.names, route, { otherWays, whatIf: [] });
  }

  private rigId(rig: number): string {
    return this.problem.rigs[rig]?.rigId ?? '';
  }

  /** What a day costs to the last nano-dollar: a plan states whole cents. */
  private costOf(day: PlanDay, slot: number): number {
    const { problem } = this;
    const { rig: number, day: at } = problem.slots[slot] ?? { rig: -1, day: -1 };
    const rig = problem.rigs[number];
    if (rig === undefined) return day.costUsd * 100 * NANO_PER_CENT;
    const paidMs = Math.round(day.paidSec * MS_PER_SECOND);
    const overtimeMs = Math.max(0, paidMs - rig.shiftMs);
    const jobs = new Set(day.stops.flatMap((stop) => stop.tasks.map((task) => this.jobWith(task))));
    const late = [...jobs].reduce((sum, job) => sum + (problem.jobs[job]?.lateCost[at] ?? 0), 0);
    return (
      rig.costPerDay + paidMs * rig.costPerMs + overtimeMs * rig.overtimeCostPerMs + day.distanceM * rig.costPerM + late
    );
  }
}

type TaskName = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly treatmentId: string;
  readonly step: number;
};

function taskName({ propertyId, zoneId, treatmentId, step }: TaskName): string {
  return JSON.stringify([propertyId, zoneId, treatmentId, step]);
}
