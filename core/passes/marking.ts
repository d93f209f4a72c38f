import { metresToFeet, quantity } from '../units/index.ts';
import type { MarkUse, PassMark } from './types.ts';

/**
 * What a marker takes: foam shows the ends of the straight swaths, since trim passes follow an edge; dye colours all that is sprayed.
 * @param sprayedM way with something coming out; `swathM` of it are straight swaths, metres
 */
export function markUse(mark: PassMark, sprayedM: number, swathM: number): MarkUse {
  const markedM = mark.what === 'foam' ? swathM : sprayedM;
  return { what: mark.what, markedM, flOz: (metresToFeet(quantity<'m'>(markedM)) / 1000) * mark.flOzPer1000Ft };
}
