import { describe, expect, it } from 'vitest';
import * as field from '../../../../core/plan/refills/labels.ts';
import { BAGS, HOPPER, HYDRANT, type Label, LIME, SEED, SHOP, setUp, TANK, WATER } from './label-setting.ts';

const [SEED_OP, SPRAY_OP] = [0, 1];
const NOT_ABOARD = -2;

describe('500 ft2 of seed come out of the bags', () => {
  /** Out of the bags, and out of the hopper, which the rig has filled from its stock. */
  const poured = (change: (label: Label) => void): readonly number[] => {
    const label = setUp();
    const { at, steps, vessel, set, get } = label;
    set(vessel(HOPPER, field.DIRECT), 0);
    set(vessel(HOPPER, field.FREE), 0);
    change(label);
    const before = get(vessel(HOPPER, field.USED));
    steps.work(at, SEED_OP, 500);
    return [get(vessel(BAGS, field.USED)), get(vessel(HOPPER, field.USED)) - before];
  };

  it.each([
    ['not, while the stock gives them', 0, () => undefined],
    ['as far as the stock does not last', 300, ({ set, stock }: Label) => set(stock(SEED, field.DRAWN), 9800)],
    ['all, where nothing of it is aboard', 500, ({ set, stock }: Label) => set(stock(SEED, field.PRICE), NOT_ABOARD)],
    ['where another stock takes the bag places', 500, ({ set, stock }: Label) => set(stock(LIME, field.DRAWN), 2001)],
    [
      'where it has taken them before',
      300,
      ({ set, stock }: Label) => {
        set(stock(LIME, field.MOST_DRAWN), 2000);
        set(stock(SEED, field.DRAWN), 4800);
      },
    ],
    [
      'not, where they were put in directly',
      0,
      ({ set, stock, vessel }: Label) => {
        set(vessel(HOPPER, field.DIRECT), 500);
        set(stock(SEED, field.DRAWN), 10_000);
      },
    ],
    ['where the hopper is dry', 400, ({ set, vessel }: Label) => set(vessel(HOPPER, field.USED), 900)],
    ['where pouring costs less than a station', 500, ({ set, stock }: Label) => set(stock(SEED, field.PRICE), 3)],
    ['not, where it costs as much', 0, ({ set, stock }: Label) => set(stock(SEED, field.PRICE), 2)],
    [
      'as far as they came from home',
      120,
      ({ set, stock, vessel }: Label) => {
        set(stock(SEED, field.PRICE), 3);
        set(vessel(BAGS, field.FREE), 120);
      },
    ],
    [
      'no more than would have to be paid for',
      200,
      ({ set, stock, vessel }: Label) => {
        set(stock(SEED, field.PRICE), 3);
        set(vessel(HOPPER, field.FREE), 300);
      },
    ],
  ] as const)('%s', (_, parts, change) => {
    expect(poured(change as (label: Label) => void)).toEqual([parts, 500 - parts]);
  });

  it('and take their time', () => {
    const { at, steps, set, stock, get } = setUp();
    set(stock(SEED, field.PRICE), 3);
    steps.work(at, SEED_OP, 1100);
    // 1,200 s for 4,000 ft2; all of the hopper is from home, and 100 are poured.
    expect(get(at + field.TIME)).toBe(25_200_000 + 330_000 + 400);
  });
});

describe('of 9,000 parts of seed that are paid for, from home come', () => {
  it.each([
    ['as many as two bag places hold', 9000, () => undefined],
    ['fewer beside a bag of lime', 5000, ({ set, stock }: Label) => set(stock(LIME, field.HOME_DRAWN), 1)],
    ['fewer after such a one', 5000, ({ set, stock }: Label) => set(stock(LIME, field.PAST_MOST), 1)],
    [
      'none beside two',
      0,
      ({ set, stock }: Label) => {
        set(stock(LIME, field.PAST_MOST), 1);
        set(stock(LIME, field.CARRIED_STOCK), 2001);
      },
    ],
    ['not those that are used up', 6000, ({ set, stock }: Label) => set(stock(SEED, field.HOME_DRAWN), 4000)],
    ['not those that were carried', 7000, ({ set, stock }: Label) => set(stock(SEED, field.CARRIED_STOCK), 3000)],
    ['all, before any station gave some', 9000, ({ set, stock }: Label) => set(stock(SEED, field.PRICE), -1)],
  ] as const)('%s', (_, parts, change) => {
    const label = setUp();
    const { at, steps, set, get, stock } = label;
    set(stock(SEED, field.PRICE), 3);
    (change as (label: Label) => void)(label);
    const [time, price] = [get(at + field.TIME), Math.max(0, get(stock(SEED, field.PRICE)))];
    expect(steps.parts.pay(at, SEED, 9000, 2, true, 0)).toBe(parts);
    expect(get(at + field.TIME) - time).toBe(9000 * 2 + (9000 - parts) * price);
  });

  it('those that were put in before, where the stock has not been opened', () => {
    const { at, steps, set, get, stock } = setUp();
    set(stock(SEED, field.PRICE), 3);
    expect(steps.parts.pay(at, SEED, 9000, 2, false, 70)).toBe(70);
    expect(get(stock(SEED, field.CARRIED_PRELOADED))).toBe(70);
    expect(steps.parts.pay(at, SEED, 9000, 2, false, 0)).toBe(0);
    expect(get(stock(SEED, field.HOME_DRAWN))).toBe(70);
    set(stock(LIME, field.PRICE), 3);
    // Home has no lime.
    expect(steps.parts.pay(at, LIME, 5, 2, true, 0)).toBe(0);
  });
});

