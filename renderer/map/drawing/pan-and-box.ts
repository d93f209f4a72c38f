import {
  type LatLng,
  type Map as LeafletMap,
  type LeafletMouseEvent,
  latLngBounds,
  type Rectangle,
  rectangle,
} from 'leaflet';
import type { Box } from './draw-surface.ts';

/** Moves the map while the middle button is held down, or the left one with Space. Returns how to stop listening. */
export function panFreely(map: LeafletMap): () => void {
  const container = map.getContainer();
  let from: { readonly x: number; readonly y: number } | null = null;
  const down = (event: MouseEvent) => {
    if (event.button !== 1) return;
    event.preventDefault();
    from = { x: event.clientX, y: event.clientY };
  };
  const move = (event: MouseEvent) => {
    if (from === null) return;
    map.panBy([from.x - event.clientX, from.y - event.clientY], { animate: false });
    from = { x: event.clientX, y: event.clientY };
  };
  const up = () => {
    from = null;
  };
  const space = (event: KeyboardEvent) => {
    if (event.key !== ' ' || !container.matches(':focus-within, :hover')) return;
    if (isTyping(event.target)) return;
    container.classList.toggle('map-panning', event.type === 'keydown');
    event.preventDefault();
  };
  container.addEventListener('mousedown', down);
  window.addEventListener('mousemove', move);
  window.addEventListener('mouseup', up);
  window.addEventListener('keydown', space);
  window.addEventListener('keyup', space);
  return () => {
    container.removeEventListener('mousedown', down);
    window.removeEventListener('mousemove', move);
    window.removeEventListener('mouseup', up);
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
