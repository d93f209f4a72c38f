import { describe, expect, it } from 'vitest';
import type { Op, Problem, ProblemRig, Station } from '../../../../core/plan/problem/index.ts';
import { settleAmounts } from '../../../../core/plan/refills/amounts.ts';
import { keepLedger } from '../../../../core/plan/refills/ledger.ts';
import { stintKey } from '../../../../core/plan/refills/programme-bags.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const [ACRE, BIRCH, CEDAR] = [0, 1, 2];
const [SHOP, HYDRANT, RIG] = [0, 1, -1];
const [TANK, HOPPER] = [0, 1];

type Setting = {
  readonly rig?: Partial<ProblemRig>;
  readonly hopper?: number;
  readonly station?: (station: Station, k: number) => Partial<Station>;
  readonly problem?: (problem: Problem) => Problem;
};

/** Amounts in words: what goes into vessels and, after a stroke, into the stock, event by event; null where they do not fit. */
function amountsOf(
  jobs: readonly number[],
  events: readonly Partial<RefillEvent>[],
  { rig = {}, hopper = 10_000, station = () => ({}), problem: change = (each) => each }: Setting = {},
  sparing = false,
): readonly string[] | null {
  const small = smallProblem();
  const problem = change({
    ...small,
    stations: small.stations.map((each, k) => ({ ...each, openMs: 0, closeMs: DAY_MS, ...station(each, k) })),
    rigs: small.rigs.map((each) => ({
      ...each,
      compartments: each.compartments.map((one, c) => (c === HOPPER ? { ...one, capacityParts: hopper } : one)),
      ...rig,
    })),
  });
  const search = new RefillSearch(problem, 0);
  search.chain.load(
    jobs,
    jobs.map(() => 0),
    jobs.length,
  );
  const row = events.map((each) => ({ position: 0, done: 0, station: RIG, changes: 0, ...each }));
  const settled = settleAmounts(search, keepLedger(search.chain, row), sparing);
  const told = (entries: readonly object[]): string => entries.map((each) => Object.values(each).join(':')).join(' ');
  return settled === null ? null : settled.moves.map(({ fills, stock }) => `${told(fills)} | ${told(stock)}`);
}

const SEED_HALF = 2000;
/** Lime out of the hopper at Cedar, in bags of 2,000 parts. */
const limed = (small: Problem): Problem => ({
  ...small,
  stocks: [...small.stocks, { kind: 'dry', productId: 'lime', weightPerPart: 100, bagParts: 2000 }],
  materials: [...small.materials, { id: 'lime', stock: 2, rinseMs: 60_000, rinseParts: 0 }],
  stations: small.stations.map((each, k) => ({ ...each, msPerPart: k === SHOP ? [6, 3, 5] : [10, -1, -1] })),
  jobs: small.jobs.map((each, j) => {
    const op = each.modes[0]?.[0]?.ops[0] as Op;
    const lime = { ...op, material: 3, draws: [{ compartment: HOPPER, parts: 2000 }], machine: -1 };
    return j === CEDAR ? { ...each, modes: [[{ beforeMs: 180e3, afterMs: 120e3, ops: [lime] }], []] } : each;
  }),
});

describe('what is poured out of bags by rule', () => {
  it('is what the hopper does not give, before and after a refill', () => {
    // 1,000 parts of seed in the hopper and 1,000 in the bags beside it, for 4,000 ft2; both are filled again after 2,000.
    const bags = {
      id: 'bags',
      kind: 'dry' as const,
      capacityParts: 1000,
      fillMsPerPart: 0,
      pours: { into: HOPPER, msPerPart: 4 },
    };
    const small = smallProblem();
    const problem: Problem = {
      ...small,
      rigs: small.rigs.map((each) => ({
        ...each,
        compartments: [
          ...each.compartments.map((one, c) => (c === HOPPER ? { ...one, capacityParts: 1000 } : one)),
          bags,
        ],
      })),
    };
    const search = new RefillSearch(problem, 0);
    search.chain.load([ACRE], [0], 1);
    const row = [{ position: 0, done: 2000, station: RIG, changes: 0 }];
    const settled = settleAmounts(search, keepLedger(search.chain, row), false);
    expect(settled?.moves.map(({ fills }) => fills.map(({ compartment, parts }) => [compartment, parts]))).toEqual([
      [
        [TANK, 1800],
        [HOPPER, 1000],
        [2, 1000],
      ],
      [
        [HOPPER, 1000],
        [2, 1000],
      ],
    ]);
    expect(settled?.pours).toEqual(
      new Map([
        [stintKey(0, 0, 2), 1000],
        [stintKey(0, 1, 2), 1000],
      ]),
    );
  });
});

