import { create } from 'zustand';
import type { Result } from '../../core/base/index.ts';
import type { AreaGeometry, Position, Property } from '../../core/book/index.ts';
import { centreOf } from '../../core/geometry/index.ts';
import { carryPlace, copyShape, cornersAt, FIRST_SHELL } from '../../core/sketch/index.ts';
import { commonWords } from '../texts/index.ts';
import { draftsWords } from '../texts/stores/index.ts';
import { edit, useBook } from './book.ts';
import { pointAtMap } from './draft.ts';
import { withChanged, workedParts } from './draft-operations.ts';
import { outlineOf, type PartRef, propertyOf } from './draft-parts.ts';
import { whyNotOnLawn } from './draft-start.ts';
import { freshId } from './edits.ts';
import { say, showError, showNews } from './notices.ts';
import { selectProperty, useSelection } from './selection.ts';
import { goTo } from './view.ts';

/** Something that is being carried to another place in its true size. */
export type Carry = {
  /** 'move': these parts go there. 'copy': these parts of the lawn again. 'lawn': the whole lawn again, as a new one. */
  readonly kind: 'move' | 'copy' | 'lawn';
  readonly propertyId: string;
  readonly parts: readonly PartRef[];
  /** What comes to lie where the pointer is. */
  readonly anchor: Position;
  /** Shells that are shown at the pointer. */
  readonly shells: readonly (readonly Position[])[];
};

export const useCarry = create<{ readonly carry: Carry | null }>(() => ({ carry: null }));

export function whyNotCarry(): string | null {
  const reason = whyNotOnLawn();
  if (reason !== null) return reason;
  return useCarry.getState().carry === null ? null : draftsWords.draftCarry.carryingAlready;
}

/** Takes the chosen parts up, or the whole lawn where none is chosen. */
export function pickUp(wish: 'move' | 'copy'): void {
  const property = propertyOf(useSelection.getState().propertyId);
  if (property === null || whyNotCarry() !== null) return;
  const chosen = workedParts();
  const all = allParts(property);
  const parts = chosen.length > 0 ? chosen : all;
  const outlines = parts.map((part) => outlineOf(property, part)).filter((each) => each !== null);
  const [first] = outlines;
  const anchor = first === undefined ? null : centreOf(first);
  if (anchor === null) {
    showNews(draftsWords.draftCarry.nothingToCarry);
    return;
  }
  const kind = wish === 'copy' && chosen.length === 0 ? 'lawn' : wish;
  const shells = outlines.map((each) => cornersAt(each, FIRST_SHELL) ?? []);
  useCarry.setState({ carry: { kind, propertyId: property.id, parts, anchor, shells } });
  goTo('ground');
  pointAtMap(anchor);
  say(draftsWords.draftCarry.carryAdvice);
}

function allParts({ id: propertyId, zones, exclusions, gates }: Property): readonly PartRef[] {
  return [
    ...zones.map(({ id }): PartRef => ({ propertyId, kind: 'zone', partId: id })),
    ...exclusions.map(({ id }): PartRef => ({ propertyId, kind: 'exclusion', partId: id })),
    ...gates.map(({ id }): PartRef => ({ propertyId, kind: 'gate', partId: id })),
  ];
}

export function letGo(): void {
  useCarry.setState({ carry: null });
}

/** Puts down what is carried. */
export function putDown(at: Position): void {
  const { carry } = useCarry.getState();
  const property = propertyOf(carry?.propertyId ?? null);
  if (carry === null || property === null) {
    letGo();
    return;
  }
  const done = carried(carry, property, at);
  if (!done.ok) {
    showError(done.error);
    return;
  }
  const isLawn = carry.kind === 'lawn';
  const label = `${carry.kind === 'move' ? commonWords.move : draftsWords.draftCarry.copy} ${isLawn ? 'lawn' : draftsWords.draftCarry.partsOf} ${property.name}`;
  const edited = edit({ kind: 'put', table: 'properties', record: done.value, label });
  if (!edited.ok) {
    showError(edited.error);
    return;
  }
  letGo();
  if (isLawn) selectProperty(done.value.id);
  showNews(label, true);
}

function carried({ kind, parts, anchor }: Carry, property: Property, at: Position): Result<Property> {
  const shape = (geometry: AreaGeometry) => copyShape(geometry, anchor, at);
  const place = (from: Position): Position => carryPlace(from, anchor, at);
  const moved = withChanged(property, parts, shape, place);
  if (!moved.ok || kind === 'move') return moved;
  const { value } = moved;
  if (kind === 'copy') return { ok: true, value: withCopies(property, value, parts) };
  const id = freshId(useBook.getState().open?.book.properties ?? [], 'lawn');
  const { parcel: _parcel, pastMeasures: _past, placedBy: _placed, ...rest } = value;
  return {
    ok: true,
    value: {
      ...rest,
      id,
      name: draftsWords.draftCarry.copyOf(property.name),
      address: '',
      parking: place(value.parking),
    },
  };
}

/** The lawn as it was, with the moved parts added under ids of their own. */
function withCopies(before: Property, moved: Property, parts: readonly PartRef[]): Property {
  let { zones, exclusions, gates } = before;
  const has = (kind: PartRef['kind'], id: string) => parts.some((part) => part.kind === kind && part.partId === id);
  for (const zone of moved.zones) {
    if (has('zone', zone.id))
      zones = [...zones, { ...zone, id: freshId(zones, 'zone'), name: draftsWords.draftCarry.copyOf(zone.name) }];
  }
  for (const exclusion of moved.exclusions) {
    if (has('exclusion', exclusion.id)) exclusions = [...exclusions, { ...exclusion, id: freshId(exclusions, 'out') }];
  }
  for (const gate of moved.gates) {
    if (has('gate', gate.id))
      gates = [...gates, { ...gate, id: freshId(gates, 'gate'), name: draftsWords.draftCarry.copyOf(gate.name) }];
  }
  return { ...before, zones, exclusions, gates };
}
