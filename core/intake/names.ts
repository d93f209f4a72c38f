import type { Draft } from './drafts.ts';

/** Longest name that a book takes. */
const LONGEST_NAME = 200;

/** The name that a record gives its property, of the record that bears its id, of its only one, or of its lot. */
export function nameIn(draft: Draft): string | null {
  const given = draft.lawns.find((each) => each.propertyName !== null)?.propertyName;
  if (given !== undefined && given !== null) return given;
  const own = draft.lawns.find((each) => !each.isZone && (each.joins === null || each.id === draft.fileId));
  return own?.name ?? draft.parcels.find((each) => each.name !== null)?.name ?? null;
}

export function addressIn(draft: Draft): string | null {
  const all = [...draft.lawns, ...draft.parcels];
  return all.find((each) => each.address !== null)?.address ?? null;
}

/** What a new property is called: its name, else its address; null where the file gives neither. */
export function newName(draft: Draft): string | null {
  return nameIn(draft) ?? addressIn(draft)?.slice(0, LONGEST_NAME) ?? null;
}
