import { expect, it } from 'vitest';
import { Board } from '../../../../core/plan/board/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { formatVolume, quantity } from '../../../../core/units/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';
import { moved, toDay } from './hands.ts';

const book = sampleBook('four-day-round');
// Longer days, so that there is room for one more lawn.
const roomy = { ...book, rigs: book.rigs.map((rig) => ({ ...rig, overtimeMin: rig.overtimeMin + 180 })) };
const problem = problemOf(roomy);
const plan = explainPlan(roomy, problem, solve(problem, { seed: 1, iterations: 20 }));
const board = new Board(roomy, problem);
const [day, next] = plan.days;
if (day === undefined || next === undefined) throw new Error('two days are wanted');
const load = day.loads.find((each) => each.kind === 'tank');
if (load === undefined) throw new Error('a tank is wanted');

/** The plan as it would be with so much left in the tank at the end of its first day. */
function withRest(volumeGal: number): Plan {
  const { compartmentId = '', materialId = '' } = load ?? {};
  const rest = { compartmentId, materialId, volumeGal, weightLb: 0, advice: '' };
  return { ...plan, days: plan.days.map((each) => (each === day ? { ...each, leftOver: [rest] } : each)) };
}

it('offers lawns of later days that need no more than what is left, and that fit without breaking a rule', {
  timeout: 30_000,
}, () => {
  const restGal = 6;
  const uses = board.usesOfRests(withRest(restGal), day.date);
  expect(uses.length).toBeGreaterThan(0);
  const later = new Set(
    plan.days.filter((each) => each.date > day.date).flatMap((each) => each.stops.map((stop) => stop.propertyId)),
  );
  for (const { task, rigId, position, date, words, plannedOn } of uses) {
    expect(later.has(task.propertyId)).toBe(true);
    const needed = plan.days
      .flatMap((each) => each.stops.filter((stop) => stop.propertyId === task.propertyId))
      .flatMap((stop) => stop.tasks.map((each) => each.volumeGal))
      .reduce((sum, each) => sum + each, 0);
    expect(needed).toBeLessThanOrEqual(restGal);
    expect(words).toContain(`of the ${formatVolume(quantity(restGal))} left`);
    expect(words).toMatch(/ takes .*; .* more, .* out of the way$/);
    expect(plannedOn > date).toBe(true);
    expect(moved(board, plan, [toDay(task, date, rigId, position)]).breaches).toEqual([]);
  }
});

it('offers lawns that take all that is left, and more, where none takes less', { timeout: 30_000 }, () => {
  // Less than the smallest lawn of the round takes.
  const restGal = 0.6;
  const uses = board.usesOfRests(withRest(restGal), day.date);
  expect(uses.length).toBeGreaterThan(0);
  for (const { words } of uses) expect(words).toMatch(/ takes all of the 0\.60 gal left in .*, and \d.* gal more/);
});

it('offers nothing where nothing is left, or too little for any lawn', () => {
  expect(board.usesOfRests(plan, day.date)).toEqual([]);
  expect(board.usesOfRests(withRest(0.1), day.date)).toEqual([]);
});
