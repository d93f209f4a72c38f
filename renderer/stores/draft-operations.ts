import { err, ok, type Result } from '../../core/base/index.ts';
import type { AreaGeometry, Gate, Position, Property, Zone } from '../../core/book/index.ts';
import type { Action } from '../../core/edit/index.ts';
import { edgeStrip, mergeZones as mergeDrawnZones, nudge, nudgePlace, offsetOutline } from '../../core/sketch/index.ts';
import { commonWords } from '../texts/index.ts';
import { draftsWords } from '../texts/stores/index.ts';
import { edit } from './book.ts';
import { chooseParts, outlineOf, type PartRef, partName, propertyOf, useParts } from './draft-parts.ts';
import { mapRings, squareRing } from './draft-rings.ts';
import { whyNotOnLawn } from './draft-start.ts';
import { freshId } from './edits.ts';
import { showError, showNews } from './notices.ts';
import { useSelection } from './selection.ts';

/** The parts that a command works on: those chosen, else the selected zone. */
export function workedParts(): readonly PartRef[] {
  const { parts } = useParts.getState();
  if (parts.length > 0) return parts;
  const { propertyId, zoneId } = useSelection.getState();
  return propertyId === null || zoneId === null ? [] : [{ propertyId, kind: 'zone', partId: zoneId }];
}

export function whyNotOnParts(): string | null {
  return whyNotOnLawn() ?? (workedParts().length === 0 ? draftsWords.draftOperations.choosePart : null);
}

/** For what changes an outline: a gate has none. */
export function whyNotOnOutlines(): string | null {
  const outlines = workedParts().filter((part) => part.kind !== 'gate');
  return whyNotOnLawn() ?? (outlines.length === 0 ? draftsWords.draftOperations.chooseShape : null);
}

export function whyNotMerge(): string | null {
  const zones = workedParts().filter((part) => part.kind === 'zone').length;
  return whyNotOnLawn() ?? (zones < 2 ? draftsWords.draftOperations.chooseZones : null);
}

function worked(): { readonly property: Property; readonly parts: readonly PartRef[] } | null {
  const parts = workedParts();
  const property = propertyOf(parts[0]?.propertyId ?? null);
  return property === null ? null : { property, parts };
}

/** "zone front lawn", "3 zones", "2 parts". */
function partWords(property: Property, parts: readonly PartRef[]): string {
  const [first] = parts;
  if (first === undefined) return draftsWords.draftOperations.noPart;
  if (parts.length === 1) {
    const name = partName(property, first);
    return name.toLowerCase().startsWith(first.kind) ? name : `${first.kind} ${name}`;
  }
  return parts.every((part) => part.kind === first.kind)
    ? draftsWords.draftOperations.partsOfKind(parts.length, first.kind)
    : draftsWords.draftOperations.parts(parts.length);
}

function put(record: Property, label: string, mergeKey?: string): boolean {
  return tell(edit({ kind: 'put', table: 'properties', record, label } satisfies Action, mergeKey));
}

function tell(done: Result<unknown>): boolean {
  if (!done.ok) showError(done.error);
  return done.ok;
}

/** Takes the chosen parts out of their lawn; the notice offers to take that back. */
export function deleteParts(): void {
  const target = worked();
  if (target === null) return;
  const { property, parts } = target;
  const words = partWords(property, parts);
  const kept = <Kind extends PartRef['kind'], Item extends { readonly id: string }>(
    kind: Kind,
    items: readonly Item[],
  ) => items.filter((item) => !parts.some((part) => part.kind === kind && part.partId === item.id));
  const gates = kept('gate', property.gates);
  const zones = kept('zone', property.zones).map((zone) => withoutGates(zone, gates));
  const next = { ...property, zones, gates, exclusions: kept('exclusion', property.exclusions) };
  if (!put(next, draftsWords.draftOperations.deletePart(words))) return;
  chooseParts([]);
  useSelection.setState({ zoneId: null });
  showNews(draftsWords.draftOperations.deleted(words.charAt(0).toUpperCase(), words.slice(1)), true);
}

function withoutGates(zone: Zone, gates: readonly Gate[]): Zone {
  const gateIds = zone.gateIds.filter((id) => gates.some((gate) => gate.id === id));
  return gateIds.length === zone.gateIds.length ? zone : { ...zone, gateIds };
}

