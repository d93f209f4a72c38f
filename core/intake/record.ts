import { type Issue, issue } from '../base/index.ts';
import type { AreaGeometry, Exclusion, Position } from '../book/index.ts';
import type { SourceFeature } from '../formats/index.ts';
import { boxCentre, type DegreesBox, degreesBox, outlineArea, positionFault } from '../geometry/index.ts';
import type { Placing } from './coordinates.ts';
import { exclusionKind } from './exclusion-kind.ts';
import type { LayerMapping } from './mapping.ts';
import { readShape, type ShapeReading } from './shape.ts';
import { idsOf, plainText, positionOf, quantityOf, textOf } from './values.ts';

/** An outline that has ground. */
export type Ground = { readonly geometry: AreaGeometry; readonly box: DegreesBox; readonly areaSqM: number };

type RecordBase = {
  /** Place among all records of the file, from 0. */
  readonly index: number;
  readonly where: string;
  /** The id that the file gives, or null. */
  readonly id: string | null;
  readonly name: string | null;
  /** The property that it says it belongs to. */
  readonly joins: string | null;
  readonly issues: readonly Issue[];
};
/** A property, or an area of turf of one. */
export type LawnRecord = RecordBase & {
  readonly kind: 'lawn';
  /** True where it is turf of another record's property, or of the book's. */
  readonly isZone: boolean;
  readonly ground: Ground | null;
  readonly at: Position | null;
  readonly areaSqFt: number | null;
  readonly slopeDeg: number | null;
  readonly gateIn: number | null;
  readonly address: string | null;
  readonly parking: Position | null;
  /** Name of the property that it joins. */
  readonly propertyName: string | null;
};
export type ExclusionRecord = RecordBase & {
  readonly kind: 'exclusion';
  readonly ground: Ground;
  readonly what: Exclusion['what'] | null;
  readonly keepAwayFt: number | null;
};
export type GateRecord = RecordBase & {
  readonly kind: 'gate';
  readonly clearWidthIn: number;
  readonly at: Position | null;
  readonly locked: boolean | null;
  readonly zoneIds: readonly string[] | null;
};
export type ParcelRecord = RecordBase & {
  readonly kind: 'parcel';
  readonly ground: Ground;
  readonly address: string | null;
};
/** A record of which nothing can be used, or is wanted. One of its issues is the reason. */
export type RefusedRecord = RecordBase & { readonly kind: 'refused' };
export type IntakeRecord = LawnRecord | ExclusionRecord | GateRecord | ParcelRecord | RefusedRecord;

const ROLES = { properties: 'lawn', zones: 'zone', exclusions: 'exclusion', gates: 'gate', parcels: 'parcel' } as const;
const WIDEST_KEEP_AWAY_FT = 1000;
/** A wider gap between the ends of a closed line is told, metres. Common practice, no source. */
const WIDE_GAP_M = 15;

type Reading = {
  readonly feature: SourceFeature;
  readonly layer: LayerMapping;
  readonly base: RecordBase;
  readonly closeLines: boolean;
  readonly placing: Placing;
};

/** Reads one record as its layer is understood. Never fails: what cannot be used is refused with its reason. */
export function readRecord(
  feature: SourceFeature,
  index: number,
  layer: LayerMapping,
  placing: Placing,
  closeLines: boolean,
): IntakeRecord {
  const { fields } = layer;
  const base: RecordBase = {
    index,
    where: feature.where,
    id: textOf(feature, fields, 'id', 'id') ?? (layer.ownIds ? (plainText(feature.id)?.slice(0, 120) ?? null) : null),
    name: textOf(feature, fields, 'name', 'name'),
    joins: textOf(feature, fields, 'property', 'id'),
    // Whether a record can be without an outline is decided by its role.
    issues: feature.issues.filter((each) => each.code !== 'geometry-missing'),
  };
  if (layer.role === 'nothing') {
    // Somebody wanted it so: a reason, but no fault.
    const why = issue('note', 'layer-left-out', base.where, 'Its layer is left out.');
    return { ...base, kind: 'refused', issues: [...base.issues, why] };
  }
  if (feature.geometry === null && base.issues.some((each) => each.severity === 'error')) {
    return { ...base, kind: 'refused' };
  }
  const reading = { feature, layer, base, closeLines, placing };
  const role = textOf(feature, fields, 'role')?.toLowerCase() ?? ROLES[layer.role];
  switch (role) {
    case 'lawn':
    case 'property':
      return readLawn(reading, false);
    case 'zone':
      return readLawn(reading, layer.role === 'zones');
    case 'exclusion':
      return readExclusion(reading);
    case 'gate':
      return readGate(reading);
    case 'parcel':
      return readParcel(reading);
    case 'parking':
      return readParking(reading);
    default: {
      const shown = JSON.stringify(role.slice(0, 40));
      return refuse(
        base,
        'role-unknown',
        `The role ${shown} is unknown. Use "zone", "exclusion", "gate", "parcel" or "parking".`,
      );
    }
  }
}

