import { placeIndex } from '../geometry/index.ts';
import { type Draft, newDraft } from './drafts.ts';
import { mostlyWithin } from './find-home.ts';
import type { IntakeRecord, LawnRecord, ParcelRecord } from './record.ts';

/** Lots of the file that no property has: turf that lies in one makes a property of it. */
export function openLots(records: readonly IntakeRecord[]) {
  const parcels = records.flatMap((each) => (each.kind === 'parcel' ? [each] : []));
  const index = placeIndex(parcels.map((each) => each.ground.box));
  const taken = new Map<ParcelRecord, Draft>();
  return {
    isTaken: (parcel: ParcelRecord) => taken.has(parcel),
    take: (zone: LawnRecord, all: Draft[]): Draft | null => {
      const near = zone.ground === null ? [] : index.meeting(zone.ground.box).flatMap((each) => parcels[each] ?? []);
      const parcel = near.find((each) => zone.ground !== null && mostlyWithin(zone.ground, each.ground));
      if (parcel === undefined) return null;
      const known = taken.get(parcel);
      if (known !== undefined) return known;
      const draft = newDraft(parcel.id);
      draft.parcels.push(parcel);
      taken.set(parcel, draft);
      all.push(draft);
      return draft;
    },
  };
}
