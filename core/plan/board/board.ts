import type { Book } from '../../book/index.ts';
import { machinesOutOn, type Outage, type Problem } from '../problem/index.ts';
import type { RouteOutcome } from '../refills/index.ts';
import { type Plan, PlanWriter, type UnplacedTask } from '../result/index.ts';
import { changeBetween } from './change.ts';
import { LoosePlacer } from './loosely.ts';
import { modesAt } from './outages.ts';
import { placesFor } from './places.ts';
import { refusalWords } from './refusal.ts';
import { usesOfRests } from './rests.ts';
import { Rows } from './rows.ts';
import { type Orphan, takersFor } from './takers.ts';
import type { Breach, Goal, MoveAnswer, Place, Refusal, StopMove, TaskName, UseOfRest } from './types.ts';
import { leftOutAfter } from './unplaced.ts';
import { Verdicts } from './verdicts.ts';
import { bestVisit } from './ways.ts';

/**
 * The plan of a round on a table, to be changed by hand. The order is what the user says. Refills are placed anew on the routes that
 * changed, a stop that comes to another rig is done in the way that the search would choose, and nothing else moves. What breaks a hard
 * rule is still shown as far as it can be reckoned, and the judge says what is broken.
 *
 * Holds what takes long to make, for one problem: keep it from one move to the next. Where a move asks which rule keeps a rig from a
 * lawn, the book is asked, so that it must be the one the problem was built from.
 */
export class Board {
  readonly problem: Problem;
  private readonly book: Book;
  private readonly writer: PlanWriter;
  private readonly placer: LoosePlacer;
  private readonly verdicts: Verdicts;

  constructor(book: Book, problem: Problem) {
    this.book = book;
    this.problem = problem;
    this.writer = new PlanWriter(book, problem);
    this.placer = new LoosePlacer(problem);
    this.verdicts = new Verdicts(problem, this.writer.names);
  }

  /** Moves stops, one after the other: each position counts in the plan that the moves before it have made. */
  move(plan: Plan, moves: readonly StopMove[]): MoveAnswer {
    const { problem } = this;
    if (plan.problemHash !== problem.hash) return refused([{ propertyId: '', rigId: '', words: STALE }]);
    const rows = new Rows(problem, plan, this.writer);
    const outByHand = new Set<number>();
    const refusals = moves.flatMap((move): readonly Refusal[] => {
      const refusal = this.apply(rows, move);
      const job = rows.jobWith(move.task);
      if (move.to.kind === 'out') outByHand.add(job);
      else outByHand.delete(job);
      return refusal === null ? [] : [refusal];
    });
    if (refusals.length > 0) return refused(refusals);
    const routes = this.placed(rows);
    if (routes === null) return refused([{ propertyId: '', rigId: '', words: BEYOND_RECKONING }]);
    const unplaced = leftOutAfter(problem, plan, this.writer, rows, outByHand);
    const after = routes.length === 0 ? withUnplaced(plan, unplaced) : this.writer.change(plan, routes, unplaced);
    return { kind: 'moved', change: changeBetween(plan, after), breaches: this.verdicts.afterMove(after) };
  }

  /** Everything that a plan breaks. */
  breaches(plan: Plan): readonly Breach[] {
    return this.verdicts.whole(plan);
  }

  /** The cheapest places for a stop, or for work that was left out, in every rig that can do it; best first. */
  places(plan: Plan, task: TaskName): readonly Place[] {
    return placesFor(this.problem, this.placer, new Rows(this.problem, plan, this.writer), task, this.writer.names);
  }

  /** Work left out, or of later days, that would use up what tanks still hold at the end of a day. */
  usesOfRests(plan: Plan, date: string): readonly UseOfRest[] {
    return usesOfRests(this.problem, this.placer, new Rows(this.problem, plan, this.writer), date, this.writer.names);
  }

  /** Who could take over what a rig or machine was to do on a date. */
  takers(plan: Plan, outage: Outage): readonly Orphan[] {
    return takersFor(this.book, this.problem, plan, this.writer, outage);
  }

