import { describe, expect, it } from 'vitest';
import type { Op, Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { Labels } from '../../../../core/plan/refills/labels.ts';
import { createRigModel } from '../../../../core/plan/refills/model.ts';
import { smallProblem } from '../judge/small-problem.ts';

/** The small problem with a third compartment of bags beside the hopper, and its rig changed. */
function bagged(rig: Partial<ProblemRig> = {}): Problem {
  const small = smallProblem();
  const bags = {
    id: 'rider/bags',
    kind: 'dry' as const,
    capacityParts: 5000,
    fillMsPerPart: 9,
    pours: { into: 1, msPerPart: 4 },
  };
  return {
    ...small,
    rigs: small.rigs.map((each) => ({ ...each, compartments: [...each.compartments, bags], ...rig })),
  };
}

describe('a rig in flat arrays', () => {
  it('has its vessels, and bags with the hopper that they are poured into', () => {
    const model = createRigModel(bagged(), 0);
    expect([...model.capacity]).toEqual([2000, 10_000, 5000]);
    expect([...model.store]).toEqual([2000, 15_000, 5000]);
    expect([...model.fillMs]).toEqual([30, 2, 9]);
    expect([...model.bagsOf]).toEqual([-1, 2, -1]);
    expect([...model.poursInto]).toEqual([-1, -1, 1]);
    expect([...model.pourMs]).toEqual([0, 0, 4]);
    expect(model.carriesBags).toBe(true);
    expect(createRigModel(smallProblem(), 0).carriesBags).toBe(false);
  });

  it('has room for stocks: the nurse tank, or every bag place full', () => {
    const model = createRigModel(bagged({ bagPlaces: 3 }), 0);
    expect(model.water).toBe(0);
    expect([...model.stockCapacity]).toEqual([3000, 15_000]);
    expect([...model.bagParts]).toEqual([0, 5000]);
    expect([...model.weight]).toEqual([834, 100]);
  });

  it('knows what places of supply hold, and at which price', () => {
    const small = smallProblem();
    const model = createRigModel(small, 0);
    expect([...model.price]).toEqual([6, 3, 10, -1]);
    expect([...model.topPrice]).toEqual([10, 3]);
    expect([...model.holds]).toEqual([3, 1]);
    expect([...model.holdsAllDry]).toEqual([1, 0]);
    expect([...model.homeHolds]).toEqual([1, 1]);
    const moved = createRigModel({ ...small, rigs: small.rigs.map((each) => ({ ...each, home: 1 })) }, 0);
    expect([...moved.homeHolds]).toEqual([1, 0]);
    // What costs nothing is held all the same.
    const free = { ...small, stations: small.stations.map((each) => ({ ...each, msPerPart: [0, 0] })) };
    expect([...createRigModel(free, 0).homeHolds]).toEqual([1, 1]);
    expect([...createRigModel(free, 0).holdsAllDry]).toEqual([1, 1]);
    expect([...createRigModel(free, 0).topPrice]).toEqual([0, 0]);
  });

  it('knows the dearest fill of a vessel of each kind', () => {
    expect([...createRigModel(bagged(), 0).topFillMs]).toEqual([30, 9]);
    expect([...createRigModel(smallProblem(), 0).topFillMs]).toEqual([30, 2]);
    const none = smallProblem().rigs.map((each) => ({ ...each, compartments: each.compartments.slice(0, 1) }));
    expect([...createRigModel({ ...smallProblem(), rigs: none }, 0).topFillMs]).toEqual([30, 0]);
  });

  it('may be overloaded where all that it holds weighs more than the payload', () => {
    // 12,000 parts in vessels and 3,000 in the nurse tank, all as heavy as water, and a bag of 5,000 parts.
    const full = 15_000 * 834 + 5000 * 100;
    const limited = (cargoLimit: number): Problem => {
      const small = smallProblem();
      return { ...small, rigs: small.rigs.map((each) => ({ ...each, cargoLimit })) };
    };
    expect(createRigModel(limited(full), 0).mayOverload).toBe(false);
    expect(createRigModel(limited(full - 1), 0).mayOverload).toBe(true);
    // With seed heavier than water the vessels are full of seed, and the nurse tank of water.
    const sown = 12_000 * 1000 + 3000 * 834 + 5000 * 1000;
    const heavy = (cargoLimit: number): Problem => {
      const stocks = limited(cargoLimit).stocks.map((each) =>
        each.kind === 'dry' ? { ...each, weightPerPart: 1000 } : each,
      );
      return { ...limited(cargoLimit), stocks };
    };
    expect(createRigModel(heavy(sown), 0).mayOverload).toBe(false);
    expect(createRigModel(heavy(sown - 1), 0).mayOverload).toBe(true);
  });

  it('tells moments of loading apart by what has not been taken on since', () => {
    // The shop gives both, the hydrant water alone: everything still counts, nothing, or the seed.
    const { moments } = createRigModel(smallProblem(), 0);
    expect(moments.count).toBe(3);
    expect([...moments.counts]).toEqual([1, 1, 0, 0, 0, 1]);
    expect([...moments.next]).toEqual([1, 1, 1, 2, 1, 2]);
  });

  it('has every mode of every job one after the other', () => {
    const small = smallProblem();
    const hose: Op = {
      ...(small.jobs[2]?.modes[0]?.[0]?.ops[0] as Op),
      material: -1,
      draws: [],
      second: true,
      machine: -1,
      head: -1,
    };
    const jobs = small.jobs.map((job, j) =>
      j === 1 ? { ...job, modes: [[...(job.modes[0] ?? []), { beforeMs: 7, afterMs: 8, ops: [hose] }], []] } : job,
    );
    const { ops, modes } = createRigModel({ ...small, jobs }, 0);
    expect([...modes.first]).toEqual([0, 1, 3, 4]);
    expect([...modes.opStart]).toEqual([0, 2, 3, 4, 5]);
    expect([...modes.beforeMs]).toEqual([180_000, 180_000, 7, 180_000]);
    expect([...modes.afterMs]).toEqual([120_000, 120_000, 8, 120_000]);
    expect([...modes.shared]).toEqual([0, 0, 1, 0]);
    expect([...ops.material]).toEqual([2, 0, 0, -1, 1]);
    expect([...ops.stock]).toEqual([1, 0, 0, -1, 0]);
    expect([...ops.drawStart]).toEqual([0, 1, 2, 3, 3, 4]);
    expect([...ops.drawCompartment]).toEqual([1, 0, 0, 0]);
    expect([...ops.drawParts]).toEqual([4000, 1800, 2700, 600]);
    expect([...ops.area]).toEqual([4000, 6000, 9000, 2000, 2000]);
    expect([...ops.serviceMs]).toEqual([1200e3, 1800e3, 2700e3, 600e3, 600e3]);
    expect([...ops.machine]).toEqual([0, 0, 0, -1, 0]);
    expect([...ops.head]).toEqual([1, 0, 0, -1, 0]);
    expect([...ops.second]).toEqual([0, 0, 0, 1, 0]);
    expect([...ops.swapMs, ...ops.reloadMs]).toEqual([
      ...ops.source.map((each) => each.swapMs),
      ...ops.source.map((each) => each.reloadMs),
    ]);
    expect(createRigModel({ ...small, jobs }, 1).ops.source).toEqual([]);
  });

  it('needs a rig, and its home', () => {
    expect(() => createRigModel(smallProblem(), 2)).toThrow(new RangeError('no rig 2'));
    const homeless = smallProblem().rigs.map((each) => ({ ...each, home: 5 }));
    expect(() => createRigModel({ ...smallProblem(), rigs: homeless }, 0)).toThrow(new RangeError('no station 5'));
  });
});

describe('rows of labels', () => {
  it('keep their contents when there are more of them than at first', () => {
    const labels = new Labels(createRigModel(smallProblem(), 0));
    const rows: number[] = [];
    const nodes: number[] = [];
    for (let k = 0; k < 150; k += 1) {
      const row = rows.length === 0 ? labels.copy(0) : labels.copy(rows[0] as number);
      labels.data[row + 4] = k;
      rows.push(row);
      nodes.push(labels.addNode(k - 1, k + 1, k + 2, k % 3, k % 4));
    }
    expect(new Set(rows).size).toBe(150);
    rows.forEach((row, k) => {
      expect(labels.data[row + 4]).toBe(k);
      expect(nodes[k]).toBe(k);
      expect([labels.nodeParent[k], labels.nodePosition[k], labels.nodeDone[k]]).toEqual([k - 1, k + 1, k + 2]);
      expect([labels.nodeStation[k], labels.nodeChanges[k]]).toEqual([k % 3, k % 4]);
    });
    expect(labels.nodes).toBe(150);
  });

  it('are used again when they are given back, and all of them after clearing', () => {
    const labels = new Labels(createRigModel(smallProblem(), 0));
    const [first, second] = [labels.copy(0), labels.copy(0)];
    labels.release(first);
    expect(labels.copy(second)).toBe(first);
    labels.release(second);
    labels.addNode(-1, 0, 0, 0, 0);
    labels.clear();
    expect([labels.nodes, labels.copy(0), labels.copy(0)]).toEqual([0, first, second]);
  });
});
