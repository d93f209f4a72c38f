import type { Compartment, Machine, Rig } from '../../book/index.ts';
import { bagToMsPerPart } from './scale.ts';
import type { ProblemCompartment, Stock } from './types.ts';

/** What a bag is poured into, the more fitting one first. */
const TAKES_BAGS: readonly Compartment['kind'][] = ['hopper', 'seed-box'];

/** Id of the compartment of a machine that its own bags go into; '' where it has none, or no places for bags. */
export function bagsGoInto(machine: Machine): string {
  if (machine.bagPlaces === 0) return '';
  const found = TAKES_BAGS.flatMap((kind) => machine.compartments.filter((each) => each.kind === kind));
  return found[0]?.id ?? '';
}

/** Time for one part of a dry stock at so many minutes a bag, reckoned for the smallest bag of the round. */
export function bagMsPerPart(minutesPerBag: number, stocks: readonly Stock[]): number {
  const times = drySizes(stocks).map((bagParts) => bagToMsPerPart(minutesPerBag, bagParts / 100));
  return Math.max(0, ...times);
}

/** Time for one part of a bag that rides on a machine, from the machine into its hopper. */
export function pourMsPerPart(machine: Machine, rig: Rig, stocks: readonly Stock[]): number {
  return bagMsPerPart(machine.minutesPerBag ?? rig.minutesPerBag, stocks);
}

/**
 * What the bag places of a machine hold, parts. Every place counts for the smallest bag of the round: a larger one fits too, but
 * then a plan never needs more places than there are.
 */
export function bagPlacesParts(machine: Machine, stocks: readonly Stock[]): number {
  const sizes = drySizes(stocks);
  return sizes.length === 0 ? 0 : machine.bagPlaces * Math.min(...sizes);
}

/** The bags of a machine as a compartment. `into`: index of its hopper. */
export function bagCompartment(machine: Machine, rig: Rig, stocks: readonly Stock[], into: number): ProblemCompartment {
  const taken = machine.compartments.some((each) => each.id === 'bags');
  return {
    id: `${machine.id}/${taken ? 'bags beside it' : 'bags'}`,
    kind: 'dry',
    capacityParts: bagPlacesParts(machine, stocks),
    fillMsPerPart: 0,
    pours: { into, msPerPart: pourMsPerPart(machine, rig, stocks) },
  };
}

function drySizes(stocks: readonly Stock[]): readonly number[] {
  return stocks.filter((each) => each.kind === 'dry').map((each) => each.bagParts);
}
