import type { AreaGeometry, Exclusion, Gate, Position, Property, Zone } from '../book/index.ts';
import type { Action } from '../edit/index.ts';
import type { Draft, DraftPurpose } from './draft.ts';

type Drawing = Pick<Draft, 'drawnOver' | 'outlineErrorFt'>;
export type PurposeOf<Kind extends DraftPurpose['kind']> = Extract<DraftPurpose, { readonly kind: Kind }>;
type DrawnShape = Extract<Zone['shape'], { readonly kind: 'drawn' }>;

export function putAction(property: Property, label: string): Action {
  return { kind: 'put', table: 'properties', record: property, label };
}

export function zoneOf(property: Property, zoneId: string): Zone | null {
  return property.zones.find((each) => each.id === zoneId) ?? null;
}

/** The property with a zone's outline put in: of a new zone, or in place of the old outline or the stated area. */
export function withZone(
  property: Property,
  zoneId: string,
  name: string,
  geometry: AreaGeometry,
  drawing: Drawing,
): Property {
  const before = zoneOf(property, zoneId);
  const shape = drawnShape(geometry, before, drawing);
  if (before === null) {
    const given = name === '' ? `Zone ${property.zones.length + 1}` : name;
    const zone: Zone = { id: zoneId, name: given, shape, slopeDeg: 0, gateIds: [] };
    return { ...property, zones: [...property.zones, zone] };
  }
  const zone = { ...before, ...(name === '' ? {} : { name }), ...statedBefore(before), shape };
  return { ...property, zones: property.zones.map((each) => (each === before ? zone : each)) };
}

export function withExclusion(
  property: Property,
  { exclusionId, name, what }: PurposeOf<'exclusion'>,
  geometry: AreaGeometry,
): Property {
  const before = property.exclusions.find((each) => each.id === exclusionId);
  if (before === undefined) {
    const called = name === '' ? freshName(property, what) : name;
    const exclusion: Exclusion = { id: exclusionId, name: called, what, geometry, keepAwayFt: 0 };
    return { ...property, exclusions: [...property.exclusions, exclusion] };
  }
  const exclusion = { ...before, ...(name === '' ? {} : { name }), what, geometry };
  return { ...property, exclusions: property.exclusions.map((each) => (each === before ? exclusion : each)) };
}

export function withGate(
  property: Property,
  { gateId, name, clearWidthIn }: PurposeOf<'gate'>,
  at: Position,
): Property {
  const before = property.gates.find((each) => each.id === gateId);
  if (before === undefined) {
    const given = name === '' ? `Gate ${property.gates.length + 1}` : name;
    const gate: Gate = { id: gateId, name: given, clearWidthIn, at, locked: false };
    return { ...property, gates: [...property.gates, gate] };
  }
  const gate = { ...before, ...(name === '' ? {} : { name }), clearWidthIn, at };
  return { ...property, gates: property.gates.map((each) => (each === before ? gate : each)) };
}

function drawnShape(geometry: AreaGeometry, before: Zone | null, drawing: Drawing): DrawnShape {
  const old = before?.shape.kind === 'drawn' ? before.shape : undefined;
  const drawnOver = drawing.drawnOver ?? old?.drawnOver;
  const outlineErrorFt = drawing.outlineErrorFt ?? old?.outlineErrorFt;
  return {
    kind: 'drawn',
    geometry,
    ...(outlineErrorFt === undefined ? {} : { outlineErrorFt }),
    ...(drawnOver === undefined ? {} : { drawnOver }),
  };
}

/** The area of a card, kept to hold the new outline against. */
function statedBefore({ shape, statedAreaSqFt }: Zone): { readonly statedAreaSqFt?: number } {
  if (shape.kind !== 'stated' || !(shape.areaSqFt > 0) || statedAreaSqFt !== undefined) return {};
  return { statedAreaSqFt: shape.areaSqFt };
}

/** "building", and "building 2" where the property has one of that name. */
function freshName({ exclusions }: Property, what: Exclusion['what']): string {
  const taken = new Set(exclusions.map((each) => each.name));
  let name: string = what;
  for (let count = 2; taken.has(name); count += 1) name = `${what} ${count}`;
  return name;
}
