import { describe, expect, it } from 'vitest';
import * as field from '../../../../core/plan/refills/labels.ts';
import { HOPPER, type Label, LIME, SEED, setUp, TANK, WATER } from './label-setting.ts';

const START_MS = 25_200_000;
/** Of seed: to fill a part, and to buy one at the shop. */
const [FILL_MS, SHOP_MS] = [2, 3];
/** Class of the moments since which seed and water have been taken on. */
const SUPPLIED = 1;
/** 1,000 parts of seed. */
const PAYLOAD = 100_000;

/** A label to which the shop has given seed. */
function supplied(cargoLimit = PAYLOAD, bagPlaces = 2): Label {
  const label = setUp((problem) => ({
    ...problem,
    rigs: problem.rigs.map((each) => ({ ...each, cargoLimit, bagPlaces })),
  }));
  label.set(label.stock(SEED, field.PRICE), SHOP_MS);
  return label;
}

const spent = ({ at, get }: Label): number => get(at + field.TIME) - START_MS;
const ofStock = ({ get, stock }: Label, s: number, ...names: readonly number[]): readonly number[] =>
  names.map((name) => get(stock(s, name)));

describe('parts that are in the hopper since home', () => {
  it('cost nothing as far as the payload let them be aboard when the shop gave seed', () => {
    // 500 parts weigh 50,000, beside what was aboard at the shop: 10,000 too much are 100 parts, which are filled and bought.
    for (const [aboard, kept] of [
      [40_000, 500],
      [50_000, 500],
      [50_001, 499],
      [60_000, 400],
      [99_900, 1],
      [200_000, 0],
    ] as const) {
      const label = supplied();
      label.set(label.moment(SUPPLIED), aboard);
      label.steps.parts.use(label.at, HOPPER, SEED, 500);
      expect(ofStock(label, SEED, field.CARRIED_DIRECT, field.HOME_DRAWN), `${aboard} aboard`).toEqual([kept, 0]);
      expect(spent(label)).toBe((500 - kept) * (FILL_MS + SHOP_MS));
    }
  });

  it('are counted as used, and nothing of the stock with them', () => {
    const label = supplied(1e9);
    const { at, steps, get, vessel } = label;
    steps.parts.use(at, HOPPER, SEED, 500);
    const names = [field.USED, field.DIRECT, field.FREE];
    expect(names.map((name) => get(vessel(HOPPER, name)))).toEqual([500, 500, 500]);
    expect(ofStock(label, SEED, field.DRAWN)).toEqual([0]);
    expect(get(at + field.CARRIES)).toBe(1);
    steps.parts.use(at, HOPPER, SEED, 600);
    expect(names.map((name) => get(vessel(HOPPER, name)))).toEqual([1100, 0, 0]);
    expect(ofStock(label, SEED, field.DRAWN)).toEqual([100]);
    expect(spent(label)).toBe(100 * (FILL_MS + SHOP_MS));
  });

  it('are no load from home before any station gave some', () => {
    const label = setUp();
    label.steps.parts.use(label.at, HOPPER, SEED, 500);
    expect(ofStock(label, SEED, field.CARRIED_DIRECT)).toEqual([0]);
    expect(label.get(label.at + field.CARRIES)).toBe(0);
  });
});

describe('parts that the rig put into the hopper before the shop', () => {
  it('came from home as far as they last, while the stock is not opened', () => {
    const label = supplied(1e9);
    const { at, steps, set, get, vessel } = label;
    for (const name of [field.FREE, field.DIRECT]) set(vessel(HOPPER, name), 0);
    set(vessel(HOPPER, field.PRELOADED), 90);
    steps.parts.use(at, HOPPER, SEED, 40);
    expect([get(vessel(HOPPER, field.PRELOADED)), spent(label)]).toEqual([50, 40 * FILL_MS]);
    steps.parts.use(at, HOPPER, SEED, 60);
    expect(get(vessel(HOPPER, field.PRELOADED))).toBe(0);
    expect(spent(label)).toBe(100 * FILL_MS + 10 * SHOP_MS);
    expect(ofStock(label, SEED, field.CARRIED_PRELOADED, field.HOME_DRAWN)).toEqual([90, 90]);
  });

  it('do not count once it is', () => {
    const label = supplied(1e9);
    const { at, steps, set, get, vessel, stock } = label;
    for (const name of [field.FREE, field.DIRECT]) set(vessel(HOPPER, name), 0);
    set(vessel(HOPPER, field.PRELOADED), 90);
    set(stock(SEED, field.OPENED), 1);
    steps.parts.use(at, HOPPER, SEED, 40);
    expect([get(vessel(HOPPER, field.PRELOADED)), spent(label)]).toEqual([90, 40 * FILL_MS]);
    expect(ofStock(label, SEED, field.CARRIED_PRELOADED, field.CARRIED_STOCK)).toEqual([0, 40]);
  });
});

/** What becomes of a label that carries parts from home when it uses one part of water, with what is told to the book. */
function afterOneMore(label: Label): { readonly ms: number; readonly returned: readonly (readonly number[])[] } {
  const returned: number[][] = [];
  const { at, steps, set } = label;
  set(at + field.CARRIES, 1);
  steps.parts.book = {
    used: () => undefined,
    rinsed: () => undefined,
    returned: (...parts) => void returned.push(parts),
  };
  const before = spent(label);
  steps.parts.use(at, TANK, WATER, 1);
  return { ms: spent(label) - before, returned };
}

