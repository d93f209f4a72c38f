import { err, ok, type Result } from '../../../core/base/index.ts';
import type { GroundSource, SourceLayer } from '../../../core/formats/index.ts';
import {
  type ControlPoint,
  type CoordinatesAnswer,
  FIELD_UNITS,
  type FieldUse,
  guessMapping,
  guessUnit,
  LAYER_ROLES,
  type LayerMapping,
  type Mapping,
  MEANINGS,
  type Meaning,
  unitsOf,
} from '../../../core/intake/index.ts';
import { type Option, type Typed, UsageFault } from '../command.ts';

/** Options that say how a file of ground is to be understood. What is not said is guessed. */
export const MAPPING_OPTIONS: readonly Option[] = [
  {
    name: 'layer',
    value: 'NAME[=ROLE]',
    many: true,
    words: `take only the layers that are named; what they are: ${LAYER_ROLES.filter((each) => each !== 'nothing').join(', ')}`,
  },
  {
    name: 'map',
    value: 'MEANING=FIELD[:UNIT]',
    many: true,
    words: `what a field means: ${MEANINGS.map(dashed).join(', ')}; without FIELD none is taken for it`,
  },
  {
    name: 'merge',
    value: 'HOW',
    words: 'by what a record is a property of the book: id, or place; by id where not said',
  },
  { name: 'close-lines', value: null, words: 'take lines for outlines and close them' },
  { name: 'crs', value: 'EPSG:N', words: 'what the coordinates are where the file does not say; or "degrees"' },
  {
    name: 'point',
    value: 'X,Y=LAT,LON',
    many: true,
    words: 'a point of a drawing and its place on the ground: two of them, or one with --unit-m',
  },
  { name: 'unit-m', value: 'METRES', words: 'length of one unit of a drawing' },
  { name: 'bearing', value: 'DEGREES', words: "bearing on the ground of a drawing's y axis, from north by east (0)" },
];

/** How a file is to be understood, and the layers that were asked to be left out. */
export type FileMapping = { readonly mapping: Mapping; readonly leftOut: readonly string[] };

/** The guess with what the options say. Error `reference-missing`: the file has no such layer or field. Throws UsageFault. */
export function mappingOf(source: GroundSource, typed: Typed, where: string): Result<FileMapping> {
  const guess = guessMapping(source);
  const answer = answerOf(typed);
  const layers: LayerMapping[] = guess.mapping.layers.map((each, place) => ({
    ...each,
    coordinates: source.layers[place]?.coordinates.kind === 'degrees' ? null : answer,
  }));
  const chosen = chooseLayers(source, layers, typed.lists.layer ?? [], where);
  if (!chosen.ok) return chosen;
  const mapped = mapFields(source, chosen.value, typed.lists.map ?? [], where);
  if (!mapped.ok) return mapped;
  const mapping: Mapping = {
    layers: mapped.value,
    closeLines: guess.mapping.closeLines || typed.flags.has('close-lines'),
    mergeBy: mergeOf(typed),
  };
  const used = new Set(mapping.layers.flatMap((each) => Object.values(each.fields).map((use) => use.field)));
  const leftOut = [...new Set(guess.leftOut.map((each) => each.field))].filter((field) => !used.has(field));
  return ok({ mapping, leftOut });
}

function mergeOf(typed: Typed): Mapping['mergeBy'] {
  const text = typed.options.merge ?? 'id';
  if (text === 'id' || text === 'place') return text;
  throw new UsageFault(`--merge needs id or place, not "${text}".`);
}

function chooseLayers(
  source: GroundSource,
  layers: readonly LayerMapping[],
  wishes: readonly string[],
  where: string,
): Result<readonly LayerMapping[]> {
  if (wishes.length === 0) return ok(layers);
  const after = layers.map((each): LayerMapping => ({ ...each, role: 'nothing' }));
  for (const wish of wishes) {
    const { name, role } = layerWish(wish, source.layers);
    const place = source.layers.findIndex((each) => each.name === name);
    const before = layers[place];
    if (before === undefined) return noSuch('layer', name, namesOf(source.layers), where);
    after[place] = { ...before, role: role ?? before.role };
  }
  return ok(after);
}

/** A layer's own name may hold an equals sign, so the whole word is tried first. */
function layerWish(
  wish: string,
  layers: readonly SourceLayer[],
): { readonly name: string; readonly role: LayerMapping['role'] | null } {
  const cut = wish.lastIndexOf('=');
  if (cut < 0 || layers.some((each) => each.name === wish)) return { name: wish, role: null };
  const role = LAYER_ROLES.find((each) => each === wish.slice(cut + 1));
  if (role !== undefined) return { name: wish.slice(0, cut), role };
  throw new UsageFault(`--layer knows no role "${wish.slice(cut + 1)}". It knows: ${LAYER_ROLES.join(', ')}.`);
}

