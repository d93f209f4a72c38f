import { canonicalJson } from '../../base/index.ts';
import { type AreaGeometry, emptyProperty, type Property } from '../../book/index.ts';
import { polygonsOf } from '../../geometry/index.ts';
import type { Draft } from '../drafts.ts';
import { addressIn, nameIn, newName } from '../names.ts';
import { sameOutline } from '../same-outline.ts';
import type { PropertyChange } from '../types.ts';
import { mergeExclusions } from './exclusions.ts';
import { mergeGates } from './gates.ts';
import { type FindPlace, mergeParking, type Parking, parkingOf } from './parking.ts';
import type { Merged } from './shape.ts';
import { mergeZones } from './zones.ts';

/**
 * What a draft makes of its property: a new one, or the book's with what the file says. What the file does not speak of stays.
 * Null where a new property has no place.
 */
export function mergeDraft(
  draft: Draft,
  id: string,
  fileName: string,
  findPlace: FindPlace | undefined,
): PropertyChange | null {
  const { before } = draft;
  if (before === null) {
    const parking = parkingOf(draft, findPlace);
    if (parking === null) return null;
    const after = addParts(blank(id, draft, parking), draft, fileName).value;
    return { kind: 'new', before: null, after, words: contentsOf(after, parking), parkingAssumed: parking.isAssumed };
  }
  const named = mergeTexts(before, draft);
  const placed = mergeParking(named.value, draft);
  const { value: after, words } = addParts(placed.value, draft, fileName);
  const all = [...named.words, ...placed.words, ...words];
  const isSame = after === before || canonicalJson(after) === canonicalJson(before);
  return {
    kind: isSame ? 'same' : 'changed',
    before,
    after: isSame ? before : after,
    words: all,
    parkingAssumed: false,
  };
}

function addParts(property: Property, draft: Draft, fileName: string): Merged<Property> {
  const zones = mergeZones(property.zones, draft.lawns, fileName);
  const gates = mergeGates(property.gates, zones.value, draft.gates, draft.lawns, zones.idOf);
  const exclusions = mergeExclusions(property.exclusions, draft.exclusions);
  const lot = mergeParcel(property, draft);
  const value: Property = { ...lot.value, zones: gates.zones, gates: gates.value, exclusions: exclusions.value };
  return { value, words: [...zones.words, ...gates.words, ...exclusions.words, ...lot.words] };
}

function blank(id: string, draft: Draft, parking: Parking): Property {
  return {
    ...emptyProperty(id, newName(draft) ?? id, parking.at),
    address: addressIn(draft) ?? '',
    ...(parking.placedBy === null || parking.placedBy === undefined ? {} : { placedBy: parking.placedBy }),
    note: parking.isAssumed ? 'Parking point assumed from the outline.' : '',
  };
}

function mergeTexts(before: Property, draft: Draft): Merged<Property> {
  const words: string[] = [];
  let after = before;
  const name = nameIn(draft);
  const address = addressIn(draft);
  // The name of a lot does not take the place of a lawn's own.
  if (name !== null && name !== before.name && draft.lawns.length > 0) {
    after = { ...after, name };
    words.push(`name ${before.name} → ${name}`);
  }
  if (address !== null && address !== before.address) {
    after = { ...after, address };
    words.push(before.address === '' ? `address ${address}` : `address ${before.address} → ${address}`);
  }
  return { value: after, words };
}

function mergeParcel(property: Property, draft: Draft): Merged<Property> {
  const parcel = joined(draft.parcels.map((each) => each.ground.geometry));
  const isKnown = parcel === null || (property.parcel !== undefined && sameOutline(property.parcel, parcel));
  if (isKnown) return { value: property, words: [] };
  return {
    value: { ...property, parcel },
    words: [property.parcel === undefined ? 'lot added' : 'outline of the lot'],
  };
}

function joined(geometries: readonly AreaGeometry[]): AreaGeometry | null {
  const [first] = geometries;
  if (first === undefined || geometries.length === 1) return first ?? null;
  return { type: 'MultiPolygon', coordinates: geometries.flatMap((each) => polygonsOf(each)) };
}

function contentsOf({ zones, gates, exclusions }: Property, parking: Parking): readonly string[] {
  const stated = zones.some((each) => each.shape.kind === 'stated');
  const words = [
    zones.length === 0
      ? 'no turf yet: draw it, or enter its area'
      : `${zones.length === 1 ? '1 zone' : `${zones.length} zones`}${stated ? ', area stated' : ''}`,
  ];
  if (exclusions.length > 0) words.push(exclusions.length === 1 ? '1 exclusion' : `${exclusions.length} exclusions`);
  if (gates.length > 0) words.push(gates.length === 1 ? `gate ${gates[0]?.clearWidthIn} in` : `${gates.length} gates`);
  if (parking.isAssumed) words.push('parking assumed from the outline');
  if (parking.placedBy === 'address-range') words.push('placed by address range');
  return words;
}
