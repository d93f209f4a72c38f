import type { Op, Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';

/**
 * The same problem with other numbers: hoppers and their bags before tanks, water last among the stocks, materials and stations in
 * reverse. It costs the same.
 */
export function relabelled(problem: Problem): Problem {
  const stocks = turned(problem.stocks.length);
  const materials = turned(problem.materials.length);
  const stations = turned(problem.stations.length);
  const compartments = problem.rigs.map((rig) => dryFirst(rig));
  const op = (each: Op, rig: number): Op => ({
    ...each,
    material: materials.indexOf(each.material),
    draws: each.draws.map((draw) => ({
      ...draw,
      compartment: compartments[rig]?.indexOf(draw.compartment) ?? -1,
    })),
  });
  return {
    ...problem,
    stocks: picked(problem.stocks, stocks),
    materials: picked(problem.materials, materials).map((each) => ({ ...each, stock: stocks.indexOf(each.stock) })),
    stations: picked(problem.stations, stations).map((each) => ({
      ...each,
      msPerPart: picked(each.msPerPart, stocks),
    })),
    rigs: problem.rigs.map((rig, r) => {
      const order = compartments[r] ?? [];
      return {
        ...rig,
        home: stations.indexOf(rig.home),
        end: stations.indexOf(rig.end),
        compartments: picked(rig.compartments, order).map((each) =>
          each.pours === undefined ? each : { ...each, pours: { ...each.pours, into: order.indexOf(each.pours.into) } },
        ),
      };
    }),
    jobs: problem.jobs.map((job) => ({
      ...job,
      modes: job.modes.map((modes, rig) =>
        modes.map((mode) => ({ ...mode, ops: mode.ops.map((each) => op(each, rig)) })),
      ),
    })),
  };
}

/** [new number]: old number. */
function turned(count: number): readonly number[] {
  return Array.from({ length: count }, (_, k) => count - 1 - k);
}

function dryFirst(rig: ProblemRig): readonly number[] {
  const all = [...rig.compartments.keys()];
  const isDry = (c: number): boolean => rig.compartments[c]?.kind === 'dry';
  return [...all.filter(isDry), ...all.filter((c) => !isDry(c))];
}

function picked<T>(list: readonly T[], order: readonly number[]): readonly T[] {
  return order.map((old) => list[old] as T);
}
