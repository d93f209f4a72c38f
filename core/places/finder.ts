import type { StreetName } from './address.ts';
import { readStreetName } from './address.ts';
import type { StreetPiece } from './streets.ts';

/** How the street of an address was recognised. */
export type StreetMatch = 'whole' | 'other-type' | 'spelling';

/** All pieces of one street: those whose full name reads the same. */
export type Street = { readonly name: StreetName; readonly pieces: readonly StreetPiece[] };

export type FoundStreets = { readonly match: StreetMatch; readonly streets: readonly Street[] };

/** Street pieces in order to be looked up by name. */
export type StreetIndex = {
  readonly pieces: readonly StreetPiece[];
  /** By the name without spaces, type and direction. */
  readonly byName: ReadonlyMap<string, readonly Street[]>;
};

/** Street pieces by name, ready for `findAddress`; those whose street has no name that can be read are left out. */
export function indexStreets(pieces: readonly StreetPiece[]): StreetIndex {
  const streets = new Map<string, { name: StreetName; pieces: StreetPiece[] }>();
  for (const piece of pieces) {
    const name = readStreetName(piece.street);
    if (name === null) continue;
    const key = [name.before, solid(name.name), name.type, name.after].join('|');
    const known = streets.get(key);
    if (known === undefined) streets.set(key, { name, pieces: [piece] });
    else known.pieces.push(piece);
  }
  const byName = new Map<string, Street[]>();
  for (const street of streets.values()) {
    const key = solid(street.name.name);
    byName.set(key, [...(byName.get(key) ?? []), street]);
  }
  return { pieces, byName };
}

/** "cambridge park" and "cambridgepark" are the same to those who write addresses. */
function solid(name: string): string {
  return name.replaceAll(' ', '');
}

/**
 * The streets that a written name can mean, by the first rule that finds any: the whole name; the name with another type or
 * direction; a shortened word ("mass."), initials, or one letter off. Null where none is like it.
 */
export function findStreets(index: StreetIndex, wanted: StreetName, shortened: readonly string[]): FoundStreets | null {
  const same = index.byName.get(solid(wanted.name)) ?? [];
  const whole = same.filter(({ name }) => name.type === wanted.type && fitsDirection(name, wanted));
  if (whole.length > 0) return { match: 'whole', streets: whole };
  const joined = index.byName.get(solid(wanted.name) + wanted.type)?.filter(({ name }) => name.type === '') ?? [];
  if (joined.length > 0) return { match: 'whole', streets: joined };
  const looser = same.filter(({ name }) => name.type === wanted.type || name.type === '' || wanted.type === '');
  if (looser.length > 0) return { match: 'other-type', streets: looser };
  if (same.length > 0) return { match: 'other-type', streets: same };
  const alike = spelledAlike(index, wanted, shortened);
  return alike.length === 0 ? null : { match: 'spelling', streets: alike };
}

/** A direction that one side leaves out is no difference. */
function fitsDirection(name: StreetName, wanted: StreetName): boolean {
  const mine = name.before + name.after;
  const theirs = wanted.before + wanted.after;
  return mine === theirs || theirs === '';
}

function spelledAlike(index: StreetIndex, wanted: StreetName, shortened: readonly string[]): readonly Street[] {
  const streets = [...index.byName.values()].flat();
  const ofType = streets.filter(({ name }) => name.type === wanted.type || wanted.type === '');
  const rules: readonly ((street: Street) => boolean)[] = [
    ({ name }) => shortened.some((word) => name.name.startsWith(word)),
    ({ name }) => initials(name.name) === solid(wanted.name) || initials(wanted.name) === solid(name.name),
    ({ name }) => oneOff(solid(name.name), solid(wanted.name)),
  ];
  for (const rule of rules) {
    const found = ofType.filter(rule);
    if (new Set(found.map(({ name }) => solid(name.name))).size === 1) return found;
  }
  return [];
}

function initials(name: string): string {
  const words = name.split(' ');
  return words.length < 2 ? '' : words.map((word) => word[0]).join('');
}

const SHORTEST_GUESS = 5;

/** True where one letter was left out, put in or changed, in names long enough for that to be a slip. */
function oneOff(left: string, right: string): boolean {
  const [short, long] = left.length <= right.length ? [left, right] : [right, left];
  if (short.length < SHORTEST_GUESS || long.length - short.length > 1 || short === long) return false;
  if (/\d/.test(short + long)) return false;
  let start = 0;
  while (start < short.length && short[start] === long[start]) start += 1;
  const rest = short.length === long.length ? short.slice(start + 1) : short.slice(start);
  return rest === long.slice(start + 1);
}
