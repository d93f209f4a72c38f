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
  /** The positions that are not joined to any road, so that every pair with them is unknown. */
  readonly offRoad: readonly OffRoad[];
  /** What went wrong when it was made, in words for people; absent where nothing did. */
  readonly trouble?: string;
};

/** Outside what the roads cover, farther from a road than is allowed, or at roads that lead nowhere else. */
export const OFF_ROAD_KINDS = ['outside', 'too-far', 'island'] as const;

/** A place that is joined to no road, and why. */
export type OffRoad = {
  /** The position by its number in the table. */
  readonly row: number;
  readonly kind: (typeof OFF_ROAD_KINDS)[number];
  /** To the nearest road that may be driven, metres; null where none was found near enough to tell. */
  readonly nearestM: number | null;
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

/** The places that are not joined to any road, and why. */
export function placesOffRoad(
  { at, offRoad }: DriveTable,
  places: readonly Place[],
): readonly (OffRoad & { readonly id: string })[] {
  const found = new Map(offRoad.map((each) => [positionKey(at[each.row] ?? [0, 0]), each]));
  return places.flatMap(({ id, at: position }) => {
    const off = found.get(positionKey(position));
    return off === undefined ? [] : [{ ...off, id }];
  });
}

/** Why a place is not joined to any road, as a sentence. */
export function offRoadWords({ kind, nearestM }: OffRoad): string {
  if (kind === 'outside') return 'It lies outside the roads that were imported.';
  if (kind === 'island') return 'The roads at it lead nowhere else, as far as the extract tells.';
  return nearestM === null
    ? 'No road that may be driven is near it.'
    : `The nearest road that may be driven is ${nearestM} m away.`;
}
