import {
  divIcon,
  type Layer,
  type Map as LeafletMap,
  marker,
  type Polyline,
  polygon,
  polyline,
  type Renderer,
  svg,
} from 'leaflet';
import type { Position } from '../../../core/book/index.ts';
import { mapWords } from '../../texts/index.ts';
import { toLatLng } from '../bounds.ts';
import type { OutlineWish, PlaceWish, Snapped } from './draw-surface.ts';

export const DRAFTS_PANE = 'drafts';

/** What is drawn, in layers of its own over the lawns. */
export type DraftLayers = {
  readonly outline: (wish: OutlineWish, onFirstCorner: () => void) => void;
  /** The shape as it would be with the pointer where it is, or as a drag would leave it. */
  readonly preview: (wish: OutlineWish, shape: readonly Position[] | null) => void;
  readonly place: (wish: PlaceWish) => void;
  readonly snap: (snapped: Snapped | null) => void;
  readonly clear: () => void;
};

export function createDraftLayers(map: LeafletMap): DraftLayers {
  const renderer = svg({ pane: DRAFTS_PANE, padding: 0.5 });
  let fixed: readonly Layer[] = [];
  let loose: readonly Layer[] = [];
  let icon: Layer | null = null;
  const put = (before: readonly Layer[], next: readonly Layer[]): readonly Layer[] => {
    for (const layer of before) layer.remove();
    for (const layer of next) layer.addTo(map);
    return next;
  };
  return {
    outline: (wish, onFirstCorner) => {
      fixed = put(fixed, [
        shapeLayer(wish, wish.shape, renderer, ''),
        ...wish.others.map((ring) => otherRing(wish, ring, renderer)),
        ...wish.crossings.map(crossingMark),
        ...firstCorner(wish, onFirstCorner),
        ...markedCorner(wish),
      ]);
    },
    preview: (wish, shape) => {
      const crossings = shape === null ? [] : wish.crossingsWith(shape);
      const look = `${crossings.length > 0 ? ' draft-crossed' : ''} draft-loose`;
      const marks = crossings.map(crossingMark);
      loose = put(loose, shape === null ? [] : [shapeLayer(wish, shape, renderer, look), ...marks]);
    },
    place: (wish) => {
      fixed = put(fixed, wish.at === null ? [] : [placeMark(wish.at, 'draft-place')]);
    },
    snap: (snapped) => {
      icon?.remove();
      icon = snapped === null ? null : placeMark(snapped.at, `snap-mark snap-${snapped.kind}`).addTo(map);
    },
    clear: () => {
      fixed = put(fixed, []);
      loose = put(loose, []);
      icon?.remove();
      icon = null;
    },
  };
}

function shapeLayer(wish: OutlineWish, shape: readonly Position[], renderer: Renderer, more: string): Polyline {
  const latLngs = shape.map(toLatLng);
  const bad = wish.crossings.length > 0 ? ' draft-crossed' : '';
  const look = { renderer, interactive: false, className: `draft-line draft-${wish.tone}${bad}${more}`, weight: 2.4 };
  const isArea = wish.closes && shape.length > 2;
  return isArea
    ? (polygon(latLngs, { ...look, fill: true, fillOpacity: 1 }) as unknown as Polyline)
    : polyline(latLngs, { ...look, fill: false });
}

function otherRing(wish: OutlineWish, ring: readonly Position[], renderer: Renderer): Layer {
  const className = `draft-line draft-other draft-${wish.tone}`;
  return polygon(ring.map(toLatLng), { renderer, interactive: false, className, fill: false, weight: 1.6 });
}

function crossingMark(at: Position): Layer {
  return mark(at, `<span class="crossing-mark" title="${mapWords.marks.crossing}">&#10005;</span>`);
}

/** Closes the outline when it is clicked: larger than it looks. */
function firstCorner(wish: OutlineWish, onFirstCorner: () => void): readonly Layer[] {
  const [at] = wish.corners;
  if (wish.mode !== 'drawing' || !wish.closes || at === undefined || wish.corners.length < 3) return [];
  const html = `<span class="first-corner" title="${mapWords.marks.closeOutline}"></span>`;
  const target = marker(toLatLng(at), {
    keyboard: false,
    zIndexOffset: 2000,
    icon: divIcon({ className: 'mark', iconSize: [0, 0], html }),
  });
  return [target.on('click', onFirstCorner)];
}

function markedCorner(wish: OutlineWish): readonly Layer[] {
  const at = wish.marked === null ? undefined : wish.corners[wish.marked];
  return at === undefined ? [] : [placeMark(at, 'corner-marked')];
}

function placeMark(at: Position, className: string): Layer {
  return mark(at, `<span class="${className}"></span>`);
}

function mark(at: Position, html: string): Layer {
  return marker(toLatLng(at), {
    interactive: false,
    keyboard: false,
    pane: DRAFTS_PANE,
    icon: divIcon({ className: 'mark', iconSize: [0, 0], html }),
  });
}
