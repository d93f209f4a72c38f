import { type Issue, issue } from '../../base/index.ts';
import { type AreaGeometry, EXCLUSION_KINDS, type Exclusion, type Position } from '../../book/index.ts';
import { boxCentre, degreesBox } from '../../geometry/index.ts';
import { readGeometry } from './geometry.ts';
import { isObject, type JsonObject } from './structure.ts';
import { readNumber, readText } from './values.ts';

type FeatureBase = {
  /** Place in the file, counted from 0. */
  readonly index: number;
  readonly where: string;
  /** The feature's id, else properties.id, else a made one. */
  readonly id: string;
  readonly name: string;
  /** `properties.property`: the property that it joins. */
  readonly joins: string | null;
  readonly issues: readonly Issue[];
};
export type ZoneFeature = FeatureBase & {
  readonly kind: 'zone';
  readonly geometry: AreaGeometry;
  readonly slopeDeg: number;
  readonly address: string;
  readonly parking: Position | null;
};
export type ExclusionFeature = FeatureBase & {
  readonly kind: 'exclusion';
  readonly geometry: AreaGeometry;
  readonly keepAwayFt: number;
  readonly what: Exclusion['what'];
};
export type GateFeature = FeatureBase & {
  readonly kind: 'gate';
  readonly clearWidthIn: number;
  readonly at: Position | null;
  readonly locked: boolean;
  /** Ids of the zones behind it; null where the file does not say. */
  readonly zoneIds: readonly string[] | null;
};
/** A feature of which nothing can be used; its issue is an error. */
export type BadFeature = FeatureBase & { readonly kind: 'bad'; readonly role: Role; readonly slopeDeg: number };
export type Feature = ZoneFeature | ExclusionFeature | GateFeature | BadFeature;
export type Role = 'zone' | 'exclusion' | 'gate';

/** Longest id and name that a book takes. */
const LONGEST_ID = 120;
const LONGEST_NAME = 200;
const STEEPEST_DEG = 60;
const WIDEST_KEEP_AWAY_FT = 1000;
const WIDEST_GATE_IN = 1200;

/** Reads one feature by the rules of the measure command. Never fails: what cannot be used is a `bad` one. */
export function readFeature(value: unknown, index: number, file: string, grid: string | null): Feature {
  const properties = isObject(value) && isObject(value.properties) ? value.properties : {};
  const givenId = readText(isObject(value) ? value.id : null) ?? readText(properties.id);
  const id = (givenId ?? `feature-${index + 1}`).slice(0, LONGEST_ID);
  const where = `${file}, features[${index}]${givenId === null ? '' : ` (id ${id})`}`;
  const name = (readText(properties.name) ?? '').slice(0, LONGEST_NAME);
  const joins = readText(properties.property)?.slice(0, LONGEST_ID) ?? null;
  const base = { index, where, id, name, joins };
  const role = readText(properties.role)?.toLowerCase() ?? 'zone';
  const bad = (code: string, message: string, as: Role = 'zone'): BadFeature => {
    const problem = issue('error', code, where, message);
    return { ...base, kind: 'bad', role: as, slopeDeg: 0, issues: [problem] };
  };
  if (!isObject(value) || value.type !== 'Feature') {
    return bad('feature-invalid', 'This is no GeoJSON feature. Export the file again.');
  }
  switch (role) {
    case 'zone':
      return readZone(value, properties, base, grid, (code, message) => bad(code, message, 'zone'));
    case 'exclusion':
      return readExclusion(value, properties, base, grid, (code, message) => bad(code, message, 'exclusion'));
    case 'gate':
      return readGate(value, properties, base, (code, message) => bad(code, message, 'gate'));
    default: {
      const shown = JSON.stringify(role.slice(0, 40));
      return bad('role-unknown', `The role ${shown} is unknown. Use "zone", "exclusion" or "gate".`);
    }
  }
}

type Base = Pick<FeatureBase, 'index' | 'where' | 'id' | 'name' | 'joins'>;
type Refuse = (code: string, message: string) => BadFeature;

