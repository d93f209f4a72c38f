import { type PointerEvent, useRef } from 'react';
import type { Spot } from './spots.ts';

/** Below this a touch is a press and not a drag, px. */
const STARTS_AT_PX = 5;

export type TouchWish = {
  /** A press that was no drag. */
  readonly onPress: (key: string) => void;
  readonly onStart: (key: string) => void;
  readonly onOver: (spot: Spot | null) => void;
  /** `spot` is null where the finger was lifted over nothing, or the touch was taken away. */
  readonly onEnd: (key: string, spot: Spot | null) => void;
};

/**
 * Dragging by finger: browsers start drags of their own for a mouse or pen alone. Rows have `data-rig`, dates `data-date`. Everything
 * but touch is left to React Aria.
 */
export function useTouch({ onPress, onStart, onOver, onEnd }: TouchWish) {
  const start = useRef<{ readonly key: string; readonly x: number; readonly y: number } | null>(null);
  const isDrag = useRef(false);
  const end = (spot: Spot | null): void => {
    const from = start.current;
    start.current = null;
    if (from !== null && isDrag.current) onEnd(from.key, spot);
  };
  const handlers = (key: string) => ({
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      isDrag.current = false;
      if (event.pointerType !== 'touch' || !event.isPrimary) return;
      start.current = { key, x: event.clientX, y: event.clientY };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const from = start.current;
      if (from === null) return;
      const { clientX: x, clientY: y } = event;
      if (!isDrag.current) {
        if (Math.hypot(x - from.x, y - from.y) < STARTS_AT_PX) return;
        isDrag.current = true;
        onStart(key);
      }
      onOver(spotAt(x, y));
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      if (start.current !== null && !isDrag.current) onPress(key);
      end(spotAt(event.clientX, event.clientY));
    },
    onPointerCancel: () => end(null),
  });
  return {
    handlers,
    /** Whether a finger is on a block. */
    isOn: () => start.current !== null,
    giveUp: () => end(null),
  };
}

function spotAt(x: number, y: number): Spot | null {
  for (const element of document.elementsFromPoint(x, y)) {
    if (!(element instanceof HTMLElement)) continue;
    const { rig, date } = element.dataset;
    if (date !== undefined) return { kind: 'date', date };
    if (rig === undefined) continue;
    const box = element.getBoundingClientRect();
    return { kind: 'moment', rigId: rig, share: (x - box.left) / Math.max(1, box.width) };
  }
  return null;
}
