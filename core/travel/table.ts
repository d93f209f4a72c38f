import type { TravelMatrix, TravelSettings } from '../book/index.ts';
import { type DriveTable, roadPort } from './drive-table.ts';
import { type EstimatedLeg, type EstimatePort, estimatePort } from './estimate.ts';
import { matrixPort } from './matrix.ts';
import type { Leg, Place, TravelPort, TravelTable } from './types.ts';

/** Longer ways than 23 days are one as good as another: nobody drives them, and in milliseconds they still are whole 32-bit numbers. */
const MOST_SEC = 2_000_000;
const MOST_M = 2_000_000_000;

/**
 * Travel between all places: from the matrix where it knows the pair, else by roads, else the estimate, and a mark that says which.
 * The way from a place to itself is 0 and no estimate.
 */
export function buildTravelTable(
  places: readonly Place[],
  settings: TravelSettings,
  matrix: TravelMatrix | undefined,
  roads?: DriveTable | undefined,
): TravelTable {
  const ports = [
    ...(matrix === undefined ? [] : [matrixPort(matrix)]),
    ...(roads === undefined ? [] : [roadPort(roads)]),
  ];
  return tableFrom(places, ports, estimatePort(settings));
}

/** The same from any ports: the first that knows a pair answers, the estimate where none does and for missing distances. */
export function tableFrom(places: readonly Place[], ports: readonly TravelPort[], estimate: EstimatePort): TravelTable {
  const count = places.length;
  const durationSec = new Int32Array(count * count);
  const distanceM = new Int32Array(count * count);
  const estimated = new Uint8Array(count * count);
  const distanceEstimated = new Uint8Array(count * count);
  const pairs = { matrix: 0, roads: 0 };
  const fill = (cell: number, found: FoundLeg | null, guess: EstimatedLeg | null): void => {
    const known = found?.leg ?? null;
    if (found !== null) pairs[found.source] += 1;
    durationSec[cell] = Math.min(MOST_SEC, known?.durationSec ?? guess?.durationSec ?? 0);
    distanceM[cell] = Math.min(MOST_M, known?.distanceM ?? guess?.distanceM ?? 0);
    estimated[cell] = known === null ? 1 : 0;
    distanceEstimated[cell] = known === null || known.distanceM === null ? 1 : 0;
  };
  // The estimate is the same both ways, and each pair of places asks for it once at most.
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column < row; column += 1) {
      const [here, there] = [places[row] as Place, places[column] as Place];
      const out = firstKnown(ports, here, there);
      const back = firstKnown(ports, there, here);
      const whole = out !== null && back !== null && out.leg.distanceM !== null && back.leg.distanceM !== null;
      const guess = whole ? null : estimate.between(here, there);
      fill(row * count + column, out, guess);
      fill(column * count + row, back, guess);
    }
  }
  return {
    places,
    durationSec,
    distanceM,
    estimated,
    distanceEstimated,
    matrixPairs: pairs.matrix,
    roadPairs: pairs.roads,
  };
}

type FoundLeg = { readonly leg: Leg; readonly source: TravelPort['source'] };

function firstKnown(ports: readonly TravelPort[], from: Place, to: Place): FoundLeg | null {
  for (const port of ports) {
    const leg = port.between(from, to);
    if (leg !== null) return { leg, source: port.source };
  }
  return null;
}
