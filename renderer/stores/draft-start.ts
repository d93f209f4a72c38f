import { type Exclusion, PLAIN_ROADS, type Property } from '../../core/book/index.ts';
import { beginDraft, cornersAt, type Draft, type DraftTool, type RingPlace } from '../../core/sketch/index.ts';
import { commonWords } from '../texts/index.ts';
import { draftsWords } from '../texts/stores/index.ts';
import { NO_BACKGROUND, useBackground } from './background.ts';
import { useBook } from './book.ts';
import { changeDraft, pointAtMap, useDraft } from './draft.ts';
import { outlineOf, propertyOf, useParts } from './draft-parts.ts';
import { freshId } from './edits.ts';
import { useHost } from './host.ts';
import { say } from './notices.ts';
import { useSelection } from './selection.ts';
import { goTo } from './view.ts';

/** How far a drawn edge may be out until somebody says better, ft: 0.3 m. Common practice, no source. */
export const ASSUMED_ERROR_FT = 1;
/** A usual width to begin with, in; it is asked for at once. */
const FIRST_GATE_IN = 36;

const BUSY = draftsWords.draftStart.drawingAlready;

/** Why nothing can be drawn now; null where it can. */
export function whyNotDraw(): string | null {
  const { open } = useBook.getState();
  if (open === null) return commonWords.noBook;
  if (open.readOnlyBecause !== null) return open.readOnlyBecause;
  return useDraft.getState().draft === null ? null : BUSY;
}

function selected(): Property | null {
  return propertyOf(useSelection.getState().propertyId);
}

export function whyNotOnLawn(): string | null {
  return whyNotDraw() ?? (selected() === null ? commonWords.noLawnSelected : null);
}

/** The zone that a tool works on: the selected one, else the only one. */
function workedZone(property: Property) {
  const { zoneId } = useSelection.getState();
  const drawn = property.zones.filter((zone) => zone.shape.kind === 'drawn');
  return drawn.find((zone) => zone.id === zoneId) ?? (drawn.length === 1 ? drawn[0] : undefined);
}

export function whyNotOnZone(): string | null {
  const reason = whyNotOnLawn();
  const property = selected();
  if (reason !== null || property === null) return reason;
  if (workedZone(property) !== undefined) return null;
  return property.zones.some((zone) => zone.shape.kind === 'drawn')
    ? draftsWords.draftStart.selectZone
    : draftsWords.draftStart.noOutline;
}

function begin(draft: Draft, words: string): void {
  goTo('ground');
  useParts.setState({ finished: null });
  changeDraft({ draft, marked: null, dragging: null });
  pointAtMap(draft.corners[0] ?? null);
  say(words);
}

const HOW = draftsWords.draftStart.how;

/** What the map shows behind the lawns, so that the sheet can say what was drawn over. */
function drawnOver(): Pick<Draft, 'drawnOver'> | Record<never, never> {
  const { background } = useHost.getState().settings;
  const shown = useBackground.getState().list.find((each) => each.id === background);
  return shown === undefined || shown.id === NO_BACKGROUND ? {} : { drawnOver: shown.name };
}

/** A new zone of the selected lawn; without one, a new lawn. A selected zone with a stated area gets its outline. */
export function drawZone(tool: DraftTool = 'polygon', newLawn = false): void {
  const { open } = useBook.getState();
  if (open === null || whyNotDraw() !== null) return;
  const property = newLawn ? null : selected();
  const drawing = { tool, outlineErrorFt: ASSUMED_ERROR_FT, ...drawnOver() };
  if (property === null) {
    const propertyId = freshId(open.book.properties, 'lawn');
    const purpose = { kind: 'zone', propertyId, zoneId: 'zone-1', name: commonWords.lawn } as const;
    begin(
      beginDraft({ ...drawing, purpose, newPropertyName: commonWords.newLawn }),
      draftsWords.draftStart.drawingLawn(HOW),
    );
    return;
  }
  const { zoneId } = useSelection.getState();
  const stated = property.zones.filter((zone) => zone.shape.kind === 'stated');
  const target = stated.find((zone) => zone.id === zoneId) ?? (property.zones.length === 1 ? stated[0] : undefined);
  const purpose = {
    kind: 'zone',
    propertyId: property.id,
    zoneId: target?.id ?? freshId(property.zones, 'zone'),
    name: '',
  } as const;
  begin(beginDraft({ ...drawing, purpose }), draftsWords.draftStart.drawingZone(property.name, HOW));
}