function mapFields(
  source: GroundSource,
  layers: readonly LayerMapping[],
  wishes: readonly string[],
  where: string,
): Result<readonly LayerMapping[]> {
  let after = layers;
  for (const wish of wishes) {
    const { meaning, field, unit } = fieldWish(wish);
    const has = source.layers.map((each) => each.fields.includes(field));
    const known = [...new Set(source.layers.flatMap((each) => each.fields))];
    if (field !== '' && !has.includes(true)) return noSuch('field', field, known.join(', '), where);
    after = after.map((layer, place) => {
      if (field !== '' && has[place] !== true) return layer;
      const { [meaning]: _, ...rest } = layer.fields;
      const use: FieldUse = { field, unit: unit ?? guessUnit(meaning, field) };
      // Without a field for it nothing is an id, the file's own ones neither.
      const ownIds = layer.ownIds && !(meaning === 'id' && field === '');
      return { ...layer, ownIds, fields: field === '' ? rest : { ...rest, [meaning]: use } };
    });
  }
  return ok(after);
}

function fieldWish(wish: string): {
  readonly meaning: Meaning;
  readonly field: string;
  readonly unit: FieldUse['unit'];
} {
  const cut = wish.indexOf('=');
  const meaning = MEANINGS.find((each) => dashed(each) === wish.slice(0, cut));
  if (cut < 0 || meaning === undefined) {
    throw new UsageFault(`--map needs MEANING=FIELD, not "${wish}". It knows: ${MEANINGS.map(dashed).join(', ')}.`);
  }
  const rest = wish.slice(cut + 1);
  const colon = rest.lastIndexOf(':');
  const unit = colon < 0 ? undefined : FIELD_UNITS.find((each) => each === rest.slice(colon + 1));
  if (unit === undefined || !unitsOf(meaning).includes(unit)) return { meaning, field: rest, unit: null };
  return { meaning, field: rest.slice(0, colon), unit };
}

/** "gateWidth" as it is typed: "gate-width". */
function dashed(meaning: Meaning): string {
  return meaning.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function namesOf(layers: readonly SourceLayer[]): string {
  return layers.map((each) => each.name).join(', ');
}

function noSuch(what: 'layer' | 'field', name: string, known: string, where: string): Result<never> {
  return err('reference-missing', where, `The file has no ${what} "${name}".`, `It has these: ${known.slice(0, 500)}.`);
}

function answerOf(typed: Typed): CoordinatesAnswer | null {
  const points = (typed.lists.point ?? []).map(pointOf);
  const [first, second] = points;
  if (first !== undefined && second !== undefined && points.length === 2) return { kind: 'two-points', first, second };
  if (first !== undefined) return onePoint(first, points.length, typed);
  const { crs } = typed.options;
  if (crs === undefined) return null;
  if (crs.toLowerCase() === 'degrees') return { kind: 'degrees' };
  const code = Number(/^epsg:(\d{4,6})$/i.exec(crs)?.[1]);
  if (Number.isInteger(code)) return { kind: 'epsg', code };
  throw new UsageFault(`--crs needs a code like EPSG:2249, or "degrees", not "${crs}".`);
}

function onePoint(point: ControlPoint, count: number, typed: Typed): CoordinatesAnswer {
  if (count > 2) throw new UsageFault('--point is taken twice at most.');
  const unit = typed.options['unit-m'];
  if (unit === undefined) throw new UsageFault('One --point alone says too little: give a second one, or --unit-m.');
  const bearing = typed.options.bearing ?? '0';
  const [metresPerUnit, bearingDeg] = [Number(unit), Number(bearing)];
  if (!(metresPerUnit > 0)) throw new UsageFault(`--unit-m needs a number above 0, not "${unit}".`);
  if (!Number.isFinite(bearingDeg)) throw new UsageFault(`--bearing needs degrees, not "${bearing}".`);
  return { kind: 'one-point', point, metresPerUnit, bearingDeg };
}

function pointOf(text: string): ControlPoint {
  const [x, y, latitude, longitude, ...more] = text.split(/[,=]/).map(Number);
  const isPoint = /^[^=]+=[^=]+$/.test(text) && more.length === 0;
  if (!isPoint || x === undefined || y === undefined || latitude === undefined || longitude === undefined) {
    throw new UsageFault(`--point needs X,Y=LAT,LON, not "${text}".`);
  }
  const isPlace = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 && Number.isFinite(x) && Number.isFinite(y);
  if (!isPlace) throw new UsageFault(`--point needs numbers, latitude before longitude, not "${text}".`);
  return { drawing: [x, y], ground: [longitude, latitude] };
}
