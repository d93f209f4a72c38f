import { describe, expect, it } from 'vitest';
import type { Op } from '../../../../core/plan/problem/index.ts';
import * as field from '../../../../core/plan/refills/labels.ts';
import { BAGS, HOPPER, type Label, LIME, SEED, setUp, TANK, WATER } from './label-setting.ts';

const [SEED_OP, BIRCH_OP] = [0, 2];
const NOT_ABOARD = -2;

describe('how far work goes', () => {
  it('is as far as the hopper and its bags hold, or the tank', () => {
    const { at, stores, set, vessel } = setUp();
    expect(stores.furthest(at, SEED_OP)).toBe(4000);
    set(vessel(BAGS, field.USED), 1);
    expect(stores.furthest(at, SEED_OP)).toBe(3999);
    set(vessel(HOPPER, field.USED), 10);
    expect(stores.furthest(at, SEED_OP)).toBe(3989);
    expect(stores.furthest(at, BIRCH_OP)).toBe(6666);
    set(vessel(TANK, field.USED), 1999);
    expect(stores.furthest(at, BIRCH_OP)).toBe(3);
    set(vessel(TANK, field.USED), 2000);
    expect(stores.furthest(at, BIRCH_OP)).toBe(0);
    expect(stores.limitAt(at, BIRCH_OP)).toEqual({ kind: 'compartment', index: TANK });
  });

  it('is as far as the stock gives what is not in the vessels', () => {
    const { at, stores, set, vessel, stock } = setUp();
    set(vessel(TANK, field.DIRECT), 500);
    set(stock(WATER, field.DRAWN), 2990);
    // 510 parts over 9,000 ft2 with 2,700: 1,700 ft2.
    expect(stores.furthest(at, BIRCH_OP)).toBe(1700);
    set(vessel(TANK, field.DIRECT), 0);
    set(stock(WATER, field.DRAWN), 3000);
    expect(stores.furthest(at, BIRCH_OP)).toBe(0);
    expect(stores.limitAt(at, BIRCH_OP)).toEqual({ kind: 'stock', index: WATER });
    set(stock(WATER, field.PRICE), NOT_ABOARD);
    set(stock(WATER, field.DRAWN), 0);
    expect(stores.furthest(at, BIRCH_OP)).toBe(0);
    // Seed: 100 parts are in the hopper, none in the bags; 5,000 in one bag beside one of lime.
    set(vessel(HOPPER, field.DIRECT), 100);
    set(vessel(BAGS, field.DIRECT), 0);
    set(stock(LIME, field.DRAWN), 1);
    set(stock(SEED, field.DRAWN), 4000);
    expect(stores.furthest(at, SEED_OP)).toBe(1100);
    set(stock(LIME, field.MOST_DRAWN), 2001);
    set(stock(SEED, field.DRAWN), 0);
    expect(stores.furthest(at, SEED_OP)).toBe(100);
    set(stock(LIME, field.MOST_DRAWN), 0);
    set(stock(SEED, field.MOST_DRAWN), 5001);
    expect(stores.furthest(at, SEED_OP)).toBe(100);
  });

  it('is as far as the payload carries what is used', () => {
    const { at, stores, steps } = setUp((problem) => ({
      ...problem,
      rigs: problem.rigs.map((each) => ({ ...each, cargoLimit: 1500 * 834 })),
    }));
    expect(stores.furthest(at, BIRCH_OP)).toBe(5000);
    steps.work(at, BIRCH_OP, 5000);
    expect(stores.furthest(at, BIRCH_OP)).toBe(5000);
    expect(stores.limitAt(at, BIRCH_OP)).toEqual({ kind: 'payload', index: -1 });
  });
});

describe('two persons at one stop', () => {
  const shared = (parts: number): Label =>
    setUp((problem) => ({
      ...problem,
      jobs: problem.jobs.map((job, j) => {
        const [mode] = job.modes[0] ?? [];
        if (j !== 1 || mode === undefined) return job;
        const [spray] = mode.ops as readonly [Op];
        const hose = { ...spray, material: -1, draws: [], second: true };
        const less = { ...spray, draws: [{ compartment: TANK, parts }] };
        return { ...job, modes: [[{ ...mode, ops: [hose, less] }], []] };
      }),
    }));

  it('run short where a vessel does not last through it', () => {
    for (const [used, short] of [
      [0, false],
      [1, true],
    ] as const) {
      const { at, stores, set, vessel } = shared(2000);
      set(vessel(TANK, field.USED), used);
      expect(stores.runsShort(at, 1), `${used} used`).toBe(short);
    }
    const { at, stores, set, vessel } = shared(1);
    expect(stores.runsShort(at, 1)).toBe(false);
    set(vessel(TANK, field.MATERIAL), 1);
    expect(stores.runsShort(at, 1)).toBe(true);
    // Alone a person may refill where it is dry.
    expect(stores.runsShort(at, 0)).toBe(false);
  });
});
