import {
  deleteParts,
  draftStep,
  drawAvoided,
  drawExclusion,
  drawInZone,
  drawZone,
  editCorners,
  finishDrawing,
  letGo,
  mergeZones,
  nudgeParts,
  offerOffset,
  pickUp,
  placeGate,
  placeHoseStand,
  placeParking,
  pointAtMap,
  removeCorner,
  selectProperty,
  setDraftAside,
  squareDraft,
  squareParts,
  stepOutOfDraft,
  throwDraftAway,
  useCarry,
  useDraft,
  useParts,
  useSelection,
  useView,
  whyNotCarry,
  whyNotDraw,
  whyNotEdit,
  whyNotMerge,
  whyNotOnLawn,
  whyNotOnOutlines,
  whyNotOnParts,
  whyNotOnZone,
} from '../stores/index.ts';
import type { Command } from './command.ts';

type Line = readonly [id: string, title: string, keys: readonly string[], whyNot: () => string | null, run: () => void];

const draft = () => useDraft.getState().draft;
const needsDraft = () => (draft() === null ? 'Nothing is being drawn' : null);

function whyNotSquare(): string | null {
  return draft() === null ? whyNotOnOutlines() : null;
}

/** A lawn is let go of in the Ground room alone; elsewhere it is part of what is looked at. */
const lawnToLeave = () => useView.getState().room === 'ground' && useSelection.getState().propertyId !== null;

function whyNotBack(): string | null {
  const { parts } = useParts.getState();
  return draft() === null && useCarry.getState().carry === null && parts.length === 0 && !lawnToLeave()
    ? 'There is nothing to leave'
    : null;
}

/** Esc: what is carried, then what is drawn, then what is chosen, then the lawn. */
function stepBack(): void {
  if (useCarry.getState().carry !== null) letGo();
  else if (draft() !== null) stepOutOfDraft();
  else if (useParts.getState().parts.length > 0) useParts.setState({ parts: [], finished: null });
  else selectProperty(null);
}

function removeLast(): void {
  const count = draft()?.corners.length ?? 0;
  if (count > 0) draftStep({ kind: 'remove', index: count - 1 });
}

/** While something is drawn, Del takes the marked corner out; else what is chosen on the map. */
function whyNotDelete(): string | null {
  if (draft() === null) return whyNotOnParts();
  return useDraft.getState().marked === null ? 'Point at a corner first, or mark one in the table' : null;
}

function deleteChosen(): void {
  const { marked } = useDraft.getState();
  if (draft() === null) deleteParts();
  else if (marked !== null) removeCorner(marked);
}

function whyNotRemoveLast(): string | null {
  const open = draft();
  if (open === null) return 'Nothing is being drawn';
  if (open.base !== undefined) return 'Point at a corner and press Delete';
  return open.corners.length === 0 ? 'There is no corner yet' : null;
}

const inGround = (whyNot: () => string | null) => () =>
  useView.getState().room === 'ground' ? whyNot() : 'This is done in the Ground room';

const LINES: readonly Line[] = [
  ['draw.lawn', 'Draw a new lawn', ['L'], whyNotDraw, () => drawZone('polygon', true)],
  ['draw.zone', 'Draw a zone', ['Z'], whyNotDraw, () => drawZone()],
  ['draw.zone-rectangle', 'Draw a zone as a rectangle', ['R'], whyNotDraw, () => drawZone('rectangle')],
  ['draw.zone-circle', 'Draw a zone as a circle', ['C'], whyNotDraw, () => drawZone('circle')],
  ['draw.building', 'Draw a building to keep out', ['B'], whyNotOnLawn, () => drawExclusion('building')],
  ['draw.paving', 'Draw paving to keep out', ['D'], whyNotOnLawn, () => drawExclusion('paving')],
  ['draw.exclusion', 'Draw something else to keep out', ['X'], whyNotOnLawn, () => drawExclusion('other')],
  ['draw.exclusion-circle', 'Draw a round bed', [], whyNotOnLawn, () => drawExclusion('bed', 'circle')],
  [
    'draw.exclusion-rectangle',
    'Draw a rectangle to keep out',
    [],
    whyNotOnLawn,
    () => drawExclusion('building', 'rectangle'),
  ],
  ['draw.avoid', 'Draw an area to drive round', [], whyNotDraw, drawAvoided],
  ['draw.gate', 'Place a gate', ['G'], whyNotOnLawn, placeGate],
  ['draw.parking', 'Place the parking point', ['P'], whyNotOnLawn, placeParking],
  ['draw.hose-stand', 'Place the hose stand of the zone', ['H'], whyNotOnZone, placeHoseStand],
  ['draw.corners', 'Move corners', ['E'], whyNotEdit, () => editCorners()],
  ['draw.hole', 'Cut a hole in the zone', ['O'], whyNotOnZone, () => drawInZone('hole')],
  ['draw.cut', 'Cut a piece off the zone', ['K'], whyNotOnZone, () => drawInZone('cut')],
  ['draw.split', 'Split the zone by a line', ['S'], whyNotOnZone, () => drawInZone('split-line')],
  ['draw.merge', 'Merge the chosen zones', ['M'], inGround(whyNotMerge), mergeZones],
  ['draw.square', 'Square up', ['Q'], whyNotSquare, () => (draft() === null ? squareParts() : squareDraft())],
  ['draw.offset', 'Move the edge by so many feet', ['F'], inGround(whyNotOnOutlines), offerOffset],
  ['draw.move', 'Move to another place', ['V'], whyNotCarry, () => pickUp('move')],
  ['draw.copy', 'Copy to another place', ['Y'], whyNotCarry, () => pickUp('copy')],
  ['draw.delete', 'Delete what is chosen', ['Delete'], inGround(whyNotDelete), deleteChosen],
  ['draw.finish', 'Finish the outline', [], needsDraft, () => finishDrawing()],
  ['draw.remove-last', 'Remove the last corner', ['Backspace'], whyNotRemoveLast, removeLast],
  ['draw.point', 'Go to the crosshair', ['.'], needsDraft, () => pointAtMap(draft()?.corners.at(-1) ?? null)],
  ['draw.aside', 'Set the outline aside', [], needsDraft, setDraftAside],
  ['draw.throw-away', 'Throw the outline away', [], needsDraft, () => throwDraftAway()],
  ['draw.back', 'One step back', ['Escape'], whyNotBack, stepBack],
];

const NUDGES: readonly (readonly [key: string, words: string, east: number, north: number])[] = [
  ['ArrowLeft', 'west', -1, 0],
  ['ArrowRight', 'east', 1, 0],
  ['ArrowUp', 'north', 0, 1],
  ['ArrowDown', 'south', 0, -1],
];

function nudges(step: number, held: string): readonly Command[] {
  return NUDGES.map(([key, words, east, north]) => ({
    id: `draw.nudge-${words}-${step}`,
    group: 'Draw',
    title: () => `Move ${step} ft ${words}`,
    keys: [`${held}${key}`],
    whyNot: inGround(() => (useSelection.getState().propertyId === null ? 'Nothing is chosen' : whyNotOnParts())),
    run: () => nudgeParts(east * step, north * step),
  }));
}

/** What is done on the map of the Ground room. */
export const drawCommands: readonly Command[] = [
  ...LINES.map(
    ([id, title, keys, whyNot, run]): Command => ({ id, group: 'Draw', title: () => title, keys, whyNot, run }),
  ),
  ...nudges(1, 'Shift+'),
  ...nudges(0.1, 'Alt+Shift+'),
];
