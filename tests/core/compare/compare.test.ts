import { describe, expect, test } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { bookOfFleet, compareFleets, fleetPlanName, fleetResult, TIME_KINDS } from '../../../core/compare/index.ts';
import { buildProblem } from '../../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../../core/plan/result/index.ts';
import { solve } from '../../../core/plan/search/index.ts';
import { sampleBook } from '../../support/samples.ts';

const sample = sampleBook('residential-day');
const [rig] = sample.rigs;
const [round] = sample.rounds;
if (rig === undefined || round === undefined) throw new Error('the sample lacks it');
const roundId = round.id;
/** The same rig with a nurse tank three times as large, and one whose only tool is the hose reel. */
const large = {
  ...rig,
  id: 'large',
  name: 'Large',
  nurseTankGal: rig.nurseTankGal * 3,
  payloadLb: rig.payloadLb + 3000,
};
const bare = { ...rig, id: 'bare', name: 'Bare', machines: [] };
const book: Book = {
  ...sample,
  rigs: [...sample.rigs, large, bare],
  fleets: [
    { id: 'now', name: 'As it is', rigIds: [rig.id], fixedPerSeason: 0, note: '' },
    { id: 'more', name: 'More water', rigIds: ['large'], fixedPerSeason: 900, note: '' },
    { id: 'hose', name: 'Hose alone', rigIds: ['bare'], fixedPerSeason: 0, note: '' },
  ],
};

function planBy(fleetId: string): Plan {
  const own = bookOfFleet(book, roundId, fleetId);
  const problem = buildProblem(own, roundId);
  if (!problem.ok) throw new Error(problem.error.detail);
  return explainPlan(own, problem.value, solve(problem.value, { seed: 1, iterations: 150 }));
}

const plans = { now: planBy('now'), more: planBy('more'), hose: planBy('hose') };
const resultOf = (id: keyof typeof plans) => {
  const fleet = book.fleets.find((each) => each.id === id);
  if (fleet === undefined) throw new Error('no fleet');
  return fleetResult(fleet, plans[id]);
};

test('a fleet works the round with its own rigs, and the book stays as it is', () => {
  expect(bookOfFleet(book, roundId, 'more').rounds[0]?.rigIds).toEqual(['large']);
  expect(book.rounds[0]?.rigIds).toEqual([rig.id]);
  expect(bookOfFleet(book, roundId, 'none')).toBe(book);
  expect(plans.more.days.map((day) => day.rigId)).toEqual(['large']);
  expect(fleetPlanName(roundId, 'more')).not.toBe(fleetPlanName(roundId, 'now'));
});

describe('what a fleet makes of a round', () => {
  test.each(['now', 'more', 'hose'] as const)('%s: its hours by kind are its paid hours', (id) => {
    const { timeSec, paidSec } = resultOf(id);
    expect(TIME_KINDS.reduce((sum, kind) => sum + timeSec[kind], 0)).toBeCloseTo(paidSec, 3);
    for (const kind of TIME_KINDS) expect(timeSec[kind], kind).toBeGreaterThanOrEqual(0);
  });

  test('hours by kind are those of the plan', () => {
    const { timeSec } = resultOf('now');
    const [day] = plans.now.days;
    expect(timeSec.driving).toBeCloseTo(day?.driveSec ?? -1, 6);
    expect(timeSec.treating).toBeCloseTo(day?.treatSec ?? -1, 3);
    expect(timeSec['at the shop']).toBeCloseTo(60 * (rig.morningMin + rig.eveningMin), 6);
  });

  test('lawns that it leaves out are listed once each, with every reason', () => {
    const { left } = resultOf('hose');
    expect(left.length).toBeGreaterThan(0);
    const ids = plans.hose.unplaced.map((each) => each.propertyId);
    expect(left.map((each) => each.propertyId).toSorted()).toEqual([...new Set(ids)].toSorted());
    for (const { why } of left) expect(why.length).toBeGreaterThan(0);
  });
});

describe('two fleets', () => {
  test('more water aboard saves trips to the fill point', () => {
    const { differences, workDiffers } = compareFleets(resultOf('now'), resultOf('more'), 1);
    const trips = differences.find((each) => each.what === 'fill points');
    expect(trips?.first).toBeGreaterThan(0);
    expect(trips?.second).toBe(0);
    expect(workDiffers).toBe(false);
  });

  test('a season is so many rounds, and what the fleets cost besides', () => {
    const [first, second] = [resultOf('now'), resultOf('more')];
    const { seasonUsd } = compareFleets(first, second, 6);
    const running = 6 * (second.costUsd - first.costUsd);
    expect(seasonUsd).toEqual({ rounds: 6, running, fixed: 900, all: running + 900 });
  });

  test('turned round, every difference changes its sign', () => {
    const one = compareFleets(resultOf('now'), resultOf('hose'), 2);
    const other = compareFleets(resultOf('hose'), resultOf('now'), 2);
    for (const [index, row] of one.differences.entries())
      expect(other.differences[index]?.more).toBeCloseTo(-row.more, 9);
    expect(other.seasonUsd.all).toBeCloseTo(-one.seasonUsd.all, 9);
    expect(one.workDiffers).toBe(true);
  });
});
