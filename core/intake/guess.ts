import type { AttributeValue, GroundSource, SourceFeature, SourceLayer } from '../formats/index.ts';
import { exclusionKind } from './exclusion-kind.ts';
import { guessUnit } from './guess-unit.ts';
import type { FieldUse, FieldUses, LayerMapping, LayerRole, Mapping, Meaning } from './mapping.ts';
import { looksLikePerson } from './persons.ts';
import { quantityOf } from './values.ts';

/** What is thought of a file at first sight, for the user to correct. */
export type Guess = {
  readonly mapping: Mapping;
  /** Fields that look like names of people, which are left out. */
  readonly leftOut: readonly { readonly layer: string; readonly field: string }[];
};

/** Names of fields in small letters and digits, the surest first. */
const NAMES: Readonly<Record<Meaning, RegExp>> = {
  id: /^(?:id|propertyid|customerid|accountid|lawnid|key|number|parcelid|parcelno|parcelnum|parcelnumber|pid|pin|apn|gpin|mapparlot|maplot|ml|locid|propid|accountno|account)$/,
  name: /^(?:name|title|label|property|lawn|lawnname|customer|customername|sitename|site|park|facility)$/,
  address:
    /^(?:address|street|streetaddress|siteaddress|siteaddr|situs|situsaddress|situsaddr|locationaddress|propaddress|propertyaddress|propaddr|addr|addr1|addrnum|fulladdress|fulladdr|location|physaddr|siteadd)$/,
  property: /^(?:property|propertyid|belongsto|ofproperty)$/,
  propertyName: /^propertyname$/,
  role: /^role$/,
  area: /^(?:area|lawnarea|turfarea|areasqft|areaft2|sqft|sqfeet|squarefeet|turfsqft|lawnsqft|areaacres|areaac|acres|acreage|aream2|areasqm|areaha|hectares)$/,
  slope: /^(?:slope|slopedeg|slopedegrees|slopepct|slopepercent|grade|steepness)$/,
  gateWidth:
    /^(?:gatewidth|gate|gatewidthin|gatewidthft|gatewidthcm|gatein|gateinches|gateft|gatecm|clearwidth|clearwidthin|clearwidthcm)$/,
  what: /^(?:what|exclusionkind|surface|kind|type|class)$/,
  keepAway: /^(?:keepaway|keepawayft|bufferft)$/,
  zones: /^(?:zones|zoneids)$/,
  locked: /^locked$/,
  parking: /^parking$/,
};
/** Names of ids that are taken last, since they may count rows. */
const WEAK = /^(?:number|key)$/;
/** Files of plans have these. They hold no ground of their own, so that each of their records is turned away by its role. */
const PLAN_ROLES = ['route', 'stop'];
const ROLE_VALUES = ['zone', 'exclusion', 'gate', 'parcel', 'parking'];
const SAMPLES = 200;
/** Formats whose programs number the records, so that the numbers of two files mean nothing to each other. */
const COUNTED: readonly string[] = ['geopackage', 'dxf'];

/** Guesses what the layers and fields of a file are, from names and samples. */
export function guessMapping(source: GroundSource): Guess {
  const layers = source.layers.map((layer) => guessLayer(layer, source.layers.length, source.formatId));
  const leftOut = source.layers.flatMap(({ name, fields }) =>
    fields.filter(looksLikePerson).map((field) => ({ layer: name, field })),
  );
  return { mapping: { layers, closeLines: source.layers.some(hasOnlyClosedLines), mergeBy: 'id' }, leftOut };
}

/** Guesses one layer of a file that has `count` of them. */
function guessLayer(layer: SourceLayer, count: number, formatId: string): LayerMapping {
  const fields = guessFields(layer, formatId);
  const isNoise = formatId === 'dxf' && count > 1 && hasOnlyOpenLines(layer);
  const role = isNoise ? 'nothing' : guessRole(layer, fields, count);
  return { role, fields, ownIds: !COUNTED.includes(formatId), coordinates: null };
}

/** Values that a field has, without repeats and empty ones, for showing. */
export function fieldSamples(layer: SourceLayer, field: string, most = 3): readonly string[] {
  const seen = new Set<string>();
  for (const { attributes } of layer.features) {
    const value = attributes[field];
    const text = value === null || value === undefined ? '' : String(value).trim();
    if (text !== '') seen.add(text.length > 40 ? `${text.slice(0, 39)}…` : text);
    if (seen.size >= most) break;
  }
  return [...seen];
}

function guessFields(layer: SourceLayer, formatId: string): FieldUses {
  const free = layer.fields.filter((field) => !looksLikePerson(field));
  const uses: Partial<Record<Meaning, FieldUse>> = {};
  const joins =
    formatId === 'geojson' || free.some((field) => plainName(field) === 'role' && isRoleField(layer, field));
  for (const meaning of Object.keys(NAMES) as Meaning[]) {
    const taken = Object.values(uses).map((each) => each.field);
    const hasIds = meaning === 'id' && !COUNTED.includes(formatId) && hasOwnIds(layer);
    const field = hasIds ? null : findField(layer, free, meaning, joins, taken);
    if (field !== null) uses[meaning] = { field, unit: guessUnit(meaning, field) };
  }
  return uses;
}

