import { describe, expect, it } from 'vitest';
import { checkCoverage, cover, emptyCoverage } from '../../../../core/plan/judge/coverage.ts';
import { checkTotals } from '../../../../core/plan/judge/figures.ts';
import { createLedger } from '../../../../core/plan/judge/ledger.ts';
import { lookupOf } from '../../../../core/plan/judge/lookup.ts';
import { busyUntil, dueStart, type Persons, whoseWork } from '../../../../core/plan/judge/persons.ts';
import { amountWords, clockWords, marksOf, msOf, partsOf } from '../../../../core/plan/judge/tolerance.ts';
import type { PlanActivity } from '../../../../core/plan/result/index.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

/** What is said of Birch, 9,000 ft2, done in these pieces; everything else is listed. */
function saidOf(pieces: readonly (readonly [number, number])[]): readonly string[] {
  const problem = smallProblem();
  const ledger = createLedger();
  const coverage = emptyCoverage();
  for (const [from, to] of pieces) cover(coverage, 2, from, to, '');
  const listed = problem.tasks.filter((task) => task.propertyId !== 'birch');
  const unplaced = listed.map((task) => ({ ...task, propertyName: '', zoneName: '', reasons: [] }));
  checkCoverage(lookupOf(problem), ledger, coverage, { ...smallPlan(), unplaced });
  return ledger.violations.map((each) => `${each.code}: ${each.message}`);
}

describe('ground in pieces', () => {
  it.each([
    ['in one', [[0, 9000]], []],
    [
      'out of order',
      [
        [7000, 9000],
        [0, 3000],
        [3000, 7000],
      ],
      [],
    ],
    [
      'with half a foot between them',
      [
        [0, 3000],
        [3000.5, 9000],
      ],
      [],
    ],
    [
      'with more than half a foot between them',
      [
        [0, 3000],
        [3000.6, 9000],
      ],
      ['ground-not-covered: from 3000 to 3000.6 ft² is left out'],
    ],
    [
      'half a foot over each other',
      [
        [0, 3000.5],
        [3000, 9000],
      ],
      [],
    ],
    [
      'more than half a foot over each other',
      [
        [0, 3000.6],
        [3000, 9000],
      ],
      ['ground-covered-twice: from 3000 to 3000.6 ft² is done again'],
    ],
    [
      'one inside the other',
      [
        [0, 9000],
        [100, 200],
      ],
      ['ground-covered-twice: from 100 to 200 ft² is done again'],
    ],
    ['half a foot short', [[0, 8999.5]], []],
    ['more than half a foot short', [[0, 8999.4]], ['ground-not-covered: 8999.4 of 9000 ft² are treated']],
    ['half a foot too far', [[0, 9000.5]], []],
    [
      'more than half a foot too far',
      [[0, 9000.6]],
      ['ground-covered-twice: 9000.6 ft² are treated where there are 9000'],
    ],
    ['not at all', [], ['task-missing: neither treated nor listed as unplaced']],
  ] as const)('%s', (_, pieces, said) => {
    expect(saidOf(pieces)).toEqual(said);
  });
});

describe('figures of the JSON form', () => {
  it('that stand for whole ones become them, others stay as they are', () => {
    expect([partsOf(0.3), partsOf(12.345), partsOf(12.34519)]).toEqual([30, 1234.5, 1234.519]);
    expect([partsOf(1.00019), partsOf(1.0003), partsOf(0.99981)]).toEqual([100, 100.03, 100]);
    expect([msOf(0.1 + 0.2), msOf(12.0005)]).toEqual([300, 12000.5]);
    expect(marksOf({ doneSqFt: 666.01, areaSqFt: 6667 })).toEqual([666, 7333]);
    expect(marksOf({ doneSqFt: 666.4, areaSqFt: 1 })).toEqual([666.4, 667.4]);
  });

  it('are told as people read them', () => {
    expect([clockWords(25_509_000), clockWords(25_509_600), clockWords(36_000_000)]).toEqual([
      '7:05:09',
      '7:05:10',
      '10:00:00',
    ]);
    expect([amountWords(1250), amountWords(1250.4), amountWords(-6)]).toEqual(['12.5', '12.5', '-0.06']);
  });
});

it('a rule that is broken over and over is told two hundred times, each by itself', () => {
  const ledger = createLedger();
  for (let time = 0; time < 250; time += 1) ledger.add('mixed-materials', `${time}`, '');
  ledger.add('out-of-reach', '', '');
  expect(ledger.violations.map((each) => each.code).filter((code) => code === 'mixed-materials')).toHaveLength(200);
  expect(ledger.violations.at(-1)?.code).toBe('out-of-reach');
});

it('totals may be off by as much for each day, and no more', () => {
  const found = {
    days: 2,
    stops: 3,
    treatedSqFt: 20_910,
    coveredSqFt: 21_801,
    handTrimSqFt: 0,
    notReachedSqFt: 90,
    paidSec: 15_358,
    overtimeSec: 958,
    driveSec: 3600,
    distanceM: 30_000,
    refills: 3,
    costUsd: 100.19,
    unplaced: 1,
  };
  const saidOfDays = (slack: number): readonly string[] => {
    const ledger = createLedger();
    const { totals } = smallPlan();
    const off = {
      ...totals,
      days: 2,
      costUsd: found.costUsd + 0.0105 * slack,
      paidSec: totals.paidSec + 0.05 * slack,
      overtimeSec: totals.overtimeSec + 0.05 * slack,
      driveSec: totals.driveSec + 0.05 * slack,
      distanceM: totals.distanceM + 0.5 * slack,
    };
    checkTotals(ledger, { ...smallPlan(), totals: off }, found, 1);
    return ledger.violations.map((each) => each.message.split(' ')[0] ?? '');
  };
  expect(saidOfDays(1.9)).toEqual([]);
  expect(saidOfDays(2.1)).toEqual(['paidSec', 'overtimeSec', 'driveSec', 'distanceM', 'costUsd']);
});

describe('two persons at a stop', () => {
  it('treat each for themselves; the first one swaps heads and pours; both do the rest', () => {
    const kinds = ['treat', 'swap-head', 'pour', 'refill', 'set-up', 'drive'] as const;
    const whose = kinds.map((kind) => whoseWork({ kind, person: 2 } as unknown as PlanActivity));
    expect(whose).toEqual([1, 0, 0, null, null, null]);
    expect(whoseWork({ kind: 'treat', person: 1 } as unknown as PlanActivity)).toBe(0);
  });

  it('begin when they are free', () => {
    const persons: Persons = { untilMs: [10, 30] };
    expect([dueStart(persons, 0), dueStart(persons, 1), dueStart(persons, null)]).toEqual([10, 30, 30]);
    busyUntil(persons, 0, 20);
    busyUntil(persons, 1, 25);
    expect(persons.untilMs).toEqual([20, 30]);
    busyUntil(persons, null, 25);
    expect(persons.untilMs).toEqual([30, 30]);
    busyUntil(persons, null, 40);
    expect(persons.untilMs).toEqual([40, 40]);
  });
});