export function refuse(base: RecordBase, code: string, message: string): RefusedRecord {
  const { index, where, id, name, joins, issues } = base;
  const all = [...issues, issue('error', code, where, message)];
  return { kind: 'refused', index, where, id, name, joins, issues: all };
}

type Place =
  | { readonly kind: 'ground'; readonly ground: Ground; readonly issues: readonly Issue[] }
  | { readonly kind: 'point'; readonly at: Position }
  | { readonly kind: 'none' }
  | { readonly kind: 'refused'; readonly record: RefusedRecord };

function readPlace({ feature, base, placing, closeLines }: Reading): Place {
  const placed = feature.geometry === null ? null : placing(feature.geometry);
  if (feature.geometry !== null && placed === null) {
    const message = 'Its coordinates lie outside of what their system covers. Check which system the file is in.';
    return { kind: 'refused', record: refuse(base, 'geometry-not-lonlat', message) };
  }
  const shape = readShape(placed, closeLines);
  switch (shape.kind) {
    case 'none':
      return shape;
    case 'refused':
      return { kind: 'refused', record: refuse(base, shape.code, shape.message) };
    case 'point': {
      const fault = shape.at[0] === 0 && shape.at[1] === 0 ? nullIsland() : positionFault(shape.at);
      return fault === null ? shape : { kind: 'refused', record: refuse(base, fault.code, fault.message) };
    }
    case 'area':
      return readGround(shape, base);
  }
}

function nullIsland(): { readonly code: string; readonly message: string } {
  return {
    code: 'place-unreadable',
    message: 'Latitude and longitude are both 0. Look the place up once more.',
  };
}

function readGround({ geometry, leftOut, gapM }: Extract<ShapeReading, { kind: 'area' }>, base: RecordBase): Place {
  const { areaSqM, faults } = outlineArea(geometry);
  const issues = faults.map((each) => issue(each.severity, each.code, base.where, each.message));
  const checked = degreesBox(geometry);
  if (areaSqM === null || 'fault' in checked) {
    const all = [...base.issues, ...issues];
    return { kind: 'refused', record: { ...base, kind: 'refused', issues: all } };
  }
  if (leftOut > 0) {
    const message = `${leftOut} points or lines of the collection are left out; its outlines are used.`;
    issues.push(issue('note', 'members-ignored', base.where, message));
  }
  if (gapM > WIDE_GAP_M) {
    const message = `Its ends lie ${Math.round(gapM)} m apart and were joined. Look whether the line goes round the turf.`;
    issues.push(issue('warning', 'line-closed', base.where, message));
  }
  return { kind: 'ground', ground: { geometry, box: checked.box, areaSqM }, issues };
}

/** What the record has instead of the outline that its role needs. */
function needsArea(place: Place, base: RecordBase): RefusedRecord {
  if (place.kind === 'refused') return place.record;
  return place.kind === 'point'
    ? refuse(base, 'geometry-not-area', 'The record is a point, which has no area. Draw its outline.')
    : refuse(base, 'geometry-missing', 'The record has no outline. Draw it, or remove the record.');
}

