import { describe, expect, it } from 'vitest';
import { Board, improveFrom } from '../../../../core/plan/board/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../../../core/plan/result/index.ts';
import { solve, startFrom } from '../../../../core/plan/search/index.ts';
import { randomProblem } from '../random-problem.ts';
import { moved, NO_BOOK, quickPlan, taskOf, toDay } from './hands.ts';

/** Plans again from a plan, as the planning thread does. */
function improved(problem: Problem, plan: Plan, pinned: readonly string[]): Plan {
  const improving = improveFrom(NO_BOOK, problem, plan);
  const start = startFrom(improving.problem, plan, { keepFirst: 0, pinned });
  const solution = improving.back(solve(improving.problem, { seed: 1, iterations: 60, start }));
  return improving.told(explainPlan(NO_BOOK, problem, solution));
}

function dayOf(plan: Plan, propertyId: string): string {
  const day = plan.days.find((each) => each.stops.some((stop) => stop.propertyId === propertyId));
  return day === undefined ? '' : `${day.date} ${day.rigId}`;
}

describe('improving from a plan that was changed by hand', () => {
  const problem = randomProblem(3, { jobs: 8, rigs: 2, days: 2, stations: 1, zones: 1, hours: 5 });
  const board = new Board(NO_BOOK, problem);
  const plan = quickPlan(problem);
  const stops = plan.days.flatMap((day) => day.stops);
  const [, second] = stops;
  if (second === undefined) throw new Error('two stops are wanted');
  const out = moved(board, plan, [{ task: taskOf(second), to: { kind: 'out' } }]).plan;

  it('keeps out what was taken out, with its reason, and a pinned lawn with its rig and day', () => {
    const elsewhere = problem.slots.map(({ rig, day }) => ({
      date: problem.dates[day] ?? '',
      rigId: problem.rigs[rig]?.rigId ?? '',
    }));
    // A pin does not hold against a rule: a lawn is wanted that may be elsewhere as well.
    const wishes = stops
      .filter((stop) => stop !== second)
      .flatMap((stop) => elsewhere.map((goal) => ({ stop, goal })))
      .filter(({ stop, goal }) => `${goal.date} ${goal.rigId}` !== dayOf(out, stop.propertyId));
    const wish = wishes.find(({ stop, goal }) => {
      const answer = board.move(out, [toDay(taskOf(stop), goal.date, goal.rigId, 0)]);
      return answer.kind === 'moved' && answer.breaches.length === 0;
    });
    if (wish === undefined) throw new Error('no lawn may be on another day');
    const { stop: first, goal } = wish;
    const changed = moved(board, out, [toDay(taskOf(first), goal.date, goal.rigId, 0)]).plan;
    const again = improved(problem, changed, [first.propertyId]);
    expect(dayOf(again, first.propertyId)).toBe(`${goal.date} ${goal.rigId}`);
    expect(dayOf(again, second.propertyId)).toBe('');
    const reasons = again.unplaced
      .filter((each) => each.propertyId === second.propertyId)
      .flatMap((each) => each.reasons);
    expect(new Set(reasons.map((each) => each.code))).toEqual(new Set(['taken-out-by-hand']));
    expect(judgePlan(problem, again).violations).toEqual([]);
  });

  it('makes a plan that holds out of one that breaks rules', () => {
    const tight: Problem = {
      ...problem,
      rigs: problem.rigs.map((rig) => ({ ...rig, shiftMs: Math.floor(rig.shiftMs / 3), overtimeMs: 0 })),
    };
    const narrow = new Board(NO_BOOK, tight);
    const [day] = tight.slots;
    const date = tight.dates[day?.day ?? 0] ?? '';
    const rigId = tight.rigs[day?.rig ?? 0]?.rigId ?? '';
    let crowded = plan;
    for (const stop of crowded.days.flatMap((each) => each.stops)) {
      const answer = narrow.move(crowded, [toDay(taskOf(stop), date, rigId, 99)]);
      if (answer.kind === 'moved') crowded = moved(narrow, crowded, [toDay(taskOf(stop), date, rigId, 99)]).plan;
    }
    expect(judgePlan(tight, crowded).violations.map((each) => each.code)).toContain('day-too-long');
    expect(judgePlan(tight, improved(tight, crowded, [])).violations).toEqual([]);
  });
});
