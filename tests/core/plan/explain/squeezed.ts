import type { Limit } from '../../../../core/plan/explain/index.ts';
import type { Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { placeRefills, type Solution } from '../../../../core/plan/refills/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { randomProblem } from '../random-problem.ts';

export type Squeezed = { readonly problem: Problem; readonly solution: Solution };

type Squeeze = { readonly most: number; readonly apply: (problem: Problem, amount: number) => Problem };

const onRig = (problem: Problem, change: (rig: ProblemRig) => Partial<ProblemRig>): Problem => ({
  ...problem,
  rigs: problem.rigs.map((rig) => ({ ...rig, ...change(rig) })),
});

/** Tanks of 8 gal, or hoppers of 20 lb: what is drawn on has to be refilled. */
const small = (rig: ProblemRig, kind: 'tank' | 'dry'): ProblemRig['compartments'] =>
  rig.compartments.map((each) =>
    each.kind === kind ? { ...each, capacityParts: kind === 'tank' ? 800 : 2000 } : each,
  );

/** One limit of a rig set anew; everything that is carried is ample but for it. */
const SQUEEZES: Readonly<Partial<Record<Limit['kind'], Squeeze>>> = {
  time: {
    most: 1200,
    apply: (problem, minutes) => onRig(problem, () => ({ shiftMs: minutes * 60_000, overtimeMs: 0 })),
  },
  payload: { most: 4000, apply: (problem, pounds) => onRig(problem, () => ({ cargoLimit: pounds * 10_000 })) },
  'bag-places': {
    most: 60,
    apply: (problem, bags) => onRig(problem, (rig) => ({ bagPlaces: bags, compartments: small(rig, 'dry') })),
  },
  'nurse-tank': {
    most: 300,
    apply: (problem, gallons) =>
      onRig(problem, (rig) => ({ nurseParts: gallons * 100, compartments: small(rig, 'tank') })),
  },
  compartment: {
    most: 300,
    apply: (problem, units) =>
      onRig(problem, (rig) => ({
        nurseParts: 0,
        bagPlaces: 0,
        compartments: rig.compartments.map((each) => ({ ...each, capacityParts: units * 100 })),
      })),
  },
};

/**
 * An invented day of six stops whose fill points are closed, with one stop taken out again, and with one limit no larger than the
 * rest of the day needs.
 */
export function squeezed(seed: number, kind: Limit['kind']): Squeezed {
  const roomy = closed(
    randomProblem(seed, { jobs: 6, stations: 0, zones: 1, largest: 8, materials: 2, heavy: 0, noNurse: 0, hours: 20 }),
  );
  const whole = solve(roomy, { seed, iterations: 20 });
  const visits = whole.routes[0]?.visits ?? [];
  const kept = visits.slice(0, -1);
  const out = visits.at(-1)?.job ?? 0;
  const squeeze = SQUEEZES[kind];
  if (squeeze === undefined) throw new RangeError(`no squeeze for ${kind}`);
  let amount = squeeze.most;
  while (placeRefills(squeeze.apply(roomy, amount - 1), 0, kept).kind === 'placed') amount -= 1;
  const problem = squeeze.apply(roomy, amount);
  const placement = placeRefills(problem, 0, kept);
  if (placement.kind !== 'placed') throw new RangeError('the rest of the day does not hold');
  return { problem, solution: { ...whole, routes: [placement.outcome], unserved: [out] } };
}

/** The problem with ample stock aboard and fill points that never open. */
export function closed(problem: Problem): Problem {
  return {
    ...onRig(problem, () => ({ nurseParts: 30_000, bagPlaces: 60 })),
    stations: problem.stations.map((each) => ({ ...each, openMs: 0, closeMs: 0 })),
  };
}