describe('parts from home that are too heavy beside others', () => {
  it('are bought after all: those of the stock first, those in the hopper last, and filled anew', () => {
    const label = supplied();
    const { set, stock, moment } = label;
    set(stock(SEED, field.CARRIED_STOCK), 30);
    set(stock(SEED, field.CARRIED_PRELOADED), 20);
    set(stock(SEED, field.CARRIED_DIRECT), 100);
    set(stock(SEED, field.HOME_DRAWN), 70);
    // 150 parts of 100 each beside it are 9,950 too much, which takes 100 parts.
    set(moment(SUPPLIED), PAYLOAD - 15_000 + 9950);
    expect(afterOneMore(label)).toEqual({ ms: 100 * SHOP_MS + 50 * FILL_MS, returned: [[SEED, 30, 20, 50]] });
    expect(
      ofStock(label, SEED, field.CARRIED_STOCK, field.CARRIED_PRELOADED, field.CARRIED_DIRECT, field.HOME_DRAWN),
    ).toEqual([0, 0, 50, 20]);
  });

  it('are those that cost the least, one stock after the other', () => {
    const label = supplied();
    const { set, stock, moment } = label;
    set(stock(SEED, field.CARRIED_STOCK), 80);
    set(stock(WATER, field.CARRIED_STOCK), 5);
    set(stock(WATER, field.PRICE), 6);
    // 10,000 too much: 12 parts of water of 834 each, of which there are 5; then 5,830 are left, 59 parts of seed.
    set(moment(SUPPLIED), PAYLOAD - 8000 - 5 * 834 + 10_000);
    const { ms, returned } = afterOneMore(label);
    expect(returned).toEqual([
      [WATER, 5, 0, 0],
      [SEED, 59, 0, 0],
    ]);
    expect(ms).toBe(5 * 6 + 59 * SHOP_MS + ofWater(label));
  });

  it('stay aboard where the payload is just enough', () => {
    const label = supplied();
    const { set, stock, moment } = label;
    set(stock(SEED, field.CARRIED_STOCK), 80);
    set(moment(SUPPLIED), PAYLOAD - 8000);
    expect(afterOneMore(label)).toEqual({ ms: 0, returned: [] });
  });

  it('cannot be given back where there are none', () => {
    const label = supplied();
    label.set(label.moment(SUPPLIED), PAYLOAD + 1);
    expect(afterOneMore(label)).toEqual({ ms: 0, returned: [] });
  });
});

/** The one part of water is in the tank since home: aboard all the time, or filled and bought. */
function ofWater(label: Label): number {
  return label.get(label.stock(WATER, field.CARRIED_DIRECT)) === 1 ? 0 : 30 + 6;
}

describe('bags from home that leave no place for others', () => {
  /** Parts of seed and of lime from home, and what of them was drawn since the last station. */
  const crowded = (seed: readonly [number, number], lime: readonly [number, number], places = 2): Label => {
    const label = supplied(1e9, places);
    const { set, stock } = label;
    for (const [s, [carried, drawn]] of [
      [SEED, seed],
      [LIME, lime],
    ] as const) {
      set(stock(s, field.CARRIED_STOCK), carried);
      set(stock(s, field.DRAWN), drawn);
      set(stock(s, field.HOME_DRAWN), carried);
      set(stock(s, field.PRICE), SHOP_MS);
    }
    return label;
  };

  it('are bought after all, as many as free a place', () => {
    // Two bags of lime, and a begun one of seed.
    expect(afterOneMore(crowded([400, 0], [0, 2001]))).toEqual({ ms: 400 * SHOP_MS, returned: [[SEED, 400, 0, 0]] });
    expect(afterOneMore(crowded([400, 0], [0, 2000]))).toEqual({ ms: 0, returned: [] });
    // One of lime, and a full and a begun one of seed: the begun one.
    expect(afterOneMore(crowded([5400, 0], [0, 1]))).toEqual({ ms: 400 * SHOP_MS, returned: [[SEED, 400, 0, 0]] });
    expect(afterOneMore(crowded([5000, 0], [0, 1]))).toEqual({ ms: 0, returned: [] });
    // One place alone: two steps.
    expect(afterOneMore(crowded([10_000, 0], [0, 1], 1)).returned).toEqual([
      [SEED, 5000, 0, 0],
      [SEED, 5000, 0, 0],
    ]);
  });

  it('stay aboard where that frees no place', () => {
    // What was drawn at once takes up two bags all the same.
    expect(afterOneMore(crowded([5400, 5001], [0, 1]))).toEqual({ ms: 0, returned: [] });
    const before = crowded([5400, 0], [0, 1]);
    before.set(before.stock(SEED, field.MOST_DRAWN), 5001);
    expect(afterOneMore(before)).toEqual({ ms: 0, returned: [] });
    expect(afterOneMore(crowded([5400, 5000], [0, 1])).returned).toEqual([[SEED, 400, 0, 0]]);
  });

  it('are those that cost the least, of equal ones the first', () => {
    expect(afterOneMore(crowded([400, 0], [399, 0], 1)).returned).toEqual([[LIME, 399, 0, 0]]);
    expect(afterOneMore(crowded([400, 0], [400, 0], 1)).returned).toEqual([[SEED, 400, 0, 0]]);
    expect(afterOneMore(crowded([399, 0], [400, 0], 1)).returned).toEqual([[SEED, 399, 0, 0]]);
  });
});
