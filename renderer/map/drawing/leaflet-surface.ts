import type { Map as LeafletMap } from 'leaflet';
import { createCrosshair } from './crosshair.ts';
import { createDraftLayers, DRAFTS_PANE } from './draft-layers.ts';
import { listenToKeys } from './draw-keys.ts';
import { listenToPointer } from './draw-pointer.ts';
import type { DrawEvents, DrawSurface, DrawWish, OutlineWish, SnapFinder } from './draw-surface.ts';
import { HANDLES_PANE, type HandleEvents, openHandles } from './geoman-handles.ts';
import { hoverOver, type Pad, pixelOf, snapFrom } from './pad.ts';
import { boxWithShift, panWithSpace } from './pan-and-box.ts';
import { createReadout } from './readout.ts';

/** Drawing on a Leaflet map: clicks and the crosshair set corners, handles move them. */
export function openDrawSurface(map: LeafletMap, events: DrawEvents, snapTo: SnapFinder): DrawSurface {
  map.createPane(DRAFTS_PANE).style.zIndex = '590';
  map.createPane(HANDLES_PANE).style.zIndex = '595';
  const pad: Pad = {
    map,
    events,
    snapTo,
    layers: createDraftLayers(map),
    readout: createReadout(map.getContainer()),
    crosshair: createCrosshair(map, () => hoverOver(pad, pad.crosshair.at())),
    wish: null,
    handles: null,
    pointer: null,
    altHeld: false,
    carried: null,
    lastEnterAt: null,
  };
  const stops = [
    listenToPointer(pad),
    listenToKeys(pad),
    panWithSpace(map),
    boxWithShift(map, (box, add) => pad.wish?.kind === 'choose' && events.onBox(box, add)),
  ];
  const stopWaking = wakeWithFocus(pad);
  return {
    show: (wish) => show(pad, wish),
    pointAt: (at) => {
      map.getContainer().focus();
      pad.crosshair.put(at === null ? map.getSize().divideBy(2) : pixelOf(pad, at));
    },
    close: () => {
      for (const stop of stops) stop();
      stopWaking();
      pad.crosshair.remove();
      pad.readout.remove();
      pad.layers.clear();
      pad.handles?.remove();
    },
  };
}

/** While somebody types beside the map, the crosshair and what it would draw are out of the way. */
function wakeWithFocus({ map, crosshair }: Pad): () => void {
  const container = map.getContainer();
  const wake = () => crosshair.wake(true);
  const sleep = () => crosshair.wake(false);
  container.addEventListener('focus', wake);
  container.addEventListener('blur', sleep);
  return () => {
    container.removeEventListener('focus', wake);
    container.removeEventListener('blur', sleep);
  };
}

function show(pad: Pad, next: DrawWish | null): void {
  const before = pad.wish;
  pad.wish = next;
  const isDrawing = next !== null && next.kind !== 'choose';
  setDrawing(pad.map, isDrawing);
  if (next?.kind !== 'outline') delete pad.map.getContainer().dataset.subject;
  if (before?.kind !== next?.kind) forget(pad, isDrawing);
  if (next?.kind === 'outline') drawOutline(pad, next);
  if (next?.kind === 'place') pad.layers.place(next);
  hoverOver(pad, isDrawing ? pad.crosshair.at() : null);
}

/** Leaves nothing of what was drawn before. */
function forget(pad: Pad, isDrawing: boolean): void {
  pad.layers.clear();
  pad.handles?.remove();
  pad.handles = null;
  pad.carried = null;
  pad.lastEnterAt = null;
  if (!isDrawing) pad.crosshair.hide();
}

function drawOutline(pad: Pad, wish: OutlineWish): void {
  const { layers, events } = pad;
  layers.outline(wish, events.onFinish);
  layers.preview(wish, null);
  const closed = wish.mode === 'editing' && wish.closes;
  if (pad.handles?.fits(wish.corners, closed) === true) return;
  pad.handles?.remove();
  pad.handles = openHandles(pad.map, wish.corners, closed, handleEvents(pad));
}

/** The handles outlive a drag, so they ask for what is drawn when something happens to them. */
function handleEvents(pad: Pad): HandleEvents {
  const { layers, events } = pad;
  return {
    snap: (at) => snapFrom(pad, at, true)?.at ?? at,
    onDragging: (corners) => {
      if (pad.wish?.kind === 'outline') layers.preview(pad.wish, corners);
      events.onDragging(corners);
    },
    onMoved: (index, to) => {
      events.onDragging(null);
      events.onMoveCorner(index, to);
    },
    onInserted: (index, at) => {
      events.onDragging(null);
      events.onInsertCorner(index, at);
    },
  };
}

/** While something is drawn, arrows and double clicks belong to the drawing. */
function setDrawing(map: LeafletMap, on: boolean): void {
  map.getContainer().classList.toggle('map-drawing', on);
  for (const handler of [map.keyboard, map.doubleClickZoom]) {
    if (on) handler.disable();
    else handler.enable();
  }
}
