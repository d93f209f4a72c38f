import { describe, expect, test } from 'vitest';
import type { Book, Round, Visit } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { doneWork } from '../../../../core/plan/live/index.ts';
import { buildProblem, type DoneWork } from '../../../../core/plan/problem/index.ts';
import { askedOf, explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('residential-day');
const [round] = sample.rounds as readonly [Round];
const book: Book = { ...sample, properties: sample.properties.slice(0, 5), visits: [] };
const [first, second, third] = book.properties.map((each) => each.id) as [string, string, string];

function built(of: Book, done: readonly DoneWork[] = []) {
  const problem = buildProblem(of, round.id, { done });
  if (!problem.ok) throw new Error(problem.error.detail);
  return problem.value;
}

const whole = built(book);
const visitTo = (propertyId: string, outcome: Visit['outcome'], roundId = round.id): Visit => ({
  id: `visit-${propertyId}`,
  on: round.dates[0] ?? '',
  roundId,
  rigId: round.rigIds[0] ?? '',
  propertyId,
  outcome,
  note: '',
});
/** Everything that the round has for a property, or the first zone of it alone. */
const doneAt = (propertyId: string, zones = Number.POSITIVE_INFINITY): Visit =>
  visitTo(propertyId, {
    kind: 'done',
    tasks: whole.tasks
      .filter((each) => each.propertyId === propertyId)
      .slice(0, zones)
      .map(({ zoneId, treatmentId, step, areaUnits }) => ({ zoneId, treatmentId, step, treatedSqFt: areaUnits })),
  });
const lawnsOf = (problem: typeof whole) => new Set(problem.tasks.map((each) => each.propertyId));

describe('what was done of a round', () => {
  test('is no work of it when it is planned again, and that is said', () => {
    const visits = [doneAt(first), visitTo(second, { kind: 'skipped', reason: 'gate locked' })];
    const again = built({ ...book, visits }, doneWork({ visits }, round.id));
    expect(lawnsOf(again)).toEqual(new Set(book.properties.slice(1).map((each) => each.id)));
    const note = again.issues.find((each) => each.code === 'done-left-out');
    expect(note?.message).toMatch(/recorded as done/);
  });

  test('is work on zones: a lawn that was done in part is planned for the rest', () => {
    const zoned = whole.tasks.find((each) => each.propertyId === third);
    const visits = [doneAt(third, 1)];
    const again = built({ ...book, visits }, doneWork({ visits }, round.id));
    expect(again.tasks).toEqual(whole.tasks.filter((each) => each !== zoned));
  });

  test('are also lawns that were left out for good, and nothing of other rounds', () => {
    const visits = [
      visitTo(first, { kind: 'skipped', reason: 'sold', notAgain: true }),
      visitTo(second, { kind: 'skipped', reason: 'sold', notAgain: true }, 'other'),
    ];
    expect(doneWork({ visits }, round.id)).toEqual([{ propertyId: first }]);
    expect(lawnsOf(built(book, doneWork({ visits }, round.id))).has(first)).toBe(false);
  });

  test('of a step that is named leaves the other step, and of none that is named both', () => {
    const { zoneId = '', treatmentId = '' } = whole.tasks.find((each) => each.propertyId === first) ?? {};
    const work = { propertyId: first, zoneId, treatmentId };
    const count = (done: DoneWork) => whole.tasks.length - built(book, [done]).tasks.length;
    expect(count({ ...work, step: 7 })).toBe(0);
    expect(count({ ...work, step: 0 })).toBe(1);
    expect(count(work)).toBe(1);
  });

  test('does not put a plan out of date that was made before, nor one that was made without it', () => {
    const visits = [doneAt(first)];
    expect(built({ ...book, visits }).hash).toBe(whole.hash);
    const again = built({ ...book, visits }, doneWork({ visits }, round.id));
    const plan = explainPlan(book, again, solve(again, { seed: 1, iterations: 20 }));
    expect(plan.done?.length).toBeGreaterThan(0);
    expect(judgePlan(again, plan).violations).toEqual([]);
    expect(plan.days.flatMap((day) => day.stops).map((stop) => stop.propertyId)).not.toContain(first);
    // Later another lawn is done; the plan is still one of its own problem.
    const later = { ...book, visits: [...visits, doneAt(second)] };
    expect(built(later, askedOf(plan).done).hash).toBe(plan.problemHash);
    expect(built(later, doneWork(later, round.id)).hash).not.toBe(plan.problemHash);
  });

  test('may be all of it', () => {
    const visits = book.properties.map((each) => doneAt(each.id));
    const problem = buildProblem(book, round.id, { done: doneWork({ visits }, round.id) });
    expect(problem.ok ? null : problem.error).toMatchObject({
      code: 'nothing-to-do',
      detail: expect.stringMatching(/done/),
    });
  });
});
