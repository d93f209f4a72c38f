import type { Problem } from '../problem/index.ts';
import type { Visit } from '../refills/index.ts';
import type { Plan, PlanDay, PlanWriter } from '../result/index.ts';
import { startFrom } from '../search/index.ts';
import type { TaskName } from './types.ts';

/** The stops of a plan as rows of visits, one for each slot that has any, read when they are asked for. */
export class Rows {
  private readonly problem: Problem;
  private readonly plan: Plan;
  private readonly writer: PlanWriter;
  private readonly rows = new Map<number, readonly Visit[]>();
  private readonly before = new Map<number, readonly Visit[]>();
  private readonly slotOfJob = new Map<number, number>();
  private readonly dayOfSlot = new Map<number, PlanDay>();

  constructor(problem: Problem, plan: Plan, writer: PlanWriter) {
    this.problem = problem;
    this.plan = plan;
    this.writer = writer;
    for (const day of plan.days) {
      const slot = this.slotOf(day.date, day.rigId);
      this.dayOfSlot.set(slot, day);
      for (const task of day.stops.flatMap((stop) => stop.tasks.slice(0, 1)))
        this.slotOfJob.set(writer.jobWith(task), slot);
    }
  }

  /** The slot of a rig on a date; -1 where it does not work then. */
  slotOf(date: string, rigId: string): number {
    const { problem } = this;
    return problem.slots.findIndex(
      (each) => problem.dates[each.day] === date && problem.rigs[each.rig]?.rigId === rigId,
    );
  }

  jobWith(task: TaskName): number {
    return this.writer.jobWith(task);
  }

  day(slot: number): PlanDay | undefined {
    return this.dayOfSlot.get(slot);
  }

  /** The slot that a job is in now; -1 where it is left out. */
  slotWith(job: number): number {
    return this.slotOfJob.get(job) ?? -1;
  }

  row(slot: number): readonly Visit[] {
    const known = this.rows.get(slot);
    if (known !== undefined) return known;
    const day = this.dayOfSlot.get(slot);
    const asStart =
      day === undefined ? [] : startFrom(this.problem, { ...this.plan, days: [day] }, NOTHING_KEPT).routes;
    const row = asStart[0]?.visits ?? [];
    this.rows.set(slot, row);
    this.before.set(slot, row);
    return row;
  }

  /** Gives a slot another row; where its jobs are is known from then on. */
  put(slot: number, row: readonly Visit[]): void {
    for (const { job } of this.row(slot)) this.slotOfJob.delete(job);
    for (const { job } of row) this.slotOfJob.set(job, slot);
    this.rows.set(slot, row);
  }

  /** Slots whose rows are others than those of the plan. */
  changed(): readonly number[] {
    const differs = (slot: number, row: readonly Visit[]): boolean => {
      const before = this.before.get(slot) ?? [];
      return row.length !== before.length || row.some(({ job, mode }, at) => !isVisit(before[at], job, mode));
    };
    return [...this.rows].filter(([slot, row]) => differs(slot, row)).map(([slot]) => slot);
  }
}

const NOTHING_KEPT = { keepFirst: 0, pinned: [] } as const;

function isVisit(visit: Visit | undefined, job: number, mode: number): boolean {
  return visit?.job === job && visit.mode === mode;
}
