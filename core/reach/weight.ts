import type { Machine } from '../book/index.ts';
import { type Pounds, quantity, WATER_POUNDS_PER_GALLON } from '../units/index.ts';

/** Weight of a liquid: gallons x pounds per gallon. Source: S. Zorno, Liquid transport, SIMA. */
export function liquidLb(gallons: number, lbPerGallon: number = WATER_POUNDS_PER_GALLON): Pounds {
  return quantity<'lb'>(gallons * lbPerGallon);
}

/** Weight of a machine with every tank, hopper and seed box full, pounds: the most that its wheels ever carry. */
export function machineFullLb(machine: Machine): Pounds {
  const contents = machine.compartments.reduce(
    (sum, each) => sum + (each.kind === 'tank' ? liquidLb(each.capacityGal) : each.capacityLb),
    0,
  );
  return quantity<'lb'>(machine.emptyWeightLb + contents);
}