function readLawn(reading: Reading, isZone: boolean): IntakeRecord {
  const { feature, layer, base } = reading;
  const place = readPlace(reading);
  if (place.kind === 'refused') return place.record;
  const area = quantityOf(feature, layer.fields, 'area');
  const slope = quantityOf(feature, layer.fields, 'slope');
  const gate = quantityOf(feature, layer.fields, 'gateWidth');
  for (const each of [area, slope, gate]) {
    if (!each.ok) return refuse(base, each.error.code, `${each.error.detail} ${each.error.hint}`);
  }
  const [areaSqFt, slopeDeg, gateIn] = [area, slope, gate].map((each) => (each.ok ? each.value : null));
  if (gateIn === 0)
    return refuse(base, 'gate-width-missing', 'The gate width is 0. Enter the clear width, or leave it empty.');
  const at = place.kind === 'point' ? place.at : null;
  const ground = place.kind === 'ground' ? place.ground : null;
  if (areaSqFt === 0 && ground === null)
    return refuse(base, 'area-zero', 'The area is 0. Enter the turf area, or leave it empty.');
  return {
    ...base,
    kind: 'lawn',
    isZone,
    issues: place.kind === 'ground' ? [...base.issues, ...place.issues] : base.issues,
    ground,
    at,
    areaSqFt: areaSqFt === 0 ? null : (areaSqFt ?? null),
    slopeDeg: slopeDeg ?? null,
    gateIn: gateIn ?? null,
    address: textOf(feature, layer.fields, 'address'),
    parking: positionOf(textOf(feature, layer.fields, 'parking')),
    propertyName: textOf(feature, layer.fields, 'propertyName', 'name'),
  };
}

/** A point where the rig parks: a part of a property that says nothing of its turf. */
function readParking(reading: Reading): IntakeRecord {
  const read = readLawn({ ...reading, base: { ...reading.base, name: null } }, false);
  if (read.kind !== 'lawn') return read;
  if (read.at !== null) return { ...read, parking: read.at };
  return refuse(reading.base, 'place-unreadable', 'The parking point has no place. Give it one point.');
}

function readExclusion(reading: Reading): IntakeRecord {
  const { feature, layer, base } = reading;
  const place = readPlace(reading);
  if (place.kind !== 'ground') return needsArea(place, base);
  const keepAway = quantityOf(feature, layer.fields, 'keepAway');
  if (!keepAway.ok || (keepAway.value ?? 0) > WIDEST_KEEP_AWAY_FT) {
    const message = `The keep-away distance cannot be used. Give feet, from 0 to ${WIDEST_KEEP_AWAY_FT}.`;
    return refuse(base, 'keep-away-out-of-range', message);
  }
  const word = textOf(feature, layer.fields, 'what');
  const what = word === null ? null : exclusionKind(word);
  const issues = [...base.issues, ...place.issues];
  return { ...base, kind: 'exclusion', issues, ground: place.ground, what, keepAwayFt: keepAway.value };
}

function readGate(reading: Reading): IntakeRecord {
  const { feature, layer, base } = reading;
  const place = readPlace(reading);
  if (place.kind === 'refused') return place.record;
  const width = quantityOf(feature, layer.fields, 'gateWidth');
  if (!width.ok || width.value === null || width.value === 0) {
    const what = width.ok ? 'The gate has no clear width.' : width.error.detail;
    return refuse(base, 'gate-width-missing', `${what} Give the clear width between the posts.`);
  }
  const at = place.kind === 'point' ? place.at : place.kind === 'ground' ? boxCentre(place.ground.box) : null;
  const lock = textOf(feature, layer.fields, 'locked')?.toLowerCase() ?? null;
  return {
    ...base,
    kind: 'gate',
    clearWidthIn: width.value,
    at,
    locked: lock === null ? null : /^(?:true|yes|y|1|locked)$/.test(lock),
    zoneIds: idsOf(textOf(feature, layer.fields, 'zones')),
  };
}

function readParcel(reading: Reading): IntakeRecord {
  const { feature, layer, base } = reading;
  const place = readPlace(reading);
  if (place.kind !== 'ground') return needsArea(place, base);
  const issues = [...base.issues, ...place.issues];
  return { ...base, kind: 'parcel', issues, ground: place.ground, address: textOf(feature, layer.fields, 'address') };
}
