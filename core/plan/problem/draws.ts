import type { ZoneDemand } from '../../demand/index.ts';
import { demandParts } from './scale.ts';
import type { Draw } from './types.ts';

/** What a task takes out of a compartment, `factor` times its demand; null where there is none. */
export function drawsOn(compartment: number, demand: ZoneDemand, factor: number): readonly Draw[] | null {
  if (demand.what === 'aerate') return [];
  if (compartment < 0) return null;
  const amount = factor * (demand.what === 'spray' ? demand.volumeGal : demand.weightLb);
  return [{ compartment, parts: demandParts(amount) }];
}
