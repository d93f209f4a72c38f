import { describe, expect, it } from 'vitest';
import type { Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { type Activity, type Placement, placeRefills, type Visit } from '../../../../core/plan/refills/index.ts';
import { fixRoute } from '../oracle/route.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';
import { replay } from '../refills/replay.ts';
import { leastCost } from './solve.ts';

/**
 * For a fixed order of visits the placed refills cost what a mixed-integer program finds, which shares nothing with them. No source: the
 * program is the measure (see refill-program.ts). Days that cannot be done are to be impossible for both.
 *
 * `npm test` takes every tenth seed, 50 days; `npm run test:mip` takes all 500.
 *
 * What a filling costs depends on the stop everywhere: ways to stations differ, and so does the time to load the machine and unload it
 * again for a trip from the middle of a stop.
 *
 * Left out, because the program has no times of day: windows, hours of stations and breaks. The brute force of ../oracle has them.
 */
type Family = {
  readonly name: string;
  readonly days: number;
  readonly shape: ProblemShape;
  /** What is changed of the rig that the seed gives. */
  readonly rig?: (rig: ProblemRig) => ProblemRig;
};
const FAMILIES: readonly Family[] = [
  {
    name: 'one mix and granules, stations of one price',
    days: 40,
    shape: { jobs: 4, zones: 1, stations: 1, heavy: 0, noNurse: 0.5, thirst: 2, largest: 16, evenFlow: true },
  },
  {
    name: 'stock taken on again',
    days: 40,
    shape: { jobs: 5, zones: 1, stations: 1, heavy: 0, noNurse: 0, largest: 9, thirst: 2, town: 8000, hours: 12 },
    rig: (rig) => ({ ...scarceStock(rig), refillMs: 60_000 }),
  },
  {
    name: 'scarce stock, long ways',
    days: 40,
    shape: { jobs: 5, zones: 1, stations: 1, heavy: 0, noNurse: 0, largest: 8, thirst: 1.2, town: 8000 },
    rig: scarceStock,
  },
  {
    name: 'two mixes and two dry products, rinses',
    days: 80,
    shape: { jobs: 3, stations: 1, heavy: 0, materials: 4, thirst: 1.5, largest: 14 },
  },
  {
    name: 'three stations of different prices',
    days: 50,
    shape: { jobs: 4, zones: 1, stations: 2, heavy: 0, noNurse: 0.6, thirst: 2, largest: 20 },
  },
  {
    name: 'payload binds',
    days: 70,
    shape: { jobs: 3, zones: 1, stations: 1, heavy: 1, thirst: 2, largest: 20 },
  },
  {
    name: 'two mixes, no nurse tank',
    days: 60,
    shape: { jobs: 4, zones: 1, stations: 2, heavy: 0, noNurse: 1, materials: 3, thirst: 1.5, largest: 20 },
  },
  {
    name: 'bags on the machine',
    days: 40,
    shape: { jobs: 5, zones: 1, stations: 1, heavy: 0, largest: 9, thirst: 2, town: 8000, bagsAboard: 1 },
    rig: scarceStock,
  },
  {
    name: 'two tanks, with two mixes or one',
    days: 40,
    shape: { jobs: 5, zones: 1, stations: 1, heavy: 0, materials: 3, tanks: 2, thirst: 1.5, largest: 14 },
  },
  {
    name: 'up to twelve zones',
    days: 40,
    shape: { jobs: 6, zones: 2, stations: 1, heavy: 0, materials: 3, largest: 10 },
  },
];
const EVERY = process.env.npm_lifecycle_event === 'test:mip' ? 1 : 10;

/**
 * One millisecond of pay. Every cost is a sum of whole milliseconds and metres, so that the days themselves are exact (see solve.ts); only
 * the solver's proof that no day is cheaper is one of broken numbers: 1e-7 for each of the few parts columns that are in use, which hold
 * some thousands, in seconds of pay.
 */
const TOLERANCE_MS = 1;

describe.each(FAMILIES)('refills against a mixed-integer program, $name', (family) => {
  const { days } = family;
  it(`cost the same, ${days / EVERY} of ${days} days`, { timeout: 1_800_000 }, async () => {
    const differences: string[] = [];
    for (const { seed, problem, visits } of daysOf(family)) {
      const wrong = await compare(problem, placeRefills(problem, 0, visits), visits);
      if (wrong !== null) differences.push(`seed ${seed}: ${wrong}`);
    }
    expect(differences).toEqual([]);
  });
});

describe('the days compared', () => {
  it('hold everything that refills are about, each at least once in fifty days', () => {
    const tally = { fromRig: 0, atStation: 0, insideAnOp: 0, rinses: 0, secondTank: 0, stockTakenOn: 0, poured: 0 };
    let days = 0;
    for (const family of FAMILIES) {
      for (const { problem, visits } of daysOf(family)) {
        days += 1;
        const placed = placeRefills(problem, 0, visits);
        tally.poured += activitiesOf(placed).filter((each) => each.kind === 'pour').length;
        for (const refill of refillsOf(placed)) {
          tally[refill.station < 0 ? 'fromRig' : 'atStation'] += 1;
          if (refill.doneUnits > 0) tally.insideAnOp += 1;
          if (refill.stock.length > 0) tally.stockTakenOn += 1;
          if (refill.fills.some(({ compartment }) => compartment === 2)) tally.secondTank += 1;
          tally.rinses += refill.rinsed.length;
        }
      }
    }
    expect(days).toBe(500 / EVERY);
    for (const [what, count] of Object.entries(tally)) expect(count, what).toBeGreaterThanOrEqual(days / 50);
  });
});

type Day = { readonly seed: number; readonly problem: Problem; readonly visits: readonly Visit[] };

function daysOf({ days, shape, rig = (each) => each }: Family): readonly Day[] {
  return Array.from({ length: days / EVERY }, (_, index) => {
    const seed = (index + 1) * EVERY;
    const plain = randomProblem(seed, shape);
    const problem = { ...plain, rigs: plain.rigs.map(rig) };
    return { seed, problem, visits: problem.jobs.map((_, job) => ({ job, mode: 0 })) };
  });
}

/** Half the tanks, one bag place and a nurse tank of one tankful, so that the stock itself has to be taken on again. */
function scarceStock(rig: ProblemRig): ProblemRig {
  const compartments = rig.compartments.map((each) => ({ ...each, capacityParts: Math.ceil(each.capacityParts / 2) }));
  return { ...rig, compartments, bagPlaces: 1, nurseParts: compartments[1]?.capacityParts ?? 0 };
}

/** What is wrong with a placed day, or null. */
async function compare(problem: Problem, placed: Placement, visits: readonly Visit[]): Promise<string | null> {
  const faults = placed.kind === 'placed' ? replay(problem, placed.outcome) : [];
  if (faults.length > 0) return faults.join('; ');
  const cost = placed.kind === 'placed' ? placed.outcome.cost : Number.POSITIVE_INFINITY;
  const least = await leastCost(fixRoute(problem, 0, 0, visits), cost);
  if (least.kind === 'unproved') return `not proved: ${least.words}`;
  if (cost === least.cost) return null;
  const ms = (cost - least.cost) / (problem.rigs[0]?.costPerMs ?? 1);
  if (Math.abs(ms) <= TOLERANCE_MS) return null;
  return `${Math.abs(ms).toFixed(3)} ms of pay ${ms > 0 ? 'above' : 'below'} the program`;
}

function activitiesOf(placed: Placement): readonly Activity[] {
  return placed.kind === 'placed' ? placed.outcome.activities : [];
}

function refillsOf(placed: Placement): readonly Extract<Activity, { kind: 'refill' }>[] {
  return activitiesOf(placed).flatMap((each) => (each.kind === 'refill' ? [each] : []));
}
