import { fingerprint, ok, type Progress, type Result, type StopSignal } from '../../base/index.ts';
import type { Book, Position } from '../../book/index.ts';
import {
  type RoadMap,
  type RoadNetwork,
  type RoadTable,
  roadNetwork,
  roadTable,
  type SnapOptions,
  type Snapping,
  snapPlaces,
} from '../../roads/index.ts';
import { type DriveTable, NO_WAY, type OffRoad, positionKey } from '../index.ts';
import { driveFactors, mostMetres, roadSettingsOf } from './settings.ts';

/** The roads of a map as a book drives them. */
export type DrivenRoads = { readonly network: RoadNetwork; readonly snap: SnapOptions; readonly credit: string };

/** @param withLearned false to leave out what was learned from drives, such as to learn anew */
export function drivenRoads(map: RoadMap, book: Book, withLearned = true): DrivenRoads {
  const { roads } = book;
  const { attribution, licence } = map.about;
  return {
    network: roadNetwork(map, roadSettingsOf(roads), driveFactors(book, withLearned)),
    snap: { mostM: mostMetres(roads), side: roads?.kerbSide === true ? 'kerb' : 'either' },
    credit: [attribution, licence].filter((each) => each !== '').join(', '),
  };
}

/** Every position that a rig of the book may drive to or from, each once. */
export function drivePositions(book: Book): readonly Position[] {
  const all = [...book.fillPoints.map((each) => each.at), ...book.properties.map((each) => each.parking)];
  return [...new Map(all.map((at) => [positionKey(at), at])).values()];
}

/** What a table made of these roads is known by. */
export function drivesMadeFrom({ network, snap }: DrivenRoads): string {
  return fingerprint({ roads: network.fingerprint, snap });
}

/** What drive times are made with. */
export type DriveOptions = {
  /** A table made before; what it knows is not searched for again, where it was made from the same roads. */
  readonly known?: DriveTable | undefined;
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
};

/** Drive times between all positions by road, whole seconds and metres, rounded up. Error: 'cancelled'. */
export function driveTable(
  roads: DrivenRoads,
  at: readonly Position[],
  { known, ...options }: DriveOptions = {},
): Result<DriveTable> {
  const madeFrom = drivesMadeFrom(roads);
  const places = snapAll(roads, at);
  const before = known?.madeFrom === madeFrom ? earlier(roads, known) : undefined;
  const found = roadTable(roads.network, places, before === undefined ? options : { ...options, known: before });
  if (!found.ok) return found;
  return ok({
    madeFrom,
    credit: roads.credit,
    at,
    durationSec: wholes(found.value.durationDs),
    distanceM: wholes(found.value.distanceDm),
    offRoad: places.flatMap((each, row): OffRoad[] =>
      each.kind === 'snapped' ? [] : [{ row, kind: each.kind, nearestM: each.nearestM }],
    ),
  });
}

export function snapAll({ network, snap }: DrivenRoads, at: readonly Position[]): readonly Snapping[] {
  return snapPlaces(
    network,
    at.map((position) => ({ id: positionKey(position), at: position })),
    snap,
  );
}

const TENTHS = 10;

function earlier(roads: DrivenRoads, { at, durationSec, distanceM }: DriveTable): RoadTable {
  const tenths = (wholesOf: Int32Array): Int32Array => wholesOf.map((each) => (each < 0 ? NO_WAY : each * TENTHS));
  return {
    places: snapAll(roads, at),
    network: roads.network.fingerprint,
    durationDs: tenths(durationSec),
    distanceDm: tenths(distanceM),
  };
}

function wholes(tenths: Int32Array): Int32Array {
  return tenths.map((each) => (each < 0 ? NO_WAY : Math.ceil(each / TENTHS)));
}
