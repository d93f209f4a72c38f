import { beforeAll, describe, expect, it } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { judgePlan } from '../../../core/plan/judge/index.ts';
import { explainPlan, type Plan } from '../../../core/plan/result/index.ts';
import { solve } from '../../../core/plan/search/index.ts';
import { SHEETS, sheetText } from '../../../core/reports/index.ts';
import { problemOf, sampleBook } from '../../support/samples.ts';

const residential = sampleBook('residential-day');

function planned(crew: number): { readonly book: Book; readonly plan: Plan } {
  const book = { ...residential, rigs: residential.rigs.map((rig) => ({ ...rig, crew })) };
  const problem = problemOf(book);
  const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 400 }));
  expect(judgePlan(problem, plan).violations).toEqual([]);
  return { book, plan };
}

type Made = ReturnType<typeof planned>;
let one: Made;
let two: Made;

beforeAll(() => {
  one = planned(1);
  two = planned(2);
}, 60_000);

describe('a day of the residential sample with a crew of two', () => {
  it('is shorter, and the wage of both is paid', () => {
    const [alone, together] = [one.plan.totals, two.plan.totals];
    expect(together.paidSec).toBeLessThan(alone.paidSec);
    expect(together.costUsd).toBeGreaterThan(alone.costUsd);
    expect(together.treatedSqFt).toBe(alone.treatedSqFt);
  });

  it('has work of both at the same time, on different zones', () => {
    const tasks = two.plan.days.flatMap((day) => day.stops.flatMap((stop) => stop.tasks));
    const second = tasks.filter((task) => task.person === 2);
    expect(second.length).toBeGreaterThan(0);
    for (const task of second) {
      const beside = tasks.filter(
        (other) => other.person === 1 && other.startSec < task.endSec && task.startSec < other.endSec,
      );
      expect(task.method.kind).toBe('hand');
      expect(beside.every((other) => other.zoneId !== task.zoneId && other.propertyId === task.propertyId)).toBe(true);
    }
    expect(
      one.plan.days.flatMap((day) => day.stops.flatMap((stop) => stop.tasks)).every((task) => task.person === 1),
    ).toBe(true);
  });

  it('says on the run sheet who does what, in the order of time', () => {
    const sheet = SHEETS.find((each) => each.id === 'run-sheet');
    const text = ({ book, plan }: Made): string =>
      sheet?.scope === 'day' ? sheetText(sheet.make({ scope: 'day', book, plan, day: plan.days[0]! })) : '';
    expect(text(two)).toContain('Hose reel 200 ft, second person');
    expect(text(one)).not.toContain('second person');
  });
});
