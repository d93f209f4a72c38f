import type { Sides } from './sides.ts';

/**
 * Number of swaths of a width that ground takes in a direction, by its sides alone: sum of |side| |sin(side - direction)|
 * over twice the width. Source: the modified swath number of G. Mier, J. Valente, S. de Bruin, Fields2Cover, IEEE RA-L 8(4),
 * 2023, doi 10.1109/LRA.2023.3248439.
 * @param angle direction of the swaths, radians anticlockwise from east
 */
export function swathNumber(sides: Sides, widthM: number, angle: number): number {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  let sum = 0;
  for (let at = 0; at < sides.length; at += 4) {
    const x = (sides[at + 2] ?? 0) - (sides[at] ?? 0);
    const y = (sides[at + 3] ?? 0) - (sides[at + 1] ?? 0);
    sum += Math.abs(y * cosine - x * sine);
  }
  return sum / 2 / widthM;
}
