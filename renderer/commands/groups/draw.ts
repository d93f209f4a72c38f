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
  whyNotFinish,
  whyNotMerge,
  whyNotOnLawn,
  whyNotOnOutlines,
  whyNotOnParts,
  whyNotOnZone,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, commandsOf } from '../command.ts';

type Line = readonly [
  id: string,
  title: string | (() => string),
  keys: readonly string[],
  whyNot: () => string | null,
  run: () => void,
];

const draft = () => useDraft.getState().draft;
const needsDraft = () => (draft() === null ? commandsWords.drawing.nothingDrawn : null);

function whyNotSquare(): string | null {
  const drawn = draft();
  if (drawn === null) return whyNotOnOutlines();
  return drawn.corners.length < 3 ? commandsWords.drawing.setThreeCornersFirst : null;
}

/** A lawn is let go of in the Ground room alone; elsewhere it is part of what is looked at. */
const lawnToLeave = () => useView.getState().room === 'ground' && useSelection.getState().propertyId !== null;

function whyNotBack(): string | null {
  const { parts } = useParts.getState();
  return draft() === null && useCarry.getState().carry === null && parts.length === 0 && !lawnToLeave()
    ? commandsWords.drawing.nothingToLeave
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
  return useDraft.getState().marked === null ? commandsWords.drawing.pointFirst : null;
}

function deleteChosen(): void {
  const { marked } = useDraft.getState();
  if (draft() === null) deleteParts();
  else if (marked !== null) removeCorner(marked);
}

function whyNotRemoveLast(): string | null {
  const open = draft();
  if (open === null) return commandsWords.drawing.nothingDrawn;
  if (open.base !== undefined) return commandsWords.drawing.pointAndDelete;
  return open.corners.length === 0 ? commandsWords.drawing.noCorner : null;
}

const inGround = (whyNot: () => string | null) => () =>
  useView.getState().room === 'ground' ? whyNot() : commandsWords.drawing.inGroundRoom;

const LINES: readonly Line[] = [
  ['draw.lawn', commandsWords.drawing.lawn, ['L'], whyNotDraw, () => drawZone('polygon', true)],
  ['draw.zone', commandsWords.drawing.zone, ['Z'], whyNotDraw, () => drawZone()],
  ['draw.zone-rectangle', commandsWords.drawing.zoneRectangle, ['R'], whyNotDraw, () => drawZone('rectangle')],
  ['draw.zone-circle', commandsWords.drawing.zoneCircle, ['C'], whyNotDraw, () => drawZone('circle')],
  ['draw.building', commandsWords.drawing.building, ['B'], whyNotOnLawn, () => drawExclusion('building')],
  ['draw.paving', commandsWords.drawing.paving, ['D'], whyNotOnLawn, () => drawExclusion('paving')],
  ['draw.exclusion', commandsWords.drawing.exclusion, ['X'], whyNotOnLawn, () => drawExclusion('other')],
  ['draw.exclusion-circle', commandsWords.drawing.roundBed, [], whyNotOnLawn, () => drawExclusion('bed', 'circle')],
  [
    'draw.exclusion-rectangle',
    commandsWords.drawing.exclusionRectangle,
    [],
    whyNotOnLawn,
    () => drawExclusion('building', 'rectangle'),
  ],
  ['draw.avoid', commandsWords.drawing.avoided, [], whyNotDraw, drawAvoided],
  ['draw.gate', commandsWords.drawing.gate, ['G'], whyNotOnLawn, placeGate],
  ['draw.parking', commandsWords.drawing.parking, ['P'], whyNotOnLawn, placeParking],
  ['draw.hose-stand', commandsWords.drawing.hoseStand, ['H'], whyNotOnZone, placeHoseStand],
  ['draw.corners', commandsWords.drawing.moveCorners, ['E'], whyNotEdit, () => editCorners()],
  ['draw.hole', commandsWords.drawing.cutHole, ['O'], whyNotOnZone, () => drawInZone('hole')],
  ['draw.cut', commandsWords.drawing.cutPiece, ['K'], whyNotOnZone, () => drawInZone('cut')],
  ['draw.split', commandsWords.drawing.split, ['S'], whyNotOnZone, () => drawInZone('split-line')],
  ['draw.merge', commandsWords.drawing.merge, ['M'], inGround(whyNotMerge), mergeZones],
  [
    'draw.square',
    commandsWords.drawing.squareUp,
    ['Q'],
    whyNotSquare,
    () => (draft() === null ? squareParts() : squareDraft()),
  ],
  ['draw.offset', commandsWords.drawing.moveEdge, ['F'], inGround(whyNotOnOutlines), offerOffset],
  ['draw.move', commandsWords.drawing.move, ['V'], whyNotCarry, () => pickUp('move')],
  ['draw.copy', commandsWords.drawing.copy, ['Y'], whyNotCarry, () => pickUp('copy')],
  [
    'draw.delete',
    () => (draft() === null ? commandsWords.drawing.deleteChosen : commandsWords.drawing.removeMarkedCorner),
    ['Delete'],
    inGround(whyNotDelete),
    deleteChosen,
  ],
  ['draw.finish', commandsWords.drawing.finish, [], whyNotFinish, () => void finishDrawing()],
  ['draw.remove-last', commandsWords.drawing.removeLast, ['Backspace'], whyNotRemoveLast, removeLast],
  [
    'draw.point',
    commandsWords.drawing.goCrosshair,
    ['.'],
    needsDraft,
    () => pointAtMap(draft()?.corners.at(-1) ?? null),
  ],
  ['draw.aside', commandsWords.drawing.setAside, [], needsDraft, setDraftAside],
  ['draw.throw-away', commandsWords.drawing.throwAway, [], needsDraft, () => throwDraftAway()],
  ['draw.back', commandsWords.drawing.stepBack, ['Escape'], whyNotBack, stepBack],
];

const NUDGES: readonly (readonly [key: string, words: string, east: number, north: number])[] = [
  ['ArrowLeft', 'west', -1, 0],
  ['ArrowRight', 'east', 1, 0],
  ['ArrowUp', 'north', 0, 1],
  ['ArrowDown', 'south', 0, -1],
];

function nudges(step: number, held: string): readonly Command[] {
  return NUDGES.flatMap(([key, words, east, north]) =>
    commandsOf('draw', {
      [`draw.nudge-${words}-${step}`]: {
        title: commandsWords.drawing.nudge(step, words),
        keys: [`${held}${key}`],
        whyNot: inGround(() =>
          useSelection.getState().propertyId === null ? commandsWords.drawing.nothingChosen : whyNotOnParts(),
        ),
        run: () => nudgeParts(east * step, north * step),
      },
    }),
  );
}

/** What is done on the map of the Ground room. */
export const drawCommands: readonly Command[] = [
  ...LINES.flatMap(([id, title, keys, whyNot, run]) => commandsOf('draw', { [id]: { title, keys, whyNot, run } })),
  ...nudges(1, 'Shift+'),
  ...nudges(0.1, 'Alt+Shift+'),
];
