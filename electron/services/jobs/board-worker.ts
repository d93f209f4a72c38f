import { parentPort } from 'node:worker_threads';
import { err, ok, type Result, type StopSignal } from '../../../core/base/index.ts';
import type { BoardReply } from '../../../core/contract/index.ts';
import { keepFigures } from '../../../core/passes/index.ts';
import { applyChange, Board, rehearsalOf } from '../../../core/plan/board/index.ts';
import { buildProblem } from '../../../core/plan/problem/index.ts';
import { askedOf, type Plan } from '../../../core/plan/result/index.ts';
import type { BoardAsked, BoardOrder, BoardTold } from './messages.ts';
import { Shelf } from './shelf.ts';

/** How long moves are rehearsed before the first one is made, ms. */
const REHEARSAL_MS = 2000;

/** Answers questions about plans of one round, one after the other; the problem is built with the first one and kept. */
export function sitAtBoard(
  { board: { book, roundId, today, plannedDays, roads }, figures }: BoardOrder,
  signal: StopSignal,
): void {
  keepFigures(figures);
  const plans = new Shelf<Plan>();
  const boards = new Map<string, Board>();
  const rehearsed = new Set<Board>();

  /** The problem of the days that the plan has, or that of all days: the one with the fingerprint of the plan. */
  const boardFor = (plan: Plan): Result<Board> => {
    const known = boards.get(plan.problemHash);
    if (known !== undefined) return ok(known);
    const dates = [...new Set(plan.days.map((day) => day.date))];
    let first: Board | null = null;
    const byRoad = roads === undefined ? {} : { roads };
    for (const days of dates.length === 0 || plan.rest !== undefined ? [{}] : [{}, { dates }]) {
      const choice = { ...days, ...byRoad, ...askedOf(plan) };
      const built = buildProblem(book, roundId, { ...choice, today, plannedDays, signal });
      if (!built.ok) return built;
      const board = new Board(book, built.value);
      boards.set(built.value.hash, board);
      if (built.value.hash === plan.problemHash) return ok(board);
      first ??= board;
    }
    return first === null ? err('internal', 'board', 'There is no problem.', 'Report this.') : ok(first);
  };

  const answer = ({ stamp, question }: BoardAsked): Result<BoardReply> => {
    const plan = plans.get(stamp);
    if (plan === undefined) return ok({ kind: 'plan-unknown' });
    const found = boardFor(plan);
    if (!found.ok) return found;
    const board = found.value;
    switch (question.kind) {
      case 'move': {
        const moved = board.move(plan, question.moves);
        if (moved.kind === 'moved') plans.put(question.newStamp, applyChange(plan, moved.change));
        return ok(moved);
      }
      case 'breaches':
        return ok({ kind: 'breaches', breaches: board.breaches(plan) });
      case 'places':
        return ok({ kind: 'places', places: board.places(plan, question.task) });
      case 'rests':
        return ok({ kind: 'rests', uses: board.usesOfRests(plan, question.date) });
      case 'takers':
        return ok({ kind: 'takers', orphans: board.takers(plan, question.outage) });
    }
  };

  /** Once for each board, move by move, so that a question that comes meanwhile hardly waits. */
  const rehearse = ({ stamp }: BoardAsked): void => {
    const plan = plans.get(stamp);
    const board = plan === undefined ? undefined : boards.get(plan.problemHash);
    if (plan === undefined || board === undefined || rehearsed.has(board)) return;
    rehearsed.add(board);
    const moves = [...rehearsalOf(plan)];
    const endMs = performance.now() + REHEARSAL_MS;
    const next = (): void => {
      const move = moves.shift();
      if (move === undefined || performance.now() > endMs) return;
      board.move(plan, [move]);
      setImmediate(next);
    };
    setImmediate(next);
  };

  parentPort?.on('message', (asked: BoardAsked) => {
    if (asked.plan !== null) plans.put(asked.stamp, asked.plan);
    const told: BoardTold = { id: asked.id, result: answer(asked) };
    parentPort?.postMessage(told);
    rehearse(asked);
  });
}
