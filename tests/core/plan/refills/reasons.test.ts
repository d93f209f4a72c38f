import { expect, it } from 'vitest';
import type { Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { placeRefills, type RefillReason } from '../../../../core/plan/refills/index.ts';
import { smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const [ACRE, BIRCH, CEDAR] = [0, 1, 2];
const [TANK, WATER, WATER_WEIGHT] = [0, 0, 834];

/** The small problem with nothing but amounts that could bind, and its rig changed. */
function openProblem(rig: Partial<ProblemRig>): Problem {
  const small = smallProblem();
  const allDay = { openMs: 0, closeMs: DAY_MS };
  return {
    ...small,
    jobs: small.jobs.map((each) => ({ ...each, ...allDay })),
    stations: small.stations.map((each) => ({ ...each, ...allDay })),
    rigs: small.rigs.map((each) => ({ ...each, shiftMs: DAY_MS / 2, breakAfterMs: -1, ...rig })),
  };
}

/** Each refill as "where, after how many ft2 of the visit's op", with its reason. */
function reasonsOf(rig: Partial<ProblemRig>, jobs: readonly number[]): readonly (readonly [string, RefillReason])[] {
  const placement = placeRefills(
    openProblem(rig),
    0,
    jobs.map((job) => ({ job, mode: 0 })),
  );
  if (placement.kind === 'impossible') throw new Error(placement.fault.kind);
  return placement.outcome.activities.flatMap((each) => {
    if (each.kind !== 'refill') return [];
    const where = each.station < 0 ? 'rig' : (smallProblem().stations[each.station]?.fillPointId ?? '');
    return [[`${where}, visit ${each.visit}, ${each.doneUnits} ft2`, each.reason] as const];
  });
}

const runsDry = { kind: 'runs-dry', compartment: TANK } as const;
const change = { kind: 'change-of-material', compartment: TANK } as const;

it('a tank that runs dry, and another mix', () => {
  // 2,700 parts at Birch, 2,000 in the tank: 6,666 of 9,000 ft2.
  expect(reasonsOf({ nurseParts: 3000 }, [BIRCH, CEDAR])).toEqual([
    ['rig, visit 0, 6666 ft2', runsDry],
    ['rig, visit 1, 0 ft2', change],
  ]);
});

it('a stop on the way that is cheaper than another one', () => {
  expect(reasonsOf({ nurseParts: 0 }, [ACRE, BIRCH])).toEqual([
    // At home the visit takes 60 s more, and each of the 1,800 parts 4 ms less.
    ['hydrant, visit 1, 0 ft2', { kind: 'cheaper-here-than-later', savedMs: 52_800 }],
    ['hydrant, visit 1, 6666 ft2', runsDry],
  ]);
});

it('stock that runs out', () => {
  // 200 parts are left from Acre and 500 in the nurse tank: 2,333 ft2. Filled up inside the op they would cost 120 s more.
  expect(reasonsOf({ nurseParts: 500 }, [ACRE, BIRCH])).toEqual([
    ['rig, visit 1, 0 ft2', { kind: 'cheaper-here-than-later', savedMs: 120_000 }],
    ['hydrant, visit 1, 2333 ft2', { kind: 'stock-runs-out', stock: WATER }],
  ]);
});

it('the payload', () => {
  // 1,500 parts may be aboard: 5,000 ft2 of Birch.
  expect(reasonsOf({ cargoLimit: 1500 * WATER_WEIGHT }, [BIRCH])).toEqual([
    ['hydrant, visit 0, 5000 ft2', { kind: 'payload' }],
  ]);
});

it('what an early refill brings where the day would be too long without it', () => {
  const paidMs = (rig: Partial<ProblemRig>): number => {
    const placement = placeRefills(
      openProblem(rig),
      0,
      [ACRE, BIRCH].map((job) => ({ job, mode: 0 })),
    );
    return placement.kind === 'placed' ? placement.outcome.paidMs : 0;
  };
  const firstReason = (rig: Partial<ProblemRig>, moreMs: number): RefillReason | undefined =>
    reasonsOf({ ...rig, overtimeMs: 0, shiftMs: paidMs(rig) + moreMs }, [ACRE, BIRCH])[0]?.[1];
  // A refill from the rig inside the op takes 120 s more.
  expect(firstReason({}, 119_999)).toEqual(runsDry);
  expect(firstReason({}, 120_000)).toEqual({ kind: 'cheaper-here-than-later', savedMs: 120_000 });
  // The other place of supply takes 52.8 s more.
  expect(firstReason({ nurseParts: 0 }, 0)).toEqual({ kind: 'stock-runs-out', stock: WATER });
  expect(firstReason({ nurseParts: 0 }, 52_800)).toEqual({ kind: 'cheaper-here-than-later', savedMs: 52_800 });
});
