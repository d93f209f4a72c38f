import type { Position, Property } from '../../book/index.ts';
import { assumedParking } from '../../formats/index.ts';
import type { Draft } from '../drafts.ts';
import { samePlace } from '../same-outline.ts';
import type { Merged } from './shape.ts';

export type Parking = {
  readonly at: Position;
  readonly placedBy: Property['placedBy'] | null;
  readonly isAssumed: boolean;
};
export type FindPlace = (address: string) => Position | null;

/** Where the rig parks at a new property; null where neither file nor street table has a place. */
export function parkingOf(draft: Draft, findPlace: FindPlace | undefined): Parking | null {
  const given = givenParking(draft);
  if (given !== null) return { at: given, placedBy: 'file', isAssumed: false };
  const gate = draft.gates.find((each) => each.at !== null)?.at ?? null;
  const turf = draft.lawns.flatMap((each) => each.ground?.geometry ?? []);
  const lots = draft.parcels.map((each) => each.ground.geometry);
  if (turf.length + lots.length > 0) {
    const at = assumedParking([...turf, ...lots], gate);
    if (at !== null) return { at, placedBy: null, isAssumed: true };
  }
  const address = draft.lawns.find((each) => each.address !== null)?.address ?? null;
  const found = address === null || findPlace === undefined ? null : findPlace(address);
  return found === null ? null : { at: found, placedBy: 'address-range', isAssumed: false };
}

/** A property with the parking point of the file, unless it was put where it is by hand. */
export function mergeParking(before: Property, draft: Draft): Merged<Property> {
  const given = givenParking(draft);
  if (given === null || samePlace(given, before.parking)) return { value: before, words: [] };
  if (before.placedBy === 'hand') {
    return { value: before, words: ['parking point stays where it was put by hand'] };
  }
  return { value: { ...before, parking: given, placedBy: 'file' }, words: ['parking point'] };
}

function givenParking(draft: Draft): Position | null {
  return (
    draft.lawns.find((each) => each.parking !== null)?.parking ??
    draft.lawns.find((each) => each.at !== null)?.at ??
    null
  );
}
