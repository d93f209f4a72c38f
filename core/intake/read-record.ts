import { type Issue, issue } from '../base/index.ts';
import type { SourceFeature } from '../formats/index.ts';
import { boxCentre } from '../geometry/index.ts';
import type { Placing } from './coordinates.ts';
import { exclusionKind } from './exclusion-kind.ts';
import type { LayerMapping } from './mapping.ts';
import { type IntakeRecord, type RecordBase, refuse } from './record.ts';
import { needsArea, type Reading, readPlace } from './record-place.ts';
import { idsOf, plainText, positionOf, quantityOf, textOf } from './values.ts';

const ROLES = { properties: 'lawn', zones: 'zone', exclusions: 'exclusion', gates: 'gate', parcels: 'parcel' } as const;
const WIDEST_KEEP_AWAY_FT = 1000;

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

function readLawn(reading: Reading, isZone: boolean): IntakeRecord {
  const { feature, layer, base } = reading;
  const place = readPlace(reading);
  if (place.kind === 'refused') return place.record;
  const area = quantityOf(feature, layer.fields, 'area');
  const slope = quantityOf(feature, layer.fields, 'slope');
  const gate = quantityOf(feature, layer.fields, 'gateWidth');
  const doubts: Issue[] = [];
  for (const each of [area, slope, gate]) {
    if (each.ok) continue;
    const words = `${each.error.detail} ${each.error.hint}`;
    if (place.kind !== 'ground') return refuse(base, each.error.code, words);
    // The outline is sound: what cannot be read beside it is left out, and said.
    doubts.push(issue('warning', each.error.code, base.where, `${words} The figure was left out.`));
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
    issues: [...base.issues, ...(place.kind === 'ground' ? place.issues : []), ...doubts, ...smallArea(base, areaSqFt)],
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

/** A stated lawn below this is more likely acres without a unit, or a comma that was meant otherwise, ft2. Our own limit. */
const LEAST_LIKELY_SQ_FT = 100;

function smallArea({ where }: RecordBase, areaSqFt: number | null | undefined): readonly Issue[] {
  if (areaSqFt === null || areaSqFt === undefined || areaSqFt === 0 || areaSqFt >= LEAST_LIKELY_SQ_FT) return [];
  const message = `The stated area comes to ${areaSqFt.toPrecision(3)} ft². Check its unit, and what the comma and the point stand for.`;
  return [issue('warning', 'area-tiny', where, message)];
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
