import type { Mode, Problem } from '../problem/index.ts';
import type { Visit } from '../refills/index.ts';
import { lift, NO_LIMIT } from './lift.ts';
import type { Limit } from './types.ts';

/** Steps in which a limit is asked for: a whole pound, bag or gallon (a whole pound for dry goods). */
const POUND = 10_000;
const UNIT_PARTS = 100;

/** Limits of what a rig carries that may keep a job out; what the job does not draw on is no limit for it. */
export function carryingLimits(problem: Problem, rig: number, modes: readonly Mode[]): readonly Limit[] {
  const ops = modes.flatMap((mode) => mode.ops);
  const draws = ops.flatMap((op) => op.draws);
  if (draws.length === 0) return [];
  const stocks = new Set(
    ops.flatMap((op) => (op.draws.length === 0 ? [] : [problem.materials[op.material]?.stock ?? -1])),
  );
  const kinds = new Set([...stocks].map((stock) => problem.stocks[stock]?.kind));
  const home = problem.stations[problem.rigs[rig]?.home ?? 0];
  const missing = [...stocks].filter((stock) => (home?.msPerPart[stock] ?? -1) < 0 && stock >= 0);
  const compartments = [...new Set(draws.map((draw) => draw.compartment))].sort((left, right) => left - right);
  return [
    { kind: 'payload' },
    ...(kinds.has('dry') ? [{ kind: 'bag-places' } as const] : []),
    ...(kinds.has('water') ? [{ kind: 'nurse-tank' } as const] : []),
    ...compartments.map((compartment): Limit => ({ kind: 'compartment', compartment })),
    ...missing.map((stock): Limit => ({ kind: 'supply', stock })),
  ];
}

/** The problem with all of these limits away at once. */
export function liftAll(problem: Problem, rig: number, limits: readonly Limit[]): Problem {
  return limits.reduce((lifted, limit) => lift(lifted, rig, limit, NO_LIMIT), problem);
}

/** Hours of stations that are not open all day. */
export function stationLimits(problem: Problem): readonly Limit[] {
  return problem.stations.flatMap((each, station): Limit[] =>
    each.openMs > 0 || each.closeMs < 86_400_000 ? [{ kind: 'station-hours', station }] : [],
  );
}

/** How a limit is counted: its step, and so many of it that no day can use more. */
export type Scale = { readonly step: number; readonly most: number };

/** What a limit can be asked for at most when a row of visits is done; step 0 for limits that are there or not. */
export function scaleOf(problem: Problem, rig: number, limit: Limit, visits: readonly Visit[]): Scale {
  const uses = usesOf(problem, rig, visits);
  switch (limit.kind) {
    case 'payload': {
      const heaviest = Math.max(...problem.stocks.map((each) => each.weightPerPart));
      return scale(POUND, sum(uses.map((each) => each.parts)) * heaviest);
    }
    case 'bag-places':
      return scale(1, sum(uses.map((each) => (each.bagParts > 0 ? Math.ceil(each.parts / each.bagParts) : 0))));
    case 'nurse-tank':
      return scale(UNIT_PARTS, sum(uses.map((each) => (each.bagParts === 0 ? each.parts : 0))));
    case 'compartment':
      return scale(
        UNIT_PARTS,
        sum(uses.map((each) => (each.compartments.includes(limit.compartment) ? each.parts : 0))),
      );
    default:
      return { step: 0, most: 0 };
  }
}

const scale = (step: number, amount: number): Scale => ({ step, most: Math.max(1, Math.ceil(amount / step)) });
const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

type Use = { readonly parts: number; readonly bagParts: number; readonly compartments: readonly number[] };

/** Parts of each op, with a rinse. */
function usesOf(problem: Problem, rig: number, visits: readonly Visit[]): readonly Use[] {
  const ops = visits.flatMap((visit) => problem.jobs[visit.job]?.modes[rig]?.[visit.mode]?.ops ?? []);
  return ops.flatMap((op) => {
    if (op.draws.length === 0) return [];
    const material = problem.materials[op.material];
    const parts = sum(op.draws.map((draw) => draw.parts)) + (material?.rinseParts ?? 0);
    const bagParts = problem.stocks[material?.stock ?? -1]?.bagParts ?? 0;
    return [{ parts, bagParts, compartments: op.draws.map((draw) => draw.compartment) }];
  });
}
