import type { Issue } from '../base/index.ts';
import type { Property } from '../book/index.ts';
import { type DegreesBox, placeIndex } from '../geometry/index.ts';
import { type Draft, newDraft } from './drafts.ts';
import { findByPlace } from './find-home.ts';
import { type Home, lost, nameHomes, type Outline, outlinesOf, type Part, parkingBox } from './home.ts';
import { openLots } from './lots.ts';
import type { IntakeRecord, LawnRecord } from './record.ts';

/** Where parts of properties go: properties of the file first, then those of the book. */
export type Homes = {
  readonly drafts: () => readonly Draft[];
  /** Gives a part to its properties; how many took it, or the reason why none did. */
  readonly settle: (record: IntakeRecord) => number | Issue;
};

/** The book's properties and the file's drafts as homes for exclusions, gates, parcels and zones. */
export function openHomes(
  drafts: readonly Draft[],
  book: readonly Property[],
  records: readonly IntakeRecord[] = [],
): Homes {
  const all: Draft[] = [...drafts];
  const matched = new Set(drafts.flatMap((each) => each.before ?? []));
  const homes: Home[] = [
    ...drafts.map((draft): Home => ({ fileId: draft.fileId, property: draft.before, draft })),
    ...book.filter((each) => !matched.has(each)).map((property): Home => ({ fileId: null, property, draft: null })),
  ];
  const lots = openLots(records);
  const outlines = homes.flatMap((home) => outlinesOf(home));
  const index = placeIndex(outlines.map((each) => each.box));
  const parked = placeIndex(homes.map((home) => parkingBox(home)));
  const named = nameHomes(homes);
  const add = (home: Home, put: (draft: Draft) => void): void => {
    if (home.draft === null) {
      home.draft = newDraft(null, home.property);
      all.push(home.draft);
    }
    put(home.draft);
  };
  const around = (box: DegreesBox, margin = 0): readonly Outline[] =>
    index.meeting(box, margin).flatMap((each) => outlines[each] ?? []);
  const within = (box: DegreesBox): readonly Home[] => parked.meeting(box).flatMap((each) => homes[each] ?? []);
  const find = (record: Part): readonly Home[] | Issue => {
    if (record.joins !== null) {
      const home = named.get(record.joins.toLowerCase());
      return home === undefined ? lost(record) : [home];
    }
    const found = findByPlace(record, around, within, drafts.length === 1 ? (homes[0] ?? null) : null);
    return found.length === 0 ? lost(record) : found;
  };
  const settleZone = (record: LawnRecord): number | Issue => {
    const found = find(record);
    const [home] = Array.isArray(found) ? (found as readonly Home[]) : [];
    if (home !== undefined) {
      add(home, (draft) => draft.lawns.push(record));
      return 1;
    }
    const draft = lots.take(record, all);
    if (draft === null) return found as Issue;
    draft.lawns.push(record);
    return 1;
  };
  const settle = (record: IntakeRecord): number | Issue => {
    if (record.kind === 'refused') return 0;
    if (record.kind === 'lawn') return settleZone(record);
    if (record.kind === 'parcel' && lots.isTaken(record)) return 1;
    const found = find(record);
    if (!Array.isArray(found)) return found as Issue;
    for (const home of found as readonly Home[]) add(home, (draft) => putInto(draft, record));
    return found.length;
  };
  return { drafts: () => all, settle };
}

function putInto(draft: Draft, record: Exclude<Part, LawnRecord>): void {
  if (record.kind === 'exclusion') draft.exclusions.push(record);
  else if (record.kind === 'gate') draft.gates.push(record);
  else draft.parcels.push(record);
}
