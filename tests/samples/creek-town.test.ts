import { beforeAll, describe, expect, test } from 'vitest';
import { type Book, readBook, writeBook } from '../../core/book/index.ts';
import { measureProperty } from '../../core/measure/index.ts';
import { judgePlan } from '../../core/plan/judge/index.ts';
import { buildProblem, type Problem } from '../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../core/plan/result/index.ts';
import { solve } from '../../core/plan/search/index.ts';
import { readRoads } from '../../core/roads/index.ts';
import { drivenRoads, drivePositions, driveTable } from '../../core/travel/by-road/index.ts';
import type { DriveTable } from '../../core/travel/index.ts';
import { CREEK_TOWN_ROADS, creekTown } from '../../sample-routes/generate/creek-town.ts';
import { extractOf } from '../../sample-routes/generate/extract.ts';
import { writeRoads } from '../../sample-routes/generate/roads.ts';
import { checkFigure, figuresOf, sampleFileText } from '../support/expected-figures.ts';

const ITERATIONS = 3000;
const osm = sampleFileText('creek-town.osm');

let book: Book;
let roads: DriveTable;
let byRoad: { readonly problem: Problem; readonly plan: Plan };
let straight: { readonly problem: Problem; readonly plan: Plan };

function planned(drives: DriveTable | undefined): { readonly problem: Problem; readonly plan: Plan } {
  const built = buildProblem(book, 'spring', drives === undefined ? {} : { roads: drives });
  if (!built.ok) throw new Error(built.error.detail);
  const clock = { nowMs: () => performance.now() };
  const solution = solve(built.value, { seed: 1, iterations: ITERATIONS }, { clock });
  return { problem: built.value, plan: explainPlan(book, built.value, solution) };
}

beforeAll(async () => {
  const read = readBook(sampleFileText('creek-town.json'), 'creek-town.json');
  if (!read.ok) throw new Error(read.error.detail);
  book = read.value.book;
  const map = await readRoads(new TextEncoder().encode(osm), { where: 'creek-town.osm' });
  if (!map.ok) throw new Error(map.error.detail);
  const table = driveTable(drivenRoads(map.value, book), drivePositions(book));
  if (!table.ok) throw new Error(table.error.detail);
  roads = table.value;
  byRoad = planned(roads);
  straight = planned(undefined);
}, 60_000);

const placeOf = (problem: Problem, name: string): number =>
  problem.placeIds.indexOf(book.properties.find((each) => each.name === name)?.id ?? '');

function leg(problem: Problem, from: string, to: string): { readonly m: number; readonly s: number } {
  const cell = placeOf(problem, from) * problem.placeIds.length + placeOf(problem, to);
  return { m: problem.travelM[cell] ?? Number.NaN, s: (problem.travelMs[cell] ?? Number.NaN) / 1000 };
}

/** Seconds by road from stop to stop in the order of a plan, from the yard and back to it. */
function drivenByRoad({ plan }: { readonly plan: Plan }): number {
  const { problem } = byRoad;
  const stops = ['shop', ...(plan.days[0]?.stops.map((each) => each.propertyId) ?? []), 'shop'];
  const places = stops.map((each) => problem.placeIds.indexOf(each));
  return places.slice(1).reduce((sum, to, index) => {
    const from = places[index] ?? 0;
    return sum + (problem.travelMs[from * problem.placeIds.length + to] ?? 0) / 1000;
  }, 0);
}

const FOUND: Readonly<Record<string, () => number>> = {
  'treatable ft²': () => book.properties.reduce((sum, each) => sum + (measureProperty(each).treatableSqFt ?? 0), 0),
  'mix gal at least': () => byRoad.plan.totals.waterGal,
  'from 1 Reed to 2 Heron m': () => leg(byRoad.problem, '1 Reed Street', '2 Heron Street').m,
  'from 2 Heron to 1 Reed m': () => leg(byRoad.problem, '2 Heron Street', '1 Reed Street').m,
  'from 1 Reed to 2 Heron s': () => leg(byRoad.problem, '1 Reed Street', '2 Heron Street').s,
  'estimate from 1 Reed to 2 Heron m': () => leg(straight.problem, '1 Reed Street', '2 Heron Street').m,
  'pairs by road': () => roads.durationSec.filter((each) => each >= 0).length - roads.at.length,
  'driving by straight lines over driving by road': () => drivenByRoad(straight) / drivenByRoad(byRoad),
};

describe('creek-town', () => {
  test('the stored files are what the generator writes', async () => {
    expect(writeRoads(CREEK_TOWN_ROADS)).toBe(osm);
    expect(writeBook(creekTown(await extractOf('creek-town.osm', osm)))).toBe(sampleFileText('creek-town.json'));
  });

  test('every figure of its page holds', () => {
    const figures = figuresOf('creek-town.md');
    expect(figures.map(({ name }) => name)).toEqual(Object.keys(FOUND));
    for (const figure of figures) checkFigure(figure, FOUND[figure.name]?.() ?? Number.NaN);
  });

  test('the plan by road says so, is feasible, and knows whose roads it drives', () => {
    expect([byRoad.plan.travel, straight.plan.travel]).toEqual(['roads', 'estimate']);
    expect(byRoad.plan.travelCredit).toContain('Invented roads');
    expect(byRoad.plan.issues.filter((each) => each.code.startsWith('travel'))).toEqual([]);
    expect(byRoad.plan.unplaced).toEqual([]);
    expect(judgePlan(byRoad.problem, byRoad.plan).violations).toEqual([]);
    // The plan of one is stale for the other.
    expect(byRoad.problem.hash).not.toBe(straight.problem.hash);
    expect(judgePlan(straight.problem, byRoad.plan).violations.map((each) => each.code)).toContain('plan-stale');
  });
});
