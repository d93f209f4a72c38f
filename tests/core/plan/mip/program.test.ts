import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { type FixedRoute, fixRoute } from '../oracle/route.ts';
import { randomProblem } from '../random-problem.ts';
import { leastCost } from './solve.ts';

/** One stop that takes 1,000 parts of a mix; a tank of 600 and a nurse tank of `nurseParts`; home alone has water, 10 ms a part. */
function oneStop(nurseParts: number): FixedRoute {
  const plain = randomProblem(1, { jobs: 1, zones: 1, stations: 0, heavy: 0, materials: 1 });
  const [rig, job, station] = [plain.rigs[0], plain.jobs[0], plain.stations[0]];
  const mode = job?.modes[0]?.[0];
  const op = mode?.ops[0];
  if (!rig || !job || !station || !mode || !op) throw new RangeError('an empty problem');
  const problem: Problem = {
    ...plain,
    stations: [{ ...station, visitMs: 200_000, msPerPart: [10, -1, -1] }],
    rigs: [
      {
        ...rig,
        nurseParts,
        compartments: [{ id: 'm/tank', kind: 'tank', capacityParts: 600, fillMsPerPart: 20 }],
        refillMs: 100_000,
        midZoneMs: 30_000,
      },
    ],
    jobs: [
      {
        ...job,
        modes: [
          [
            {
              ...mode,
              ops: [
                { ...op, material: 0, draws: [{ compartment: 0, parts: 1000 }], reloadMs: 50_000, areaUnits: 10_000 },
              ],
            },
          ],
        ],
      },
    ],
    travelMs: Int32Array.of(0, 400_000, 400_000, 0),
    travelM: Int32Array.of(0, 0, 0, 0),
  };
  return fixRoute(problem, 0, 0, [{ job: 0, mode: 0 }]);
}

/** Paid time beyond the same day without any refill, ms. */
async function refillMs(route: FixedRoute, known = Number.POSITIVE_INFINITY): Promise<number> {
  const { rig, modes, restMs } = route;
  const without = rig.morningMs + 400_000 + (modes[0]?.beforeMs ?? 0) + (restMs[0] ?? 0);
  const least = await leastCost(route, known);
  if (least.kind === 'unproved') throw new RangeError(least.words);
  return (least.cost - rig.costPerDay) / rig.costPerMs - without;
}

describe('the program of refills, worked out by hand', () => {
  it('fills from the rig what the tank lacks', async () => {
    // One refill inside the zone: 100 s and 30 s, and 400 parts at 20 ms.
    expect(await refillMs(oneStop(400))).toBeCloseTo(130_000 + 400 * 20, 3);
  });

  it('goes to the station where the nurse tank has too little', async () => {
    // There and back 800 s, visit 200 s, reload 50 s, inside the zone 30 s, and 400 parts at 20 + 10 ms: dearer by far than a refill
    // from the rig, but with 300 parts in the nurse tank one such refill would leave 100 parts wanting.
    expect(await refillMs(oneStop(300))).toBeCloseTo(1_080_000 + 400 * 30, 3);
  });

  it('finds nothing cheaper than a day that is too cheap to be had', async () => {
    expect(await refillMs(oneStop(400), 0)).toBe(Number.POSITIVE_INFINITY);
  });
});
