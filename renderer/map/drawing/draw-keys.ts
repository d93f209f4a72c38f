import type { Point } from 'leaflet';
import type { Position } from '../../../core/book/index.ts';
import type { OutlineWish } from './draw-surface.ts';
import { cornerUnder, isNear, ownCorners, type Pad, placeUnder, sideUnder } from './pad.ts';

/** Keys of drawing, but for those that are commands: sets a corner or finishes, lets nothing snap, moves the map. */
export const DRAWING_KEYS = { set: ['Enter'], free: ['Alt'], pan: ['Space'] } as const;

/** Drawing without a mouse. Returns how to stop listening. */
export function listenToKeys(pad: Pad): () => void {
  const container = pad.map.getContainer();
  const onKeyDown = (event: KeyboardEvent) => {
    const { wish } = pad;
    if (wish === null || event.target !== container) return;
    if (wish.kind === 'choose') {
      nudge(pad, event);
      return;
    }
    if (event.ctrlKey || event.metaKey) return;
    pad.altHeld = event.altKey;
    if (takeKey(pad, event)) event.preventDefault();
  };
  container.addEventListener('keydown', onKeyDown);
  return () => container.removeEventListener('keydown', onKeyDown);
}

const NUDGES: Readonly<Record<string, readonly [east: number, north: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Leaflet would move the map by Shift and an arrow; where something is chosen, that is moved instead. */
function nudge({ events }: Pad, event: KeyboardEvent): void {
  const direction = NUDGES[event.key];
  if (direction === undefined || !event.shiftKey || event.altKey || event.ctrlKey || event.metaKey) return;
  if (!events.onNudge(direction[0], direction[1])) return;
  event.preventDefault();
  event.stopPropagation();
}

/** True where the key meant something here. */
function takeKey(pad: Pad, event: KeyboardEvent): boolean {
  if (pad.crosshair.step(event)) return true;
  switch (event.key) {
    case 'Enter':
      enter(pad);
      return true;
    case 'Backspace':
      return removeLast(pad);
    case 'Delete':
      return removeUnderPointer(pad);
    case '+':
    case '=':
      pad.map.setZoom(pad.map.getZoom() + 0.5);
      return true;
    case '-':
      pad.map.setZoom(pad.map.getZoom() - 0.5);
      return true;
    default:
      return false;
  }
}

/** Enter sets a corner at the crosshair; without one, on the first corner or twice in one place it finishes. */
function enter(pad: Pad): void {
  const { wish, events } = pad;
  const pixel = pad.crosshair.at();
  if (wish === null || wish.kind === 'choose') return;
  if (pixel === null) {
    if (wish.kind === 'outline') events.onFinish();
    return;
  }
  const { at } = placeUnder(pad, pixel);
  if (wish.kind === 'place') {
    events.onPoint(at);
    return;
  }
  if (wish.mode === 'editing') {
    carry(pad, wish, pixel, at);
    return;
  }
  const again = isSame(pad.lastEnterAt, at);
  pad.lastEnterAt = at;
  const first = wish.closes && wish.corners.length > 2 ? wish.corners[0] : undefined;
  if (again || (first !== undefined && isNear(pad, first, pixel))) events.onFinish();
  else events.onPoint(at);
}

function isSame(one: Position | null, other: Position): boolean {
  return one !== null && one[0] === other[0] && one[1] === other[1];
}

/** Enter takes a corner up and lets it go again; on a side it makes a corner and takes that up. */
function carry(pad: Pad, wish: OutlineWish, pixel: Point, at: Position): void {
  if (pad.carried !== null) {
    const index = pad.carried;
    pad.carried = null;
    pad.layers.preview(wish, null);
    pad.events.onMoveCorner(index, at);
    return;
  }
  const corner = cornerUnder(pad, pixel);
  if (corner !== null) {
    pad.carried = corner;
    return;
  }
  const side = sideUnder(pad, wish, pixel);
  if (side === null) return;
  pad.events.onInsertCorner(side, at);
  pad.carried = side;
}

function removeLast(pad: Pad): boolean {
  const count = ownCorners(pad).length;
  if (count === 0 || pad.wish?.kind !== 'outline' || pad.wish.mode !== 'drawing') return false;
  pad.events.onRemoveCorner(count - 1);
  return true;
}

/** The corner at the crosshair, or under the mouse where that is used. */
function removeUnderPointer(pad: Pad): boolean {
  const pixel = pad.crosshair.at() ?? pad.pointer;
  const index = pixel === null ? null : cornerUnder(pad, pixel);
  if (index === null) return false;
  pad.carried = null;
  pad.events.onRemoveCorner(index);
  return true;
}