function readZone(feature: JsonObject, properties: JsonObject, base: Base, grid: string | null, bad: Refuse): Feature {
  const area = readArea(feature, base, grid, bad);
  if ('kind' in area) return area;
  const slope = readNumber(properties, 'slopeDeg', 0, STEEPEST_DEG);
  if (slope.kind === 'bad') {
    return bad('slope-out-of-range', `slopeDeg is ${slope.text}. Give degrees from level, from 0 to ${STEEPEST_DEG}.`);
  }
  return {
    ...base,
    ...area,
    kind: 'zone',
    slopeDeg: slope.kind === 'number' ? slope.value : 0,
    address: (readText(properties.address) ?? '').slice(0, 4000),
    parking: readParking(properties.parking),
  };
}

function readExclusion(
  feature: JsonObject,
  properties: JsonObject,
  base: Base,
  grid: string | null,
  bad: Refuse,
): Feature {
  const area = readArea(feature, base, grid, bad);
  if ('kind' in area) return area;
  const keepAway = readNumber(properties, 'keepAwayFt', 0, WIDEST_KEEP_AWAY_FT);
  if (keepAway.kind === 'bad') {
    const limits = `from 0 to ${WIDEST_KEEP_AWAY_FT}`;
    return bad('keep-away-out-of-range', `keepAwayFt is ${keepAway.text}. Give feet, ${limits}.`);
  }
  const kind = readText(properties.what)?.toLowerCase();
  const what = EXCLUSION_KINDS.find((each) => each === kind) ?? 'other';
  return { ...base, ...area, kind: 'exclusion', keepAwayFt: keepAway.kind === 'number' ? keepAway.value : 0, what };
}

function readGate(feature: JsonObject, properties: JsonObject, base: Base, bad: Refuse): Feature {
  const width = readNumber(properties, 'clearWidthIn', Number.MIN_VALUE, WIDEST_GATE_IN);
  if (width.kind !== 'number') {
    const shown = width.kind === 'bad' ? `clearWidthIn is ${width.text}.` : 'The gate has no clearWidthIn.';
    return bad('gate-width-missing', `${shown} Give the clear width between the posts in inches.`);
  }
  const geometry = readGeometry(feature.geometry);
  let at: Position | null = null;
  if (geometry.kind === 'point') at = geometry.at;
  if (geometry.kind === 'area') {
    const checked = degreesBox(geometry.geometry);
    at = 'box' in checked ? boxCentre(checked.box) : null;
  }
  const fits = at !== null && Math.abs(at[0]) <= 180 && Math.abs(at[1]) <= 90;
  const zones = Array.isArray(properties.zones) ? properties.zones : [properties.zones];
  const zoneIds = zones.flatMap((each) => readText(each) ?? []);
  return {
    ...base,
    kind: 'gate',
    clearWidthIn: width.value,
    at: fits ? at : null,
    locked: properties.locked === true,
    zoneIds: zoneIds.length === 0 ? null : zoneIds,
    issues: [],
  };
}

function readArea(
  feature: JsonObject,
  { where }: Base,
  grid: string | null,
  bad: Refuse,
): BadFeature | { readonly geometry: AreaGeometry; readonly issues: readonly Issue[] } {
  const reading = readGeometry(feature.geometry);
  switch (reading.kind) {
    case 'none':
      return bad('geometry-missing', 'The feature has no geometry. Draw its outline, or remove the feature.');
    case 'bad':
      return bad(
        'geometry-invalid',
        `${reading.path} holds ${reading.what}. Draw the outline again or export it once more.`,
      );
    case 'point':
      return bad('geometry-not-area', 'The feature is a point, which has no area. Draw its outline as a polygon.');
    case 'not-area':
      return bad('geometry-not-area', `The feature is a ${reading.type}, which has no area. Close it as a polygon.`);
    case 'area': {
      if (grid !== null) {
        const message = `The file says that its coordinates are in ${grid.slice(0, 80)}. Export again as longitude and latitude.`;
        return bad('geometry-not-lonlat', message);
      }
      if (reading.leftOut === 0) return { geometry: reading.geometry, issues: [] };
      const message = `${reading.leftOut} points or lines of the collection are left out; its polygons are used.`;
      return { geometry: reading.geometry, issues: [issue('note', 'members-ignored', where, message)] };
    }
  }
}

function readParking(value: unknown): Position | null {
  if (!Array.isArray(value)) return null;
  const [longitude, latitude] = value as readonly unknown[];
  if (typeof longitude !== 'number' || typeof latitude !== 'number') return null;
  return Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90 ? [longitude, latitude] : null;
}
