import { describe, expect, it } from 'vitest';
import type { Mode, Op, Problem } from '../../../../core/plan/problem/index.ts';
import { Chain } from '../../../../core/plan/refills/chain.ts';
import { createRigModel } from '../../../../core/plan/refills/model.ts';
import { smallProblem } from '../judge/small-problem.ts';
import { shuffledVisits } from '../oracle/families.ts';
import { type ProblemShape, randomProblem } from '../random-problem.ts';

const SHAPES: readonly (readonly [string, ProblemShape])[] = [
  ['two mixes and two dry products', { jobs: 5, stations: 1, materials: 4, zones: 3, thirst: 1.5, windows: 0.6 }],
  ['bags and a second person', { jobs: 4, materials: 4, zones: 4, bagsAboard: 1, seconds: 0.8, windows: 0.4 }],
  ['more visits than there is room for at first', { jobs: 40, materials: 3, modes: 2, windows: 0.3 }],
  ['as many visits as waits are looked ahead to', { jobs: 10, materials: 3, windows: 0.6 }],
  ['one visit more', { jobs: 11, materials: 3, windows: 0.6 }],
  ['an end elsewhere', { jobs: 3, stations: 1, endsElsewhere: true, windows: 0.5 }],
];

/** An op of a row, with what the row says about it. */
type Placed = {
  readonly op: Op;
  readonly visit: number;
  readonly mode: Mode;
  readonly first: boolean;
  readonly last: boolean;
};

function rowOf(problem: Problem, visits: readonly { readonly job: number; readonly mode: number }[]): Placed[] {
  return visits.flatMap(({ job, mode: number }, visit) => {
    const mode = problem.jobs[job]?.modes[0]?.[number] as Mode;
    return mode.ops.map((op, k) => ({ op, visit, mode, first: k === 0, last: k + 1 === mode.ops.length }));
  });
}

const total = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0);
const drawn = (op: Op, c: number): number =>
  total(op.draws.filter((each) => each.compartment === c).map((each) => each.parts));

/** Head swaps: each machine begins with the head that it needs first. */
function swapsOf(row: readonly Placed[]): number[] {
  const fitted = new Map<number, number>();
  return row.map(({ op }) => {
    if (op.machine < 0 || op.head < 0) return 0;
    const before = fitted.get(op.machine);
    fitted.set(op.machine, op.head);
    return before === undefined || before === op.head ? 0 : op.swapMs;
  });
}

/** A visit lasts as long as the longer one of two persons works; an op adds what it makes that longer. */
function workOf(row: readonly Placed[], swaps: readonly number[]): number[] {
  let sums: [number, number] = [0, 0];
  return row.map(({ op, first }, i) => {
    if (first) sums = [0, 0];
    const before = Math.max(...sums);
    sums[op.second ? 1 : 0] += (swaps[i] as number) + op.serviceMs;
    return Math.max(...sums) - before;
  });
}

/** Runs of one material in compartment c from op i on: their parts. */
function runsOf(
  row: readonly Placed[],
  i: number,
  c: number,
): { readonly material: number; readonly parts: number; readonly last: number }[] {
  const runs: { material: number; parts: number; last: number }[] = [];
  row.forEach(({ op }, k) => {
    if (k < i || op.material < 0 || !op.draws.some((each) => each.compartment === c)) return;
    if (runs.at(-1)?.material !== op.material) runs.push({ material: op.material, parts: 0, last: k });
    const run = runs.at(-1) as (typeof runs)[number];
    run.parts += drawn(op, c);
    run.last = k;
  });
  return runs;
}

