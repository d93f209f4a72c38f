import type { LeafletMouseEvent } from 'leaflet';
import { cornerUnder, hoverOver, type Pad, placeUnder } from './pad.ts';

/** `MouseEvent.button` of the one that opens menus (UI Events, W3C). */
const MENU_BUTTON = 2;

/** Drawing with the mouse. Returns how to stop listening. */
export function listenToPointer(pad: Pad): () => void {
  const { map, crosshair, events } = pad;
  const container = map.getContainer();
  const click = (event: LeafletMouseEvent) => {
    const { wish } = pad;
    if (wish === null || wish.kind === 'choose' || container.classList.contains('map-panning')) return;
    // The second click of a double click finishes; it is no corner of its own.
    if (wish.kind === 'outline' && (wish.mode === 'editing' || event.originalEvent.detail > 1)) return;
    crosshair.hide();
    pad.altHeld = event.originalEvent.altKey;
    events.onPoint(placeUnder(pad, event.containerPoint).at);
  };
  const doubleClick = () => {
    if (pad.wish?.kind === 'outline') events.onFinish();
  };
  const move = (event: LeafletMouseEvent) => {
    if (pad.wish === null || pad.wish.kind === 'choose') return;
    pad.altHeld = event.originalEvent.altKey;
    if (pad.carried === null) crosshair.hide();
    pad.pointer = event.containerPoint;
    hoverOver(pad, event.containerPoint);
  };
  const settle = () => {
    pad.pointer = null;
    hoverOver(pad, crosshair.at());
  };
  /** The menu that follows is about the corner under the pointer, or under the crosshair where a key asks for it; else about the outline. */
  const openMenu = (event: MouseEvent) => {
    if (pad.wish?.kind !== 'outline') return;
    const pixel = event.button === MENU_BUTTON ? map.mouseEventToContainerPoint(event) : crosshair.at();
    const index = pixel === null ? null : cornerUnder(pad, pixel);
    events.onMarkCorner(index);
    container.dataset.subject = index === null ? 'outline' : 'corner';
  };
  map.on('click', click).on('dblclick', doubleClick).on('mousemove', move).on('mouseout zoomend', settle);
  container.addEventListener('contextmenu', openMenu);
  return () => {
    map.off('click', click).off('dblclick', doubleClick).off('mousemove', move).off('mouseout zoomend', settle);
    container.removeEventListener('contextmenu', openMenu);
  };
}
