import { describe, expect, it } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { judgePlan, type Violation } from '../../../../core/plan/judge/index.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { placeRefills } from '../../../../core/plan/refills/index.ts';
import { explainPlan, type Plan, type PlanActivity } from '../../../../core/plan/result/index.ts';
import { randomProblem } from '../random-problem.ts';
import type { Draft } from './breakers.ts';

type Pour = Draft<Extract<PlanActivity, { readonly kind: 'pour' }>>;

let poured: { readonly problem: Problem; readonly plan: Plan } | null = null;

/** A day with bags poured, to be changed. */
function pouredDay(): { readonly problem: Problem; readonly plan: Draft<Plan> } {
  poured ??= findPouredDay();
  return { problem: poured.problem, plan: structuredClone(poured.plan) as Draft<Plan> };
}

/** The first invented day on which bags that ride on the machine are poured between ft2 of a zone. */
function findPouredDay(): { readonly problem: Problem; readonly plan: Plan } {
  for (let seed = 1; seed <= 100; seed += 1) {
    const problem = randomProblem(seed, { jobs: 4, stations: 1, materials: 2, thirst: 2, bagsAboard: 1 });
    const placed = placeRefills(
      problem,
      0,
      problem.jobs.map((_, job) => ({ job, mode: 0 })),
    );
    if (placed.kind !== 'placed') continue;
    if (!placed.outcome.activities.some((each) => each.kind === 'pour' && each.doneUnits > 0)) continue;
    const { cost } = placed.outcome;
    const solution = { problemHash: problem.hash, routes: [placed.outcome], unserved: [], cost, iterations: 0, seed };
    return { problem, plan: explainPlan(emptyBook('invented', 'Invented'), problem, solution) };
  }
  throw new Error('no day with bags poured');
}

function pourOf(plan: Draft<Plan>): Pour {
  const found = plan.days.flatMap((day) => day.activities).find((each): each is Pour => each.kind === 'pour');
  if (found === undefined) throw new Error('no pour');
  return found;
}

type Broken = { readonly what: string; readonly code: Violation['code']; readonly run: (plan: Draft<Plan>) => void };
const BROKEN: readonly Broken[] = [
  {
    what: 'more than rides on the machine',
    code: 'level-below-empty',
    run: (plan) => {
      for (const fill of pourOf(plan).fills) fill.weightLb += 500;
    },
  },
  {
    what: 'poured in no time',
    code: 'time-not-possible',
    run: (plan) => {
      const pour = pourOf(plan);
      pour.endSec = pour.startSec;
    },
  },
  {
    what: 'out of what holds no bags',
    code: 'level-below-empty',
    run: (plan) => {
      pourOf(plan).fromCompartmentId = 'm/hopper';
    },
  },
  {
    what: 'into another vessel than their hopper',
    code: 'mixed-materials',
    run: (plan) => {
      for (const fill of pourOf(plan).fills) fill.compartmentId = 'm/bags';
    },
  },
  {
    what: 'after other ground than is stated',
    code: 'figure-differs',
    run: (plan) => {
      pourOf(plan).afterSqFt += 10;
    },
  },
  {
    what: 'a load that is said to come from the rig',
    code: 'figure-differs',
    run: (plan) => {
      for (const load of plan.days[0]?.loads ?? []) load.fromBags = false;
    },
  },
  {
    what: 'bags that were never put on the machine',
    code: 'level-below-empty',
    run: (plan) => {
      for (const each of plan.days[0]?.activities ?? [])
        if (each.kind === 'morning' || each.kind === 'refill')
          each.fills = each.fills.filter((fill) => fill.compartmentId !== 'm/bags');
    },
  },
  {
    what: 'more bags than there are places on the machine',
    code: 'level-above-capacity',
    run: (plan) => {
      for (const each of plan.days[0]?.activities ?? [])
        if (each.kind === 'morning')
          for (const fill of each.fills) if (fill.compartmentId === 'm/bags') fill.weightLb += 500;
    },
  },
];

describe('bags poured on the machine', () => {
  it('are right as they were planned, and no refill', () => {
    const { problem, plan } = pouredDay();
    const verdict = judgePlan(problem, plan as Plan);
    expect(verdict.violations).toEqual([]);
    const refills = plan.days.flatMap((day) => day.activities).filter((each) => each.kind === 'refill');
    expect(verdict.totals.refills).toBe(refills.length);
  });

  it.each(BROKEN)('$code: $what', ({ code, run }) => {
    const { problem, plan } = pouredDay();
    run(plan);
    const verdict = judgePlan(problem, plan as Plan);
    expect(verdict.feasible).toBe(false);
    expect(verdict.violations.map((each) => each.code)).toContain(code);
  });

  it('are told in words where they go wrong', () => {
    const said = (
      change: (plan: Draft<Plan>, pour: Pour) => void,
      more: (problem: Problem) => Problem = (each) => each,
    ) => {
      const { problem, plan } = pouredDay();
      change(plan, pourOf(plan));
      return judgePlan(more(problem), plan as Plan).violations.map((each) => each.message);
    };
    const { afterSqFt } = pourOf(pouredDay().plan);
    expect(said((_, pour) => void Object.assign(pour, { afterSqFt: afterSqFt + 10 }))).toEqual([
      `after ${afterSqFt + 10} ft² stated, ${afterSqFt} ft² are done`,
    ]);
    expect(said((_, pour) => void Object.assign(pour, { afterSqFt: afterSqFt + 0.5 }))).toEqual([]);
    // The pouring comes after the stop is packed up.
    const late = said((plan, pour) => {
      const activities = plan.days[0]?.activities ?? [];
      activities.splice(activities.indexOf(pour), 1);
      activities.splice(activities.findIndex((each) => each.kind === 'pack-up') + 1, 0, pour);
    });
    expect(late).toContain('bags are poured where no work is done');
    // Another product on the same stock.
    const other = said(
      (_, pour) => {
        for (const fill of pour.fills) fill.materialId = 'granules-other';
      },
      (problem) => {
        const granules = problem.materials[1];
        const named = granules === undefined ? [] : [{ ...granules, id: 'granules-other' }];
        return { ...problem, materials: [...problem.materials, ...named] };
      },
    );
    expect(other).toEqual(
      expect.arrayContaining([
        'm/bags hold another material',
        'm/hopper is filled with another material without a rinse',
      ]),
    );
    const wrong = said((_, pour) => {
      for (const fill of pour.fills) fill.compartmentId = 'm/bags';
    });
    expect(wrong).toContain('m/bags cannot be poured into m/bags');
    expect(said((_, pour) => void Object.assign(pour, { fromCompartmentId: 'm/sack' }))).toContain(
      'the rig has no bags "m/sack" on a machine',
    );
  });
});
