import { type Issue, issue } from '../base/index.ts';
import type { Property } from '../book/index.ts';
import type { DegreesBox } from '../geometry/index.ts';
import type { Draft } from './drafts.ts';
import { groundsOf, pointBox } from './likeness.ts';
import { newName } from './names.ts';
import type { ExclusionRecord, GateRecord, Ground, LawnRecord, ParcelRecord } from './record.ts';
import { sameOutline } from './same-outline.ts';

/** A property that parts can go to: of the file, of the book, or of both. */
export type Home = {
  readonly fileId: string | null;
  readonly property: Property | null;
  /** Made when the first record goes there, for a property of the book that the file does not speak of otherwise. */
  draft: Draft | null;
};
export type Outline = Ground & { readonly home: Home };

/** A record that belongs to a property of another one. */
export type Part = LawnRecord | ExclusionRecord | GateRecord | ParcelRecord;

export function outlinesOf(home: Home): readonly Outline[] {
  const own = home.draft?.lawns.flatMap((each) => each.ground ?? []) ?? [];
  const lot = home.draft?.parcels.map((each) => each.ground) ?? [];
  const known = (home.property === null ? [] : groundsOf(home.property)).filter(
    (each) => !own.some((other) => sameOutline(other.geometry, each.geometry)),
  );
  return [...own, ...lot, ...known].map((ground) => ({ ...ground, home }));
}

export function parkingBox(home: Home): DegreesBox | null {
  const at = home.property?.parking ?? home.draft?.lawns.find((each) => each.at !== null)?.at ?? null;
  return at === null ? null : pointBox({ parking: at });
}

/** Homes by their ids, and by names that only one of them has: in the book, and in the file, which may give a lawn its lot's name. */
export function nameHomes(homes: readonly Home[]): ReadonlyMap<string, Home> {
  const named = new Map<string, Home>();
  const seen = new Set<string>();
  for (const home of homes) {
    const names = [home.property?.name, home.draft === null ? null : newName(home.draft)];
    for (const name of new Set(names.map((each) => (each ?? '').toLowerCase()))) {
      if (seen.has(name)) named.delete(name);
      else if (name !== '') named.set(name, home);
      seen.add(name);
    }
  }
  for (const home of homes.toReversed()) {
    for (const id of [home.property?.id, home.fileId]) if (id) named.set(id.toLowerCase(), home);
  }
  return named;
}

const PART_WORDS: Readonly<Record<Part['kind'], string>> = {
  lawn: 'zone',
  exclusion: 'exclusion',
  gate: 'gate',
  parcel: 'parcel',
};

/** Why a part goes to no property. */
export function lost(record: Part): Issue {
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