export function drawExclusion(what: Exclusion['what'], tool: DraftTool = 'polygon'): void {
  const property = selected();
  if (property === null || whyNotDraw() !== null) return;
  const exclusionId = freshId(property.exclusions, 'out');
  const purpose = { kind: 'exclusion', propertyId: property.id, exclusionId, name: '', what } as const;
  begin(beginDraft({ tool, purpose }), draftsWords.draftStart.drawingExclusion(property.name, HOW));
}

/** An area that trucks drive round; it belongs to no lawn. */
export function drawAvoided(): void {
  const { open } = useBook.getState();
  if (open === null || whyNotDraw() !== null) return;
  const { avoid } = open.book.roads ?? PLAIN_ROADS;
  const purpose = { kind: 'avoid', areaId: freshId(avoid, 'avoid'), name: '' } as const;
  begin(beginDraft({ tool: 'polygon', purpose }), draftsWords.draftStart.drawingAvoided(HOW));
}

export function placeGate(): void {
  const property = selected();
  if (property === null || whyNotDraw() !== null) return;
  const gateId = freshId(property.gates, 'gate');
  const purpose = { kind: 'gate', propertyId: property.id, gateId, name: '', clearWidthIn: FIRST_GATE_IN } as const;
  begin(beginDraft({ tool: 'polygon', purpose }), draftsWords.draftStart.showGate);
}

export function placeParking(): void {
  const property = selected();
  if (property === null || whyNotDraw() !== null) return;
  const purpose = { kind: 'parking', propertyId: property.id } as const;
  begin(beginDraft({ tool: 'polygon', purpose }), draftsWords.draftStart.showParking);
}

export function placeHoseStand(): void {
  const property = selected();
  const zone = property === null ? undefined : workedZone(property);
  if (property === null || zone === undefined || whyNotDraw() !== null) return;
  const purpose = { kind: 'hose-stand', propertyId: property.id, zoneId: zone.id } as const;
  begin(beginDraft({ tool: 'polygon', purpose }), draftsWords.draftStart.showHoseStand(zone.name));
}

/** A hole in the zone, a piece cut off it, or a line that splits it. */
export function drawInZone(kind: 'hole' | 'cut' | 'split-line'): void {
  const property = selected();
  const zone = property === null ? undefined : workedZone(property);
  if (property === null || zone === undefined || whyNotDraw() !== null) return;
  const purpose = { kind, propertyId: property.id, zoneId: zone.id } as const;
  const words = {
    hole: draftsWords.draftStart.drawingHole,
    cut: draftsWords.draftStart.drawingCut,
    'split-line': draftsWords.draftStart.drawingSplit,
  };
  begin(beginDraft({ tool: 'polygon', purpose }), `${words[kind]} ${zone.name}. ${HOW}`);
}

export function whyNotEdit(): string | null {
  const reason = whyNotOnLawn();
  if (reason !== null) return reason;
  return editable() === null ? draftsWords.draftStart.selectShape : null;
}

function editable() {
  const property = selected();
  if (property === null) return null;
  const chosen = useParts.getState().parts.find((part) => part.propertyId === property.id && part.kind !== 'gate');
  const zone = workedZone(property);
  const part =
    chosen ?? (zone === undefined ? null : ({ propertyId: property.id, kind: 'zone', partId: zone.id } as const));
  const geometry = part === null ? null : outlineOf(property, part);
  return part === null || geometry === null ? null : { property, part, geometry };
}

/** Moves the corners of an outline of the book: of its shell, or of another ring. */
export function editCorners(place: RingPlace = { polygon: 0, ring: 0 }): void {
  const target = editable();
  if (target === null || whyNotDraw() !== null) return;
  const { property, part, geometry } = target;
  const corners = cornersAt(geometry, place);
  if (corners === null) return;
  const exclusion = property.exclusions.find((each) => each.id === part.partId);
  const purpose =
    part.kind === 'zone'
      ? ({ kind: 'zone', propertyId: property.id, zoneId: part.partId, name: '' } as const)
      : ({
          kind: 'exclusion',
          propertyId: property.id,
          exclusionId: part.partId,
          name: '',
          what: exclusion?.what ?? 'other',
        } as const);
  const shape = part.kind === 'zone' ? property.zones.find((each) => each.id === part.partId)?.shape : undefined;
  const known = shape?.kind === 'drawn' && shape.outlineErrorFt !== undefined ? shape.outlineErrorFt : null;
  const error = known === null ? {} : { outlineErrorFt: known };
  begin(
    beginDraft({ tool: 'polygon', purpose, corners, base: { geometry, place }, ...error }),
    draftsWords.draftStart.dragCorners,
  );
}
