import { describe, expect, it } from 'vitest';
import type { Job, Op, Problem, ProblemRig, Station } from '../../../../core/plan/problem/index.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { leastOf, type Settled, settleWhole } from '../../../../core/plan/refills/whole.ts';
import { DRIVE_SEC, LEG_M, START_SEC, smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const NEVER = -1;
const [SHOP, HYDRANT, RIG] = [0, 1, -1];
const [ACRE, BIRCH, CEDAR] = [0, 1, 2];
const TANK = 0;

type Setting = {
  readonly rig?: Partial<ProblemRig>;
  readonly job?: (job: Job, j: number) => Partial<Job>;
  readonly station?: (station: Station, k: number) => Partial<Station>;
  readonly breakVisit?: number;
  readonly problem?: (problem: Problem) => Problem;
};

/** The small problem without times of day but those of the setting. */
function problemOf({ rig = {}, job = () => ({}), station = () => ({}), problem = (each) => each }: Setting): Problem {
  const small = smallProblem();
  const allDay = { openMs: 0, closeMs: DAY_MS };
  return problem({
    ...small,
    jobs: small.jobs.map((each, j) => ({ ...each, ...allDay, ...job(each, j) })),
    stations: small.stations.map((each, k) => ({ ...each, ...allDay, ...station(each, k) })),
    rigs: small.rigs.map((each) => ({ ...each, shiftMs: DAY_MS / 2, breakAfterMs: -1, ...rig })),
  });
}

/** What is settled for a row of jobs with these events, and the least cost with fractions allowed. */
function settled(
  jobs: readonly number[],
  events: readonly Partial<RefillEvent>[],
  setting: Setting = {},
): { readonly whole: Settled | null; readonly least: number } {
  const { chain } = new RefillSearch(problemOf(setting), 0);
  chain.load(
    jobs,
    jobs.map(() => 0),
    jobs.length,
  );
  const row = events.map((each) => ({ position: 0, done: 0, station: RIG, changes: 0, ...each }));
  const breakVisit = setting.breakVisit ?? NEVER;
  return {
    whole: settleWhole(chain, row, breakVisit),
    least: leastOf(chain, row, breakVisit, Number.POSITIVE_INFINITY),
  };
}

/** Amounts in words: what goes into vessels and, after a stroke, into the stock, event by event. */
function amountsOf({ whole }: { readonly whole: Settled | null }): readonly string[] | null {
  const told = (entries: readonly object[]): string => entries.map((each) => Object.values(each).join(':')).join(' ');
  return whole === null ? null : whole.moves.map(({ fills, stock }) => `${told(fills)} | ${told(stock)}`);
}

/** 5 $ per million ms, 30 cents per kilometre, 10 $ for the rig. nano-dollars */
const costOf = (seconds: number, legs: number): number => 10e9 + seconds * 5e6 + legs * LEG_M * 300_000;
/** Paid time of days without refills. */
const BIRCH_SEC = 600 + 2 * DRIVE_SEC + 300 + 2700 + 900;

/** 0.3 s of pay: what a part or two and a foot may take. */
const ROUNDING = 1.5e6;

function expectCost(found: ReturnType<typeof settled>, cost: number): void {
  expect(Math.abs((found.whole?.cost ?? 0) - cost)).toBeLessThan(ROUNDING);
  expect(Math.abs(found.least - cost)).toBeLessThan(ROUNDING);
}

describe('amounts of a refill from the rig', () => {
  it('are what is missing, as late as the tank allows', () => {
    const found = settled([BIRCH], [{ done: 100 }]);
    // 2,000 of 2,700 parts from home: after 6,666 ft2 exactly they are gone.
    expect(found.whole?.events.map((each) => each.done)).toEqual([6666]);
    expect(amountsOf(found)).toEqual(['0:0:2000 | 0:700', '0:0:700 | ']);
    expectCost(found, costOf(BIRCH_SEC + 240 + 120 + 21, 2));
  });

  it('cannot be more than the nurse tank', () => {
    expect(amountsOf(settled([BIRCH], [{ done: 100 }], { rig: { nurseParts: 700 } }))).not.toBeNull();
    const dry = settled([BIRCH], [{ done: 100 }], { rig: { nurseParts: 699 } });
    expect([dry.whole, dry.least]).toEqual([null, Number.POSITIVE_INFINITY]);
  });

  it('leave water for a rinse in the nurse tank', () => {
    // Mix two at Cedar after Birch: 700 parts, 200 for the rinse and 600 of the other mix.
    const events = [{ done: 100 }, { position: 1, changes: 1 << TANK }];
    const enough = settled([BIRCH, CEDAR], events, { rig: { nurseParts: 1500 } });
    expect(amountsOf(enough)).toEqual(['0:0:2000 | 0:1500', '0:0:700 | ', '0:1:600 | ']);
    const time = BIRCH_SEC + DRIVE_SEC + 300 + 600 + 360 + 21 + 240 + 300 + 18;
    expectCost(enough, costOf(time, 3));
    expect(settled([BIRCH, CEDAR], events, { rig: { nurseParts: 1499 } }).whole).toBeNull();
  });

  it('fit into the payload from the morning on', () => {
    const limit = (parts: number): Setting => ({ rig: { cargoLimit: parts * 834 } });
    expect(amountsOf(settled([BIRCH], [{ done: 100 }], limit(2700)))).toEqual(['0:0:2000 | 0:700', '0:0:700 | ']);
    expect(settled([BIRCH], [{ done: 100 }], limit(2699)).whole).toBeNull();
  });
});

describe('what home does not hold', () => {
  it('comes from a station on the way', () => {
    const noWater = (_: Station, k: number): Partial<Station> => (k === SHOP ? { msPerPart: [-1, 3] } : {});
    const found = settled([BIRCH], [{ station: HYDRANT }, { done: 100 }], { station: noWater });
    expect(amountsOf(found)).toEqual([' | ', '0:0:2000 | 0:700', '0:0:700 | ']);
    // The hydrant takes 240 s, 40 ms for each part into the tank, 10 for the others; then the rig 240, 120 and 21.
    expectCost(found, costOf(BIRCH_SEC + DRIVE_SEC + 240 + 80 + 7 + 381, 3));
    // The rig has no water before it has been there.
    expect(settled([BIRCH], [{ done: 100 }], { station: noWater }).whole).toBeNull();
  });
});

describe('amounts of a trip to a station', () => {
  const trip = BIRCH_SEC + 2 * DRIVE_SEC + 240 + 200 + 120;

  it('are what the payload let the rig not take along', () => {
    const found = settled([BIRCH], [{ done: 100, station: HYDRANT }], { rig: { cargoLimit: 1500 * 834 } });
    // 1,500 parts last for 5,000 ft2; the hydrant gives the others for 30 and 10 ms each.
    expect(found.whole?.events.map((each) => each.done)).toEqual([5000]);
    expect(amountsOf(found)).toEqual(['0:0:1500 | ', '0:0:1200 | ']);
    expectCost(found, costOf(trip + 48, 4));
  });

  it('are as few as can be where home had room for more', () => {
    const found = settled([BIRCH], [{ done: 100, station: HYDRANT }]);
    expect(amountsOf(found)).toEqual(['0:0:2000 | ', '0:0:700 | ']);
    expectCost(found, costOf(trip + 28, 4));
  });

  it('are not possible where the station is shut, nor before it opens without a wait', () => {
    const at = (openSec: number, closeSec: number): Setting => ({
      station: (_, k) => (k === HYDRANT ? { openMs: openSec * 1000, closeMs: closeSec * 1000 } : {}),
    });
    // There at the earliest with nothing done, at the latest when the tank is dry.
    const begun = START_SEC + 600 + DRIVE_SEC + 180;
    const visit = DRIVE_SEC + 240 + 200 + 120 + 28;
    const early = settled([BIRCH], [{ done: 100, station: HYDRANT }], at(0, begun + 1000 + visit));
    // 1,000 s of work are 3,333 ft2; the tank was not yet dry then, but 2,331 ft2 have to be done for 700 parts to fit in.
    expect(early.whole?.events.map((each) => each.done)).toEqual([3333]);
    expect(settled([BIRCH], [{ done: 100, station: HYDRANT }], at(0, begun + 600 + visit)).whole).toBeNull();
    const late = settled([BIRCH], [{ done: 100, station: HYDRANT }], at(begun + 5000, DAY_MS / 1000));
    // It opens 5,000 s after the rig has begun: the tank is dry after 2,000, and the way takes 600.
    expectCost(late, costOf(trip + 28 + 5000 - 2000 - DRIVE_SEC, 4));
  });

  it('count for nothing while the rig waits for the hours of a customer', () => {
    const opens = START_SEC + 600 + 3 * DRIVE_SEC;
    const job = (each: Job): Partial<Job> => (each.propertyId === 'birch' ? { openMs: opens * 1000 } : {});
    const events = [{ station: HYDRANT }, { done: 100 }];
    // On the way to Birch at the hydrant: there at 7:20, away at 7:24, at Birch by 7:34, which opens at 7:40.
    const found = settled([BIRCH], events, { job, rig: { nurseParts: 0 } });
    expect(found.whole).toBeNull();
    const one = settled([BIRCH], [{ station: HYDRANT }], { job, rig: { nurseParts: 0, compartments: [bigTank()] } });
    expectCost(one, costOf(BIRCH_SEC + 2 * DRIVE_SEC, 3));
  });
});

function bigTank() {
  return { id: 'rider/tank', kind: 'tank' as const, capacityParts: 2700, fillMsPerPart: 30 };
}

describe('the clock of the programme', () => {
  it('keeps the end of the day, and pays overtime', () => {
    const need = BIRCH_SEC + 381;
    const found = settled([BIRCH], [{ done: 100 }], { rig: { shiftMs: (need - 1000) * 1000, overtimeMs: 1_000_000 } });
    expectCost(found, costOf(need, 2) + 1000 * 2.5e6);
    const short = { shiftMs: (need - 1000) * 1000, overtimeMs: 999_000 };
    expect(settled([BIRCH], [{ done: 100 }], { rig: short }).whole).toBeNull();
  });

  it('keeps the hours of customers', () => {
    const arrives = START_SEC + 600 + DRIVE_SEC;
    const closes = (sec: number): Setting => ({
      job: (each) => (each.propertyId === 'birch' ? { closeMs: sec * 1000 } : {}),
    });
    expect(settled([BIRCH], [{ done: 100 }], closes(arrives)).whole).not.toBeNull();
    expect(settled([BIRCH], [{ done: 100 }], closes(arrives - 1)).whole).toBeNull();
    const onTheWay = arrives + DRIVE_SEC + 240;
    const supplied = [{ station: HYDRANT }, { done: 100 }];
    expect(settled([BIRCH], supplied, closes(onTheWay)).whole).not.toBeNull();
    expect(settled([BIRCH], supplied, closes(onTheWay - 1)).whole).toBeNull();
  });

  it('has the break at the visit that is asked for, if the time of day allows', () => {
    const second = START_SEC + 600 + DRIVE_SEC + 300 + 2700 + 381 + DRIVE_SEC;
    const events = [{ done: 100 }, { position: 1, changes: 1 << TANK }];
    const with_ = (breakVisit: number, afterSec: number): number | null =>
      settled([BIRCH, CEDAR], events, { breakVisit, rig: { breakAfterMs: afterSec * 1000 } }).whole?.cost ?? null;
    const plain = with_(NEVER, second + 1) as number;
    expect(plain).not.toBeNull();
    // Without a break the rig must be at Cedar before it falls due; with one there, not before.
    expect(with_(NEVER, second)).toBeNull();
    expect(with_(1, second) as number).toBeCloseTo(plain + 1200 * 5e6, -5);
    // A minute and a half cannot be passed by filling more into the tank later.
    expect(with_(1, second + 90)).toBeNull();
    expect(with_(0, START_SEC + 600 + DRIVE_SEC) as number).toBeCloseTo(plain + 1200 * 5e6, -5);
    expect(with_(0, START_SEC + 600 + DRIVE_SEC + 1)).toBeNull();
    expect(with_(1, START_SEC + 600 + DRIVE_SEC)).toBeNull();
  });

  it('lets two persons work side by side', () => {
    const spray = smallProblem().jobs[BIRCH]?.modes[0]?.[0]?.ops[0] as Op;
    const both = (seconds: number, hoseFirst = true): Setting => ({
      job: (_, j) => {
        const hose = {
          ...spray,
          material: -1,
          draws: [],
          second: true,
          machine: -1,
          head: -1,
          serviceMs: seconds * 1000,
        };
        const ops = hoseFirst ? [hose, spray] : [spray, hose];
        return j === BIRCH ? { modes: [[{ beforeMs: 180e3, afterMs: 120e3, ops }], []] } : {};
      },
    });
    const inside = [{ position: 1, done: 100 }];
    // The refill brings both together after 2,000 s of spraying, when 700 s of it are left.
    expectCost(settled([BIRCH], inside, both(1500)), costOf(BIRCH_SEC + 381, 2));
    expectCost(settled([BIRCH], inside, both(2000)), costOf(BIRCH_SEC + 381, 2));
    expectCost(settled([BIRCH], inside, both(2600)), costOf(BIRCH_SEC + 381 + 600, 2));
    // The hose after the spray is beside what is left after the refill: 2,000 s where that comes as soon as 700 parts fit in, after
    // 2,333 ft2; from the rig as well as on a trip.
    const trip = 2 * DRIVE_SEC + 240 + 200 + 120 + 28;
    expectCost(settled([BIRCH], [{ done: 100 }], both(2000, false)), costOf(BIRCH_SEC + 381, 2));
    expectCost(settled([BIRCH], [{ done: 100 }], both(2600, false)), costOf(BIRCH_SEC + 381 + 600, 2));
    expectCost(settled([BIRCH], [{ done: 100, station: HYDRANT }], both(2000, false)), costOf(BIRCH_SEC + trip, 4));
    expectCost(
      settled([BIRCH], [{ done: 100, station: HYDRANT }], both(2600, false)),
      costOf(BIRCH_SEC + trip + 600, 4),
    );
  });
});

describe('the bag places', () => {
  /** A second dry product that Cedar gets out of the hopper after Acre's seed; both are heavy enough for some bags. */
  const limed = (parts: number, bagPlaces: number): Setting => ({
    rig: { bagPlaces },
    problem: (small) => ({
      ...small,
      stocks: [...small.stocks, { kind: 'dry', productId: 'lime', weightPerPart: 100, bagParts: 2000 }],
      materials: [...small.materials, { id: 'lime', stock: 2, rinseMs: 60_000, rinseParts: 0 }],
      stations: small.stations.map((each, k) => ({ ...each, msPerPart: k === SHOP ? [6, 3, 5] : [10, -1, -1] })),
      jobs: small.jobs.map((each, j) => {
        const op = each.modes[0]?.[0]?.ops[0] as Op;
        const lime = { ...op, material: 3, draws: [{ compartment: 1, parts }], machine: -1 };
        return j === CEDAR ? { ...each, modes: [[{ beforeMs: 180e3, afterMs: 120e3, ops: [lime] }], []] } : each;
      }),
    }),
  });
  const change = [{ position: 2, changes: 1 << 1 }];

  it('hold whole bags of every product', () => {
    expect(amountsOf(settled([ACRE, CEDAR], change, limed(4000, 2)))).toEqual([
      '0:0:1800 1:2:4000 | 2:4000',
      '1:3:4000 | ',
    ]);
    expect(settled([ACRE, CEDAR], change, limed(4000, 1)).whole).toBeNull();
    expect(settled([ACRE, CEDAR], change, limed(4001, 2)).whole).toBeNull();
    expect(settled([ACRE, CEDAR], change, limed(4001, 3)).whole).not.toBeNull();
  });

  /** A hopper of 4,000 parts for 6,000 of seed: 2,000 more in a bag. */
  const halved = (parts: number, bagPlaces: number): Setting => {
    const all = limed(parts, bagPlaces);
    return {
      ...all,
      problem: (small) => {
        const whole = all.problem?.(small) ?? small;
        const compartments = (each: ProblemRig) =>
          each.compartments.map((one, c) => (c === 1 ? { ...one, capacityParts: 4000, fillMsPerPart: 2 } : one));
        const jobs = whole.jobs.map((job, j) => {
          const [mode] = job.modes[0] ?? [];
          if (j !== ACRE || mode === undefined) return job;
          const ops = mode.ops.map((op, o) => (o === 0 ? { ...op, draws: [{ compartment: 1, parts: 6000 }] } : op));
          return { ...job, modes: [[{ ...mode, ops }], []] };
        });
        return { ...whole, jobs, rigs: whole.rigs.map((each) => ({ ...each, compartments: compartments(each) })) };
      },
    };
  };

  it('hold both products together', () => {
    // 2,000 parts of seed do not fit into the hopper: one bag of it, and two of lime.
    const events = [{ done: 1 }, ...change];
    const found = settled([ACRE, CEDAR], events, halved(4000, 3));
    expect(amountsOf(found)).toEqual(['0:0:1800 1:2:4000 | 1:2000 2:4000', '1:2:2000 | ', '1:3:4000 | ']);
    expect(settled([ACRE, CEDAR], events, halved(4000, 2)).whole).toBeNull();
  });

  it('hold whole bags, where parts of them would have room', () => {
    // Two fifths of a bag of seed and a half of lime: with one place the lime is bought at the shop instead, when the seed is gone.
    const events = [{ done: 1 }, { position: 2, station: SHOP }, change[0] ?? {}];
    const two = settled([ACRE, CEDAR], events, halved(1000, 2));
    expect(amountsOf(two)).toEqual(['0:0:1800 1:2:4000 | 1:2000 2:1000', '1:2:2000 | ', ' | ', '1:3:1000 | ']);
    const one = settled([ACRE, CEDAR], events, halved(1000, 1));
    expect(amountsOf(one)).toEqual(['0:0:1800 1:2:4000 | 1:2000', '1:2:2000 | ', ' | 2:1000', '1:3:1000 | ']);
    // 5 ms for each part.
    expect(Math.abs((one.whole?.cost ?? 0) - (two.whole?.cost ?? 0) - 5000 * 5000)).toBeLessThan(1000);
    expect(Math.abs(one.least - two.least)).toBeLessThan(1000);
  });

  it('are free again for what a station gives on the way', () => {
    const shop = [{ position: 2, station: SHOP, changes: 1 << 1 }];
    const found = settled([ACRE, CEDAR], shop, limed(4001, 0));
    expect(amountsOf(found)).toEqual(['0:0:1800 1:2:4000 | ', '1:3:4001 | ']);
  });
});
