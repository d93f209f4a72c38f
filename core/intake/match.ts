import { type Issue, issue } from '../base/index.ts';
import type { Position, Property } from '../book/index.ts';
import { boxCentre, type DegreesBox, distanceMetres, placeIndex } from '../geometry/index.ts';
import type { Draft } from './drafts.ts';
import { groundsOf, likeness, pointBox } from './likeness.ts';
import type { Ground } from './record.ts';

/** A point this near to where a rig parks is taken for the same lawn, metres. Common practice, no source. */
export const SAME_PLACE_M = 15;
const SAME_PLACE_DEG = 0.001;

/** Finds for each draft without one the property of the book that it is, and enters it. No property is taken twice. */
export function matchDrafts(drafts: readonly Draft[], book: readonly Property[], mergeBy: 'id' | 'place'): void {
  const taken = new Set(drafts.flatMap((each) => each.before ?? []));
  const take = (draft: Draft, property: Property | undefined) => {
    if (property === undefined || taken.has(property)) return;
    draft.before = property;
    taken.add(property);
  };
  if (mergeBy === 'id') {
    const byId = new Map(book.map((each) => [each.id, each]));
    for (const draft of drafts) if (draft.fileId !== null && draft.before === null) take(draft, byId.get(draft.fileId));
  }
  const left = drafts.filter((each) => each.before === null && (mergeBy === 'place' || each.fileId === null));
  if (left.length === 0) return;
  const free = book.filter((each) => !taken.has(each));
  for (const { draft, property } of placeMatches(left, free)) if (draft.before === null) take(draft, property);
  const byAddress = new Map(free.toReversed().map((each) => [plainAddress(each.address), each]));
  for (const draft of left.filter((each) => each.before === null && !hasPlace(each))) {
    take(draft, byAddress.get(addressOf(draft)));
  }
}

/**
 * New drafts that lie on a property of the book under another id: most likely the same lawn twice. One remark for each, by the
 * place of its first record.
 */
export function twinsOf(drafts: readonly Draft[], book: readonly Property[]): ReadonlyMap<number, Issue> {
  const remarks = new Map<number, Issue>();
  const fresh = drafts.filter((each) => each.before === null);
  if (fresh.length === 0 || book.length === 0) return remarks;
  for (const { draft, property } of placeMatches(fresh, book)) {
    const [lawn] = draft.lawns;
    if (lawn === undefined || remarks.has(lawn.index)) continue;
    const message = `It lies where the book has ${property.name} (${property.id}). Go by the place if they are one lawn.`;
    remarks.set(lawn.index, issue('warning', 'duplicate-property', lawn.where, message));
  }
  return remarks;
}

/** A lawn that comes back farther away than this under its id is pointed out, metres. Common practice, no source. */
const FAR_M = 300;

/** Drafts that lie far from the property that they are by their id: most likely another lawn with the same number. */
export function strangersOf(drafts: readonly Draft[]): ReadonlyMap<number, Issue> {
  const remarks = new Map<number, Issue>();
  for (const draft of drafts) {
    const lawn = draft.lawns.find((each) => each.ground !== null || each.at !== null);
    if (lawn === undefined || draft.before === null) continue;
    const at = lawn.ground === null ? lawn.at : boxCentre(lawn.ground.box);
    const metres = at === null ? 0 : distanceMetres(at, middleOf(draft.before));
    if (metres <= FAR_M) continue;
    const { name, id } = draft.before;
    const message = `It lies ${Math.round(metres)} m from ${name} of the book, which has the same id ${id}. Look whether they are one lawn.`;
    remarks.set(lawn.index, issue('warning', 'far-from-its-id', lawn.where, message));
  }
  return remarks;
}

function middleOf(property: Property): Position {
  const [ground] = groundsOf(property);
  return ground === undefined ? property.parking : boxCentre(ground.box);
}

type Match = { readonly draft: Draft; readonly property: Property; readonly closeness: number };

/** Pairs of a draft and a property at its place, the closest first. */
function placeMatches(drafts: readonly Draft[], book: readonly Property[]): readonly Match[] {
  const grounds = book.map(groundsOf);
  const flat = grounds.flatMap((each, owner) => each.map((ground) => ({ ...ground, owner })));
  const index = placeIndex(flat.map((each) => each.box));
  const parking = placeIndex(book.map((each) => pointBox(each)));
  const matches = drafts.flatMap((draft): Match[] => {
    const outlines = draft.lawns.flatMap((each) => each.ground ?? []);
    if (outlines.length > 0) return outlineMatches(draft, outlines, book, flat, index.meeting);
    const at = draft.lawns.find((each) => each.at !== null)?.at ?? parkedAt(draft);
    if (at === null) return [];
    const box = { west: at[0], east: at[0], south: at[1], north: at[1] };
    return parking.meeting(box, SAME_PLACE_DEG).flatMap((each): Match[] => {
      const property = book[each];
      const metres = property === undefined ? Number.POSITIVE_INFINITY : distanceMetres(property.parking, at);
      return property === undefined || metres > SAME_PLACE_M ? [] : [{ draft, property, closeness: -metres }];
    });
  });
  return matches.sort((left, right) => right.closeness - left.closeness);
}

/** Where a lawn without an outline says that the rig parks. */
function parkedAt(draft: Draft): Position | null {
  return draft.lawns.find((each) => each.parking !== null)?.parking ?? null;
}

type Owned = Ground & { readonly owner: number };

function outlineMatches(
  draft: Draft,
  outlines: readonly Ground[],
  book: readonly Property[],
  grounds: readonly Owned[],
  meeting: (box: DegreesBox) => readonly number[],
): Match[] {
  const best = new Map<number, number>();
  for (const outline of outlines) {
    for (const each of meeting(outline.box)) {
      const ground = grounds[each];
      const closeness = ground === undefined ? null : likeness(outline, ground);
      if (ground === undefined || closeness === null) continue;
      best.set(ground.owner, Math.max(best.get(ground.owner) ?? 0, closeness));
    }
  }
  return [...best].flatMap(([owner, closeness]) => {
    const property = book[owner];
    return property === undefined ? [] : [{ draft, property, closeness }];
  });
}

function hasPlace(draft: Draft): boolean {
  return draft.lawns.some((each) => each.ground !== null || each.at !== null || each.parking !== null);
}

export function addressOf(draft: Draft): string {
  return plainAddress(draft.lawns.find((each) => each.address !== null)?.address ?? '') || ' ';
}

/** "12 Elm Ct., rear" and "12 ELM CT REAR" are one address. Empty ones are like no other. */
function plainAddress(address: string): string {
  return address.toLowerCase().replace(/[.,#]/g, ' ').replace(/\s+/g, ' ').trim();
}
