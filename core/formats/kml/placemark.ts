import { type Issue, issue } from '../../base/index.ts';
import type { SourceFeature } from '../types.ts';
import type { XmlElement } from '../xml/index.ts';
import { type FieldTypes, readAttributes } from './attributes.ts';
import { type KmlGeometry, readKmlGeometry } from './geometry.ts';

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
    issues: issuesOf(reading, where),
  };
  return { feature, positions: reading.kind === 'geometry' ? reading.positions : 0 };
}

function issuesOf(reading: KmlGeometry, where: string): readonly Issue[] {
  switch (reading.kind) {
    case 'none':
      return [
        issue('error', 'geometry-missing', where, 'The record has no outline. Draw it, or leave the record out.'),
      ];
    case 'bad': {
      const message = `The outline holds ${reading.what}. Draw the outline again or export it once more.`;
      return [issue('error', 'geometry-invalid', where, message)];
    }
    case 'geometry': {
      if (reading.closed === 0) return [];
      const rings = reading.closed === 1 ? 'A ring was' : `${reading.closed} rings were`;
      return [issue('note', 'ring-closed', where, `${rings} not closed; the last corner was joined to the first.`)];
    }
  }
}
