import { type Issue, issue, ok, type Result } from '../../base/index.ts';
import { createTally } from '../tally.ts';
import { readPlainText } from '../text/index.ts';
import type { GroundReader, GroundReadOptions, GroundSource, SourceFeature } from '../types.ts';
import { settleCoordinates } from './source-coordinates.ts';
import { readSourceFeature } from './source-feature.ts';
import { readFeatures } from './structure.ts';

/** How much of a file is looked at to tell what it is. */
const GLANCE_BYTES = 4000;

/** GeoJSON as a source of ground: a collection, one feature, or a bare geometry (RFC 7946, and files of the older drafts). */
export const geojsonReader: GroundReader = {
  id: 'geojson',
  title: 'Outlines (GeoJSON)',
  extensions: ['geojson', 'json'],
  looksLike: (bytes) => {
    const { text } = readPlainText(bytes.subarray(0, GLANCE_BYTES));
    return (
      /^\uFEFF?\s*\{/.test(text) &&
      /"(?:FeatureCollection|Feature|Topology|(?:Multi)?Polygon|GeometryCollection)"/.test(text)
    );
  },
  read: async (bytes, fileName, options) => readGeojsonSource(bytes, fileName, options),
};

/**
 * Everything a GeoJSON file holds, one layer. Rings may wind either way; open ones are closed and the record says so; heights
 * are left out. Errors: `not-json`, `format-invalid`, `format-unknown` for TopoJSON, `file-too-large`, `cancelled`.
 */
function readGeojsonSource(bytes: Uint8Array, fileName: string, options: GroundReadOptions): Result<GroundSource> {
  const { text, encoding } = readPlainText(bytes);
  const read = readGeojsonText(text, fileName, options);
  if (!read.ok) return read;
  return ok({ ...read.value, issues: [...encodingIssues(encoding, fileName), ...read.value.issues] });
}

/**
 * Everything a GeoJSON text holds, one layer. Errors: `not-json`, `format-invalid`, `format-unknown` for TopoJSON,
 * `file-too-large`, `cancelled`.
 */
export function readGeojsonText(text: string, fileName: string, options: GroundReadOptions): Result<GroundSource> {
  const list = readFeatures(text, fileName);
  if (!list.ok) return list;
  const { features: values, grid, name } = list.value;
  const tally = createTally(options, fileName, values.length);
  const features: SourceFeature[] = [];
  const fields = new Set<string>();
  for (const [index, value] of values.entries()) {
    const { feature, positions } = readSourceFeature(value, index, fileName);
    const ended = tally.add(positions);
    if (ended !== null) return ended;
    for (const field of Object.keys(feature.attributes)) fields.add(field);
    features.push(feature);
  }
  const settled = settleCoordinates(features, grid, fileName);
  const layer = { name: name ?? fileName.replace(/\.[^.]*$/, ''), fields: [...fields] };
  return ok({
    formatId: geojsonReader.id,
    layers: [{ ...layer, coordinates: settled.coordinates, features: settled.features }],
    issues: [...emptyIssues(values.length, fileName), ...settled.issues],
  });
}

function encodingIssues(encoding: string, where: string): readonly Issue[] {
  if (encoding === 'UTF-8') return [];
  const message = `The file is not in UTF-8, as GeoJSON should be; its letters were read as ${encoding}.`;
  return [issue('warning', 'encoding-assumed', where, message)];
}

function emptyIssues(count: number, where: string): readonly Issue[] {
  return count > 0 ? [] : [issue('warning', 'file-empty', where, 'The file holds no features.')];
}