/** The field whose name comes first in the table of names for the meaning. */
function findField(
  layer: SourceLayer,
  fields: readonly string[],
  meaning: Meaning,
  joins: boolean,
  taken: readonly string[],
): string | null {
  const fits = fields.filter((field) => !taken.includes(field) && NAMES[meaning].test(plainName(field)));
  if (meaning === 'role') return fits.find((field) => isRoleField(layer, field)) ?? null;
  if (meaning === 'what') return fits.find((field) => namesExclusions(layer, field)) ?? null;
  // "property" joins features in GeoJSON and where the file has roles or says it twice; elsewhere it is an id or a name.
  const isJoin = (field: string) => NAMES.property.test(plainName(field)) && (joins || repeats(layer, field));
  if (meaning === 'property') return fits.find(isJoin) ?? null;
  return bestOf(
    fits.filter((field) => hasValues(layer, field) && !isJoin(field) && readsAsMeant(layer, field, meaning)),
    meaning,
  );
}

/** False for a field "area" that mostly holds no areas: others use the word for "this is a surface". */
function readsAsMeant(layer: SourceLayer, field: string, meaning: Meaning): boolean {
  if (meaning !== 'area' || layer.features.every(({ geometry }) => geometry?.type === 'Point')) return true;
  const use = { [meaning]: { field, unit: guessUnit(meaning, field) } };
  const sample = layer.features.filter(({ attributes }) => (attributes[field] ?? '') !== '').slice(0, SAMPLES);
  const read = sample.filter((each) => quantityOf(each, use, meaning).ok);
  return read.length * 2 >= sample.length;
}

function bestOf(fields: readonly string[], meaning: Meaning): string | null {
  const order = NAMES[meaning].source.split(/[|()]/);
  const rank = (field: string) => order.indexOf(plainName(field)) + (WEAK.test(plainName(field)) ? 1000 : 0);
  return fields.toSorted((left, right) => rank(left) - rank(right))[0] ?? null;
}

/** "Gate width (in)" gives "gatewidth", "SITE_ADDR" "siteaddr". */
function plainName(field: string): string {
  return field
    .replace(/[([].*$/, '')
    .toLowerCase()
    .replace(/²/g, '2')
    .replace(/[^a-z0-9]/g, '');
}

/** The first values of a field that are not empty, wherever in the layer they stand. */
function valuesOf(layer: SourceLayer, field: string, most = SAMPLES): readonly AttributeValue[] {
  const values: AttributeValue[] = [];
  for (const { attributes } of layer.features) {
    const value = attributes[field];
    if (value !== undefined && value !== null && value !== '') values.push(value);
    if (values.length >= most) break;
  }
  return values;
}

function hasValues(layer: SourceLayer, field: string): boolean {
  return valuesOf(layer, field, 1).length > 0;
}

function isRoleField(layer: SourceLayer, field: string): boolean {
  const values = valuesOf(layer, field).map((value) => String(value).trim().toLowerCase());
  return values.some((value) => ROLE_VALUES.includes(value)) || PLAN_ROLES.every((role) => values.includes(role));
}

/** True where some value is a kind of exclusion. */
function namesExclusions(layer: SourceLayer, field: string): boolean {
  return valuesOf(layer, field).some((value) => exclusionKind(String(value)) !== 'other');
}

/** True where some value stands more than once, as the name of a property does that several records belong to. */
function repeats(layer: SourceLayer, field: string): boolean {
  const values = valuesOf(layer, field);
  return new Set(values).size < values.length;
}

function hasOwnIds(layer: SourceLayer): boolean {
  const sample = layer.features.slice(0, SAMPLES);
  return sample.length > 0 && sample.filter((each) => each.id !== null).length * 2 > sample.length;
}

const ROLE_NAMES: readonly { readonly role: LayerRole; readonly names: RegExp }[] = [
  { role: 'parcels', names: /parcel|cadast|tax.?lot|\blots?\b/i },
  { role: 'exclusions', names: /exclu|building|house|drive|paving|walk|patio|\bbeds?\b|pool|pond|water/i },
  { role: 'gates', names: /gate/i },
  { role: 'zones', names: /zone/i },
];

/** A layer is what its name says, where there are several; a single one holds properties. */
function guessRole(layer: SourceLayer, fields: FieldUses, count: number): LayerRole {
  if (count === 1 || fields.role !== undefined) return 'properties';
  return ROLE_NAMES.find(({ names }) => names.test(layer.name))?.role ?? 'properties';
}

function hasOnlyClosedLines({ features }: SourceLayer): boolean {
  const shapes = features.flatMap(({ geometry }) => (geometry === null ? [] : [geometry]));
  const lines = shapes.filter((each) => each.type === 'LineString' || each.type === 'MultiLineString');
  const hasAreas = shapes.some((each) => each.type === 'Polygon' || each.type === 'MultiPolygon');
  return lines.length > 0 && !hasAreas && lines.every((each) => isClosed(each));
}

/** Lines of dimensions and notes, which a drawing keeps on layers of their own. */
function hasOnlyOpenLines({ features }: SourceLayer): boolean {
  return features.every(({ geometry }) => geometry?.type.endsWith('LineString') === true && !isClosed(geometry));
}

function isClosed(geometry: NonNullable<SourceFeature['geometry']>): boolean {
  const lines =
    geometry.type === 'LineString'
      ? [geometry.coordinates]
      : geometry.type === 'MultiLineString'
        ? geometry.coordinates
        : [];
  return lines.every((line) => {
    const [first, last] = [line[0], line.at(-1)];
    return line.length > 3 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
  });
}
