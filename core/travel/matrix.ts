import type { TravelMatrix } from '../book/index.ts';
import type { TravelPort } from './types.ts';

/**
 * Travel from an imported matrix. A pair is known where both places are in the matrix and it gives a duration for that
 * direction (the distance may be missing); every other pair is answered null. Rounded up to whole seconds and metres.
 */
export function matrixPort(matrix: TravelMatrix): TravelPort {
  const rowOf = new Map<string, number>();
  matrix.placeIds.forEach((id, row) => {
    if (!rowOf.has(id)) rowOf.set(id, row);
  });
  return {
    source: 'matrix',
    between: (from, to) => {
      const row = rowOf.get(from.id);
      const column = rowOf.get(to.id);
      if (row === undefined || column === undefined) return null;
      const durationSec = matrix.durationSec[row]?.[column] ?? null;
      const distanceM = matrix.distanceM[row]?.[column] ?? null;
      if (durationSec === null) return null;
      return { durationSec: Math.ceil(durationSec), distanceM: distanceM === null ? null : Math.ceil(distanceM) };
    },
  };
}
