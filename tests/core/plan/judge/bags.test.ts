import { describe, expect, it } from 'vitest';
import { emptyCoverage } from '../../../../core/plan/judge/coverage.ts';
import { type DayState, startOfDay } from '../../../../core/plan/judge/day-state.ts';
import { createLedger } from '../../../../core/plan/judge/ledger.ts';
import { lookupOf } from '../../../../core/plan/judge/lookup.ts';
import { checkBags, pour } from '../../../../core/plan/judge/pour.ts';
import { standingAt } from '../../../../core/plan/judge/standing.ts';
import type { MatchedVisit } from '../../../../core/plan/judge/visits.ts';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { PlanActivity, PlanDay } from '../../../../core/plan/result/index.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

type Pour = Extract<PlanActivity, { readonly kind: 'pour' }>;

const HOPPER = 1;
const BAGS = 2;
const BIRCH = 3;
const GRASS = 0;
const CLOVER = 1;

/** The small problem with bags of 100 lb on the machine, poured at 2 ms for a part, and two dry products. */
function problemWithBags(): Problem {
  const problem = smallProblem();
  const bags = { id: 'rider/bags', kind: 'dry', capacityParts: 10_000, fillMsPerPart: 0 } as const;
  const dry = (productId: string) => ({ kind: 'dry', productId, weightPerPart: 100, bagParts: 5000 }) as const;
  const rigs = problem.rigs.map((rig) => ({
    ...rig,
    compartments: [...rig.compartments, { ...bags, pours: { into: HOPPER, msPerPart: 2 } }],
  }));
  return {
    ...problem,
    rigs,
    stocks: [dry('grass'), dry('clover')],
    materials: ['grass', 'clover'].map((id, stock) => ({ id, stock, rinseMs: 0, rinseParts: 0 })),
  };
}

const problem = problemWithBags();
const birchOp = problem.jobs[1]?.modes[0]?.[0]?.ops[0] ?? null;
const acreOp = problem.jobs[0]?.modes[0]?.[0]?.ops[0] ?? null;

/** Activities of which nothing but the kind, and where it is a set-up the property, is asked. */
const of = (kind: PlanActivity['kind'], propertyId = ''): PlanActivity =>
  ({ kind, propertyId, startSec: 0, endSec: 0 }) as unknown as PlanActivity;

/** A rig at Birch with the treat of activity 1 or 2 before it; 50 lb of grass in the bags. */
function stateAt(activities: readonly PlanActivity[]): DayState {
  const day = { ...smallPlan().days[0], activities } as PlanDay;
  const rig = problem.rigs[0] as Problem['rigs'][number];
  const state = startOfDay(lookupOf(problem), createLedger(), emptyCoverage(), day, rig, 0);
  const ops = new Map([1, 2].map((index) => [index, birchOp] as const));
  state.visit = { place: BIRCH, ops } as unknown as MatchedVisit;
  state.place = BIRCH;
  state.vessels.levels[BAGS] = 5000;
  state.vessels.materials[BAGS] = GRASS;
  return state;
}

const fill = (weightLb: number, materialId = 'grass', compartmentId = 'rider/hopper') =>
  ({ compartmentId, materialId, volumeGal: 0, weightLb, products: [] }) as const;

/** 50 lb of grass poured in ten seconds, before anything of the op is done. */
function pouring(fields: Partial<Pour> = {}): Pour {
  const fromBags = { fromCompartmentId: 'rider/bags', afterSqFt: 0, fills: [fill(50)] };
  return { kind: 'pour', propertyId: 'birch', startSec: 100, endSec: 110, ...fromBags, ...fields } as unknown as Pour;
}

const saidOf = (state: DayState): readonly string[] =>
  state.ledger.violations.map((each) => `${each.code}: ${each.message}`);

/** What is said of one pouring, and the state that it leaves. */
function poured(fields: Partial<Pour>, change?: (state: DayState) => void, then: PlanActivity = of('treat')) {
  const activity = pouring(fields);
  const state = stateAt([activity, then]);
  change?.(state);
  pour(state, activity, 0, '');
  return { state, said: saidOf(state) };
}

