import { canonicalJson, err, ok, type Result } from '../base/index.ts';
import { type AreaGeometry, type Book, emptyProperty, PLAIN_ROADS, type Property, type Zone } from '../book/index.ts';
import type { Action } from '../edit/index.ts';
import { cutHole, cutOut } from './area-edits.ts';
import { cornersWanted, type Draft, type DraftPurpose, draftOutline, draftPlace, isOutline } from './draft.ts';
import { type PurposeOf, putAction, withExclusion, withGate, withZone, zoneOf } from './draft-records.ts';
import { checkOutline } from './ground.ts';
import { refuse } from './refuse.ts';
import { cornersAt, polygonOf, withCorners } from './ring-edits.ts';
import { splitBy } from './split.ts';
import { splitZone } from './split-zone.ts';

/**
 * The edit of the book that a draft comes to. The book is not touched; apply the action to finish.
 *
 * Errors: `geometry-invalid` with the place for an outline that crosses itself, has too few corners or no width, or a piece
 * that does not fit; `nothing-to-do` where a cut or a line misses the zone; `reference-missing` where property or zone are
 * gone from the book; `book-changed` where the ring that is edited is no longer the one the draft began with
 */
export function finishDraft(draft: Draft, book: Book): Result<Action> {
  const wanted = cornersWanted(draft);
  if (wanted > 0) return refuse(`There are ${draft.corners.length} corners so far.`, `Set at least ${wanted} more.`);
  const { purpose } = draft;
  if (purpose.kind === 'avoid') return finishAvoided(draft, purpose, book);
  const property = propertyOf(draft, purpose.propertyId, book);
  if (!property.ok) return property;
  const changed = changedProperty(draft, property.value);
  if (!changed.ok) return changed;
  const isNew = !book.properties.some((each) => each.id === property.value.id);
  return ok(putAction(changed.value, labelOf(purpose, property.value, isNew)));
}

/** One more area that trucks drive round. It has no corners to move: one that is in the book is removed and drawn again. */
function finishAvoided(draft: Draft, { areaId, name }: PurposeOf<'avoid'>, book: Book): Result<Action> {
  const roads = book.roads ?? PLAIN_ROADS;
  if (draft.base !== undefined || roads.avoid.some((each) => each.id === areaId)) {
    return refuse('The book has this area to drive round already.', 'Remove it in the Shed, and draw it again.');
  }
  const area = draftGeometry(draft);
  if (!area.ok) return area;
  const called = name === '' ? freshAreaName(roads.avoid) : name;
  const avoid = [...roads.avoid, { id: areaId, name: called, area: area.value }];
  return ok({ kind: 'set', changes: { roads: { ...roads, avoid } }, label: `${VERBS.avoid} ${called}` });
}

function freshAreaName(areas: readonly { readonly name: string }[]): string {
  const taken = new Set(areas.map(({ name }) => name));
  let number = 1;
  while (taken.has(`Area ${number}`)) number += 1;
  return `Area ${number}`;
}

/** The outline of a draft as it would go into the book, checked. */
function draftGeometry(draft: Draft): Result<AreaGeometry> {
  const corners = draftOutline(draft);
  if (corners.length < 3) {
    return refuse('The outline has fewer than three corners.', 'Set at least three.');
  }
  if (draft.base === undefined) return checkOutline(polygonOf(corners));
  const joined = withCorners(draft.base.geometry, draft.base.place, corners);
  return joined.ok ? checkOutline(joined.value) : joined;
}

/**
 * The draft on the outline as the book has it now: other rings may have been changed since the draft was begun, its own ring
 * may not, or the change would be lost.
 */
function rebased(draft: Draft, property: Property): Result<Draft> {
  const { base } = draft;
  const current = base === undefined ? null : outlineNow(draft.purpose, property);
  if (base === undefined || current === null) return ok(draft);
  const [now, then] = [cornersAt(current, base.place), cornersAt(base.geometry, base.place)];
  if (canonicalJson(now) !== canonicalJson(then)) {
    return err(
      'book-changed',
      'outline',
      'The outline was changed since this draft of it was begun.',
      'Throw the draft away and change the outline anew.',
    );
  }
  return ok({ ...draft, base: { ...base, geometry: current } });
}

function outlineNow(purpose: DraftPurpose, property: Property): AreaGeometry | null {
  if (purpose.kind === 'exclusion') {
    return property.exclusions.find((each) => each.id === purpose.exclusionId)?.geometry ?? null;
  }
  const shape = purpose.kind === 'zone' ? zoneOf(property, purpose.zoneId)?.shape : undefined;
  return shape?.kind === 'drawn' ? shape.geometry : null;
}

