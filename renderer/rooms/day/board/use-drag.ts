import { type PointerEvent, useRef, useState } from 'react';

/** A block that is being dragged: where the pointer is, and over what. */
export type Drag = { readonly key: string; readonly x: number; readonly y: number; readonly over: DropSpot | null };
/** A moment of a rig's row, or another date. */
export type DropSpot =
  | { readonly kind: 'row'; readonly rigId: string; readonly share: number }
  | { readonly kind: 'date'; readonly date: string };

/** Below this a press is a click and not a drag, px. */
const STARTS_AT_PX = 5;

/** Dragging by mouse, pen or finger. Rows have `data-rig`, dates `data-date`; `onDrop` is called where one lies under the pointer. */
export function useDrag(onDrop: (key: string, spot: DropSpot) => void) {
  const start = useRef<{ readonly key: string; readonly x: number; readonly y: number } | null>(null);
  const wasDrag = useRef(false);
  const [drag, setDrag] = useState<Drag | null>(null);
  const end = () => {
    start.current = null;
    setDrag(null);
  };
  const handlers = (key: string) => ({
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0) return;
      wasDrag.current = false;
      start.current = { key, x: event.clientX, y: event.clientY };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const from = start.current;
      if (from === null) return;
      const { clientX: x, clientY: y } = event;
      if (drag === null && Math.hypot(x - from.x, y - from.y) < STARTS_AT_PX) return;
      wasDrag.current = true;
      setDrag({ key, x, y, over: spotAt(x, y) });
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      const spot = start.current !== null && drag !== null ? spotAt(event.clientX, event.clientY) : null;
      end();
      if (spot !== null) onDrop(key, spot);
    },
    onPointerCancel: end,
  });
  return { drag, handlers, giveUp: end, wasDrag: () => wasDrag.current };
}

function spotAt(x: number, y: number): DropSpot | null {
  for (const element of document.elementsFromPoint(x, y)) {
    if (!(element instanceof HTMLElement)) continue;
    const { rig, date } = element.dataset;
    if (date !== undefined) return { kind: 'date', date };
    if (rig === undefined) continue;
    const box = element.getBoundingClientRect();
    return { kind: 'row', rigId: rig, share: (x - box.left) / Math.max(1, box.width) };
  }
  return null;
}
