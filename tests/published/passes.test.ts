import { describe, expect, it } from 'vitest';
import { sidesOf, swathNumber } from '../../core/passes/index.ts';
import { type Corner, rectangle } from '../core/geometry/shapes.ts';
import { groundOf } from '../core/passes/grounds.ts';

/**
 * Number of swaths by the sides of the ground. The six figures are those of the test of the modified swath number in
 * Fields2Cover (G. Mier, J. Valente, S. de Bruin, IEEE RA-L 8(4), 2023, doi 10.1109/LRA.2023.3248439; BSD-3-Clause).
 */
describe('number of swaths 0.1 m wide, by the published test', () => {
  const hole: readonly Corner[] = [
    [0.1, 0.1],
    [0.1, 3],
    [0.2, 3.6],
    [0.2, 0.1],
  ];
  const moved = hole.map(([x, y]): Corner => [x + 2, y]);
  const field = (...holes: readonly (readonly Corner[])[]) => sidesOf(groundOf(rectangle(0, 0, 4, 5), holes));

  it.each([
    ['the field along x', field(), 0, 50],
    ['the field along y', field(), 90, 40],
    ['with a hole along x', field(hole), 0, 85],
    ['with a hole along y', field(hole), 90, 41],
    ['with two holes along x', field(hole, moved), 0, 120],
    ['with two holes along y', field(hole, moved), 90, 42],
  ])('%s', (_, sides, degrees, published) => {
    expect(swathNumber(sides, 0.1, (degrees * Math.PI) / 180)).toBeCloseTo(published, 9);
  });
});
