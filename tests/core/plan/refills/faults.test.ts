import { describe, expect, it } from 'vitest';
import type { Job, Problem, ProblemRig, Station } from '../../../../core/plan/problem/index.ts';
import { placeRefills, RefillPlacer, type RouteFault } from '../../../../core/plan/refills/index.ts';
import { DRIVE_SEC, LEG_M, START_SEC, smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const [ACRE, BIRCH, CEDAR] = [0, 1, 2];
const [FIRST_DAY, SECOND_DAY] = [0, 2];

function problemOf(
  rig: Partial<ProblemRig>,
  job: (job: Job) => Partial<Job> = () => ({}),
  station: (station: Station, k: number) => Partial<Station> = () => ({}),
): Problem {
  const small = smallProblem();
  const allDay = { openMs: 0, closeMs: DAY_MS };
  return {
    ...small,
    jobs: small.jobs.map((each) => ({ ...each, ...allDay, ...job(each) })),
    stations: small.stations.map((each, k) => ({ ...each, ...allDay, ...station(each, k) })),
    rigs: small.rigs.map((each) => ({ ...each, shiftMs: DAY_MS / 2, overtimeMs: 0, breakAfterMs: -1, ...rig })),
  };
}

const visitsOf = (jobs: readonly number[]) => jobs.map((job) => ({ job, mode: 0 }));

function faultOf(problem: Problem, jobs: readonly number[]): RouteFault | null {
  const placement = placeRefills(problem, FIRST_DAY, visitsOf(jobs));
  return placement.kind === 'impossible' ? placement.fault : null;
}

function costOf(problem: Problem, slot: number, jobs: readonly number[]): number {
  const placement = placeRefills(problem, slot, visitsOf(jobs));
  if (placement.kind === 'impossible') throw new Error(placement.fault.kind);
  return placement.outcome.cost;
}

/** Birch with one refill inside: 2,700 parts, 2,000 in the tank. */
const BIRCH_SEC = 600 + 2 * DRIVE_SEC + 300 + 2700 + 900 + 240 + 120 + 21;

describe('why a day cannot be done', () => {
  it('by how much it is too long', () => {
    expect(faultOf(problemOf({ shiftMs: (BIRCH_SEC - 81) * 1000 }), [BIRCH])).toEqual({
      kind: 'too-long',
      overMs: 81_000,
    });
    expect(faultOf(problemOf({ shiftMs: BIRCH_SEC * 1000 - 1 }), [BIRCH])).toEqual({ kind: 'too-long', overMs: 1 });
    expect(faultOf(problemOf({ shiftMs: BIRCH_SEC * 1000 }), [BIRCH])).toBeNull();
    expect(faultOf(problemOf({ shiftMs: (BIRCH_SEC - 10) * 1000, overtimeMs: 10_000 }), [BIRCH])).toBeNull();
  });

  it('which customer is not met in time', () => {
    const closes = (sec: number) => (each: Job) => (each.propertyId === 'cedar' ? { closeMs: sec * 1000 } : {});
    const arrives = START_SEC + BIRCH_SEC - 900;
    expect(faultOf(problemOf({}, closes(arrives)), [BIRCH, CEDAR])).toBeNull();
    expect(faultOf(problemOf({}, closes(arrives - 1)), [BIRCH, CEDAR])).toEqual({ kind: 'window-missed', visit: 1 });
    expect(faultOf(problemOf({}, closes(START_SEC)), [CEDAR, BIRCH])).toEqual({ kind: 'window-missed', visit: 0 });
  });

  it('what is lacking where no place of supply is open', () => {
    const shut = (): Partial<Station> => ({ closeMs: START_SEC * 1000 });
    expect(faultOf(problemOf({ nurseParts: 0 }, undefined, shut), [BIRCH])?.kind).toBe('no-material');
    expect(faultOf(problemOf({ nurseParts: 700 }, undefined, shut), [BIRCH])).toBeNull();
  });

  it('which material nobody holds', () => {
    const water = (): Partial<Station> => ({ msPerPart: [6, -1] });
    expect(faultOf(problemOf({}, undefined, water), [BIRCH, ACRE])).toEqual({
      kind: 'no-material',
      visit: 1,
      material: 2,
    });
    const none = (): Partial<Station> => ({ msPerPart: [-1, -1] });
    expect(faultOf(problemOf({}, undefined, none), [CEDAR])).toEqual({ kind: 'no-material', visit: 0, material: 1 });
  });

  it('which customer is not met in time for what is filled on the way', () => {
    // A tank that lasts through Birch, and no nurse tank: the other mix comes from the hydrant on the way to Cedar, which takes 240 s for
    // the visit, 300 for the rinse and 24 to fill in 600 parts. After Cedar's arrival it is too late for that.
    const tank = { id: 'rider/tank', kind: 'tank' as const, capacityParts: 2700, fillMsPerPart: 30 };
    const leaves = START_SEC + 600 + DRIVE_SEC + 300 + 2700 + DRIVE_SEC + 240 + 300 + 24;
    const closing = (cedarSec: number, hydrantSec: number): Problem =>
      problemOf(
        { nurseParts: 0, compartments: [tank] },
        (each) => (each.propertyId === 'cedar' ? { closeMs: cedarSec * 1000 } : {}),
        (_, k) => ({ closeMs: (k === 1 ? hydrantSec : START_SEC) * 1000 }),
      );
    expect(faultOf(closing(leaves + DRIVE_SEC, leaves), [BIRCH, CEDAR])).toBeNull();
    expect(faultOf(closing(leaves + DRIVE_SEC - 1, leaves), [BIRCH, CEDAR])).toEqual({
      kind: 'window-missed',
      visit: 1,
    });
    expect(faultOf(closing(leaves + DRIVE_SEC, leaves - 1), [BIRCH, CEDAR])).toEqual({
      kind: 'station-closed',
      visit: 1,
    });
    expect(faultOf(closing(leaves + DRIVE_SEC, START_SEC + 3000), [BIRCH, CEDAR])?.kind).toBe('no-material');
  });

  it('where not a single foot can be done with the payload', () => {
    expect(faultOf(problemOf({ cargoLimit: 833 }), [CEDAR])).toEqual({ kind: 'payload', visit: 0 });
    expect(faultOf(problemOf({ cargoLimit: 600 * 834 }), [CEDAR])).toBeNull();
  });
});

describe('what a day costs', () => {
  const paid = 10e9 + BIRCH_SEC * 5e6 + 2 * LEG_M * 300_000;

  it('is pay, way, rig and lateness', () => {
    expect(costOf(problemOf({}), SECOND_DAY, [BIRCH])).toBeCloseTo(paid, 0);
    // Birch is late on the first day.
    expect(costOf(problemOf({}), FIRST_DAY, [BIRCH])).toBeCloseTo(paid + 2e9, 0);
    const overtime = { shiftMs: (BIRCH_SEC - 100) * 1000, overtimeMs: 100_000 };
    expect(costOf(problemOf(overtime), SECOND_DAY, [BIRCH])).toBeCloseTo(paid + 100 * 2.5e6, 0);
  });

  it('is estimated without lateness, with the end of the day', () => {
    const placer = new RefillPlacer(problemOf({}));
    expect(placer.estimate(0, [BIRCH], [0], 1, 8)).toBeCloseTo(paid, 0);
    expect(placer.lastEndMs(0)).toBe((START_SEC + BIRCH_SEC) * 1000);
    expect(placer.estimate(0, [BIRCH, CEDAR], [0, 0], 1, 1)).toBeCloseTo(paid, 0);
    const short = new RefillPlacer(problemOf({ shiftMs: 1000 }));
    expect(short.estimate(0, [BIRCH], [0], 1, 8)).toBe(Number.POSITIVE_INFINITY);
    expect(short.lastEndMs(0)).toBe(Number.POSITIVE_INFINITY);
    expect(placer.estimate(0, [], [], 0, 8)).toBeCloseTo(10e9 + 1500 * 5e6, 0);
  });

  it('is nothing for a route without visits', () => {
    expect(placeRefills(problemOf({}), 3, [])).toEqual({
      kind: 'placed',
      outcome: { slot: 3, visits: [], activities: [], paidMs: 0, distanceM: 0, cost: 0 },
    });
  });
});