function propertyOf({ newPropertyName, corners }: Draft, propertyId: string, book: Book): Result<Property> {
  const found = book.properties.find((each) => each.id === propertyId);
  if (found !== undefined) return ok(found);
  const [first] = corners;
  if (newPropertyName === undefined || first === undefined) return gone('property', propertyId);
  // The rig parks where the first outline begins until somebody says otherwise.
  return ok(emptyProperty(propertyId, newPropertyName, first));
}

function changedProperty(draft: Draft, property: Property): Result<Property> {
  if (!isOutline(draft.purpose)) return withoutOutline(draft, property);
  const current = rebased(draft, property);
  if (!current.ok) return current;
  const geometry = draftGeometry(current.value);
  return geometry.ok ? withOutline(draft, property, geometry.value) : geometry;
}

function withOutline(draft: Draft, property: Property, geometry: AreaGeometry): Result<Property> {
  const { purpose } = draft;
  switch (purpose.kind) {
    case 'zone':
      return ok(withZone(property, purpose.zoneId, purpose.name, geometry, draft));
    case 'exclusion':
      return ok(withExclusion(property, purpose, geometry));
    case 'hole':
      return editZone(property, purpose.zoneId, (zone) => cutHole(zone, geometry));
    case 'cut':
      return editZone(property, purpose.zoneId, (zone) => cutOut(zone, geometry));
    default:
      return refuse('This is not drawn as an outline.', 'Begin again.');
  }
}

function withoutOutline(draft: Draft, property: Property): Result<Property> {
  const { purpose } = draft;
  const at = draftPlace(draft);
  if (at === null) return refuse('There is no place.', 'Set one.');
  switch (purpose.kind) {
    case 'gate':
      return ok(withGate(property, purpose, at));
    case 'parking':
      return ok({ ...property, parking: at, placedBy: 'hand' });
    case 'hose-stand':
      return changeZone(property, purpose.zoneId, (zone) => ok([{ ...zone, hoseStand: at }]));
    case 'split-line':
      return changeZone(property, purpose.zoneId, (zone) => split(property, zone, draft));
    default:
      return refuse('This is drawn as an outline.', 'Begin again.');
  }
}

function split(property: Property, zone: Zone, draft: Draft): Result<readonly Zone[]> {
  if (zone.shape.kind !== 'drawn') return notDrawn(zone);
  const pieces = splitBy(zone.shape.geometry, draft.corners);
  return pieces.ok ? ok(splitZone(property, zone, zone.shape, pieces.value)) : pieces;
}

function editZone(
  property: Property,
  zoneId: string,
  edit: (geometry: AreaGeometry) => Result<AreaGeometry>,
): Result<Property> {
  return changeZone(property, zoneId, (zone) => {
    if (zone.shape.kind !== 'drawn') return notDrawn(zone);
    const geometry = edit(zone.shape.geometry);
    return geometry.ok ? ok([{ ...zone, shape: { ...zone.shape, geometry: geometry.value } }]) : geometry;
  });
}

function changeZone(
  property: Property,
  zoneId: string,
  change: (zone: Zone) => Result<readonly Zone[]>,
): Result<Property> {
  const zone = zoneOf(property, zoneId);
  if (zone === null) return gone('zone', zoneId);
  const changed = change(zone);
  if (!changed.ok) return changed;
  return ok({ ...property, zones: property.zones.flatMap((each) => (each === zone ? changed.value : [each])) });
}

function notDrawn(zone: Zone): Result<never> {
  return refuse(`Zone ${zone.name} has a stated area and no outline.`, 'Draw its outline first.');
}

function gone(what: string, id: string): Result<never> {
  return err('reference-missing', `${what} ${id}`, `The book has no such ${what} any more.`, 'Choose another one.');
}

const VERBS: Readonly<Record<DraftPurpose['kind'], string>> = {
  zone: 'Draw zone',
  exclusion: 'Draw exclusion',
  gate: 'Place gate',
  parking: 'Place parking point',
  'hose-stand': 'Place hose stand',
  hole: 'Cut hole',
  cut: 'Cut piece off',
  'split-line': 'Split zone',
  avoid: 'Drive round',
};

function labelOf(purpose: DraftPurpose, property: Property, isNew: boolean): string {
  const name = 'name' in purpose && purpose.name !== '' ? ` ${purpose.name}` : '';
  return `${VERBS[purpose.kind]}${name} of ${isNew ? 'new property ' : ''}${property.name}`;
}
