import type { GallonsPerMinute } from '../units/index.ts';
import { flowAtPressure } from './boom.ts';

/** One size of spray tip: its number, colour, and flow at 40 psi, gal/min. */
export type TipSize = { readonly size: string; readonly colour: string; readonly gpmAt40Psi: number };

/**
 * Sizes and colours of ISO 10625. Flows at 40 psi: McCloskey, Andrade-Sanchez and Brown, Nozzles and Droplets: What Do the
 * Colors Mean?, University of Arizona, 2012. Size 10 from memory. The colours say nothing about droplet size.
 */
export const TIP_SIZES: readonly TipSize[] = [
  { size: '01', colour: 'orange', gpmAt40Psi: 0.1 },
  { size: '015', colour: 'green', gpmAt40Psi: 0.15 },
  { size: '02', colour: 'yellow', gpmAt40Psi: 0.2 },
  { size: '025', colour: 'lilac', gpmAt40Psi: 0.25 },
  { size: '03', colour: 'blue', gpmAt40Psi: 0.3 },
  { size: '04', colour: 'red', gpmAt40Psi: 0.4 },
  { size: '05', colour: 'brown', gpmAt40Psi: 0.5 },
  { size: '06', colour: 'grey', gpmAt40Psi: 0.6 },
  { size: '08', colour: 'white', gpmAt40Psi: 0.8 },
  { size: '10', colour: 'light blue', gpmAt40Psi: 1 },
];

/** Flow of a new tip at a pressure (psi), gal/min: from its flow at 40 psi, as `flowAtPressure`. */
export function tipFlow(tip: TipSize, psi: number): GallonsPerMinute {
  return flowAtPressure(tip.gpmAt40Psi, 40, psi);
}