describe('bags poured', () => {
  it('leave the bags for the hopper, as a load of its own', () => {
    const { state, said } = poured({});
    expect(said).toEqual([]);
    expect([state.vessels.levels, state.vessels.materials]).toEqual([
      [0, 5000, 0],
      [-1, GRASS, GRASS],
    ]);
    expect(state.sums.refillMs).toBe(10_000);
    expect(state.loads).toMatchObject([{ compartment: HOPPER, material: GRASS, fromBags: true, parts: 5000 }]);
  });

  it.each<[string, Partial<Pour>, ((state: DayState) => void) | undefined, readonly string[]]>([
    ['too quickly', { endSec: 109.9 }, undefined, ['time-not-possible: takes 9.9 s, needs at least 10.0 s']],
    [
      'in several fills too quickly',
      { fills: [fill(20), fill(30), fill(-10)], endSec: 109.9 },
      undefined,
      [
        'level-below-empty: a fill of -10 into rider/hopper takes out',
        'time-not-possible: takes 9.9 s, needs at least 10.0 s',
      ],
    ],
    [
      'on the road',
      {},
      (state) => {
        state.visit = null;
      },
      ['time-not-possible: bags are poured where no work is done'],
    ],
    [
      'at a fill point in the middle of a stop',
      {},
      (state) => {
        state.place = 1;
      },
      ['time-not-possible: bags are poured where no work is done'],
    ],
    [
      'that the rig has not',
      { fromCompartmentId: 'rider/sacks' },
      undefined,
      ['level-below-empty: the rig has no bags "rider/sacks" on a machine'],
    ],
    [
      'with more than is in them',
      { fills: [fill(50.5)], endSec: 110.1 },
      undefined,
      ['level-below-empty: rider/bags are short by 0.5 lb'],
    ],
    [
      'of the first product as the second',
      { fills: [fill(50, 'clover')] },
      undefined,
      ['mixed-materials: rider/bags hold another material'],
    ],
    [
      'without ever having been put on',
      {},
      (state) => {
        state.vessels.levels[BAGS] = 0;
        state.vessels.materials[BAGS] = -1;
      },
      ['level-below-empty: rider/bags are short by 50 lb'],
    ],
    [
      'into themselves',
      { fills: [fill(50, 'grass', 'rider/bags')] },
      undefined,
      ['mixed-materials: rider/bags cannot be poured into rider/bags'],
    ],
    [
      'after other ground',
      { afterSqFt: 3000.6 },
      (state) => {
        if (birchOp !== null) state.doneUnits.set(birchOp, 3000);
      },
      ['figure-differs: after 3000.6 ft² stated, 3000 ft² are done'],
    ],
  ])('%s', (_, fields, change, said) => {
    expect(poured(fields, change).said).toEqual(said);
  });

  it('with no work to come, whatever ground is stated', () => {
    expect(poured({ afterSqFt: 4000 }, undefined, of('pack-up')).said).toEqual([]);
  });

  it('to the last part but a trace are empty', () => {
    const trace = (parts: number) =>
      poured({}, (state) => {
        state.vessels.levels[BAGS] = 5000 + parts;
      }).state.vessels.levels[BAGS];
    expect([trace(0.04), trace(1)]).toEqual([0, 1]);
  });
});

describe('bags beside a hopper', () => {
  it.each([
    ['of the same product', 100, GRASS, GRASS, 0],
    ['of another product', 100, GRASS, CLOVER, 1],
    ['of another product, the hopper holding the first', 100, CLOVER, GRASS, 1],
    ['beside a clean hopper', 100, GRASS, -1, 0],
    ['with no more than a trace in them', 0.04, GRASS, CLOVER, 0],
  ])('%s', (_, level, inBags, inHopper, faults) => {
    const state = stateAt([]);
    state.vessels.levels[BAGS] = level;
    state.vessels.materials[BAGS] = inBags;
    state.vessels.materials[HOPPER] = inHopper;
    checkBags(state, '');
    const fault = 'mixed-materials: rider/bags are of another product than the hopper that they go into';
    expect(saidOf(state)).toEqual(faults === 1 ? [fault] : []);
  });
});

describe('where a visit stands when something is filled', () => {
  const begun = { midStop: true, nextOp: birchOp };
  const over = { midStop: true, midZone: false, nextOp: null, doneUnits: 0 };

  it.each<[string, readonly PlanActivity['kind'][], number, object]>([
    ['before the next op', ['refill', 'treat'], 0, { ...begun, midZone: false, doneUnits: 0 }],
    ['inside an op', ['refill', 'wait', 'treat'], 3000, { ...begun, midZone: true, doneUnits: 3000 }],
    ['with the op done', ['refill', 'treat'], 9000, { ...begun, midZone: false, doneUnits: 9000 }],
    ['after the last op', ['refill', 'pack-up', 'treat'], 3000, over],
    ['before another stop that follows without packing up', ['refill', 'set-up', 'treat'], 3000, over],
    ['in the evening', ['refill', 'evening', 'treat'], 3000, over],
    ['with nothing to come', ['refill'], 3000, over],
    ['before work that is no op of the rig', ['refill', 'wait', 'wait', 'treat'], 3000, over],
  ])('%s', (_, kinds, done, standing) => {
    const state = stateAt(kinds.map((kind) => of(kind)));
    if (birchOp !== null) state.doneUnits.set(birchOp, done);
    expect(standingAt(state, 0)).toEqual(standing);
  });

  it.each<[string, readonly PlanActivity[], object | null]>([
    ['on the way to a stop', [of('set-up', 'birch'), of('refill'), of('drive'), of('set-up', 'acre')], acreOp],
    ['on the way home', [of('refill'), of('refill'), of('evening'), of('set-up', 'acre')], null],
    ['on the way to what is no property', [of('refill'), of('refill'), of('set-up', 'elm')], null],
    ['with nothing to come', [of('refill'), of('refill'), of('drive')], null],
  ])('outside a stop, %s', (_, activities, nextOp) => {
    const state = stateAt(activities);
    state.visit = null;
    expect(standingAt(state, 1)).toEqual({ midStop: false, midZone: false, nextOp, doneUnits: 0 });
  });

  it('on the way to a stop that the rig has no way for', () => {
    const state = { ...stateAt([of('refill'), of('set-up', 'acre')]), rigNumber: 1, visit: null };
    expect(standingAt(state, 0).nextOp).toBeNull();
    expect(standingAt({ ...state, rigNumber: 2 }, 0).nextOp).toBeNull();
  });
});
