import { emptyBook } from '../../../../core/book/index.ts';
import {
  applyChange,
  type Board,
  type MoveAnswer,
  type StopMove,
  type TaskName,
} from '../../../../core/plan/board/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { explainPlan, type Plan, type PlanStop } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';

export const NO_BOOK = emptyBook('invented', 'Invented');

/** A plan of a problem without a book, found in few looks. */
export function quickPlan(problem: Problem, iterations = 25): Plan {
  let asked = 0;
  const signal = { stopped: () => asked++ >= 60 };
  return explainPlan(NO_BOOK, problem, solve(problem, { seed: 1, iterations }, { signal }));
}

export function taskOf(stop: PlanStop | undefined): TaskName {
  const task = stop?.tasks[0];
  if (task === undefined) throw new Error('a stop without work');
  const { propertyId, zoneId, treatmentId, step } = task;
  return { propertyId, zoneId, treatmentId, step };
}

export function toDay(task: TaskName, date: string, rigId: string, position: number): StopMove {
  return { task, to: { kind: 'day', date, rigId, position } };
}

/** The plan after a move, and what it breaks; a refusal is a failure of the test. */
export function moved(board: Board, plan: Plan, moves: readonly StopMove[]) {
  const answer: MoveAnswer = board.move(plan, moves);
  if (answer.kind === 'refused') throw new Error(answer.refusals.map((each) => each.words).join('; '));
  return { plan: applyChange(plan, answer.change), change: answer.change, breaches: answer.breaches };
}

export function orderOf(plan: Plan, date: string, rigId: string): readonly string[] {
  const day = plan.days.find((each) => each.date === date && each.rigId === rigId);
  return day?.stops.map((stop) => stop.propertyId) ?? [];
}
