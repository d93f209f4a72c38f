import type { TravelMatrix, TravelSettings } from '../book/index.ts';
import { type EstimatePort, estimatePort } from './estimate.ts';
import { matrixPort } from './matrix.ts';
import type { Leg, Place, TravelPort, TravelTable } from './types.ts';

/**
 * Travel between all places: from the matrix where it knows the pair, else the estimate, and a mark that says which.
 * The way from a place to itself is 0 and no estimate.
 */
export function buildTravelTable(
  places: readonly Place[],
  settings: TravelSettings,
  matrix: TravelMatrix | undefined,
): TravelTable {
  const ports = matrix === undefined ? [] : [matrixPort(matrix)];
  return tableFrom(places, ports, estimatePort(settings));
}

/** The same from any ports: the first that knows a pair answers, the estimate where none does and for missing distances. */
export function tableFrom(places: readonly Place[], ports: readonly TravelPort[], estimate: EstimatePort): TravelTable {
  const count = places.length;
  const durationSec = new Int32Array(count * count);
  const distanceM = new Int32Array(count * count);
  const estimated = new Uint8Array(count * count);
  const distanceEstimated = new Uint8Array(count * count);
  places.forEach((from, row) => {
    places.forEach((to, column) => {
      if (row === column) return;
      const cell = row * count + column;
      const known = firstKnown(ports, from, to);
      if (known !== null && known.distanceM !== null) {
        durationSec[cell] = known.durationSec;
        distanceM[cell] = known.distanceM;
        return;
      }
      const guess = estimate.between(from, to);
      durationSec[cell] = known?.durationSec ?? guess.durationSec;
      distanceM[cell] = guess.distanceM;
      estimated[cell] = known === null ? 1 : 0;
      distanceEstimated[cell] = 1;
    });
  });
  return { places, durationSec, distanceM, estimated, distanceEstimated };
}

function firstKnown(ports: readonly TravelPort[], from: Place, to: Place): Leg | null {
  for (const port of ports) {
    const answer = port.between(from, to);
    if (answer !== null) return answer;
  }
  return null;
}
