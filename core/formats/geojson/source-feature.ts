import { type Issue, issue } from '../../base/index.ts';
import type { AttributeValue, SourceFeature } from '../types.ts';
import { readSourceGeometry, type SourceGeometry } from './source-geometry.ts';
import { isObject, type JsonObject } from './structure.ts';
import { readText } from './values.ts';

/** Longest id and longest attribute that are kept. */
const LONGEST_ID = 120;
const LONGEST_TEXT = 4000;

/** One member of the features as a record, and how many positions it has. Never fails: what cannot be read is an issue. */
export function readSourceFeature(
  value: unknown,
  index: number,
  file: string,
): { readonly feature: SourceFeature; readonly positions: number } {
  const where = `${file}, features[${index}]`;
  if (!isObject(value) || value.type !== 'Feature') {
    const message = 'This is no GeoJSON feature. Export the file again.';
    const issues = [issue('error', 'feature-invalid', where, message)];
    return { feature: { where, id: null, geometry: null, attributes: {}, issues }, positions: 0 };
  }
  const properties = isObject(value.properties) ? value.properties : {};
  const id = (readText(value.id) ?? readText(properties.id))?.slice(0, LONGEST_ID) ?? null;
  const attributes = readAttributes(properties);
  const reading = readSourceGeometry(value.geometry);
  const geometry = reading.kind === 'geometry' ? reading.geometry : null;
  const positions = reading.kind === 'geometry' ? reading.positions : 0;
  return { feature: { where, id, geometry, attributes, issues: geometryIssues(reading, where) }, positions };
}

/** What is said of a record whose geometry was read so. */
export function geometryIssues(reading: SourceGeometry, where: string): readonly Issue[] {
  switch (reading.kind) {
    case 'none':
      return [
        issue('error', 'geometry-missing', where, 'The record has no outline. Draw it, or leave the record out.'),
      ];
    case 'bad': {
      const message = `${reading.path} holds ${reading.what}. Draw the outline again or export it once more.`;
      return [issue('error', 'geometry-invalid', where, message)];
    }
    case 'geometry': {
      if (reading.closed === 0) return [];
      const rings = reading.closed === 1 ? 'A ring was' : `${reading.closed} rings were`;
      return [issue('note', 'ring-closed', where, `${rings} not closed; the last corner was joined to the first.`)];
    }
  }
}

/** Values as they are; lists and objects as their JSON text. */
function readAttributes(properties: JsonObject): Readonly<Record<string, AttributeValue>> {
  return Object.fromEntries(Object.entries(properties).map(([name, value]) => [name, readAttribute(value)]));
}

function readAttribute(value: unknown): AttributeValue {
  if (typeof value === 'string') return value.slice(0, LONGEST_TEXT);
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return value;
  return (JSON.stringify(value) ?? '').slice(0, LONGEST_TEXT);
}
