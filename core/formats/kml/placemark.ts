import { geometryIssues } from '../geojson/index.ts';
import type { SourceFeature } from '../types.ts';
import type { XmlElement } from '../xml/index.ts';
import { type FieldTypes, readAttributes } from './attributes.ts';
import { readKmlGeometry } from './geometry.ts';

const LONGEST_ID = 120;

export type ReadPlacemark = { readonly feature: SourceFeature; readonly positions: number };

/** One placemark as a record. Never fails: what cannot be read is an issue. */
export function readPlacemark(placemark: XmlElement, where: string, types: FieldTypes): ReadPlacemark {
  const reading = readKmlGeometry(placemark);
  const id = placemark.attributes.get('id')?.trim().slice(0, LONGEST_ID) ?? '';
  const feature: SourceFeature = {
    where,
    id: id === '' ? null : id,
    geometry: reading.kind === 'geometry' ? reading.geometry : null,
    attributes: readAttributes(placemark, types),
    issues: geometryIssues(reading.kind === 'bad' ? { ...reading, path: 'The outline' } : reading, where),
  };
  return { feature, positions: reading.kind === 'geometry' ? reading.positions : 0 };
}
