import { RESTRICTION } from '../types.ts';
import type { Member, Tags } from './elements.ts';

/** A turn restriction by the numbers of ways and node, as the file has them. */
export type RawRestriction = {
  readonly from: readonly number[];
  readonly via: number;
  readonly to: readonly number[];
  /** Bits of RESTRICTION. */
  readonly flags: number;
};

export type RestrictionReading =
  | { readonly kind: 'read'; readonly restriction: RawRestriction }
  /** By way of another way: told apart, since such are known and not kept. */
  | { readonly kind: 'via-way' }
  /** At certain hours only, for others than trucks, or of a kind that is not known. */
  | { readonly kind: 'ignored' };

const IGNORED: RestrictionReading = { kind: 'ignored' };

/** Keys under which a restriction for trucks may stand, the most particular first (OpenStreetMap wiki, "Relation:restriction"). */
const KEYS = ['restriction:motorcar', 'restriction:motor_vehicle', 'restriction'] as const;
const EXCEPTED: readonly string[] = ['motorcar', 'motor_vehicle', 'vehicle'];

export function restrictionOf(tags: Tags, members: readonly Member[]): RestrictionReading {
  const general = KEYS.map((key) => tags.get(key)).find((value) => value !== undefined);
  const heavy = tags.get('restriction:hgv');
  const value = general ?? heavy ?? '';
  const isOnly = value.startsWith('only_');
  if (!isOnly && !value.startsWith('no_')) return IGNORED;
  const except = (tags.get('except') ?? '').split(';').map((each) => each.trim());
  if (except.some((each) => EXCEPTED.includes(each))) return IGNORED;
  const of = (role: string): readonly Member[] => members.filter((member) => member.role === role);
  const via = of('via');
  if (via.length > 0 && via.every((member) => member.kind === 'way')) return { kind: 'via-way' };
  const [node] = via;
  const from = waysOf(of('from'));
  const to = waysOf(of('to'));
  const isWhole = via.length === 1 && node?.kind === 'node' && from.length > 0 && to.length > 0;
  if (!isWhole) return IGNORED;
  const flags = (isOnly ? RESTRICTION.only : 0) | (general === undefined ? RESTRICTION.heavy : 0);
  return { kind: 'read', restriction: { from, via: node.id, to, flags } };
}

function waysOf(members: readonly Member[]): readonly number[] {
  return members.flatMap((member) => (member.kind === 'way' ? [member.id] : []));
}
