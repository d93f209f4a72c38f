import { describe, expect, it } from 'vitest';
import { checkEvenDays, evenFigures } from '../../../../core/plan/judge/even-days.ts';
import { createLedger } from '../../../../core/plan/judge/ledger.ts';
import type { EvenDays, Problem } from '../../../../core/plan/problem/index.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

const SEC = 1000;
/** 9 $ for an hour are 2,500 nano-dollars for a millisecond. */
const PRICE: EvenDays = { usdPerHour: 9, costPerMs: 2500 };
const priced: Problem = { ...smallProblem(), evenDays: PRICE };

describe('how unlike days are', () => {
  it('is what the longer ones are above the mean', () => {
    // The mean of 10, 40, 10 and 20 s is 20 s; one day is 20 s above it.
    expect(evenFigures(priced, [10 * SEC, 40 * SEC, 10 * SEC, 20 * SEC])).toEqual({
      days: 4,
      meanMs: 20 * SEC,
      shortestMs: 10 * SEC,
      longestMs: 40 * SEC,
      aboveMs: 20 * SEC,
      cost: 20 * SEC * 2500,
    });
    // The mean is rounded up: 7 ms of 6, 6 and 8.
    expect(evenFigures(priced, [8, 6, 6])).toMatchObject({ meanMs: 7, aboveMs: 1, shortestMs: 6, longestMs: 8 });
    expect(evenFigures(priced, [100, 9])).toMatchObject({ meanMs: 55, aboveMs: 45, shortestMs: 9, longestMs: 100 });
  });

  it('costs nothing without a price, and for no days', () => {
    expect(evenFigures(smallProblem(), [10, 30])).toMatchObject({ aboveMs: 10, cost: 0 });
    const none = { days: 0, meanMs: 0, shortestMs: 0, longestMs: 0, aboveMs: 0, cost: 0 };
    expect(evenFigures(priced, [])).toEqual(none);
  });
});

describe('what a plan says of it', () => {
  const found = evenFigures(priced, [3600 * SEC, 7200 * SEC]);
  const right = {
    usdPerHour: 9,
    meanSec: 5400,
    shortestSec: 3600,
    longestSec: 7200,
    aboveSec: 1800,
    costUsd: 4.5,
    words: '',
  };
  const said = (stated: Partial<typeof right> | undefined, problem = priced): readonly string[] => {
    const ledger = createLedger();
    const evenDays = stated === undefined ? {} : { evenDays: { ...right, ...stated } };
    checkEvenDays(ledger, problem, { ...smallPlan(), ...evenDays }, found);
    for (const each of ledger.violations) expect([each.code, each.where]).toEqual(['figure-differs', 'evenDays']);
    return ledger.violations.map((each) => each.message);
  };

  it('is held against what was found, each figure', () => {
    expect(said({})).toEqual([]);
    expect(
      said({ meanSec: 5400.04, shortestSec: 3599.96, longestSec: 7200.04, aboveSec: 1800.09, costUsd: 4.51 }),
    ).toEqual([]);
    const wrong = {
      usdPerHour: 9.01,
      meanSec: 5401,
      shortestSec: 3601,
      longestSec: 7201,
      aboveSec: 1801,
      costUsd: 4.52,
    };
    for (const [name, value] of Object.entries(wrong)) {
      const words = said({ [name]: value });
      expect(words.length, name).toBe(1);
      expect(words[0]).toContain(name);
    }
    // Rounding adds up over the days.
    expect(said({ aboveSec: 1800.11 }).length).toBe(1);
  });

  it('is to be said where there is a price, and there alone', () => {
    expect(said(undefined)).toEqual(['the plan does not say what days of unlike length cost']);
    expect(said(undefined, smallProblem())).toEqual([]);
    expect(said({ meanSec: 1 }, smallProblem())).toEqual([]);
  });
});
