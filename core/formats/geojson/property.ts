import { emptyProperty, type Property, type Zone } from '../../book/index.ts';
import type { ZoneFeature } from './feature.ts';
import type { Group } from './group.ts';
import { assumedParking } from './parking.ts';

export type MadeProperty = { readonly property: Property; readonly parkingAssumed: boolean };

/** A property of a group's sound features. Its zones are those of `zones`, a selection of the group's. */
export function makeProperty(group: Group, zones: readonly ZoneFeature[]): MadeProperty {
  const gateIds = (zoneId: string) =>
    group.gates.filter((gate) => gate.zoneIds === null || gate.zoneIds.includes(zoneId)).map((gate) => gate.id);
  const given = zones.find((each) => each.parking !== null)?.parking ?? null;
  const gateAt = group.gates.find((each) => each.at !== null)?.at ?? null;
  const outlines = zones.map((each) => each.geometry);
  const parking = given ?? assumedParking(outlines, gateAt) ?? [0, 0];
  const property: Property = {
    ...emptyProperty(group.id, nameOf(group), parking),
    address: zones.find((each) => each.address !== '')?.address ?? '',
    gates: group.gates.map((gate) => ({
      id: gate.id,
      name: gate.name === '' ? gate.id : gate.name,
      clearWidthIn: gate.clearWidthIn,
      locked: gate.locked,
      ...(gate.at === null ? {} : { at: gate.at }),
    })),
    zones: zones.map((each): Zone => ({ ...makeZone(each), gateIds: gateIds(each.id) })),
    exclusions: group.exclusions.map((each) => ({
      id: each.id,
      name: each.name,
      what: each.what,
      geometry: each.geometry,
      keepAwayFt: each.keepAwayFt,
    })),
    note: given === null ? 'Parking point assumed from the outline.' : '',
  };
  return { property, parkingAssumed: given === null };
}

/** The name of the feature that bears the property's id, of its only zone, or the id. */
function nameOf(group: Group): string {
  const own =
    group.zones.find((each) => each.id === group.id) ?? (group.zones.length === 1 ? group.zones[0] : undefined);
  const isJoined = own !== undefined && own.joins !== null && own.id !== group.id;
  return own === undefined || isJoined || own.name === '' ? group.id : own.name;
}

function makeZone(feature: ZoneFeature): Zone {
  return {
    id: feature.id,
    name: feature.name === '' ? feature.id : feature.name,
    shape: { kind: 'drawn', geometry: feature.geometry },
    slopeDeg: feature.slopeDeg,
    gateIds: [],
  };
}
