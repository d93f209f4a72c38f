import { describe, expect, it } from 'vitest';
import type { Problem, ProblemCompartment, ProblemRig } from '../../../../core/plan/problem/index.ts';
import type { Chain } from '../../../../core/plan/refills/chain.ts';
import { hopperOf, Pours, stintKey } from '../../../../core/plan/refills/programme-bags.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { leastOf, settleWhole } from '../../../../core/plan/refills/whole.ts';
import { LEG_M, smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const [ACRE, BIRCH] = [0, 1];
const RIG = -1;
/** Dry goods first, so that nothing has the number 0 by chance. */
const [HOPPER, BAGS, TANK] = [0, 1, 2];
const [MIX_ONE, SEED] = [0, 2];
const NEVER = -1;

const bags: ProblemCompartment = {
  id: 'bags',
  kind: 'dry',
  capacityParts: 2000,
  fillMsPerPart: 1,
  pours: { into: HOPPER, msPerPart: 4 },
};

/** The small problem with a hopper of 1,000 parts and 2,000 in bags beside it. */
function chainOf(jobs: readonly number[]): Chain {
  const small = smallProblem();
  const [tank, hopper] = (small.rigs[0] as ProblemRig).compartments as readonly [
    ProblemCompartment,
    ProblemCompartment,
  ];
  const problem: Problem = {
    ...small,
    stations: small.stations.map((each) => ({ ...each, openMs: 0, closeMs: DAY_MS })),
    rigs: small.rigs.map((each) => ({
      ...each,
      shiftMs: DAY_MS / 2,
      breakAfterMs: -1,
      compartments: [{ ...hopper, capacityParts: 1000 }, bags, tank],
    })),
    jobs: small.jobs.map((job) => ({
      ...job,
      openMs: 0,
      closeMs: DAY_MS,
      modes: job.modes.map((modes) =>
        modes.map((mode) => ({
          ...mode,
          ops: mode.ops.map((op) => ({
            ...op,
            draws: op.draws.map((draw) => ({ ...draw, compartment: op.material === SEED ? HOPPER : TANK })),
          })),
        })),
      ),
    })),
  };
  const { chain } = new RefillSearch(problem, 0);
  chain.load(
    jobs,
    jobs.map(() => 0),
    jobs.length,
  );
  return chain;
}

const event = (position: number, done = 0): RefillEvent => ({ position, done, station: RIG, changes: 0 });

describe('stints of work that bags can be poured in', () => {
  // Seed, spray, seed, spray.
  const chain = chainOf([ACRE, ACRE]);
  const events = [null, event(0), event(0, 1000), event(0, 1000), event(1), event(2), event(2, 500), event(3, 10)];
  const pours = new Pours(chain, events, 7);
  const stints: readonly (readonly [number, number])[] = [
    [0, 1],
    [0, 2],
    [0, 3],
    [2, 5],
    [2, 6],
  ];

  it('lie between the events, at each op that draws on such a hopper', () => {
    expect(pours.stints).toEqual(stints.map(([position, before], k) => ({ position, event: before, variable: 7 + k })));
    expect(pours.count).toBe(5);
    expect([0, 1, 2, 3].map((position) => hopperOf(chain, position))).toEqual([HOPPER, -1, HOPPER, -1]);
    expect(new Pours(chainOf([BIRCH]), [null], 0).stints).toEqual([]);
    expect(new Pours(chain, [null], 0).stints.map((each) => [each.position, each.event])).toEqual([
      [0, 0],
      [2, 0],
    ]);
  });

  it('have a variable each', () => {
    expect(stints.map(([position, before]) => pours.variable(position, before))).toEqual([7, 8, 9, 10, 11]);
    expect([pours.variable(0, 0), pours.variable(1, 4), pours.variable(2, 4)]).toEqual([-1, -1, -1]);
  });

  it('tell what is poured, in whole parts', () => {
    const values = new Float64Array(12);
    values.set([99.7, 10.2, 1000, 0.4, 33.5], 7);
    const parts = [100, 10, 1000, 0, 34];
    expect(pours.parts(values)).toEqual(
      new Map(stints.map(([position, before], k) => [stintKey(position, before, events.length), parts[k]])),
    );
    expect(pours.during(chain, [1, 2], HOPPER, values)).toBe(110);
    expect(pours.during(chain, [3, 5, 6], HOPPER, values)).toBe(1034);
    expect(pours.during(chain, [1, 2], TANK, values)).toBe(0);
  });
});

describe('amounts with bags beside the hopper', () => {
  /** 5 $ per million ms, 30 cents per kilometre, 10 $ for the rig. nano-dollars */
  const costOf = (seconds: number): number => 10e9 + seconds * 5e6 + 2 * LEG_M * 300_000;
  /** The paid day of Acre: morning and evening, there and back, set-up and pack-up, seed, the other head and spray. */
  const ACRE_SEC = 600 + 900 + 2 * 600 + 300 + 1200 + 300 + 1800;
  const ROUNDING = 1e6;
  const told = (entries: readonly object[]): string => entries.map((each) => Object.values(each).join(':')).join(' ');
  const settle = (chain: Chain, row: readonly RefillEvent[]) => {
    const settled = settleWhole(chain, row, NEVER);
    if (settled !== null)
      expect(Math.abs(leastOf(chain, row, NEVER, Number.POSITIVE_INFINITY) - settled.cost)).toBeLessThan(ROUNDING);
    return settled;
  };

  it('fill what the bags do not give into the hopper, which is quicker', () => {
    // 4,000 parts: 1,000 in the hopper and 2,000 in the bags from home, poured for 4 ms each; 1,000 more into the hopper for 2 ms.
    const settled = settle(chainOf([ACRE]), [event(0, 2500)]);
    expect(settled?.moves.map(({ fills, stock }) => `${told(fills)} | ${told(stock)}`)).toEqual([
      `0:${SEED}:1000 1:${SEED}:2000 2:${MIX_ONE}:1800 | 1:1000`,
      `0:${SEED}:1000 | `,
    ]);
    expect([...(settled?.pours.values() ?? [])].reduce((sum, parts) => sum + parts, 0)).toBe(2000);
    expect(Math.abs((settled?.cost ?? 0) - costOf(ACRE_SEC + 8 + 240 + 120 + 2))).toBeLessThan(ROUNDING);
  });

  it('fill bags again for what the hopper cannot take', () => {
    // Twice 4,000: home gives 3,000, and a refill no more than that.
    expect(settle(chainOf([ACRE, ACRE]), [event(2)])).toBeNull();
    // Three refills: the hopper is filled each time, 3 x 1,000 for 2 ms; the bags give 2,000 from home and 2,000 more, filled in for 1 ms.
    const settled = settle(chainOf([ACRE, ACRE]), [event(0, 2000), event(2), event(2, 2000)]);
    const filled = (compartment: number, from: number): number =>
      (settled?.moves ?? [])
        .slice(from)
        .flatMap(({ fills }) => fills.filter((fill) => fill.compartment === compartment))
        .reduce((sum, { parts }) => sum + parts, 0);
    expect([filled(HOPPER, 0), filled(HOPPER, 1)]).toEqual([4000, 3000]);
    expect([filled(BAGS, 0), filled(BAGS, 1)]).toEqual([4000, 2000]);
    expect([...(settled?.pours.values() ?? [])].reduce((sum, parts) => sum + parts, 0)).toBe(4000);
    // 1,600 of mix one too, for 30 ms each; the seeder back on its machine; two of the refills inside an op.
    const refills = 3 * 240 + 2 * 120 + 3 * 2 + 2 + 16 + 48;
    const secondVisit = 300 + 1200 + 300 + 1800 + 300;
    expect(Math.abs((settled?.cost ?? 0) - costOf(ACRE_SEC + secondVisit + refills))).toBeLessThan(ROUNDING);
  });
});