describe.each(SHAPES)('a row of visits with %s', (_, shape) => {
  const days = [1, 2, 3, 4].map((seed) => {
    const problem = randomProblem(seed, shape);
    const visits = shuffledVisits(problem, seed);
    return { problem, visits, row: rowOf(problem, visits) };
  });
  const load = ({ problem, visits }: (typeof days)[number]): Chain => {
    const chain = new Chain(createRigModel(problem, 0));
    chain.load(
      visits.map((each) => each.job),
      visits.map((each) => each.mode),
      visits.length,
    );
    return chain;
  };

  it('knows its ops, their head swaps and what each adds to its stop', () => {
    for (const day of days) {
      const { row } = day;
      const chain = load(day);
      expect(chain.length).toBe(row.length);
      expect(Array.from(chain.op.subarray(0, row.length), (op) => chain.model.ops.source[op])).toEqual(
        row.map((each) => each.op),
      );
      expect([...chain.visitOf.subarray(0, row.length)]).toEqual(row.map((each) => each.visit));
      expect([...chain.swapMs.subarray(0, row.length)]).toEqual(swapsOf(row));
      expect([...chain.workMs.subarray(0, row.length)]).toEqual(workOf(row, swapsOf(row)));
    }
  });

  it('knows where two persons work, and which bags are then poured beside other work', () => {
    for (const day of days) {
      const { problem, visits, row } = day;
      const chain = load(day);
      const shared = visits.map((__, v) => row.some((each) => each.visit === v && each.op.second));
      visits.forEach((__, v) => void expect(chain.isShared(v)).toBe(shared[v]));
      const compartments = problem.rigs[0]?.compartments ?? [];
      compartments.forEach((__, c) => {
        const hopper = compartments.some((each) => each.pours?.into === c);
        expect(chain.poursBeside(c), `compartment ${c}`).toBe(hopper && shared.includes(true));
      });
    }
  });

  it('knows what is still to be used of every compartment', () => {
    for (const day of days) {
      const { problem, row } = day;
      const chain = load(day);
      const compartments = problem.rigs[0]?.compartments ?? [];
      const bags = compartments.findIndex((each) => each.pours !== undefined);
      const beside = compartments[bags]?.pours?.into ?? -1;
      for (let i = 0; i <= row.length; i += 1)
        compartments.forEach(({ capacityParts }, c) => {
          const runs = runsOf(row, i, c === bags ? beside : c);
          const store = capacityParts + (c === beside ? (compartments[bags]?.capacityParts ?? 0) : 0);
          const refills = runs.slice(1).map(({ parts }) => Math.ceil(parts / store));
          const at = i * compartments.length + c;
          const words = `op ${i}, compartment ${c}`;
          expect(chain.nextMaterial[at], words).toBe(runs[0]?.material ?? -1);
          expect(chain.runParts[at], words).toBe(runs[0]?.parts ?? 0);
          if (c === bags) return;
          expect(chain.totalParts[at], words).toBe(total(runs.map((each) => each.parts)));
          expect(chain.laterRefills[at], words).toBe(total(refills));
        });
    }
  });

  it('knows what is still to be used of every stock, rinses with it, and what that weighs', () => {
    for (const day of days) {
      const { problem, row } = day;
      const chain = load(day);
      const compartments = problem.rigs[0]?.compartments ?? [];
      for (let i = 0; i <= row.length; i += 1) {
        const uses = problem.stocks.map((stock, s) => {
          const used = row.slice(i).filter(({ op }) => problem.materials[op.material]?.stock === s);
          const changes = compartments
            .flatMap((_each, c) => runsOf(row, 0, c).slice(0, -1))
            .filter(({ last }) => last >= i);
          const rinses =
            stock.kind === 'water' ? changes.map(({ material }) => problem.materials[material]?.rinseParts ?? 0) : [];
          return total(used.flatMap(({ op }) => op.draws.map((each) => each.parts))) + total(rinses);
        });
        expect([...chain.stockParts.subarray(i * uses.length, (i + 1) * uses.length)], `op ${i}`).toEqual(uses);
        expect(chain.weightLeft[i]).toBe(
          total(uses.map((parts, s) => parts * (problem.stocks[s]?.weightPerPart ?? 0))),
        );
      }
    }
  });

  it('knows how long the rest of the day takes at least, and until when a wait may lie ahead', () => {
    for (const day of days) {
      const { problem, visits, row } = day;
      const chain = load(day);
      const rig = problem.rigs[0];
      const places = problem.placeIds.length;
      const way = (from: number, to: number, table: Int32Array): number => table[from * places + to] as number;
      const work = workOf(row, swapsOf(row));
      const placeOf = (v: number): number => problem.jobs[visits[v]?.job ?? -1]?.place ?? rig?.depot ?? 0;
      // Time from the arrival at visit v to that at the next one, and the way there.
      const stay = visits.map((__, v) => {
        const ops = work.filter((___, i) => row[i]?.visit === v);
        const mode = row.find((each) => each.visit === v)?.mode;
        return (
          total(ops) + (mode?.beforeMs ?? 0) + (mode?.afterMs ?? 0) + way(placeOf(v), placeOf(v + 1), problem.travelMs)
        );
      });
      const metres = visits.map((__, v) => way(placeOf(v), placeOf(v + 1), problem.travelM));
      const opens = visits.map(({ job }) => problem.jobs[job]?.openMs ?? 0);
      /** Time of day at the beginning of which a stop from `first` on opens, less the time to it from an arrival at visit v. */
      const latest = (v: number, first: number): number =>
        visits.length > 10
          ? Number.NEGATIVE_INFINITY
          : Math.max(
              Number.NEGATIVE_INFINITY,
              ...opens.map((ms, k) => (k < first ? Number.NEGATIVE_INFINITY : ms - total(stay.slice(v, k)))),
            );
      visits.forEach((__, v) => {
        expect(chain.arriveLeastMs[v], `visit ${v}`).toBe(total(stay.slice(v)) + (rig?.eveningMs ?? 0));
        expect(chain.arriveWaitBefore[v], `visit ${v}`).toBe(latest(v, v));
      });
      row.forEach(({ visit, mode }, i) => {
        const since = mode.beforeMs + total(work.filter((___, k) => k < i && row[k]?.visit === visit));
        expect(chain.leastMs[i], `op ${i}`).toBe(total(stay.slice(visit)) + (rig?.eveningMs ?? 0) - since);
        expect(chain.leastM[i], `op ${i}`).toBe(total(metres.slice(visit)));
        expect(chain.waitBefore[i], `op ${i}`).toBe(latest(visit, visit + 1) + since);
      });
      expect([chain.leastMs[row.length], chain.leastM[row.length], chain.waitBefore[row.length]]).toEqual([
        0,
        0,
        Number.NEGATIVE_INFINITY,
      ]);
    }
  });
});

