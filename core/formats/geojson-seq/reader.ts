import { ok, type Result } from '../../base/index.ts';
import { readGeojsonText } from '../geojson/index.ts';
import { readPlainText } from '../text/index.ts';
import type { GroundReader, GroundReadOptions, GroundSource } from '../types.ts';

/** Stands before each text of a sequence (RFC 7464, section 2.2). */
const RECORD_SEPARATOR = '\u001e';
/** How much of a file is looked at to tell what it is. */
const GLANCE_BYTES = 4000;

/** GeoJSON one record after the other: text sequences (RFC 8142), and files with a record on each line. */
export const geojsonSeqReader: GroundReader = {
  id: 'geojson-seq',
  title: 'Outlines record by record (GeoJSON text sequence)',
  extensions: ['geojsons', 'geojsonl', 'geojsonseq'],
  looksLike: (bytes) => {
    const { text } = readPlainText(bytes.subarray(0, GLANCE_BYTES));
    const [first = '', second = ''] = text.replace(/^\uFEFF?\s*/, '').split('\n');
    return first.startsWith(RECORD_SEPARATOR) || (isRecord(first) && second.startsWith('{'));
  },
  read: async (bytes, fileName, options) => readSequence(bytes, fileName, options),
};

/** A whole feature or geometry on one line; the first line of a collection is no JSON by itself, or holds all of it. */
const isRecord = (line: string): boolean => /^\{.*"type"\s*:\s*"(?!FeatureCollection|Topology)\w+".*\}\s*$/.test(line);

/**
 * Every record of a sequence, in one layer. One that is cut off or no GeoJSON stays in the list, with an error of its own: the others can be
 * read all the same (RFC 8142, section 2). Errors: `file-too-large`, `cancelled`.
 */
function readSequence(bytes: Uint8Array, fileName: string, options: GroundReadOptions): Result<GroundSource> {
  const { text } = readPlainText(bytes);
  const records = text
    .replace(/^\uFEFF/, '')
    .split(text.includes(RECORD_SEPARATOR) ? RECORD_SEPARATOR : '\n')
    .filter((each) => each.trim() !== '');
  const collection = `{"type":"FeatureCollection","features":[${records.map(asFeature).join(',')}]}`;
  const read = readGeojsonText(collection, fileName, options);
  return read.ok ? ok({ ...read.value, formatId: geojsonSeqReader.id }) : read;
}

/** The text of a feature; null for what is none, which the reader of collections tells of. */
function asFeature(text: string): string {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return 'null';
  }
  const isGeometry = typeof value === 'object' && value !== null && ('coordinates' in value || 'geometries' in value);
  return isGeometry ? `{"type":"Feature","properties":{},"geometry":${text}}` : text;
}
