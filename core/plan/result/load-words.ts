import { formatArea, formatVolume, formatWeight, quantity } from '../../units/index.ts';
import type { Problem, ProblemRig } from '../problem/index.ts';
import { fromParts } from './amounts.ts';
import type { PlanLoad } from './types.ts';

/** How far a level may be from full and still count as full, gal or lb. */
const NEARLY = 0.005;

/** The loads with the reason of each one's size. */
export function withReasons(problem: Problem, rig: ProblemRig, loads: readonly PlanLoad[]): readonly PlanLoad[] {
  return loads.map((load, at) => {
    const next = loads.slice(at + 1).find((each) => each.compartmentId === load.compartmentId);
    const more = next?.materialId === load.materialId && next.sumpGal === 0 ? next : undefined;
    return { ...load, why: more === undefined ? lastWords(problem, load) : earlierWords(rig, load, more) };
  });
}

function earlierWords(rig: ProblemRig, load: PlanLoad, next: PlanLoad): string {
  const capacity = fromParts(rig.compartments.find((each) => each.id === load.compartmentId)?.capacityParts ?? 0);
  const full = load.beforeGal + load.beforeLb + load.volumeGal + load.weightLb >= capacity - NEARLY;
  return full ? `Filled to the top; load ${next.number} follows.` : `As much as is wanted before load ${next.number}.`;
}

/** The last load of a material in a compartment leaves as little as can be. */
function lastWords(problem: Problem, load: PlanLoad): string {
  const left = load.leftGal + load.leftLb;
  const used = load.beforeGal + load.beforeLb + load.volumeGal + load.weightLb - left;
  const measure = `Made to measure: ${formatArea(quantity(load.coversSqFt), 'us')} take ${amount(load, used)}`;
  if (left <= NEARLY) return `${measure}, and nothing is left over.`;
  const reserve = problem.materials.find((each) => each.id === load.materialId)?.reserveParts;
  const allowed = reserve === undefined ? '' : `, ${amount(load, fromParts(reserve))} may be`;
  return `${measure}; ${amount(load, left)} is left over${allowed}.`;
}

function amount(load: PlanLoad, value: number): string {
  return load.kind === 'tank' ? formatVolume(quantity(value), 'us') : formatWeight(quantity(value), 'us');
}
