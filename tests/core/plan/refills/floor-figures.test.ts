import { describe, expect, it } from 'vitest';
import type { Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { CostFloor } from '../../../../core/plan/refills/floor.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { DRIVE_SEC, LEG_M, START_SEC, smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const NEVER = -1;
const [SHOP, HYDRANT, RIG] = [0, 1, -1];
/** Chain positions of Acre's seed and spray, Birch and Cedar. */
const [SEED, SPRAY, BIRCH, CEDAR] = [0, 1, 2, 3];

/** The small problem without times of day; opening times of its jobs, and its rig changed. */
function floorOf(
  events: readonly Partial<RefillEvent>[],
  {
    opens = [0, 0, 0],
    rig = {},
    breakVisit = NEVER,
    hydrantMs = 0,
  }: {
    readonly opens?: readonly number[];
    readonly rig?: Partial<ProblemRig>;
    readonly breakVisit?: number;
    readonly hydrantMs?: number;
  } = {},
): number {
  const small = smallProblem();
  const problem: Problem = {
    ...small,
    jobs: small.jobs.map((each, j) => ({ ...each, openMs: opens[j] ?? 0, closeMs: DAY_MS })),
    stations: small.stations.map((each, k) => ({ ...each, openMs: k === HYDRANT ? hydrantMs : 0, closeMs: DAY_MS })),
    rigs: small.rigs.map((each) => ({ ...each, shiftMs: DAY_MS, ...rig })),
  };
  const { chain } = new RefillSearch(problem, 0);
  chain.load([0, 1, 2], [0, 0, 0], 3);
  const whole = events.map((each) => ({ position: 0, done: 0, station: RIG, changes: 0, ...each }));
  return new CostFloor(chain).of(whole, breakVisit);
}

/** 5 $ per million ms, 30 cents per kilometre, 10 $ for the rig. */
const costOf = (seconds: number, legs: number): number => 10e9 + seconds * 5e6 + legs * LEG_M * 300_000;

/** Morning, four drives, three set-ups and pack-ups, a head swap, four ops, evening. */
const PLAIN_SEC = 600 + 4 * DRIVE_SEC + 3 * 300 + 300 + 1200 + 1800 + 2700 + 600 + 900;
/** Of 5,100 parts 2,000 are in the tank and 3,000 in the nurse tank: 3,100 are pumped, 100 bought at the cheapest place. */
const MOVING_SEC = (3100 * 30 + 100 * 6) / 1000;

describe('the quick floor of a day', () => {
  it('counts ways, work and the moving of what is not in the vessels in the morning', () => {
    expect(floorOf([])).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC, 4), 0);
  });

  it('counts more moving with less room, and none of what no place sells', () => {
    const emptied = (3100 * 30 + 3100 * 6) / 1000;
    expect(floorOf([], { rig: { nurseParts: 0 } })).toBeCloseTo(costOf(PLAIN_SEC + emptied, 4), 0);
    // Without bag places nothing of the seed is missing: 4,000 parts fit into the hopper.
    expect(floorOf([], { rig: { bagPlaces: 0 } })).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC, 4), 0);
    const small = smallProblem().rigs[0]?.compartments ?? [];
    const compartments = small.map((each, c) => (c === 1 ? { ...each, capacityParts: 1000 } : each));
    // 3,000 parts of seed are put into the hopper later, and without bag places bought at 3 ms.
    const seed = (3000 * (2 + 3)) / 1000;
    expect(floorOf([], { rig: { bagPlaces: 0, compartments } })).toBeCloseTo(
      costOf(PLAIN_SEC + MOVING_SEC + seed, 4),
      0,
    );
  });

  it('counts a refill from the rig, and what it takes inside an op', () => {
    expect(floorOf([{ position: BIRCH }])).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC + 240, 4), 0);
    expect(floorOf([{ position: BIRCH, done: 7 }])).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC + 360, 4), 0);
  });

  it('counts a station on the way, and a trip out of a stop with its reload', () => {
    const way = PLAIN_SEC + MOVING_SEC + DRIVE_SEC + 240;
    expect(floorOf([{ position: BIRCH, station: HYDRANT }])).toBeCloseTo(costOf(way, 5), 0);
    const trip = PLAIN_SEC + MOVING_SEC + 2 * DRIVE_SEC + 300 + 200;
    expect(floorOf([{ position: SPRAY, station: SHOP }])).toBeCloseTo(costOf(trip, 6), 0);
    expect(floorOf([{ position: CEDAR, done: 5, station: SHOP }])).toBeCloseTo(costOf(trip + 120, 6), 0);
  });

  it('counts two stations one after the other, then a refill inside the op', () => {
    const events = [
      { position: BIRCH, station: HYDRANT },
      { position: BIRCH, station: SHOP },
      { position: BIRCH, done: 9 },
    ];
    expect(floorOf(events)).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC + 2 * DRIVE_SEC + 540 + 360, 6), 0);
    // From home to home is no way at all.
    expect(floorOf([{ position: SEED, station: SHOP }])).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC + 300, 4), 0);
  });

  it('lets moving fall into waits', () => {
    // Acre opens an hour after the rig could be there; then the day goes on as ever.
    const arrives = START_SEC + 600 + DRIVE_SEC;
    expect(floorOf([], { opens: [(arrives + 60) * 1000] })).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC, 4), 0);
    expect(floorOf([], { opens: [(arrives + 3600) * 1000] })).toBeCloseTo(costOf(PLAIN_SEC + 3600, 4), 0);
    const late = (arrives + DRIVE_SEC + 3600) * 1000;
    const waits = floorOf([{ position: SEED, station: HYDRANT }], { hydrantMs: late - DRIVE_SEC * 1000 });
    expect(waits).toBeCloseTo(costOf(PLAIN_SEC + DRIVE_SEC + 240 + 3600, 5), 0);
    // Inside an op it is not known when the rig gets there.
    const inside = floorOf([{ position: SPRAY, done: 5, station: HYDRANT }], { hydrantMs: late });
    expect(inside).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC + 2 * DRIVE_SEC + 240 + 200 + 120, 6), 0);
  });

  it('counts the break where it is taken, and overtime', () => {
    for (const breakVisit of [0, 2])
      expect(floorOf([], { breakVisit })).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC + 1200, 4), 0);
    const over = floorOf([], { rig: { shiftMs: (PLAIN_SEC + MOVING_SEC - 1000) * 1000 } });
    expect(over).toBeCloseTo(costOf(PLAIN_SEC + MOVING_SEC, 4) + 1000 * 2.5e6, 0);
  });
});
