import type { MapArea } from './blocks.ts';
import { hatchDots, hatchLines } from './map-hatch.ts';
import type { Spot } from './map-labels.ts';

export type Rings = readonly (readonly Spot[])[];

/** Between lines and dots of what fills an area, px. */
const HATCH_PX = 6;
const CROSS_PX = 4.5;
const DOT_PX = 5;
const TWICE_PX = 4;
const MISSED_PX = 2.2;

/**
 * What fills an area so that grey paper tells it from others: lines over turf, crossed lines over what is left out, dots over water;
 * fine dots over what is gone over twice, crossed lines so close that they print dark over what is not reached.
 */
export function fillSvg(look: MapArea['look'] | 'twice' | 'missed', rings: Rings): string {
  switch (look) {
    case 'turf':
      return `<path class="thread" d="${hatchLines(rings, HATCH_PX, 45)}"/>`;
    case 'exclusion':
      return `<path class="thread" d="${crossed(rings, CROSS_PX)}"/>`;
    case 'water':
      return `<path class="dot" d="${hatchDots(rings, DOT_PX)}"/>`;
    case 'twice':
      return `<path class="pass-twice" d="${hatchDots(rings, TWICE_PX)}"/>`;
    case 'missed':
      return `<path class="missed-thread" d="${crossed(rings, MISSED_PX)}"/>`;
    case 'parcel':
    case 'edge':
      return '';
  }
}

function crossed(rings: Rings, spacing: number): string {
  return `${hatchLines(rings, spacing, 45)}${hatchLines(rings, spacing, -45)}`;
}
