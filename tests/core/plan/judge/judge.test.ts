import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { judgePlan, type Violation } from '../../../../core/plan/judge/index.ts';
import { type Plan, planSchema } from '../../../../core/plan/result/index.ts';
import { BREAKERS, type Breaker, type Draft } from './breakers.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

function broken(breaker: Breaker): readonly Violation['code'][] {
  const plan = structuredClone(smallPlan()) as Draft<Plan>;
  breaker.run(plan);
  const { feasible, violations } = judgePlan(smallProblem(), plan as Plan);
  expect(feasible).toBe(false);
  return [...new Set(violations.map((each) => each.code))];
}

describe('a plan made by hand', () => {
  it('follows the schema', () => {
    expect(v.is(planSchema, smallPlan())).toBe(true);
  });

  it('breaks nothing, and the totals are those worked out by hand', () => {
    const verdict = judgePlan(smallProblem(), smallPlan());
    expect(verdict.violations).toEqual([]);
    expect(verdict.feasible).toBe(true);
    // An hour of driving over 30 km; 15,358 s paid, 958 s of them beyond four hours; pay 76.79 + 2.395, metres 9, day 10, late 2:
    // 100.185, rounded once to whole cents.
    expect(verdict.totals).toEqual({
      days: 1,
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
    });
  });

  it('may be slower than it has to be', () => {
    const plan = structuredClone(smallPlan()) as Draft<Plan>;
    // Half a minute of waiting before the evening work.
    const activities = plan.days[0]!.activities;
    const evening = activities.pop()!;
    activities.push({ kind: 'wait', startSec: evening.startSec, endSec: evening.startSec + 30 });
    activities.push({ ...evening, startSec: evening.startSec + 30, endSec: evening.endSec + 30 });
    const verdict = judgePlan(smallProblem(), plan as Plan);
    expect(verdict.totals.paidSec).toBe(15_388);
    expect(verdict.violations.every((each) => each.code === 'figure-differs')).toBe(true);
  });
});

describe('what lies below the reach of the pump', () => {
  /** The small plan on a rig whose tank keeps 0.6 gal, with these figures on its five load tickets. */
  function saidOf(sumps: readonly number[]): readonly string[] {
    const plan = structuredClone(smallPlan()) as Draft<Plan>;
    sumps.forEach((gallons, k) => {
      const load = plan.days[0]?.loads[k];
      if (load !== undefined) load.sumpGal = gallons;
    });
    const problem = smallProblem();
    const rigs = problem.rigs.map((rig) => ({
      ...rig,
      compartments: rig.compartments.map((each) => (each.kind === 'tank' ? { ...each, sumpParts: 60 } : each)),
    }));
    const { violations } = judgePlan({ ...problem, rigs }, plan as Plan);
    return violations.map((each) => `${each.code}, ${each.where}: ${each.message}`);
  }

  it('is filled by the first load of a mix, and by the first after a rinse', () => {
    expect(saidOf([0.6, 0, 0, 0, 0.6])).toEqual([]);
  });

  it('is named where a ticket has another figure', () => {
    for (const [k, sumps] of [
      [1, [0, 0, 0, 0, 0.6]],
      [3, [0.6, 0, 0.6, 0, 0.6]],
      [5, [0.6, 0, 0, 0, 0]],
    ] as const) {
      const [said, ...others] = saidOf(sumps);
      expect(others).toEqual([]);
      expect(said).toContain(`load ${k}: sumpGal`);
    }
  });
});

describe('what may be left of a mix', () => {
  /** The small plan with so much more of the second mix in the tank at the end, or of the first one before the rinse. */
  function leaving(gallons: number, when: 'evening' | 'rinse') {
    const plan = structuredClone(smallPlan()) as Draft<Plan>;
    const refills = plan.days[0]!.activities.filter((each) => each.kind === 'refill');
    for (const fill of refills[when === 'evening' ? 2 : 1]?.fills ?? []) fill.volumeGal += gallons;
    const problem = smallProblem();
    const materials = problem.materials.map((each) => (each.stock === 0 ? { ...each, reserveParts: 50 } : each));
    const verdict = judgePlan({ ...problem, materials }, plan as Plan);
    return verdict.violations.filter((each) => each.code === 'too-much-left');
  }

  it.each(['evening', 'rinse'] as const)('is its reserve, and no part more, at the %s', (when) => {
    expect(leaving(0.5, when)).toEqual([]);
    const [found] = leaving(0.51, when);
    expect(found?.message).toBe('0.51 gal are left in rider/tank, 0.5 may be');
  });

  it('is any amount where the problem sets no reserve', () => {
    const plan = structuredClone(smallPlan()) as Draft<Plan>;
    const problem = smallProblem();
    const materials = problem.materials.map(({ reserveParts: _, ...each }) => each);
    for (const each of plan.days[0]!.activities)
      if (each.kind === 'refill' && each.rinsedCompartmentIds.length > 0)
        for (const fill of each.fills) fill.volumeGal = 9;
    const codes = judgePlan({ ...problem, materials }, plan as Plan).violations.map((each) => each.code);
    expect(codes).not.toContain('too-much-left');
  });
});

describe('what is broken is named by its code', () => {
  it.each(BREAKERS)('$code: $what', (breaker) => {
    const allowed = new Set<Violation['code']>([breaker.code, ...(breaker.follows ?? []), 'figure-differs']);
    const found = broken(breaker);
    expect(found).toContain(breaker.code);
    expect(found.filter((code) => !allowed.has(code))).toEqual([]);
  });

  it('for every code there is', () => {
    const every: Record<Violation['code'], true> = {
      'level-below-empty': true,
      'level-above-capacity': true,
      'stock-below-empty': true,
      'stock-above-capacity': true,
      'mixed-materials': true,
      'out-of-reach': true,
      'day-too-long': true,
      'window-missed': true,
      'weather-closed': true,
      'fill-point-closed': true,
      'fill-point-lacks-material': true,
      'over-payload': true,
      'too-much-left': true,
      'aboard-differs': true,
      'ground-not-covered': true,
      'ground-covered-twice': true,
      'task-unknown': true,
      'task-missing': true,
      'rig-unknown': true,
      'day-not-allowed': true,
      'out-of-order': true,
      'time-not-possible': true,
      'figure-differs': true,
      'plan-stale': true,
    };
    // A rig that begins under way and hours of treating are no part of the small plan: tests/core/plan/begins, treat-hours.test.ts.
    expect(new Set([...BREAKERS.map((each) => each.code), 'aboard-differs', 'weather-closed'])).toEqual(
      new Set(Object.keys(every)),
    );
  });

  it('with the place where it happens', () => {
    const plan = structuredClone(smallPlan()) as Draft<Plan>;
    BREAKERS[0]!.run(plan);
    const first = judgePlan(smallProblem(), plan as Plan).violations[0];
    expect(first?.where).toContain('2031-04-01 north');
    expect(first?.message).toContain('rider/tank runs dry');
  });
});
