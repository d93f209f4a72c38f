import { describe, expect, it } from 'vitest';
import type { Job, Op, Problem } from '../../../../core/plan/problem/index.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import { leastOf, settleWhole } from '../../../../core/plan/refills/whole.ts';
import { smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const [QUICK_MS, SLOW_MS] = [10, 50];
const [QUICK, SLOW] = [0, 1];

/** One tank of 10 gal and no nurse tank; a quick station at home and a slow one; one stop for each number of parts. */
function problemOf(needs: readonly number[], areaUnits: number): Problem {
  const small = smallProblem();
  const rig = small.rigs[0];
  const job = small.jobs[1] as Job;
  const op = job.modes[0]?.[0]?.ops[0] as Op;
  if (rig === undefined) throw new Error('the small problem has a rig');
  const tank = { id: 'rider/tank', kind: 'tank' as const, capacityParts: 1000, fillMsPerPart: 30 };
  return {
    ...small,
    rigs: [{ ...rig, compartments: [tank], nurseParts: 0, breakAfterMs: -1, shiftMs: DAY_MS / 2 }],
    stations: small.stations.map((each, k) => ({
      ...each,
      openMs: 0,
      closeMs: DAY_MS,
      msPerPart: [k === QUICK ? QUICK_MS : SLOW_MS, -1],
    })),
    slots: [{ rig: 0, day: 0 }],
    jobs: needs.map((parts, index) => ({
      ...job,
      place: 2 + index,
      modes: [[{ beforeMs: 0, afterMs: 0, ops: [{ ...op, areaUnits, draws: [{ compartment: 0, parts }] }] }]],
    })),
  };
}

function chainOf(needs: readonly number[], areaUnits: number) {
  const { chain } = new RefillSearch(problemOf(needs, areaUnits), 0);
  chain.load(
    needs.map((_, job) => job),
    needs.map(() => 0),
    needs.length,
  );
  return chain;
}

describe('amounts settled by linear programming', () => {
  it('take water where it flows faster, and keep it past a slower station', () => {
    // 600, 500 and 700 parts; 1000 from home. Before the second stop 400 are left, so that 600 fit in; before the third 500 are left.
    const chain = chainOf([600, 500, 700], 9000);
    const events = [QUICK, SLOW].map((station, k) => ({ position: k + 1, done: 0, station, changes: 0 }));
    const settled = settleWhole(chain, events, -1);
    expect(settled?.moves.map(({ fills }) => fills.map((each) => each.parts))).toEqual([[1000], [600], [200]]);
  });

  it('move a refill inside an op to where the quicker station can give all', () => {
    // 500, then 1500 parts. 500 are left before the second stop: a third of it. What is missing then is a tank full.
    const chain = chainOf([500, 1500], 3000);
    const events = [
      { position: 1, done: 0, station: SLOW, changes: 0 },
      { position: 1, done: 2500, station: QUICK, changes: 0 },
    ];
    const settled = settleWhole(chain, events, -1);
    expect(settled?.events.map((each) => each.done)).toEqual([0, 1000]);
    expect(settled?.moves.map(({ fills }) => fills.map((each) => each.parts))).toEqual([[1000], [], [1000]]);
    expect(leastOf(chain, events, -1, Number.POSITIVE_INFINITY)).toBeCloseTo(settled?.cost ?? 0, -6);
  });

  it('are not looked for above a limit', () => {
    // 300 parts are missing, which the quicker station fills in.
    const chain = chainOf([600, 700], 9000);
    const events = [{ position: 1, done: 0, station: QUICK, changes: 0 }];
    const { cost = 0 } = settleWhole(chain, events, -1) ?? {};
    const plain = chainOf([600, 400], 9000);
    const { cost: without = 0 } = settleWhole(plain, [], -1) ?? {};
    // 300 s at the shop, 10 min and 5 km more there, and 40 ms for each part.
    expect(cost - without).toBeCloseTo((300_000 + 600_000 + 300 * 40) * 5000 + 5000 * 300_000, -5);
    const limits = [0, without, cost - 5_000_000, cost + 5_000_000, 2 * cost];
    expect(limits.map((limit) => leastOf(chain, events, -1, limit) < Number.POSITIVE_INFINITY)).toEqual([
      false,
      false,
      false,
      true,
      true,
    ]);
  });

  it('find nothing where a stop draws more than can be taken on', () => {
    const chain = chainOf([600, 1900], 9000);
    expect(settleWhole(chain, [{ position: 1, done: 0, station: QUICK, changes: 0 }], -1)).toBeNull();
  });
});
