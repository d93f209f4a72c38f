import { describe, expect, test } from 'vitest';
import { type Book, readBook, writeBook } from '../../core/book/index.ts';
import { checkBook } from '../../core/checks/index.ts';
import { measureProperty } from '../../core/measure/index.ts';
import { judgePlan } from '../../core/plan/judge/index.ts';
import { buildProblem, type Problem } from '../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../core/plan/result/index.ts';
import { solve } from '../../core/plan/search/index.ts';
import { fourDayRound, mixedDay, residentialDay } from '../../sample-routes/generate/books.ts';
import { checkFigure, figuresOf, sampleFileText } from '../support/expected-figures.ts';

type Found = { readonly book: Book; readonly problem: Problem; readonly plan: Plan };

const FIGURES: Readonly<Record<string, (found: Found) => number>> = {
  'treatable ft²': ({ problem, book }) => {
    const used = new Set(problem.tasks.map((task) => task.propertyId));
    return book.properties
      .filter((each) => used.has(each.id))
      .reduce((sum, each) => sum + (measureProperty(each).treatableSqFt ?? 0), 0);
  },
  'by machine ft²': ({ plan }) => treated(plan, 'machine'),
  'by hand ft²': ({ plan }) => treated(plan, 'hand'),
  'treated and not reached ft²': ({ plan }) => plan.totals.treatedSqFt + plan.totals.notReachedSqFt,
  'not reached ft² at most': ({ plan }) => plan.totals.notReachedSqFt,
  'mix gal at least': ({ plan }) => plan.totals.waterGal,
  'mix gal at most': ({ plan }) => plan.totals.waterGal,
  'product fl oz at least': ({ plan }) => amountOf(plan, 'forecrop'),
  'product fl oz at most': ({ plan }) => amountOf(plan, 'forecrop'),
  'feed lb at least': ({ plan }) => amountOf(plan, 'greenmeal'),
  'feed lb at most': ({ plan }) => amountOf(plan, 'greenmeal'),
  'sports ground ft²': ({ book }) => areaOf(book, 'sports-ground'),
  'hall ft²': ({ book }) => areaOf(book, 'weavers-hall'),
  stops: ({ plan }) => plan.totals.stops,
  'stops at least': ({ plan }) => plan.totals.stops,
  days: ({ plan }) => plan.totals.days,
  'machine loads at least': ({ plan }) =>
    plan.days.flatMap((day) => day.loads).filter((load) => load.compartmentId.includes('/')).length,
  'fill-point visits at least': ({ plan }) => plan.totals.fillPointVisits,
  'paid minutes at least': ({ plan }) => plan.totals.paidSec / 60,
  'paid minutes at most': ({ plan }) => plan.totals.paidSec / 60,
  'left undone': ({ plan }) => plan.totals.unplaced,
};

function amountOf(plan: Plan, productId: string): number {
  return plan.totals.products.find((each) => each.productId === productId)?.amount ?? 0;
}

function treated(plan: Plan, kind: 'machine' | 'hand'): number {
  const tasks = plan.days.flatMap((day) => day.stops).flatMap((stop) => stop.tasks);
  // What is trimmed by hand belongs to the ground that its machine does.
  const doneBy = (task: (typeof tasks)[number]) => (task.handTrim === true ? 'machine' : task.method.kind);
  return tasks.filter((task) => doneBy(task) === kind).reduce((sum, task) => sum + task.areaSqFt, 0);
}

function areaOf(book: Book, propertyId: string): number {
  const property = book.properties.find((each) => each.id === propertyId);
  return property === undefined ? Number.NaN : (measureProperty(property).treatableSqFt ?? Number.NaN);
}

describe.each([
  ['residential-day', residentialDay, 4000],
  ['mixed-day', mixedDay, 3000],
  ['four-day-round', fourDayRound, 1500],
] as const)('%s', (name, generate, iterations) => {
  const read = readBook(sampleFileText(`${name}.json`), name);
  if (!read.ok) throw new Error(read.error.detail);
  const { book } = read.value;

  test('is what the seeded script writes, and says that it is invented', () => {
    expect(writeBook(generate())).toBe(sampleFileText(`${name}.json`));
    expect(book.invented).toBe(true);
    for (const product of book.products) expect(product.note).toBe('invented, not for use');
  });

  test('has nothing wrong in it', () => {
    expect(checkBook(book)).toEqual([]);
  });

  test('plans to the figures of its page, and the judge agrees', { timeout: 120_000 }, () => {
    const problem = buildProblem(book, book.rounds[0]?.id ?? '');
    if (!problem.ok) throw new Error(problem.error.detail);
    const plan = explainPlan(book, problem.value, solve(problem.value, { seed: 1, iterations }));
    expect(judgePlan(problem.value, plan).violations).toEqual([]);
    const figures = figuresOf(`${name}.md`);
    expect(figures.length).toBeGreaterThan(5);
    for (const figure of figures) {
      const find = FIGURES[figure.name];
      if (find === undefined) throw new Error(`no way to find ${figure.name}`);
      checkFigure(figure, find({ book, problem: problem.value, plan }));
    }
  });
});

describe('the residential day shows what it is made for', () => {
  const read = readBook(sampleFileText('residential-day.json'), 'residential-day');
  if (!read.ok) throw new Error(read.error.detail);
  const problem = buildProblem(read.value.book, 'spring');
  if (!problem.ok) throw new Error(problem.error.detail);
  const plan = explainPlan(read.value.book, problem.value, solve(problem.value, { seed: 1, iterations: 2000 }));
  const tasks = plan.days.flatMap((day) => day.stops).flatMap((stop) => stop.tasks);

  test('the hose does the yard behind the narrow gate and the steep bank, the machine all else', () => {
    const byHand = tasks
      .filter((task) => task.method.kind === 'hand' && task.handTrim !== true)
      .map((task) => `${task.propertyId} ${task.zoneId}`);
    expect(byHand.sort()).toEqual(['teasel-lane-6 back', 'wagtail-court-4 back']);
  });

  test('the customer who works nights is not visited before one', () => {
    const stop = plan.days[0]?.stops.find((each) => each.propertyId === 'orchard-rise-5');
    const start = plan.days[0]?.activities.find(
      (each) => each.kind === 'set-up' && each.propertyId === 'orchard-rise-5',
    );
    expect(stop).toBeDefined();
    expect(start?.startSec).toBeGreaterThanOrEqual(13 * 3600);
  });

  test('every load covers what it holds, and nothing is left over', () => {
    for (const load of plan.days.flatMap((day) => day.loads)) {
      // Passes over small lawns overlap by a third at most, and not on every lawn that a load covers; no ground goes without.
      const bare = load.coversSqFt * 0.0005;
      expect(load.beforeGal + load.volumeGal - load.leftGal).toBeGreaterThanOrEqual(0.95 * bare - 0.02);
      expect(load.beforeGal + load.volumeGal - load.leftGal).toBeLessThan(1.33 * bare + 0.02);
    }
    expect(plan.days.flatMap((day) => day.leftOver)).toEqual([]);
  });
});