  /** Changes the rows; a refusal where the stop cannot go there at all. */
  private apply(rows: Rows, { task, to }: StopMove): Refusal | null {
    const { problem } = this;
    const job = rows.jobWith(task);
    const rigId = to.kind === 'day' ? to.rigId : '';
    const refuse = (words: string): Refusal => ({ propertyId: task.propertyId, rigId, words });
    if (job < 0) return refuse(to.kind === 'out' ? NO_SUCH_WORK : this.whyNot(task, to.rigId));
    const target = to.kind === 'day' ? rows.slotOf(to.date, to.rigId) : -1;
    const slot = problem.slots[target];
    if (to.kind === 'day') {
      if (slot === undefined) return refuse(`${this.writer.names.rig(rigId)} does not work on ${to.date}`);
      const modes = problem.jobs[job]?.modes[slot.rig] ?? [];
      if (modes.length === 0) return refuse(this.whyNot(task, rigId));
      if (modesAt(problem, job, target).length === 0) return refuse(this.withoutMachine(task, rigId, to.date));
    }
    const from = rows.slotWith(job);
    const kept = this.takeOut(rows, job, from);
    if (to.kind === 'day')
      this.putIn(rows, job, { slot: target, goal: to, sameRig: problem.slots[from]?.rig === slot?.rig ? kept : -1 });
    return null;
  }

  /** The mode in which the job was done; -1 where it was in no day. */
  private takeOut(rows: Rows, job: number, from: number): number {
    if (from < 0) return -1;
    const row = rows.row(from);
    const mode = row.find((visit) => visit.job === job)?.mode ?? -1;
    rows.put(
      from,
      row.filter((visit) => visit.job !== job),
    );
    return mode;
  }

  private putIn(rows: Rows, job: number, { slot, goal, sameRig }: PutIn): void {
    const row = rows.row(slot);
    const at = Math.min(row.length, goal.position);
    const visit = bestVisit(this.placer, {
      slot,
      row,
      at,
      job,
      modes: modesAt(this.problem, job, slot),
      kept: sameRig,
    });
    rows.put(slot, row.toSpliced(at, 0, visit));
  }

  private withoutMachine(task: TaskName, rigId: string, date: string): string {
    const { names } = this.writer;
    const out = [...machinesOutOn(this.problem, date, rigId)].map((id) => names.method(id)).join(' and ');
    return `${names.rig(rigId)} cannot do ${names.property(task.propertyId)} without ${out}, out of order on ${date}`;
  }

  private placed(rows: Rows): readonly RouteOutcome[] | null {
    const routes: RouteOutcome[] = [];
    for (const slot of rows.changed()) {
      const loose = this.placer.place(slot, rows.row(slot), 'explained');
      if (loose === null) return null;
      routes.push(loose.route);
    }
    return routes;
  }

  private whyNot(task: TaskName, rigId: string): string {
    const words = refusalWords(this.book, this.problem.roundId, task, rigId);
    return `${this.writer.names.rig(rigId)} cannot do ${this.writer.names.property(task.propertyId)}: ${words}`;
  }
}

type PutIn = {
  readonly slot: number;
  readonly goal: Extract<Goal, { readonly kind: 'day' }>;
  /** The mode that is kept, since the rig stays the same; -1 for none. */
  readonly sameRig: number;
};

const STALE = 'The book has been changed since this plan was made, in what the plan rests on: plan again first';
const NO_SUCH_WORK = 'there is no such stop in this plan';
const BEYOND_RECKONING = 'this order cannot be reckoned, not even with every limit taken away';

function refused(refusals: readonly Refusal[]): MoveAnswer {
  return { kind: 'refused', refusals };
}

function withUnplaced(plan: Plan, unplaced: readonly UnplacedTask[]): Plan {
  return { ...plan, unplaced, totals: { ...plan.totals, unplaced: unplaced.length } };
}
