import { quantity, type SquareFeet } from '../units/index.ts';

/**
 * Ground area of a slope from its area on the map: plan / cos(slope). A plane of the given slope is assumed
 * (plane trigonometry; +0.5 % at a 10 % grade, +2 % at 20 %).
 */
export function groundArea(plan: SquareFeet, slopeDeg: number): SquareFeet {
  return quantity<'ft2'>(plan / Math.cos((slopeDeg * Math.PI) / 180));
}