it('a second row takes the place of the first', () => {
  const problem = randomProblem(3, { jobs: 30, materials: 4, zones: 2 });
  const model = createRigModel(problem, 0);
  const [used, fresh] = [new Chain(model), new Chain(model)];
  const rows = [[4, 1], Array.from({ length: 30 }, (_, job) => job), [2, 7, 5]];
  for (const jobs of rows)
    used.load(
      jobs,
      jobs.map(() => 0),
      jobs.length,
    );
  fresh.load([2, 7, 5], [0, 0, 0], 3);
  expect(used.loads).toBe(3);
  const cells = (fresh.length + 1) * model.compartments;
  for (const name of ['nextMaterial', 'runParts', 'totalParts', 'laterRefills'] as const)
    expect([...used[name].subarray(0, cells)], name).toEqual([...fresh[name].subarray(0, cells)]);
  for (const name of ['leastMs', 'leastM', 'weightLeft', 'waitBefore'] as const)
    expect([...used[name].subarray(0, fresh.length + 1)], name).toEqual([...fresh[name].subarray(0, fresh.length + 1)]);
  for (const name of ['op', 'visitOf', 'swapMs', 'workMs'] as const)
    expect([...used[name].subarray(0, fresh.length)], name).toEqual([...fresh[name].subarray(0, fresh.length)]);
  expect([...used.start.subarray(0, 4)]).toEqual([...fresh.start.subarray(0, 4)]);
  expect([...used.place.subarray(0, 3)]).toEqual([...fresh.place.subarray(0, 3)]);
});

describe('a row of the small problem', () => {
  const chainOf = (change: (problem: Problem) => Problem, jobs: readonly number[]): Chain => {
    const chain = new Chain(createRigModel(change(smallProblem()), 0));
    chain.load(
      jobs,
      jobs.map(() => 0),
      jobs.length,
    );
    return chain;
  };

  it('keeps a head on its machine while something else is done', () => {
    // Acre's seeder, then Birch with no head or by hand, then Acre's seeder again: its spray has taken the boom in between.
    const birch = (fields: Partial<Op>) =>
      chainOf(
        (small) => ({
          ...small,
          jobs: small.jobs.map((job, j) => {
            const [mode] = job.modes[0] ?? [];
            if (j !== 1 || mode === undefined) return job;
            return { ...job, modes: [[{ ...mode, ops: mode.ops.map((op) => ({ ...op, ...fields })) }], []] };
          }),
        }),
        [0, 1, 0],
      );
    const swap = 300_000;
    expect([...birch({ head: -1 }).swapMs.subarray(0, 5)]).toEqual([0, swap, 0, swap, swap]);
    expect([...birch({ machine: -1, head: 1 }).swapMs.subarray(0, 5)]).toEqual([0, swap, 0, swap, swap]);
    expect([...birch({ head: 1 }).swapMs.subarray(0, 5)]).toEqual([0, swap, swap, 0, swap]);
  });

  it('asks for no fills of a vessel without room', () => {
    const capacity = (parts: number): Chain =>
      chainOf(
        (small) => ({
          ...small,
          rigs: small.rigs.map((rig) => ({
            ...rig,
            compartments: rig.compartments.map((each, c) => (c === 0 ? { ...each, capacityParts: parts } : each)),
          })),
        }),
        [1, 2],
      );
    // After Birch's mix one comes Cedar's mix two: 600 parts.
    expect([2000, 599, 0].map((parts) => capacity(parts).laterRefills[0])).toEqual([1, 2, 0]);
  });
});
