import type { Map as LeafletMap, Point } from 'leaflet';
import { point } from 'leaflet';
import { METRES_PER_FOOT } from '../../../core/units/index.ts';
import { metresPerPixel } from '../grid.ts';

/** One press of an arrow key, px. */
const STEP_PX = 12;
/** Nearer to the edge than this the map moves along, px. */
const MARGIN_PX = 40;

/** The pointer of those who draw with the keyboard. */
export type Crosshair = {
  /** Its place in the map's frame, px; null while it is not used. */
  readonly at: () => Point | null;
  readonly put: (at: Point) => void;
  /** Moves it by an arrow key; false where the key is none. */
  readonly step: (event: KeyboardEvent) => boolean;
  readonly hide: () => void;
  /** Shows it only while the map has the focus; its place is kept. */
  readonly wake: (awake: boolean) => void;
  readonly remove: () => void;
};

export function createCrosshair(map: LeafletMap, onMoved: () => void): Crosshair {
  const element = document.createElement('div');
  element.className = 'crosshair';
  element.hidden = true;
  map.getContainer().append(element);
  let place: Point | null = null;
  let awake = true;
  const put = (at: Point) => {
    place = keepInside(map, at);
    element.hidden = false;
    element.style.transform = `translate(${place.x}px, ${place.y}px)`;
    onMoved();
  };
  return {
    at: () => (awake ? place : null),
    put,
    step: (event) => {
      const direction = DIRECTIONS[event.key];
      if (direction === undefined) return false;
      const [x, y] = direction;
      const length = event.shiftKey ? footPx(map) * (event.altKey ? 0.1 : 1) : STEP_PX;
      const from = place ?? map.getSize().divideBy(2);
      put(point(from.x + x * length, from.y + y * length));
      return true;
    },
    hide: () => {
      place = null;
      element.hidden = true;
    },
    wake: (next) => {
      awake = next;
      element.hidden = !awake || place === null;
      onMoved();
    },
    remove: () => element.remove(),
  };
}

/** Keys that move the crosshair, by some pixels, by a foot, by a tenth of one. */
export const CROSSHAIR_KEYS = {
  step: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'],
  foot: ['Shift+ArrowLeft', 'Shift+ArrowRight', 'Shift+ArrowUp', 'Shift+ArrowDown'],
  tenth: ['Alt+Shift+ArrowLeft', 'Alt+Shift+ArrowRight', 'Alt+Shift+ArrowUp', 'Alt+Shift+ArrowDown'],
} as const;

const DIRECTIONS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** How long one foot is on screen, px. */
export function footPx(map: LeafletMap): number {
  return METRES_PER_FOOT / metresPerPixel(map.getCenter().lat, map.getZoom());
}

/** Moves the map where the crosshair would come too near to its edge, and gives the crosshair's place afterwards. */
function keepInside(map: LeafletMap, at: Point): Point {
  const size = map.getSize();
  const inside = point(clamp(at.x, size.x), clamp(at.y, size.y));
  const over = at.subtract(inside);
  if (over.x === 0 && over.y === 0) return at;
  map.panBy([over.x, over.y], { animate: false });
  return inside;
}

function clamp(value: number, size: number): number {
  return Math.min(Math.max(value, MARGIN_PX), Math.max(size - MARGIN_PX, MARGIN_PX));
}
