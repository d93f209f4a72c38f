import { describe, expect, it } from 'vitest';
import type { Draw, Problem, ProblemCompartment } from '../../../../core/plan/problem/index.ts';
import { BagLevels, type Pouring } from '../../../../core/plan/refills/bag-levels.ts';
import type { CompartmentFill } from '../../../../core/plan/refills/index.ts';
import { stintKey } from '../../../../core/plan/refills/programme-bags.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import type { RefillEvent } from '../../../../core/plan/refills/search-limits.ts';
import { smallProblem } from '../judge/small-problem.ts';

const [TANK, HOPPER, BAGS] = [0, 1, 2];
const [MIX_ONE, SEED, LIME] = [0, 2, 3];
const [ACRE, CEDAR] = [0, 2];

type Setting = {
  readonly jobs?: readonly number[];
  /** What the hopper holds, and what is in it and in the bags in the morning. */
  readonly hopper: number;
  readonly level?: number;
  readonly bags: number;
  /** Events of the rig: position, units done, and what is filled. */
  readonly events?: readonly (readonly [number, number, number])[];
  /** Parts of seed for Acre's 4,000 ft2. */
  readonly parts?: number;
};

const beside = (into: number, capacityParts: number): ProblemCompartment => ({
  id: 'bags',
  kind: 'dry',
  capacityParts,
  fillMsPerPart: 0,
  pours: { into, msPerPart: 4 },
});

/** The small problem with bags beside the hopper; Acre's seed draws on the tank too; lime out of the hopper at Cedar. */
function problemOf({ hopper, parts = 4000 }: Setting): Problem {
  const small = smallProblem();
  const drawsOf = (job: number): readonly Draw[] =>
    job === ACRE
      ? [
          { compartment: TANK, parts: 500 },
          { compartment: HOPPER, parts },
        ]
      : [{ compartment: HOPPER, parts: 700 }];
  return {
    ...small,
    stocks: [...small.stocks, { kind: 'dry', productId: 'lime', weightPerPart: 100, bagParts: 2000 }],
    materials: [...small.materials, { id: 'lime', stock: 2, rinseMs: 0, rinseParts: 0 }],
    jobs: small.jobs.map((job, j) => {
      const [mode] = job.modes[0] ?? [];
      if (mode === undefined || j === 1) return job;
      const ops = mode.ops.map((op, o) =>
        o === 0 ? { ...op, material: j === CEDAR ? LIME : op.material, draws: drawsOf(j) } : op,
      );
      return { ...job, modes: [[{ ...mode, ops }], []] };
    }),
    rigs: small.rigs.map((rig) => ({
      ...rig,
      compartments: [
        ...rig.compartments.map((each, c) => (c === HOPPER ? { ...each, capacityParts: hopper } : each)),
        beside(HOPPER, 9000),
      ],
    })),
  };
}

function levelsOf(setting: Setting, pouring: Pouring): BagLevels {
  const { jobs = [ACRE], hopper, level = hopper, bags, events = [] } = setting;
  const { chain } = new RefillSearch(problemOf(setting), 0);
  chain.load(
    jobs,
    jobs.map(() => 0),
    jobs.length,
  );
  const fill = (compartment: number, parts: number): CompartmentFill => ({ compartment, material: SEED, parts });
  const row = events.map(([position, done]): RefillEvent => ({ position, done, station: -1, changes: 0 }));
  const moves = [[fill(HOPPER, level), fill(BAGS, bags)], ...events.map(([, , c]) => [fill(c, 1)])];
  const levels = new BagLevels(
    chain,
    { events: row, moves: moves.map((fills) => ({ fills, stock: [{ stock: 0, parts: 1 }] })) },
    pouring,
  );
  levels.fill(0);
  return levels;
}

/** Pours while Acre's seed is done between two marks, no event having been: units done and parts. */
function poured(setting: Setting, pouring: Pouring, from = 0, to = 4000): readonly (readonly [number, number])[] {
  const levels = levelsOf(setting, pouring);
  const pours = levels.during(0, 0, from, to);
  expect(levels.failed).toBe(false);
  for (const pour of pours)
    expect(pour).toMatchObject({ from: BAGS, into: HOPPER, material: SEED, ms: pour.parts * 4 });
  return pours.map(({ doneUnits, parts }) => [doneUnits, parts]);
}

