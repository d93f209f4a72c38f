import type { Position } from '../book/index.ts';
import type { Leg, Place, TravelPort } from './types.ts';

/** Travel along roads between positions: from a road graph, or from an engine that the user runs. */
export type DriveTable = {
  /** Fingerprint of what the figures were reckoned from: roads, speeds, limits, engine. */
  readonly madeFrom: string;
  /** Whose roads they are, to be shown where the figures are; '' where nobody is to be named. */
  readonly credit: string;
  readonly at: readonly Position[];
  /** Row-major [from * count + to], whole seconds; -1 where no way is known. */
  readonly durationSec: Int32Array;
  /** The same in whole metres; -1 where unknown. */
  readonly distanceM: Int32Array;
  /** Per position: -1 where it lies at a road, else how far the nearest one is in metres. */
  readonly offRoadM: Int32Array;
  /** What went wrong when it was made, in words for people; absent where nothing did. */
  readonly trouble?: string;
};

/** What stands in a cell without a known way. */
export const NO_WAY = -1;

/** Two places at one position are one place to a road. */
export function positionKey([longitude, latitude]: Position): string {
  return `${longitude} ${latitude}`;
}

/** Travel by a road table. A place that was moved since the table was made is unknown to it, and so is every pair with it. */
export function roadPort(table: DriveTable): TravelPort {
  const rows = new Map(table.at.map((at, row) => [positionKey(at), row]));
  const found = new Map<Place, number>();
  const rowOf = (place: Place): number => {
    const known = found.get(place);
    if (known !== undefined) return known;
    const row = rows.get(positionKey(place.at)) ?? NO_WAY;
    found.set(place, row);
    return row;
  };
  const count = table.at.length;
  return {
    source: 'roads',
    between: (from, to): Leg | null => {
      const [row, column] = [rowOf(from), rowOf(to)];
      if (row < 0 || column < 0) return null;
      const durationSec = table.durationSec[row * count + column] ?? NO_WAY;
      const distanceM = table.distanceM[row * count + column] ?? NO_WAY;
      return durationSec < 0 ? null : { durationSec, distanceM: distanceM < 0 ? null : distanceM };
    },
  };
}

/** The places that lie too far from any road, with the distance to the nearest one in metres. */
export function placesOffRoad(table: DriveTable, places: readonly Place[]): readonly { id: string; metres: number }[] {
  const metres = new Map(table.at.map((at, row) => [positionKey(at), table.offRoadM[row] ?? NO_WAY]));
  return places.flatMap((each) => {
    const off = metres.get(positionKey(each.at)) ?? NO_WAY;
    return off < 0 ? [] : [{ id: each.id, metres: off }];
  });
}