describe('a visit to a station', () => {
  it('takes its time, fills what it has and prices the stock', () => {
    const { at, steps, set, get, vessel, stock } = setUp();
    set(vessel(TANK, field.USED), 700);
    set(vessel(TANK, field.FREE), 1300);
    set(vessel(HOPPER, field.USED), 600);
    set(stock(WATER, field.DRAWN), 40);
    set(stock(WATER, field.OPENED), 1);
    set(stock(SEED, field.DRAWN), 50);
    expect(steps.visitStation(at, SPRAY_OP, HYDRANT, 0)).toBe(true);
    expect(get(at + field.TIME)).toBe(25_200_000 + 240_000);
    expect([get(vessel(TANK, field.USED)), get(vessel(TANK, field.DIRECT))]).toEqual([0, 2000]);
    expect([get(vessel(HOPPER, field.USED)), get(stock(SEED, field.DRAWN))]).toEqual([600, 50]);
    expect([field.DRAWN, field.PRICE, field.OPENED].map((name) => get(stock(WATER, name)))).toEqual([0, 10, 0]);
    expect([get(at + field.STATIONS), get(at + field.GIVEN)]).toEqual([1, 1]);
    // Nothing of the tank was filled out of the stock since it was opened but what is not free: 2,000 less 700 less 1,300.
    expect(get(vessel(TANK, field.PRELOADED))).toBe(0);
    expect(steps.visitStation(at, SPRAY_OP, SHOP, 0)).toBe(true);
    expect([get(at + field.STATIONS), get(at + field.GIVEN)]).toEqual([2, 3]);
    expect(get(stock(SEED, field.PRICE))).toBe(3);
  });

  it('keeps in mind what the rig had put in out of the stock from home', () => {
    const { at, steps, set, get, vessel, stock } = setUp();
    set(vessel(TANK, field.USED), 700);
    set(vessel(TANK, field.FREE), 100);
    set(stock(WATER, field.OPENED), 1);
    steps.visitStation(at, SPRAY_OP, HYDRANT, 0);
    expect(get(vessel(TANK, field.PRELOADED))).toBe(1200);
    set(vessel(TANK, field.USED), 300);
    steps.visitStation(at, SPRAY_OP, HYDRANT, 0);
    expect(get(vessel(TANK, field.PRELOADED))).toBe(1200);
    set(vessel(TANK, field.USED), 1500);
    steps.visitStation(at, SPRAY_OP, HYDRANT, 0);
    expect(get(vessel(TANK, field.PRELOADED))).toBe(400);
  });

  it('is not possible where it is shut, and waits where it is not yet open', () => {
    const hours = (openMs: number, closeMs: number): Label =>
      setUp((problem) => ({
        ...problem,
        stations: problem.stations.map((each, k) => (k === HYDRANT ? { ...each, openMs, closeMs } : each)),
      }));
    const on = hours(0, 25_440_000);
    expect(on.steps.visitStation(on.at, SPRAY_OP, HYDRANT, 0)).toBe(true);
    const shut = hours(0, 25_439_999);
    expect(shut.steps.visitStation(shut.at, SPRAY_OP, HYDRANT, 0)).toBe(false);
    const late = hours(26_000_000, 86_400_000);
    expect(late.steps.visitStation(late.at, SPRAY_OP, HYDRANT, 0)).toBe(true);
    expect(late.get(late.at + field.TIME)).toBe(26_240_000);
    expect(late.steps.visitStation(late.at, SPRAY_OP, 7, 0)).toBe(false);
  });
});
