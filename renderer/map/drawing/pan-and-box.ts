import {
  type LatLng,
  type Map as LeafletMap,
  type LeafletMouseEvent,
  latLngBounds,
  type Rectangle,
  rectangle,
} from 'leaflet';
import type { Box } from './draw-surface.ts';

/**
 * While Space is held down the map takes every drag, also one that begins on a corner. (The middle button moves the map by
 * Leaflet's own hand.) Returns how to stop listening.
 */
export function panWithSpace(map: LeafletMap): () => void {
  const container = map.getContainer();
  const space = (event: KeyboardEvent) => {
    if (event.key !== ' ' || isTyping(event.target) || !container.matches(':focus-within, :hover')) return;
    container.classList.toggle('map-panning', event.type === 'keydown');
    event.preventDefault();
  };
  window.addEventListener('keydown', space);
  window.addEventListener('keyup', space);
  return () => {
    window.removeEventListener('keydown', space);
    window.removeEventListener('keyup', space);
  };
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input, textarea, select, button, [role="menuitem"]');
}

/** Draws a rectangle while Shift and the left button are held down; tells it when the button is let go. */
export function boxWithShift(map: LeafletMap, onBox: (box: Box, add: boolean) => void): () => void {
  map.boxZoom.disable();
  let from: LatLng | null = null;
  let drawn: Rectangle | null = null;
  const down = ({ latlng, originalEvent }: LeafletMouseEvent) => {
    if (!originalEvent.shiftKey || originalEvent.button !== 0) return;
    from = latlng;
    map.dragging.disable();
  };
  const move = ({ latlng }: LeafletMouseEvent) => {
    if (from === null) return;
    const bounds = latLngBounds(from, latlng);
    drawn ??= rectangle(bounds, { className: 'choice-box', interactive: false }).addTo(map);
    drawn.setBounds(bounds);
  };
  const up = ({ originalEvent }: LeafletMouseEvent) => {
    const bounds = drawn?.getBounds();
    drawn?.remove();
    drawn = null;
    if (from !== null) map.dragging.enable();
    from = null;
    if (bounds === undefined) return;
    const box: Box = [bounds.getWest(), bounds.getSouth(), bounds.getEast(), bounds.getNorth()];
    onBox(box, originalEvent.ctrlKey || originalEvent.metaKey);
  };
  // Shift and the mouse would mark the text of the page as well.
  const keepText = (event: MouseEvent) => event.shiftKey && event.preventDefault();
  map.getContainer().addEventListener('mousedown', keepText);
  map.on('mousedown', down).on('mousemove', move).on('mouseup', up);
  return () => {
    map.getContainer().removeEventListener('mousedown', keepText);
    map.off('mousedown', down).off('mousemove', move).off('mouseup', up);
  };
}
