import { describe, expect, it } from 'vitest';
import type { Problem, ProblemCompartment, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { amountsMatter, breakOf, breaksBeside, finish, type Played } from '../../../../core/plan/refills/finish.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { isTimeline, playDay, type Timeline } from '../../../../core/plan/refills/timeline.ts';
import type { Activity } from '../../../../core/plan/refills/types.ts';
import { smallProblem } from '../judge/small-problem.ts';

const [SHOP, HYDRANT, RIG] = [0, 1, -1];
const [BIRCH, CEDAR] = [1, 2];

function searchOf(jobs: readonly number[], rig: Partial<ProblemRig> = {}, change = (small: Problem) => small) {
  const small = smallProblem();
  const search = new RefillSearch(change({ ...small, rigs: small.rigs.map((each) => ({ ...each, ...rig })) }), 0);
  search.chain.load(
    jobs,
    jobs.map(() => 0),
    jobs.length,
  );
  return search;
}

/** A day of these kinds of activity, one after the other; set-ups are numbered. */
function timelineOf(kinds: readonly Activity['kind'][]): Timeline {
  let visit = -1;
  const activities = kinds.map((kind) => {
    if (kind === 'set-up') visit += 1;
    return { kind, visit, startMs: 0, endMs: 0 } as Activity;
  });
  return { activities, paidMs: 0, distanceM: 0, cost: 0 };
}

describe('it may matter how much is moved at which event', () => {
  const at = (station: number): RefillEvent => ({ position: 0, done: 0, station, changes: 0 });
  const plain: readonly Activity['kind'][] = ['morning', 'refill', 'set-up', 'evening'];
  /** Prices of the shop and of the hydrant for water and for seed. */
  const matters = (
    stations: readonly number[],
    kinds = plain,
    prices: readonly (readonly number[])[] = [
      [6, 3],
      [10, -1],
    ],
    compartments?: readonly ProblemCompartment[],
  ): boolean => {
    const search = searchOf([BIRCH], compartments === undefined ? {} : { compartments }, (small) => ({
      ...small,
      stations: small.stations.map((each, k) => ({ ...each, msPerPart: prices[k] ?? [] })),
    }));
    return amountsMatter(search, { events: stations.map(at), timeline: timelineOf(kinds) });
  };

  it('where the stations that are visited need unlike times for a stock', () => {
    expect(matters([SHOP, HYDRANT])).toBe(true);
    expect(matters([SHOP, SHOP])).toBe(false);
    expect(matters([SHOP])).toBe(false);
    // The rig asks for no time per part, and is no station.
    expect(matters([RIG, HYDRANT, RIG])).toBe(false);
    expect(matters([RIG, SHOP, RIG])).toBe(false);
    const even = [
      [6, 3],
      [6, -1],
    ];
    // What a station does not hold has no price there.
    expect(matters([SHOP, HYDRANT], plain, even)).toBe(false);
    const seed = [
      [6, 3],
      [6, 4],
    ];
    expect(matters([SHOP, HYDRANT], plain, seed)).toBe(true);
    const free = [
      [6, 0],
      [6, 4],
    ];
    expect(matters([SHOP, HYDRANT], plain, free)).toBe(true);
  });

  it('where the rig waits after a refill', () => {
    expect(matters([RIG], ['morning', 'refill', 'set-up', 'wait', 'set-up', 'evening'])).toBe(true);
    expect(matters([RIG], ['morning', 'wait', 'set-up', 'refill', 'wait', 'evening'])).toBe(true);
    expect(matters([RIG, RIG], ['morning', 'refill', 'wait', 'refill', 'evening'])).toBe(true);
    expect(matters([RIG], ['morning', 'wait', 'set-up', 'refill', 'evening'])).toBe(false);
    expect(matters([], ['morning', 'wait', 'set-up', 'evening'])).toBe(false);
  });

  it('where bags on a machine are filled', () => {
    const bags: ProblemCompartment = {
      id: 'bags',
      kind: 'dry',
      capacityParts: 3000,
      fillMsPerPart: 0,
      pours: { into: 1, msPerPart: 4 },
    };
    const compartments = [...(smallProblem().rigs[0]?.compartments ?? []), bags];
    expect(matters([RIG], plain, undefined, compartments)).toBe(true);
    expect(matters([], ['morning', 'set-up', 'evening'], undefined, compartments)).toBe(false);
  });
});

describe('the break of a day', () => {
  it('is taken at the visit that is set up next', () => {
    expect(breakOf(timelineOf(['morning', 'set-up', 'drive', 'break', 'set-up', 'evening']))).toBe(1);
    expect(breakOf(timelineOf(['morning', 'drive', 'wait', 'break', 'set-up', 'set-up', 'evening']))).toBe(0);
    expect(breakOf(timelineOf(['morning', 'set-up', 'evening']))).toBe(-1);
  });

  it('may be a visit earlier or later, and after the last one none', () => {
    const search = searchOf([BIRCH, BIRCH, BIRCH]);
    expect([-1, 0, 1, 2].map((now) => breaksBeside(search, now))).toEqual([[2], [1], [0, 2], [1, -1]]);
    expect(breaksBeside(searchOf([BIRCH]), 0)).toEqual([-1]);
    expect(breaksBeside(searchOf([BIRCH, BIRCH], { breakAfterMs: 0 }), 0)).toEqual([1]);
    expect(breaksBeside(searchOf([BIRCH, BIRCH], { breakAfterMs: -1 }), 0)).toEqual([]);
  });
});

describe('a day that is improved', () => {
  /** Nothing is drawn at Cedar. */
  const byHand = (small: Problem): Problem => ({
    ...small,
    jobs: small.jobs.map((job, j) => {
      const [mode] = job.modes[0] ?? [];
      if (j !== CEDAR || mode === undefined) return job;
      const ops = mode.ops.map((op) => ({ ...op, material: -1, draws: [], machine: -1, head: -1 }));
      return { ...job, modes: [[{ ...mode, ops }], []] };
    }),
  });
  /**
   * A day of Birch, and of Cedar so many times, played with three refills from the rig where one would do, and what becomes of it:
   * 2,700 parts are needed at Birch, 2,000 are in the tank.
   */
  const improved = (others: number) => {
    const jobs = [BIRCH, ...Array.from({ length: others }, () => CEDAR)];
    const search = searchOf(jobs, { shiftMs: 20 * 3_600_000, breakAfterMs: -1 }, byHand);
    const row = [
      [3000, 100],
      [4000, 300],
      [5000, 300],
    ] as const;
    const events = row.map(([done]): RefillEvent => ({ position: 0, done, station: RIG, changes: 0 }));
    const moves = [
      { fills: [{ compartment: 0, material: 0, parts: 2000 }], stock: [{ stock: 0, parts: 700 }] },
      ...row.map(([, parts]) => ({ fills: [{ compartment: 0, material: 0, parts }], stock: [] })),
    ];
    const timeline = playDay(search.chain, { events, moves });
    if (!isTimeline(timeline)) throw new Error('the day can be done');
    const start: Played = { events, moves, timeline };
    return { start, end: finish(search, start) };
  };

  it.each([0, 9])('loses refills that it does not need, %i more visits', (others) => {
    const { start, end } = improved(others);
    expect(end.events.length).toBe(1);
    // Each takes 240 s, and 120 s inside the op; what goes through the hose stays the same.
    expect(start.timeline.cost - end.timeline.cost).toBe(2 * 360_000 * 5000);
  });

  it('keeps them in a row of more than ten visits, where single refills are not tried elsewhere', () => {
    const { start, end } = improved(10);
    expect(end).toBe(start);
  });
});
