import { type Issue, issue } from '../base/index.ts';
import type { AreaGeometry, Position, Property } from '../book/index.ts';
import {
  type DegreesBox,
  distanceMetres,
  nearestOnOutline,
  outlinesOverlap,
  placeIndex,
  quickLie,
} from '../geometry/index.ts';
import { feetToMetres, quantity } from '../units/index.ts';
import { type Draft, newDraft } from './drafts.ts';
import { groundsOf, likeness, pointBox } from './likeness.ts';
import { newName } from './names.ts';
import type { ExclusionRecord, GateRecord, Ground, IntakeRecord, LawnRecord, ParcelRecord } from './record.ts';
import { sameOutline } from './same-outline.ts';

/** A gate farther than this from every outline belongs to none of them, metres. Common practice, no source. */
const FARTHEST_GATE_M = 30;
/** More than that in degrees of latitude and of longitude, up to 75 degrees north. */
const GATE_MARGIN_DEG = 0.0012;

type Home = {
  readonly fileId: string | null;
  readonly property: Property | null;
  /** Made when the first record goes there, for a property of the book that the file does not speak of otherwise. */
  draft: Draft | null;
};
type Outline = Ground & { readonly home: Home };

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

type Part = LawnRecord | ExclusionRecord | GateRecord | ParcelRecord;

function putInto(draft: Draft, record: Exclude<Part, LawnRecord>): void {
  if (record.kind === 'exclusion') draft.exclusions.push(record);
  else if (record.kind === 'gate') draft.gates.push(record);
  else draft.parcels.push(record);
}

/** Lots of the file that no property has: turf that lies in one makes a property of it. */
function openLots(records: readonly IntakeRecord[]) {
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

function outlinesOf(home: Home): readonly Outline[] {
  const own = home.draft?.lawns.flatMap((each) => each.ground ?? []) ?? [];
  const lot = home.draft?.parcels.map((each) => each.ground) ?? [];
  const known = (home.property === null ? [] : groundsOf(home.property)).filter(
    (each) => !own.some((other) => sameOutline(other.geometry, each.geometry)),
  );
  return [...own, ...lot, ...known].map((ground) => ({ ...ground, home }));
}

function parkingBox(home: Home): DegreesBox | null {
  const at = home.property?.parking ?? home.draft?.lawns.find((each) => each.at !== null)?.at ?? null;
  return at === null ? null : pointBox({ parking: at });
}

/** Homes by their ids, and by names that only one of them has. */
function nameHomes(homes: readonly Home[]): ReadonlyMap<string, Home> {
  const named = new Map<string, Home>();
  const seen = new Set<string>();
  for (const home of homes) {
    const name = (home.property?.name ?? (home.draft === null ? null : newName(home.draft)) ?? '').toLowerCase();
    if (seen.has(name)) named.delete(name);
    else if (name !== '') named.set(name, home);
    seen.add(name);
  }
  for (const home of homes.toReversed()) {
    for (const id of [home.property?.id, home.fileId]) if (id) named.set(id.toLowerCase(), home);
  }
  return named;
}

type Around = (box: DegreesBox, margin?: number) => readonly Outline[];

function findByPlace(
  record: Part,
  around: Around,
  within: (box: DegreesBox) => readonly Home[],
  only: Home | null,
): readonly Home[] {
  switch (record.kind) {
    case 'exclusion':
      return homesUnder(record, around);
    case 'gate':
      return record.at === null ? (only === null ? [] : [only]) : nearestHome(record.at, around);
    case 'parcel':
      return homesInLot(record.ground, around, within);
    case 'lawn': {
      if (record.ground === null) return [];
      const { ground } = record;
      const close = around(ground.box).flatMap((each) => {
        const alike = likeness(ground, each);
        return alike === null ? [] : [{ home: each.home, alike }];
      });
      return close.sort((left, right) => right.alike - left.alike).map((each) => each.home);
    }
  }
}

/** Every property whose turf the exclusion, grown by its keep-away distance, takes something of. */
function homesUnder({ ground, keepAwayFt }: ExclusionRecord, around: Around): readonly Home[] {
  const margin = feetToMetres(quantity<'ft'>(keepAwayFt ?? 0));
  const found = new Set<Home>();
  for (const { geometry, home } of around(ground.box, margin / 50_000)) {
    if (found.has(home)) continue;
    const lie = quickLie(ground.geometry, geometry);
    if (lie === 'apart' && margin === 0) continue;
    if (lie === 'within' || lie === 'overlaps' || outlinesOverlap(ground.geometry, geometry, margin)) found.add(home);
  }
  return [...found];
}

function nearestHome(at: Position, around: Around): readonly Home[] {
  let best: Home | null = null;
  let least = FARTHEST_GATE_M;
  for (const { geometry, home } of around(pointBox({ parking: at }), GATE_MARGIN_DEG)) {
    const nearest = nearestOnOutline(geometry, at);
    const metres = nearest === null ? Number.POSITIVE_INFINITY : distanceMetres(nearest, at);
    if (metres > least || (metres === least && best !== null)) continue;
    least = metres;
    best = home;
  }
  return best === null ? [] : [best];
}

/** Every property most of whose outline lies in the lot, or that has no outline and parks in it. */
function homesInLot(lot: Ground, around: Around, within: (box: DegreesBox) => readonly Home[]): readonly Home[] {
  const found = around(lot.box).flatMap((each) => (mostlyWithin(each, lot) ? [each.home] : []));
  if (found.length > 0) return [...new Set(found)];
  // Where turf is drawn, it alone tells; a parking point is often only assumed.
  return within(lot.box).filter((home) => {
    if (outlinesOf(home).length > 0) return false;
    const at = home.property?.parking ?? home.draft?.lawns.find((each) => each.at !== null)?.at;
    return at !== undefined && at !== null && isInLot(at, lot.geometry);
  });
}

function isInLot([longitude, latitude]: Position, lot: AreaGeometry): boolean {
  const tiny = 1e-7;
  const ring = [
    [longitude - tiny, latitude],
    [longitude, latitude - tiny],
    [longitude + tiny, latitude],
    [longitude - tiny, latitude],
  ] as const;
  return quickLie({ type: 'Polygon', coordinates: [ring] }, lot) === 'within';
}

function mostlyWithin(ground: Ground, lot: Ground): boolean {
  return quickLie(ground.geometry, lot.geometry) === 'within' || likeness(ground, lot) !== null;
}

const PART_WORDS: Readonly<Record<Part['kind'], string>> = {
  lawn: 'zone',
  exclusion: 'exclusion',
  gate: 'gate',
  parcel: 'parcel',
};

function lost(record: Part): Issue {
  const what = PART_WORDS[record.kind];
  const code = `${what}-without-property`;
  if (record.joins !== null) {
    const message = `The ${what} names property ${record.joins}, which neither the file nor the book has.`;
    return issue('error', code, record.where, message);
  }
  const where = record.kind === 'gate' ? 'is near no property' : 'lies on no property';
  const message = `The ${what} ${where} of the file or the book. Draw it there, or name its property in a field.`;
  return issue('error', code, record.where, message);
}