describe('bags poured ahead', () => {
  // 4,000 parts over 4,000 ft2: the hopper's 3,000 are gone after as many feet, and 1,000 are still needed.
  const once: Setting = { hopper: 3000, bags: 5000 };
  const twice: Setting = { ...once, jobs: [ACRE, ACRE] };
  const [AGAIN] = [2];

  it('are no more than what the op needs where nothing comes after it', () => {
    expect(poured(once, 'ahead')).toEqual([[3000, 1000]]);
    expect(poured(once, 'as-needed')).toEqual([[3000, 1000]]);
  });

  it('fill the hopper for the next op too, as far as there are any', () => {
    expect(poured(twice, 'ahead')).toEqual([[3000, 3000]]);
    expect(poured({ ...twice, bags: 2500 }, 'ahead')).toEqual([[3000, 2500]]);
    expect(poured(twice, 'as-needed')).toEqual([[3000, 1000]]);
  });

  it('are enough until the hopper is filled again, which a fill of the tank is not', () => {
    const until = (events: Setting['events']) => poured({ ...twice, events: events ?? [] }, 'ahead');
    expect(until([[AGAIN, 500, HOPPER]])).toEqual([[3000, 1500]]);
    expect(until([[AGAIN, 0, HOPPER]])).toEqual([[3000, 1000]]);
    expect(
      until([
        [AGAIN, 500, TANK],
        [AGAIN, 700, HOPPER],
      ]),
    ).toEqual([[3000, 1700]]);
    expect(until([[AGAIN, 500, TANK]])).toEqual([[3000, 3000]]);
    // Before the op, before its spray, and when it is through.
    expect(
      until([
        [1, 0, TANK],
        [AGAIN, 0, TANK],
        [AGAIN, 400, HOPPER],
      ]),
    ).toEqual([[3000, 1400]]);
  });

  it('are enough for the rest of the op behind an event inside it', () => {
    const inside = (events: Setting['events']) => poured({ ...once, events: events ?? [] }, 'ahead', 0, 3500);
    expect(inside([[0, 3500, HOPPER]])).toEqual([[3000, 500]]);
    expect(inside([[0, 3500, TANK]])).toEqual([[3000, 1000]]);
    expect(
      inside([
        [0, 3500, TANK],
        [0, 3800, HOPPER],
      ]),
    ).toEqual([[3000, 800]]);
  });

  it('are not poured for what goes into the hopper after a change', () => {
    expect(poured({ ...once, jobs: [ACRE, CEDAR] }, 'ahead')).toEqual([[3000, 1000]]);
    expect(poured({ ...once, jobs: [ACRE, CEDAR, ACRE] }, 'ahead')).toEqual([[3000, 1000]]);
  });
});

describe('bags poured as needed', () => {
  it('are what the stretch lacks, counted from where it begins', () => {
    // From 500 ft2 on, 3,500 parts: 3,000 of the hopper last to 3,500 ft2.
    expect(poured({ hopper: 3000, bags: 5000 }, 'as-needed', 500)).toEqual([[3500, 500]]);
    expect(poured({ hopper: 1500, bags: 5000 }, 'as-needed', 500)).toEqual([
      [2000, 1500],
      [3500, 500],
    ]);
  });

  it('leave in the hopper what does not cover a whole foot', () => {
    // Two parts for each foot: 1,001 cover 500 ft2, one is left; 2,000 are needed for 1,000 ft2.
    expect(poured({ hopper: 1001, bags: 5000, parts: 8000 }, 'as-needed', 0, 1000)).toEqual([[500, 999]]);
    // A hopper of 1,001 has room for 1,000 then.
    expect(poured({ hopper: 1001, bags: 5000, parts: 8000 }, 'as-needed', 0, 1100)).toEqual([
      [500, 1000],
      [1000, 199],
    ]);
  });

  it('fail where there are none left', () => {
    const levels = levelsOf({ hopper: 3000, bags: 999 }, 'as-needed');
    expect(levels.during(0, 0, 0, 4000).map((each) => each.parts)).toEqual([999]);
    expect(levels.failed).toBe(true);
  });

  it('do not come into what is drawn out of the tank', () => {
    expect(levelsOf({ hopper: 3000, bags: 5000 }, 'as-needed').during(1, 0, 0, 6000)).toEqual([]);
  });
});

describe('bags poured as decided', () => {
  it('are poured when the hopper is dry, what is then left of them at the end', () => {
    const setting = { hopper: 2000, level: 1000, bags: 4000 };
    const decided = (parts: number) => new Map([[stintKey(0, 0, 1), parts]]);
    expect(poured(setting, decided(3300))).toEqual([
      [1000, 2000],
      [3000, 1000],
      [4000, 300],
    ]);
    expect(poured(setting, decided(3000))).toEqual([
      [1000, 2000],
      [3000, 1000],
    ]);
    const few = levelsOf(setting, decided(2900));
    few.during(0, 0, 0, 4000);
    expect(few.failed).toBe(true);
  });

  it('are told apart by the events before them', () => {
    const setting: Setting = { hopper: 1000, bags: 4000, events: [[0, 2000, TANK]] };
    const decided = new Map([
      [stintKey(0, 0, 2), 1000],
      [stintKey(0, 1, 2), 2000],
    ]);
    const levels = levelsOf(setting, decided);
    expect(levels.during(0, 0, 0, 2000).map((each) => [each.doneUnits, each.parts])).toEqual([[1000, 1000]]);
    expect(levels.during(0, 1, 2000, 4000).map((each) => [each.doneUnits, each.parts])).toEqual([
      [2000, 1000],
      [3000, 1000],
    ]);
    expect(levels.failed).toBe(false);
  });
});

describe('what is filled at an event', () => {
  const filled = (compartments: readonly ProblemCompartment[], fill: CompartmentFill): boolean => {
    const small = smallProblem();
    const problem = { ...small, rigs: small.rigs.map((rig) => ({ ...rig, compartments })) };
    const { chain } = new RefillSearch(problem, 0);
    const levels = new BagLevels(chain, { events: [], moves: [{ fills: [fill], stock: [] }] }, 'ahead');
    levels.fill(0);
    return levels.failed;
  };
  const hopper: ProblemCompartment = { id: 'hopper', kind: 'dry', capacityParts: 100, fillMsPerPart: 2 };
  const into = (compartment: number, parts: number): CompartmentFill => ({ compartment, material: MIX_ONE, parts });

  it('fits into a hopper and into the bags beside it, wherever they stand', () => {
    expect(filled([beside(1, 100), hopper], into(1, 100))).toBe(false);
    expect(filled([beside(1, 100), hopper], into(1, 101))).toBe(true);
    expect(filled([hopper, beside(0, 100)], into(1, 100))).toBe(false);
    expect(filled([hopper, beside(0, 100)], into(1, 101))).toBe(true);
  });

  it('is not looked at where there are no bags', () => {
    expect(filled([hopper], into(0, 101))).toBe(false);
  });
});