type Change = (geometry: AreaGeometry, part: PartRef) => Result<AreaGeometry>;

/** The lawn with the outlines of some parts changed, and the places of gates; the first refusal counts for all. */
export function withChanged(
  property: Property,
  parts: readonly PartRef[],
  change: Change,
  move?: (at: Position) => Position,
): Result<Property> {
  let next = property;
  for (const part of parts) {
    const geometry = outlineOf(property, part);
    if (geometry === null) {
      if (move !== undefined && part.kind === 'gate') next = withGateAt(next, part.partId, move);
      continue;
    }
    const changed = change(geometry, part);
    if (!changed.ok) return changed;
    next = withOutline(next, part, changed.value);
  }
  return next === property
    ? err(
        'nothing-to-do',
        property.name,
        draftsWords.draftOperations.noOutline,
        draftsWords.draftOperations.noOutlineAdvice,
      )
    : ok(next);
}

function withGateAt(property: Property, gateId: string, move: (at: Position) => Position): Property {
  const gates = property.gates.map((gate) =>
    gate.id === gateId && gate.at !== undefined ? { ...gate, at: move(gate.at) } : gate,
  );
  return { ...property, gates };
}

function withOutline(property: Property, { kind, partId }: PartRef, geometry: AreaGeometry): Property {
  if (kind === 'exclusion') {
    const exclusions = property.exclusions.map((each) => (each.id === partId ? { ...each, geometry } : each));
    return { ...property, exclusions };
  }
  const zones = property.zones.map((zone) =>
    zone.id === partId && zone.shape.kind === 'drawn' ? { ...zone, shape: { ...zone.shape, geometry } } : zone,
  );
  return { ...property, zones };
}

function change(label: string, by: Change, move?: (at: Position) => Position, mergeKey?: string): void {
  const target = worked();
  if (target === null) return;
  const { property, parts } = target;
  const next = withChanged(property, parts, by, move);
  if (!next.ok) showError(next.error);
  else put(next.value, `${label} ${partWords(property, parts)}`, mergeKey);
}

/** Moves the chosen parts so many feet; presses that follow each other are one step. */
export function nudgeParts(eastFt: number, northFt: number): void {
  const key = `nudge ${workedParts()
    .map((part) => part.partId)
    .join(' ')}`;
  change(
    commonWords.move,
    (geometry) => nudge(geometry, eastFt, northFt),
    (at) => nudgePlace(at, eastFt, northFt),
    key,
  );
}

export function squareParts(): void {
  change(draftsWords.draftOperations.squareUp, (geometry) => mapRings(geometry, squareRing));
}

/** Moves the edge of the chosen outlines out by so many feet, or in where negative. */
export function offsetParts(feet: number): void {
  change(feet > 0 ? draftsWords.draftOperations.widen : draftsWords.draftOperations.narrow, (geometry) =>
    offsetOutline(geometry, feet),
  );
}

/** A bed of so many feet along the inside of the edge of each chosen zone. */
export function stripParts(feet: number): void {
  const target = worked();
  if (target === null) return;
  let { property } = target;
  for (const part of target.parts) {
    const geometry = outlineOf(property, part);
    const strip = geometry === null ? null : edgeStrip(geometry, feet);
    if (strip?.ok === false) {
      showError(strip.error);
      return;
    }
    if (strip === null) continue;
    const id = freshId(property.exclusions, 'out');
    const bed = { id, name: '', what: 'bed', geometry: strip.value, keepAwayFt: 0 } as const;
    property = { ...property, exclusions: [...property.exclusions, bed] };
  }
  if (property !== target.property)
    put(property, draftsWords.draftOperations.addBed(partWords(property, target.parts)));
}

/** Makes one zone of the chosen ones: the first chosen keeps its name. */
export function mergeZones(): void {
  const target = worked();
  if (target === null) return;
  const { property } = target;
  const zones = target.parts.filter((part) => part.kind === 'zone');
  const [first] = zones;
  const merged = mergeDrawnZones(
    property,
    zones.map((part) => part.partId),
  );
  if (!merged.ok || first === undefined) tell(merged);
  else if (put(merged.value, draftsWords.draftOperations.merge(partWords(property, zones)))) chooseParts([first]);
}