describe('amounts by rule', () => {
  it('fill up where the tank runs dry, the last time to measure', () => {
    expect(amountsOf([BIRCH], [{ done: 6666 }])).toEqual(['0:0:2000 | 0:700', '0:0:700 | ']);
    // Acre 1,800 and Birch 2,700: filled up before Birch, and the rest when that is gone.
    const events = [{ position: 2 }, { position: 2, done: 6666 }];
    expect(amountsOf([ACRE, BIRCH], events)).toEqual(['0:0:2000 1:2:4000 | 0:2500', '0:0:1800 | ', '0:0:700 | ']);
    // Sparing: only what is needed up to the next refill, 2,000 less the 200 that are left.
    const early = [{ position: 2 }, { position: 2, done: 3000 }];
    expect(amountsOf([ACRE, BIRCH], early, {}, true)).toEqual([
      '0:0:2000 1:2:4000 | 0:2500',
      '0:0:700 | ',
      '0:0:1800 | ',
    ]);
    expect(amountsOf([ACRE, BIRCH], early)).toEqual(['0:0:2000 1:2:4000 | 0:2500', '0:0:1800 | ', '0:0:700 | ']);
  });

  it('do not fit where the tank would have to hold more, or lasts too short', () => {
    expect(amountsOf([BIRCH], [{ done: 6667 }])).toBeNull();
    expect(amountsOf([BIRCH], [{ done: 2330 }])).toBeNull();
    expect(amountsOf([BIRCH], [{ done: 2331 }])).not.toBeNull();
    expect(amountsOf([BIRCH], [])).toBeNull();
  });

  it('do not fit where the nurse tank is too small', () => {
    expect(amountsOf([BIRCH], [{ done: 6666 }], { rig: { nurseParts: 700 } })).not.toBeNull();
    expect(amountsOf([BIRCH], [{ done: 6666 }], { rig: { nurseParts: 699 } })).toBeNull();
  });

  it('do not fit where the payload is too small', () => {
    expect(amountsOf([BIRCH], [{ done: 6666 }], { rig: { cargoLimit: 2700 * 834 } })).not.toBeNull();
    expect(amountsOf([BIRCH], [{ done: 6666 }], { rig: { cargoLimit: 2700 * 834 - 1 } })).toBeNull();
    expect(amountsOf([ACRE], [], { rig: { cargoLimit: 1800 * 834 + 4000 * 100 } })).not.toBeNull();
    expect(amountsOf([ACRE], [], { rig: { cargoLimit: 1800 * 834 + 4000 * 100 - 1 } })).toBeNull();
  });

  it('do not fit where there are too few bag places', () => {
    // 2,000 parts of seed are in the hopper, 2,000 in a bag.
    const half = [{ done: 2000 }];
    expect(amountsOf([ACRE], half, { hopper: 2000 })).toEqual(['0:0:1800 1:2:2000 | 1:2000', '1:2:2000 | ']);
    expect(amountsOf([ACRE], half, { hopper: 2000, rig: { bagPlaces: 0 } })).toBeNull();
  });

  it('do not fit where two products need more bag places together', () => {
    // A bag of seed for the other half of Acre, and one of lime for Cedar.
    const events = [{ done: SEED_HALF }, { position: 2, changes: 1 << HOPPER }];
    const places = (bagPlaces: number) =>
      amountsOf([ACRE, CEDAR], events, { hopper: SEED_HALF, rig: { bagPlaces }, problem: limed });
    expect(places(2)).toEqual(['0:0:1800 1:2:2000 | 1:2000 2:2000', '1:2:2000 | ', '1:3:2000 | ']);
    expect(places(1)).toBeNull();
  });

  it('take nothing where the tank lasts to the next refill', () => {
    // 200 parts are left of Acre; they last for 666 ft2 of Birch, and a tank full for 6,666 ft2 more.
    const events = [{ position: 2 }, { position: 2, done: 666 }, { position: 2, done: 7332 }];
    const lines = ['0:0:2000 1:2:4000 | 0:2500', ' | ', '0:0:2000 | ', '0:0:500 | '];
    expect(amountsOf([ACRE, BIRCH], events)).toEqual(lines);
    expect(amountsOf([ACRE, BIRCH], events, {}, true)).toEqual(lines);
  });

  it('reach past a station that has nothing for the tank', () => {
    const noWater = (_: Station, k: number): Partial<Station> => (k === HYDRANT ? { msPerPart: [-1, 3] } : {});
    const past = (done: number, sparing: boolean) => {
      const events = [{ position: 2 }, { position: 2, done: 3000, station: HYDRANT }, { position: 2, done }];
      return amountsOf([ACRE, BIRCH], events, { station: noWater }, sparing);
    };
    // 2,000 parts are used by 6,666 ft2, with 200 left of Acre; 700 are the rest of Birch.
    expect(past(6666, false)).toEqual(['0:0:2000 1:2:4000 | 0:2500', '0:0:1800 | ', ' | ', '0:0:700 | ']);
    // 1,500 are used by 5,000 ft2.
    expect(past(5000, true)).toEqual(['0:0:2000 1:2:4000 | 0:2500', '0:0:1300 | ', ' | ', '0:0:1200 | ']);
  });

  it('put into the tank before a station what came from home and is used after it', () => {
    // Twice 2,700. The tank is filled up with 2,000 at 6,666 ft2 of the first; 1,300 of them are for the second, which needs 1,400 more:
    // 700 fit into the tank at the station, and 700 go into the nurse tank, which the first refill has emptied.
    for (const [station, sparing] of [
      [HYDRANT, false],
      [HYDRANT, true],
      [SHOP, false],
      [SHOP, true],
    ] as const) {
      const events = [{ done: 6666 }, { position: 1, station }, { position: 1, done: 6666 }];
      const held = (nurseParts: number) => amountsOf([BIRCH, BIRCH], events, { rig: { nurseParts } }, sparing);
      expect(held(2000)).toEqual(['0:0:2000 | 0:2000', '0:0:2000 | ', '0:0:700 | 0:700', '0:0:700 | ']);
      // A larger nurse tank has the last 700 from home, where they cost nothing.
      expect(held(2700)).toEqual(['0:0:2000 | 0:2700', '0:0:2000 | ', '0:0:700 | ', '0:0:700 | ']);
    }
  });

  it('are the same where a second station lies behind the first one', () => {
    // The 1,300 parts that are in the tank since the refill at Birch stay there past both; what is missing comes from the last one.
    for (const [one, other] of [
      [SHOP, HYDRANT],
      [HYDRANT, SHOP],
    ] as const) {
      const events = [
        { done: 6666 },
        { position: 1, station: one },
        { position: 1, station: other },
        { position: 1, done: 6666 },
      ];
      expect(amountsOf([BIRCH, BIRCH], events, { rig: { nurseParts: 2000 } })).toEqual([
        '0:0:2000 | 0:2000',
        '0:0:2000 | ',
        ' | ',
        '0:0:700 | 0:700',
        '0:0:700 | ',
      ]);
    }
  });

  it('make room in the nurse tank by a rinse, and use none of it where a place has water', () => {
    // 600 parts of mix two and 200 to rinse mix one; at the hydrant 2,000 for Birch into the tank and 700 into the nurse tank.
    const events = [
      { position: 2, changes: 1 << TANK },
      { position: 3, station: HYDRANT, changes: 1 << TANK },
      { position: 3, done: 6666 },
    ];
    const held = (nurseParts: number) => amountsOf([ACRE, CEDAR, BIRCH], events, { rig: { nurseParts } });
    expect(held(800)).toEqual(['0:0:1800 1:2:4000 | 0:800', '0:1:600 | ', '0:0:2000 | 0:700', '0:0:700 | ']);
    expect(held(799)).toBeNull();
  });

  it('come into the nurse tank for a mix that is not yet in the tank', () => {
    // Of 800 from home 700 are used up at Birch. Mix two needs 200 for the rinse and 600: 700 more at the hydrant, none into the tank.
    const events = [{ done: 6666 }, { position: 1, station: HYDRANT }, { position: 1, changes: 1 << TANK }];
    expect(amountsOf([BIRCH, CEDAR], events, { rig: { nurseParts: 800 } })).toEqual([
      '0:0:2000 | 0:800',
      '0:0:700 | ',
      ' | 0:700',
      '0:1:600 | ',
    ]);
  });

  it('take water for a rinse out of the nurse tank, or at a place that has it', () => {
    const change = { position: 1, changes: 1 << TANK };
    const events = [{ done: 6666 }, change];
    expect(amountsOf([BIRCH, CEDAR], events)).toEqual(['0:0:2000 | 0:1500', '0:0:700 | ', '0:1:600 | ']);
    expect(amountsOf([BIRCH, CEDAR], events, { rig: { nurseParts: 1499 } })).toBeNull();
    const atHydrant = [{ done: 6666 }, { ...change, station: HYDRANT }];
    expect(amountsOf([BIRCH, CEDAR], atHydrant)).toEqual(['0:0:2000 | 0:700', '0:0:700 | ', '0:1:600 | ']);
    // A place without water: the rinse is out of the nurse tank, and the mix too.
    const noWater = (_: Station, k: number): Partial<Station> => (k === HYDRANT ? { msPerPart: [-1, 3] } : {});
    const dry = [{ done: 6666 }, { ...change, station: HYDRANT }, { position: 1 }];
    expect(amountsOf([BIRCH, CEDAR], dry, { station: noWater })).toEqual([
      '0:0:2000 | 0:1500',
      '0:0:700 | ',
      ' | ',
      '0:1:600 | ',
    ]);
  });

  it('take at a station what its leg uses, into the tank first', () => {
    const trip = [
      { position: 2, station: HYDRANT },
      { position: 2, done: 6666 },
    ];
    // 200 parts are left of Acre: 1,800 fit in, and 700 more go into the nurse tank, or come with it from home.
    expect(amountsOf([ACRE, BIRCH], trip)).toEqual(['0:0:2000 1:2:4000 | 0:700', '0:0:1800 | ', '0:0:700 | ']);
    expect(amountsOf([ACRE, BIRCH], trip, { rig: { nurseParts: 300 } })).toBeNull();
    const twice = [
      { position: 2, station: HYDRANT },
      { position: 2, done: 6666, station: SHOP },
    ];
    expect(amountsOf([ACRE, BIRCH], twice, { rig: { nurseParts: 0 } })).toEqual([
      '0:0:2000 1:2:4000 | ',
      '0:0:1800 | ',
      '0:0:700 | ',
    ]);
  });

  it('are taken at a station where the payload is too small to have them from home', () => {
    // Twice 2,700 with 3,000 from home: 300 for the second, put into the tank by the first refill; 2,400 more at the hydrant.
    const events = [{ done: 6666 }, { position: 1, station: HYDRANT }, { position: 1, done: 6666 }];
    expect(amountsOf([BIRCH, BIRCH], events, { rig: { cargoLimit: 3000 * 834 } })).toEqual([
      '0:0:2000 | 0:1000',
      '0:0:1000 | ',
      '0:0:1700 | 0:700',
      '0:0:700 | ',
    ]);
    // Seed as heavy as 1,000 a part, 4,000 parts of it before the hydrant: 1,000,000 are left for water from home, 1,199 parts.
    const heavy = (small: Problem): Problem => ({
      ...small,
      stocks: small.stocks.map((each) => (each.kind === 'dry' ? { ...each, weightPerPart: 1000 } : each)),
    });
    const afterSeed = [{ position: 1, station: HYDRANT }, { position: 2 }, { position: 2, done: 6666 }];
    expect(amountsOf([ACRE, BIRCH], afterSeed, { rig: { cargoLimit: 5e6 }, problem: heavy })).toEqual([
      '0:0:1199 1:2:4000 | ',
      '0:0:801 | 0:2500',
      '0:0:1800 | ',
      '0:0:700 | ',
    ]);
  });

  it('are taken at a station where goods from home that are used later leave no room for them', () => {
    // 2,000 parts of lime of 1,500 each at Cedar, before the hydrant; 4,000 of seed of 1,000 after it: 1,000,000 are left for water.
    const heavy = (small: Problem): Problem => {
      const both = limed(small);
      const weights = [834, 1000, 1500];
      return { ...both, stocks: both.stocks.map((each, s) => ({ ...each, weightPerPart: weights[s] as number })) };
    };
    const events = [
      { position: 1, station: HYDRANT },
      { position: 1, done: 6666 },
      { position: 2, changes: 1 << HOPPER },
    ];
    expect(amountsOf([CEDAR, BIRCH, ACRE], events, { rig: { cargoLimit: 8e6 }, problem: heavy })).toEqual([
      '0:0:1199 1:3:2000 | 1:4000',
      '0:0:801 | 0:2500',
      '0:0:2000 | ',
      '0:0:500 1:2:4000 | ',
    ]);
  });

  it('fill one vessel at a station that has nothing for the other', () => {
    const events = [
      { position: 0, done: 2000 },
      { position: 1, station: HYDRANT },
      { position: 1, done: 3000 },
    ];
    expect(amountsOf([ACRE], events, { hopper: 2000 })).toEqual([
      '0:0:1800 1:2:2000 | 1:2000',
      '1:2:2000 | ',
      ' | ',
      ' | ',
    ]);
  });
});
