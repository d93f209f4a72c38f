import { describe, expect, it } from 'vitest';
import type { Op, Problem, ProblemRig, Station } from '../../../../core/plan/problem/index.ts';
import { Detours } from '../../../../core/plan/refills/detours.ts';
import { Dominance } from '../../../../core/plan/refills/dominance.ts';
import * as field from '../../../../core/plan/refills/labels.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import { Resets } from '../../../../core/plan/refills/resets.ts';
import { smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const [SEED_OP, SPRAY_OP, BIRCH_OP, CEDAR_OP] = [0, 1, 2, 3];
const CEDAR_TASK = 3;
const [TANK, HOPPER] = [0, 1];
const [WATER, SEED] = [0, 1];
const NOT_ABOARD = -2;
const NEVER = Number.POSITIVE_INFINITY;
const PAY = 5000;

function setUp(
  rig: Partial<ProblemRig> = {},
  station: (each: Station, k: number) => Partial<Station> = () => ({}),
  change: (op: Op) => Partial<Op> = () => ({}),
) {
  const small = smallProblem();
  const problem: Problem = {
    ...small,
    rigs: small.rigs.map((each) => ({ ...each, ...rig })),
    jobs: small.jobs.map((job) => ({
      ...job,
      modes: job.modes.map((modes) =>
        modes.map((mode) => ({ ...mode, ops: mode.ops.map((op) => ({ ...op, ...change(op) })) })),
      ),
    })),
    stations: small.stations.map((each, k) => ({ ...each, openMs: 0, closeMs: DAY_MS, ...station(each, k) })),
  };
  const search = new RefillSearch(problem, 0);
  const { model, chain, labels } = search;
  chain.load([0, 1, 2], [0, 0, 0], 3);
  const dominance = new Dominance(model, chain, labels);
  const resets = new Resets(model, chain, labels, new Detours(model), dominance);
  /** A label at seven o'clock with everything aboard, and the places of its fields. */
  const label = () => {
    const at = labels.first(chain, 25_200_000, 1e9);
    const vessel = (c: number, name: number): number => at + labels.compartmentsAt + c * field.PER_COMPARTMENT + name;
    const stock = (s: number, name: number): number => at + labels.stocksAt + s * field.PER_STOCK + name;
    const set = (place: number, value: number): void => {
      labels.data[place] = value;
    };
    return { at, vessel, stock, set, moment: (m: number): number => at + labels.momentsAt + m };
  };
  return { chain, labels, dominance, resets, label };
}

type Setting = ReturnType<typeof setUp>;
type Label = ReturnType<Setting['label']>;
type Change = (a: Label, b: Label) => void;
type Beats = (setting: Setting, a: number, b: number) => boolean;

/** Milliseconds, in time and in pay, by which a must be ahead of b to beat it. */
function leadNeeded(change: Change, beats: Beats, setting = setUp()): number {
  const { labels, label } = setting;
  const [a, b] = [label(), label()];
  change(a, b);
  const [time, cost] = [labels.data[b.at + field.TIME] as number, labels.data[b.at + field.COST] as number];
  const beatsBy = (lead: number): boolean => {
    b.set(b.at + field.TIME, time + lead);
    b.set(b.at + field.COST, cost + lead * PAY);
    return beats(setting, a.at, b.at);
  };
  let [low, high] = [-1, 20_000_000];
  if (!beatsBy(high)) return NEVER;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (beatsBy(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Before Birch: 2,700 of mix one, then 600 of the other with a rinse of 200 parts; the seed is done. */
const atBirch =
  (short = 0, waitMs = Number.NEGATIVE_INFINITY): Beats =>
  ({ dominance }, a, b) =>
    dominance.beats(a, b, BIRCH_OP, short, waitMs);

describe('a label beats another one that is behind by what may still cost it more', () => {
  const REFILL = 240_000;
  const BREAK = 1_200_000;
  const cases: readonly (readonly [string, number, Change])[] = [
    ['nothing, where they are alike', 0, () => undefined],
    ['a refill, where its tank is emptier', REFILL, (a) => a.set(a.vessel(TANK, field.USED), 1)],
    ['nothing, where it is fuller', 0, (_, b) => b.set(b.vessel(TANK, field.USED), 1)],
    ['nothing for a hopper that is done with', 0, (a) => a.set(a.vessel(HOPPER, field.USED), 1)],
    [
      'what that takes inside an op',
      REFILL + 120_000,
      (a) => {
        a.set(a.vessel(TANK, field.USED), 1);
        a.set(a.at + field.DONE, 1);
      },
    ],
    ['filling and buying what home would have given', 50 * (30 + 10), (a) => a.set(a.vessel(TANK, field.FREE), 1950)],
    ['no more of it than is used', 2700 * (30 + 10), (_, b) => b.set(b.vessel(TANK, field.FREE), 9000)],
    ['buying what the rig had put in before', 70 * 10, (_, b) => b.set(b.vessel(TANK, field.PRELOADED), 70)],
    ['no more of that than is used', 2700 * 10, (_, b) => b.set(b.vessel(TANK, field.PRELOADED), 9000)],
    [
      'both together',
      50 * 40 + 70 * 10,
      (a, b) => {
        a.set(a.vessel(TANK, field.FREE), 1950);
        b.set(b.vessel(TANK, field.PRELOADED), 70);
      },
    ],
    [
      'not less for more put in before',
      50 * 40,
      (a) => {
        a.set(a.vessel(TANK, field.FREE), 1950);
        a.set(a.vessel(TANK, field.PRELOADED), 70);
      },
    ],
    ['never, with the wrong mix', NEVER, (a) => a.set(a.vessel(TANK, field.MATERIAL), 1)],
    ['nothing, where the other one has it', 0, (_, b) => b.set(b.vessel(TANK, field.MATERIAL), 1)],
    [
      'nothing, where both have the same wrong one',
      0,
      (a, b) => {
        a.set(a.vessel(TANK, field.MATERIAL), 1);
        b.set(b.vessel(TANK, field.MATERIAL), 1);
      },
    ],
    [
      'never, where they have different wrong ones',
      NEVER,
      (a, b) => {
        a.set(a.vessel(TANK, field.MATERIAL), 1);
        b.set(b.vessel(TANK, field.MATERIAL), 2);
      },
    ],
    ['the break, where it has yet to take it', BREAK, (_, b) => b.set(b.at + field.BREAK, 1)],
    ['nothing, where the other one has', 0, (a) => a.set(a.at + field.BREAK, 1)],
    ['work that the other one may do beside', 5000, (_, b) => b.set(b.at + field.LEAD, 5000)],
    ['the same with the second person ahead', 5000, (_, b) => b.set(b.at + field.LEAD, -5000)],
    ['its own', 3000, (a) => a.set(a.at + field.LEAD, -3000)],
    [
      'the difference where that is more',
      5000,
      (a, b) => {
        a.set(a.at + field.LEAD, -3000);
        b.set(b.at + field.LEAD, 2000);
      },
    ],
    ['a dearer place of supply for all that is still used', 3500 * 10, (a) => a.set(a.stock(WATER, field.PRICE), 10)],
    ['nothing for a cheaper one', 0, (_, b) => b.set(b.stock(WATER, field.PRICE), 10)],
    [
      'the difference of two',
      3500 * 4,
      (a, b) => {
        a.set(a.stock(WATER, field.PRICE), 10);
        b.set(b.stock(WATER, field.PRICE), 6);
      },
    ],
    ['nothing for seed, which is done with', 0, (a) => a.set(a.stock(SEED, field.PRICE), 3)],
    [
      'what an opened stock may still give from home',
      3000 * 10,
      (a, b) => {
        for (const each of [a, b]) each.set(each.stock(WATER, field.PRICE), 10);
        b.set(b.stock(WATER, field.OPENED), 1);
      },
    ],
    [
      'less what it has given',
      200 * 10,
      (a, b) => {
        for (const each of [a, b]) {
          each.set(each.stock(WATER, field.PRICE), 10);
          each.set(each.stock(WATER, field.HOME_DRAWN), 2800);
        }
        b.set(b.stock(WATER, field.OPENED), 1);
      },
    ],
    ['buying what it has used more of home', 40 * 10, (a) => a.set(a.stock(WATER, field.HOME_DRAWN), 40)],
    [
      'buying what it has carried past a station',
      25 * 10,
      (a) => {
        a.set(a.stock(WATER, field.CARRIED_STOCK), 5);
        a.set(a.stock(WATER, field.CARRIED_DIRECT), 8);
        a.set(a.stock(WATER, field.CARRIED_PRELOADED), 12);
      },
    ],
  ];

  it.each(cases)('%s', (_, needed, change) => {
    expect(leadNeeded(change, atBirch())).toBe(needed);
  });

  it('which a wait ahead may take away again', () => {
    const change: Change = (a, b) => {
      a.set(a.vessel(TANK, field.USED), 1);
      for (const each of [a, b]) each.set(each.at + field.BREAK, 1);
    };
    expect(leadNeeded(change, atBirch(0, 25_200_000 + 1000))).toBe(REFILL + 1000);
    // Before a wait a break may cost nothing, so that one that both have to take counts, unless they are as late.
    expect(leadNeeded(() => undefined, atBirch(0, 25_200_000))).toBe(0);
    const { dominance, label } = setUp();
    const [a, b] = [label(), label()];
    expect(dominance.breakAhead(a.at, b.at, 25_201_000)).toBe(0);
    b.set(b.at + field.TIME, 25_200_500);
    expect(dominance.breakAhead(a.at, b.at, 25_201_000)).toBe(BREAK);
    expect(dominance.breakAhead(a.at, b.at, 25_200_000)).toBe(0);
    expect(setUp({ breakAfterMs: -1 }).dominance.breakAhead(a.at, b.at, 0)).toBe(0);
  });

  it('and never where it is later or dearer', () => {
    const { dominance, label } = setUp();
    const [a, b] = [label(), label()];
    a.set(a.at + field.TIME, 25_200_001);
    expect(dominance.beats(a.at, b.at, BIRCH_OP, 0, Number.NEGATIVE_INFINITY)).toBe(false);
    a.set(a.at + field.TIME, 25_200_000);
    a.set(a.at + field.COST, 1e9 + 1);
    expect(dominance.beats(a.at, b.at, BIRCH_OP, 0, Number.NEGATIVE_INFINITY)).toBe(false);
  });
});

describe('where something may run short, a label', () => {
  const [noWater, noSeed, noPayload] = [1, 2, 4];
  it.each([
    ['needs water aboard', noWater, (a: Label) => a.set(a.stock(WATER, field.PRICE), NOT_ABOARD)],
    ['must not have drawn more', noWater, (a: Label) => a.set(a.stock(WATER, field.DRAWN), 1)],
    ['must not have drawn more before', noWater, (a: Label) => a.set(a.stock(WATER, field.MOST_DRAWN), 1)],
    ['must not have less in its tank', noWater, (a: Label) => a.set(a.vessel(TANK, field.DIRECT), 1999)],
    ['must not take more bags', noSeed, (a: Label) => a.set(a.stock(SEED, field.DRAWN), 1)],
    ['must not have taken more bags', noSeed, (a: Label) => a.set(a.stock(SEED, field.MOST_DRAWN), 5001)],
    ['must not weigh more', noPayload, (a: Label) => a.set(a.moment(0), 1)],
    ['must not weigh more after a station', noPayload, (a: Label) => a.set(a.moment(2), 1)],
  ] as const)('%s', (_, short, change) => {
    expect(leadNeeded((a) => change(a), atBirch(short))).toBe(NEVER);
    expect(leadNeeded((_a, b) => change(b), atBirch(short))).toBe(0);
    expect(leadNeeded((a) => change(a), atBirch(0))).toBeLessThan(NEVER);
  });

  it('may take as many bags, not quite as full', () => {
    const change: Change = (a, b) => {
      a.set(a.stock(SEED, field.DRAWN), 5000);
      b.set(b.stock(SEED, field.DRAWN), 1);
    };
    expect(leadNeeded(change, atBirch(noSeed))).toBe(0);
  });
});

describe('what may run short', () => {
  const roomy = { cargoLimit: 1e9 };
  const shortage = (rig: Partial<ProblemRig>, i: number, change: (at: Label) => void = () => undefined): number => {
    const { dominance, label } = setUp(rig);
    const at = label();
    change(at);
    return dominance.shortage(at.at, i);
  };

  it('is water, where the nurse tank does not last', () => {
    // 5,300 parts with the rinse, 2,000 of them in the tank.
    expect(shortage({ ...roomy, nurseParts: 3300 }, SEED_OP)).toBe(0);
    expect(shortage({ ...roomy, nurseParts: 3299 }, SEED_OP)).toBe(1);
    const drawn = (at: Label): void => at.set(at.stock(WATER, field.DRAWN), 1);
    expect(shortage({ ...roomy, nurseParts: 3300 }, SEED_OP, drawn)).toBe(1);
    const other = (at: Label): void => at.set(at.vessel(TANK, field.MATERIAL), 1);
    // Before Birch with mix two in the tank: nothing of it can be used, and one rinse of 100 parts more.
    expect(shortage({ ...roomy, nurseParts: 3600 }, BIRCH_OP, other)).toBe(0);
    expect(shortage({ ...roomy, nurseParts: 3599 }, BIRCH_OP, other)).toBe(1);
    const away = (at: Label): void => at.set(at.stock(WATER, field.PRICE), NOT_ABOARD);
    expect(shortage({ ...roomy, nurseParts: 9000 }, SEED_OP, away)).toBe(1);
  });

  it('is every dry stock, where the bag places do not', () => {
    const less = (at: Label): void => at.set(at.vessel(HOPPER, field.DIRECT), 1000);
    expect(shortage({ ...roomy, nurseParts: 9000, bagPlaces: 1 }, SEED_OP, less)).toBe(0);
    expect(shortage({ ...roomy, nurseParts: 9000, bagPlaces: 0 }, SEED_OP, less)).toBe(2);
    expect(shortage({ ...roomy, nurseParts: 9000, bagPlaces: 0 }, SEED_OP)).toBe(0);
    // What has been drawn counts also where no more is needed.
    const drawn = (at: Label): void => at.set(at.stock(SEED, field.MOST_DRAWN), 5001);
    expect(shortage({ ...roomy, nurseParts: 9000, bagPlaces: 1 }, BIRCH_OP, drawn)).toBe(2);
    expect(shortage({ ...roomy, nurseParts: 9000, bagPlaces: 2 }, BIRCH_OP, drawn)).toBe(0);
  });

  it('is the payload, where what is still used weighs more', () => {
    const weight = 5300 * 834 + 4000 * 100;
    expect(shortage({ nurseParts: 9000, cargoLimit: weight }, SEED_OP)).toBe(0);
    expect(shortage({ nurseParts: 9000, cargoLimit: weight - 1 }, SEED_OP)).toBe(4);
    const heavy = (at: Label): void => at.set(at.moment(2), 1);
    expect(shortage({ nurseParts: 9000, cargoLimit: weight }, SEED_OP, heavy)).toBe(4);
    // With the other mix in the tank, 100 parts more for its rinse.
    const other = (at: Label): void => at.set(at.vessel(TANK, field.MATERIAL), 1);
    const birch = (3500 + 100) * 834;
    expect(shortage({ nurseParts: 9000, cargoLimit: birch }, BIRCH_OP, other)).toBe(0);
    expect(shortage({ nurseParts: 9000, cargoLimit: birch - 1 }, BIRCH_OP, other)).toBe(4);
  });
});

describe('a label that makes a trip to a place with everything', () => {
  const TRIP = 500_000;
  const trip = { station: 0, ms: TRIP, cost: TRIP * PAY };
  const afterTrip: Beats = ({ resets }, a, b) => resets.beats(a, b, BIRCH_OP, trip, Number.NEGATIVE_INFINITY);
  /** The shop sells at 6 ms what the other one has aboard: 3,500 parts are still used. */
  const BASE = TRIP + 3500 * 6;

  const cases: readonly (readonly [string, number, Change])[] = [
    ['the trip, and buying what the other one has', BASE, () => undefined],
    ['no more than that has left', TRIP + 3000 * 6, (_, b) => b.set(b.stock(WATER, field.DRAWN), 2000)],
    ['what it may still have from home', TRIP + 3000 * 6, (_, b) => b.set(b.stock(WATER, field.PRICE), 10)],
    [
      'the difference of two places as well',
      TRIP + 3500 * 3 + 3000 * 6,
      (_, b) => b.set(b.stock(WATER, field.PRICE), 3),
    ],
    ['buying what it has used more of home', BASE + 40 * 10, (a) => a.set(a.stock(WATER, field.HOME_DRAWN), 40)],
    [
      'no more than the difference in that',
      BASE + 10 * 10,
      (a, b) => {
        a.set(a.stock(WATER, field.HOME_DRAWN), 40);
        b.set(b.stock(WATER, field.HOME_DRAWN), 30);
      },
    ],
    ['filling and buying what home had put in', BASE + 50 * 40, (a) => a.set(a.vessel(TANK, field.FREE), 1950)],
    ['buying what the rig had put in', BASE + 70 * 10, (_, b) => b.set(b.vessel(TANK, field.PRELOADED), 70)],
    [
      'no more than the difference in that',
      BASE + 50 * 10,
      (a, b) => {
        a.set(a.vessel(TANK, field.PRELOADED), 20);
        b.set(b.vessel(TANK, field.PRELOADED), 70);
      },
    ],
    [
      'what a free place of supply gave the other one',
      TRIP + 3500 * 6 + 3000 * 6,
      (_, b) => b.set(b.stock(WATER, field.PRICE), 0),
    ],
    [
      'what of home the other one has left',
      TRIP + 3500 * 3 + 400 * 6,
      (_, b) => {
        b.set(b.stock(WATER, field.PRICE), 3);
        b.set(b.stock(WATER, field.HOME_DRAWN), 2600);
      },
    ],
    ['no more of it than is used', BASE + 2700 * 10, (_, b) => b.set(b.vessel(TANK, field.PRELOADED), 9000)],
    [
      'a rinse, and all that is in the tank',
      BASE + 240_000 + 2000 * 40,
      (a) => a.set(a.vessel(TANK, field.MATERIAL), 1),
    ],
    [
      'no rinse that both have to make',
      BASE,
      (a, b) => {
        for (const each of [a, b]) each.set(each.vessel(TANK, field.MATERIAL), 1);
      },
    ],
    ['nothing more, where the other one has the wrong mix', BASE, (_, b) => b.set(b.vessel(TANK, field.MATERIAL), 1)],
    ['nothing of an emptier tank', BASE, (a) => a.set(a.vessel(TANK, field.USED), 2000)],
    ['the break', BASE + 1_200_000, (_, b) => b.set(b.at + field.BREAK, 1)],
    ['work beside', BASE + 5000, (_, b) => b.set(b.at + field.LEAD, 5000)],
  ];

  it.each(cases)('needs %s', (_, needed, change) => {
    expect(leadNeeded(change, afterTrip)).toBe(needed);
  });

  it('buys every stock that the other one has aboard', () => {
    // From the morning on 4,000 parts of seed at 3 ms, and of 5,300 parts of water the 5,000 that are aboard, at 6 ms.
    const beats: Beats = ({ resets }, a, b) => resets.beats(a, b, SEED_OP, trip, Number.NEGATIVE_INFINITY);
    expect(leadNeeded(() => undefined, beats)).toBe(TRIP + 4000 * 3 + 5000 * 6);
    const less: Change = (_, b) => {
      b.set(b.stock(SEED, field.DRAWN), 5000);
      b.set(b.vessel(HOPPER, field.DIRECT), 1000);
    };
    expect(leadNeeded(less, beats)).toBe(TRIP + 1000 * 3 + 5000 * 6);
  });

  it('needs the pay of a trip with long ways', () => {
    const dear: Beats = ({ resets }, a, b) =>
      resets.beats(a, b, BIRCH_OP, { ...trip, cost: 600_000 * PAY }, Number.NEGATIVE_INFINITY);
    expect(leadNeeded(() => undefined, dear)).toBe(BASE + 100_000);
  });

  it('takes the quickest one to a place that is open all day and has everything', () => {
    const { resets, chain } = setUp();
    const cost = (seconds: number, legs: number): number => seconds * 1000 * PAY + legs * 5000 * 300_000;
    expect(resets.before(SEED_OP)).toEqual({ station: 0, ms: 300_000, cost: cost(300, 0) });
    expect(resets.before(SPRAY_OP)).toEqual({ station: 0, ms: 1_700_000, cost: cost(1700, 2) });
    expect(resets.before(BIRCH_OP)).toEqual({ station: 0, ms: 900_000, cost: cost(900, 1) });
    expect(resets.before(4)).toBeNull();
    expect(resets.inside(SPRAY_OP)).toEqual({ station: 0, ms: 1_820_000, cost: cost(1820, 2) });
    expect(resets.inside(SEED_OP)?.ms).toBe(1_820_000);
    expect(resets.before(SPRAY_OP)?.ms).toBe(1_700_000);
    // Another row: Cedar is first, so that its op is on the way from home.
    chain.load([2, 1], [0, 0], 2);
    expect(resets.before(SPRAY_OP)?.ms).toBe(900_000);
    expect(resets.before(SEED_OP)?.ms).toBe(300_000);
    expect(resets.inside(SPRAY_OP)?.ms).toBe(1_820_000);
  });

  it('takes no longer than the op that is gone to needs to be loaded again', () => {
    // 200 s for each op but Cedar's, which takes 100.
    const { resets, chain } = setUp({}, undefined, (op) => (op.task === CEDAR_TASK ? { reloadMs: 100_000 } : {}));
    const inside = (i: number): number | undefined => resets.inside(i)?.ms;
    expect([inside(SPRAY_OP), inside(CEDAR_OP), inside(SPRAY_OP)]).toEqual([1_820_000, 1_720_000, 1_820_000]);
    // The same position in another row.
    expect(inside(BIRCH_OP)).toBe(1_820_000);
    chain.load([0, 2, 1], [0, 0, 0], 3);
    expect(inside(BIRCH_OP)).toBe(1_720_000);
  });

  it('takes none where no such place is', () => {
    const end = 25_200_000 + 5 * 3_600_000;
    expect(setUp({}, () => ({ closeMs: end })).resets.before(SEED_OP)).not.toBeNull();
    expect(setUp({}, () => ({ closeMs: end - 1 })).resets.before(SEED_OP)).toBeNull();
    expect(setUp({}, () => ({ openMs: 25_200_000 })).resets.before(SEED_OP)).not.toBeNull();
    expect(setUp({}, () => ({ openMs: 25_200_001 })).resets.before(SEED_OP)).toBeNull();
    const dryOnly = setUp({}, (_, k) => (k === 0 ? { msPerPart: [-1, 3] } : {}));
    expect(dryOnly.resets.before(SEED_OP)).toBeNull();
    expect(dryOnly.resets.inside(SEED_OP)).toBeNull();
    // The hydrant has no seed; with every stock it is as good as the shop and quicker between Acre and Birch.
    const both = setUp({}, (_, k) => (k === 1 ? { msPerPart: [6, 3] } : {}));
    expect(both.resets.before(BIRCH_OP)).toMatchObject({ station: 1, ms: 840_000 });
  });
});
