import { create } from 'zustand';
import type { AreaGeometry, Property } from '../../core/book/index.ts';
import { degreesBox } from '../../core/geometry/index.ts';
import { useBook } from './book.ts';
import { selectProperty, selectZone, useSelection } from './selection.ts';

/** A part of a property that can be chosen on the map. */
export type PartRef = {
  readonly propertyId: string;
  readonly kind: 'zone' | 'exclusion' | 'gate';
  readonly partId: string;
};

type PartsState = {
  readonly parts: readonly PartRef[];
  /** The part drawn last, for which a name is asked. */
  readonly finished: { readonly part: PartRef; readonly newProperty: boolean } | null;
};

/** Parts that are chosen together. */
export const useParts = create<PartsState>(() => ({ parts: [], finished: null }));

export const isSamePart = (one: PartRef, other: PartRef): boolean =>
  one.propertyId === other.propertyId && one.kind === other.kind && one.partId === other.partId;

/** Chooses one part alone, or adds it to those chosen already, or takes it out again. */
export function choosePart(part: PartRef, add: boolean): void {
  const { parts } = useParts.getState();
  const known = parts.some((each) => isSamePart(each, part));
  const others = parts.filter((each) => !isSamePart(each, part) && each.propertyId === part.propertyId);
  chooseParts(add ? (known ? others : [...others, part]) : [part]);
}

export function chooseParts(parts: readonly PartRef[]): void {
  useParts.setState({ parts, finished: null });
  const last = parts.at(-1);
  if (last !== undefined) selectZone(last.propertyId, last.kind === 'zone' ? last.partId : null);
}

/** Adds a part to those chosen, or takes it out, and leaves the selected zone as it is. */
export function toggleParts(part: PartRef): void {
  const { parts } = useParts.getState();
  const others = parts.filter((each) => !isSamePart(each, part) && each.propertyId === part.propertyId);
  useParts.setState({ parts: others.length < parts.length ? others : [...others, part], finished: null });
}

/** Chooses nothing of a property, or another property. */
export function chooseProperty(propertyId: string | null): void {
  useParts.setState({ parts: [], finished: null });
  selectProperty(propertyId);
}

export function noteFinished(part: PartRef, newProperty: boolean): void {
  chooseParts([part]);
  useParts.setState({ finished: { part, newProperty } });
}

/** The outline of a part; null for a gate, a stated area, or a part that is gone. */
export function outlineOf(property: Property, { kind, partId }: PartRef): AreaGeometry | null {
  if (kind === 'exclusion') return property.exclusions.find((each) => each.id === partId)?.geometry ?? null;
  const shape = kind === 'zone' ? property.zones.find((each) => each.id === partId)?.shape : undefined;
  return shape?.kind === 'drawn' ? shape.geometry : null;
}

export function propertyOf(propertyId: string | null): Property | null {
  return useBook.getState().open?.book.properties.find((each) => each.id === propertyId) ?? null;
}

/** The name by which a part is spoken of. */
export function partName(property: Property, { kind, partId }: PartRef): string {
  if (kind === 'zone') return property.zones.find((each) => each.id === partId)?.name ?? partId;
  if (kind === 'gate') return property.gates.find((each) => each.id === partId)?.name ?? partId;
  const exclusion = property.exclusions.find((each) => each.id === partId);
  return exclusion === undefined ? partId : exclusion.name || exclusion.what;
}

/** Chooses what lies wholly in a box (west, south, east, north) of the selected lawn, else of the first lawn in it. */
export function chooseInBox(box: readonly [number, number, number, number], add: boolean): void {
  const properties = useBook.getState().open?.book.properties ?? [];
  const selected = useSelection.getState().propertyId;
  const found = [...properties]
    .sort((left, right) => Number(right.id === selected) - Number(left.id === selected))
    .map((property) => partsIn(property, box))
    .find((parts) => parts.length > 0);
  const before = add ? useParts.getState().parts : [];
  if (found === undefined) return;
  const kept = before.filter((each) => each.propertyId === found[0]?.propertyId);
  chooseParts([...kept, ...found.filter((each) => !kept.some((one) => isSamePart(one, each)))]);
}

function partsIn(property: Property, [west, south, east, north]: readonly [number, number, number, number]) {
  const isIn = (geometry: AreaGeometry) => {
    const box = degreesBox(geometry);
    if ('fault' in box) return false;
    return box.box.west >= west && box.box.south >= south && box.box.east <= east && box.box.north <= north;
  };
  const propertyId = property.id;
  const zones = property.zones.flatMap(({ id, shape }): readonly PartRef[] =>
    shape.kind === 'drawn' && isIn(shape.geometry) ? [{ propertyId, kind: 'zone', partId: id }] : [],
  );
  const exclusions = property.exclusions.flatMap(({ id, geometry }): readonly PartRef[] =>
    isIn(geometry) ? [{ propertyId, kind: 'exclusion', partId: id }] : [],
  );
  const gates = property.gates.flatMap(({ id, at }): readonly PartRef[] =>
    at !== undefined && at[0] >= west && at[0] <= east && at[1] >= south && at[1] <= north
      ? [{ propertyId, kind: 'gate', partId: id }]
      : [],
  );
  return [...zones, ...exclusions, ...gates];
}
