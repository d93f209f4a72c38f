import { err, ok, type Result } from '../base/index.ts';
import { previewLawns, previewMatrix } from './csv/index.ts';
import { previewGeojson } from './geojson/index.ts';
import type { FileFormat } from './types.ts';

const firstLine = (text: string): string => text.slice(0, 4000).split(/\r?\n/, 1)[0]?.toLowerCase() ?? '';

/** Every file format that properties and travel times can be read from. A new one is a folder and a line here. */
export const FORMATS: readonly FileFormat[] = [
  {
    kind: 'ground',
    id: 'geojson',
    title: 'Outlines (GeoJSON)',
    extensions: ['geojson', 'json'],
    looksLike: (text) =>
      /^\uFEFF?\s*\{/.test(text) && /"(?:FeatureCollection|Feature|Polygon|MultiPolygon)"/.test(text),
    read: previewGeojson,
  },
  {
    kind: 'matrix',
    id: 'csv-matrix',
    title: 'Travel times (CSV: from, to, seconds, metres)',
    extensions: ['csv'],
    looksLike: (text) => /\bfrom\b/.test(firstLine(text)) && /\bto\b/.test(firstLine(text)),
    read: previewMatrix,
  },
  {
    kind: 'ground',
    id: 'csv-lawns',
    title: 'List of lawns (CSV)',
    extensions: ['csv', 'txt'],
    looksLike: (text) => /\blat(?:itude)?\b/.test(firstLine(text)),
    read: previewLawns,
  },
];

/** The format of a file, by its content first and its name's ending second. Error: `format-unknown`. */
export function findFormat(fileName: string, text: string): Result<FileFormat> {
  const ending = fileName.toLowerCase().split('.').pop() ?? '';
  const named = FORMATS.filter((each) => each.extensions.includes(ending));
  const found = named.find((each) => each.looksLike(text)) ?? FORMATS.find((each) => each.looksLike(text)) ?? named[0];
  if (found !== undefined) return ok(found);
  const titles = FORMATS.map((each) => each.title).join(', ');
  return err('format-unknown', fileName, 'The file is in no format that is read.', `These are read: ${titles}.`);
}
