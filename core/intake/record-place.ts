import { type Issue, issue } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import type { SourceFeature } from '../formats/index.ts';
import { degreesBox, outlineArea, positionFault } from '../geometry/index.ts';
import type { Placing } from './coordinates.ts';
import type { LayerMapping } from './mapping.ts';
import { type Ground, type RecordBase, type RefusedRecord, refuse } from './record.ts';
import { readShape, type ShapeReading } from './shape.ts';

/** A wider gap between the ends of a closed line is told, metres. Common practice, no source. */
const WIDE_GAP_M = 15;

/** One record with all that is known of how to read it. */
export type Reading = {
  readonly feature: SourceFeature;
  readonly layer: LayerMapping;
  readonly base: RecordBase;
  readonly closeLines: boolean;
  readonly placing: Placing;
};

/** Where a record lies. */
export type Place =
  | { readonly kind: 'ground'; readonly ground: Ground; readonly issues: readonly Issue[] }
  | { readonly kind: 'point'; readonly at: Position }
  | { readonly kind: 'none' }
  | { readonly kind: 'refused'; readonly record: RefusedRecord };

export function readPlace({ feature, base, placing, closeLines }: Reading): Place {
  const placed = feature.geometry === null ? null : placing(feature.geometry);
  if (feature.geometry !== null && placed === null) {
    const message = 'Its coordinates lie outside of what their system covers. Check which system the file is in.';
    return { kind: 'refused', record: refuse(base, 'geometry-not-lonlat', message) };
  }
  const shape = readShape(placed, closeLines);
  switch (shape.kind) {
    case 'none':
      return shape;
    case 'refused':
      return { kind: 'refused', record: refuse(base, shape.code, shape.message) };
    case 'point': {
      const fault = shape.at[0] === 0 && shape.at[1] === 0 ? nullIsland() : positionFault(shape.at);
      return fault === null ? shape : { kind: 'refused', record: refuse(base, fault.code, fault.message) };
    }
    case 'area':
      return readGround(shape, base);
  }
}

function nullIsland(): { readonly code: string; readonly message: string } {
  return {
    code: 'place-unreadable',
    message: 'Latitude and longitude are both 0. Look the place up once more.',
  };
}

function readGround({ geometry, leftOut, gapM }: Extract<ShapeReading, { kind: 'area' }>, base: RecordBase): Place {
  const { areaSqM, faults } = outlineArea(geometry);
  const issues = faults.map((each) => issue(each.severity, each.code, base.where, each.message));
  const checked = degreesBox(geometry);
  if (areaSqM === null || 'fault' in checked) {
    const all = [...base.issues, ...issues];
    return { kind: 'refused', record: { ...base, kind: 'refused', issues: all } };
  }
  if (leftOut > 0) {
    const message = `${leftOut} points or lines of the collection are left out; its outlines are used.`;
    issues.push(issue('note', 'members-ignored', base.where, message));
  }
  if (gapM > WIDE_GAP_M) {
    const message = `Its ends lie ${Math.round(gapM)} m apart and were joined. Look whether the line goes round the turf.`;
    issues.push(issue('warning', 'line-closed', base.where, message));
  }
  return { kind: 'ground', ground: { geometry, box: checked.box, areaSqM }, issues };
}

/** What the record has instead of the outline that its role needs. */
export function needsArea(place: Place, base: RecordBase): RefusedRecord {
  if (place.kind === 'refused') return place.record;
  return place.kind === 'point'
    ? refuse(base, 'geometry-not-area', 'The record is a point, which has no area. Draw its outline.')
    : refuse(base, 'geometry-missing', 'The record has no outline. Draw it, or remove the record.');
}
