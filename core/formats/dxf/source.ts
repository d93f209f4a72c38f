import { parseString } from 'dxf';
import { err, type Issue, issue, ok, type Result } from '../../base/index.ts';
import { createTally } from '../tally.ts';
import { readPlainText } from '../text/index.ts';
import type { GroundReadOptions, GroundSource, SourceFeature } from '../types.ts';
import { type Expansion, expandDrawing } from './expand.ts';
import { RECORD_FIELDS, readEntity } from './record.ts';
import { type TidyDrawing, tidyDrawing } from './tidy.ts';
import { drawingCoordinates } from './units.ts';
import { refuseBinary } from './varieties.ts';

/** As much is read in about a second (measured on two cores). */
const MOST_BYTES = 24 * 1024 * 1024;

/**
 * Everything a drawing holds that can be an outline, a layer for each of its layers, blocks put in their places and curves
 * as chords. Numbers are in units of the drawing. Errors: `format-unknown` for DWG and binary DXF, `format-invalid` with the
 * line, `file-too-large`, `cancelled`.
 */
export function readDrawing(bytes: Uint8Array, where: string, options: GroundReadOptions): Result<GroundSource> {
  const refused = refuseBinary(bytes, where) ?? refuseLarge(bytes, where);
  if (refused !== null) return refused;
  const tidy = tidyDrawing(readPlainText(bytes).text, where);
  if (!tidy.ok) return tidy;
  const drawing = parse(tidy.value, where);
  if (!drawing.ok) return drawing;
  const expansion = expandDrawing(drawing.value.entities, drawing.value.blocks, options.limits.features);
  if (expansion.isTooLarge) return tooMany(where, options.limits.features);
  const layers = readLayers(expansion, where, options);
  if (!layers.ok) return layers;
  const coordinates = drawingCoordinates(tidy.value.unitCode);
  return ok({
    formatId: 'dxf',
    layers: [...layers.value].map(([name, features]) => ({ name, coordinates, fields: RECORD_FIELDS, features })),
    issues: [...leftOut(tidy.value, where), ...notPlaced(expansion, where)],
  });
}

function refuseLarge(bytes: Uint8Array, where: string): Result<never> | null {
  if (bytes.length <= MOST_BYTES) return null;
  const detail = `The drawing has ${Math.ceil(bytes.length / 1048576)} MB; up to 24 MB are read.`;
  return err('file-too-large', where, detail, 'Save only the layers with the ground.');
}

function tooMany(where: string, most: number): Result<never> {
  const detail = `The drawing, with its blocks put in their places, holds more than ${most.toLocaleString('en-US')} entities.`;
  return err('file-too-large', where, detail, 'Save only the layers with the ground.');
}

/** The package throws where the groups of an entity are not in the order of the standard. */
function parse(tidy: TidyDrawing, where: string): Result<ReturnType<typeof parseString>> {
  try {
    return ok(parseString(tidy.text));
  } catch (problem) {
    if (!(problem instanceof TypeError)) throw problem;
    const detail = 'The blocks or entities of the drawing are not in order.';
    return err(
      'format-invalid',
      `${where}, section ENTITIES`,
      detail,
      'The drawing is damaged. Export it again as DXF.',
    );
  }
}

/** Of all curves together; they are many where a drawing has a symbol for every tree. */
const MOST_CORNERS = 1_500_000;

type Layers = ReadonlyMap<string, readonly SourceFeature[]>;

function readLayers({ placed }: Expansion, where: string, options: GroundReadOptions): Result<Layers> {
  const positions = Math.min(options.limits.positions, MOST_CORNERS);
  const tally = createTally({ ...options, limits: { ...options.limits, positions } }, where, placed.length);
  const layers = new Map<string, SourceFeature[]>();
  for (const each of placed) {
    const features = layers.get(each.layer) ?? [];
    layers.set(each.layer, features);
    const { feature, positions } = readEntity(each, `${where}, layer ${each.layer}, entity ${features.length + 1}`);
    const ended = tally.add(positions);
    if (ended !== null) return ended;
    features.push(feature);
  }
  return ok(layers);
}

/** Writing, dimensions and views are no ground; anything else that is not read may be. */
const WRITING = ['TEXT', 'MTEXT', 'ATTDEF', 'ATTRIB', 'DIMENSION', 'VIEWPORT', 'LEADER', 'MULTILEADER', 'TOLERANCE'];

/** More types than this are told together. */
const MOST_TYPES = 30;

function leftOut({ otherTypes, isWhole }: TidyDrawing, where: string): readonly Issue[] {
  const types = [...otherTypes];
  const rest = types.slice(MOST_TYPES).reduce((sum, [, count]) => sum + count, 0);
  const shown = rest === 0 ? types : [...types.slice(0, MOST_TYPES), ['other', rest] as const];
  const issues = shown.map(([type, count]) => {
    const severity = WRITING.includes(type) ? 'note' : 'warning';
    const message = `${count} of type ${type.slice(0, 40)} in the drawing and its blocks are not read and were left out.`;
    return issue(severity, 'entities-left-out', where, message);
  });
  if (isWhole) return issues;
  const message = 'The drawing ends without its end mark. It may have been cut short; check that nothing is missing.';
  return [...issues, issue('warning', 'file-cut-short', where, message)];
}

function notPlaced({ placed, missingBlocks, refusedInserts, unseen }: Expansion, where: string): readonly Issue[] {
  const issues: Issue[] = [];
  const say = (severity: 'warning' | 'note', code: string, message: string): void => {
    issues.push(issue(severity, code, where, message));
  };
  if (missingBlocks.length > 0) {
    const names = missingBlocks.slice(0, 5).map((each) => `"${each.slice(0, 40)}"`);
    say('warning', 'blocks-missing', `Blocks are inserted that the drawing does not hold: ${names.join(', ')}.`);
  }
  if (refusedInserts > 0) {
    const why = 'they lie inside themselves, too deep, or not flat';
    say('warning', 'inserts-left-out', `${refusedInserts} inserted blocks were left out, since ${why}.`);
  }
  if (unseen > 0)
    say('note', 'entities-unseen', `${unseen} hidden entities or entities on print sheets were left out.`);
  if (placed.length === 0) say('warning', 'file-empty', 'The drawing holds no lines or outlines.');
  return issues;
}
