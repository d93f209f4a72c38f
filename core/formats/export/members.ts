import type { AreaGeometry, Exclusion, Gate, Position, Property, Zone } from '../../book/index.ts';
import { roundDegrees } from './degrees.ts';

/** Values of one record of a file, by field. Lists are for formats that have them; others join them. */
export type Members = Readonly<Record<string, string | number | boolean | readonly string[] | Position>>;

/** Where a record lies; null for what has no place. */
export type RecordGeometry =
  | AreaGeometry
  | { readonly type: 'Point'; readonly at: Position }
  /** Two places or more, in order. */
  | { readonly type: 'LineString'; readonly positions: readonly Position[] }
  | null;

/** One record of a file: a zone, an exclusion, a gate, a stop or a route, with its fields. */
export type ExportRecord = {
  readonly id: string;
  readonly geometry: RecordGeometry;
  readonly members: Members;
};

/** All records of a property. One without zones is written as a zone without outline, so that it is not lost. */
export function recordsOf(property: Property): readonly ExportRecord[] {
  const zones =
    property.zones.length === 0 ? [bareRecord(property)] : property.zones.map((each) => zoneRecord(property, each));
  return [
    ...zones,
    ...property.exclusions.map((each) => exclusionRecord(property, each)),
    ...property.gates.map((each) => gateRecord(property, each)),
  ];
}

function lotMembers(property: Property): Members {
  return {
    property: property.id,
    propertyName: property.name,
    ...(property.address === '' ? {} : { address: property.address }),
    parking: roundDegrees(property.parking),
  };
}

function bareRecord(property: Property): ExportRecord {
  return { id: property.id, geometry: null, members: { role: 'zone', name: property.name, ...lotMembers(property) } };
}

function zoneRecord(property: Property, zone: Zone): ExportRecord {
  const { shape } = zone;
  const area: Members = shape.kind === 'stated' ? { areaSqFt: shape.areaSqFt } : {};
  return {
    id: zone.id,
    geometry: shape.kind === 'drawn' ? shape.geometry : null,
    members: { role: 'zone', name: zone.name, ...lotMembers(property), slopeDeg: zone.slopeDeg, ...area },
  };
}

function exclusionRecord({ id }: Property, exclusion: Exclusion): ExportRecord {
  const { name, what, keepAwayFt } = exclusion;
  const own: Members = name === '' ? {} : { name };
  return {
    id: exclusion.id,
    geometry: exclusion.geometry,
    members: { role: 'exclusion', ...own, property: id, what, keepAwayFt },
  };
}

function gateRecord(property: Property, gate: Gate): ExportRecord {
  const zones = property.zones.filter((zone) => zone.gateIds.includes(gate.id)).map((zone) => zone.id);
  const { name, clearWidthIn, locked } = gate;
  return {
    id: gate.id,
    geometry: gate.at === undefined ? null : { type: 'Point', at: gate.at },
    members: {
      role: 'gate',
      name,
      property: property.id,
      clearWidthIn,
      locked,
      ...(zones.length === 0 ? {} : { zones }),
    },
  };
}
