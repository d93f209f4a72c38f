import '@geoman-io/leaflet-geoman-free';
import '@geoman-io/leaflet-geoman-free/dist/leaflet-geoman.css';
import { type LatLng, type LayerEvent, type Map as LeafletMap, Marker, PM, polygon, polyline } from 'leaflet';
import type { Position } from '../../../core/book/index.ts';
import { toLatLng, toPosition } from '../bounds.ts';

// Only layers that ask for handles get them; thousands of lawns are left alone.
PM.setOptIn(true);

/** More corners than this have handles only where the pointer is near. */
const MOST_HANDLES = 60;
export const HANDLES_PANE = 'handles';

export type HandleEvents = {
  /** Where a dragged corner really goes. */
  readonly snap: (at: Position) => Position;
  readonly onDragging: (corners: readonly Position[]) => void;
  readonly onMoved: (index: number, to: Position) => void;
  readonly onInserted: (index: number, at: Position) => void;
};

export type Handles = {
  /** True where the handles lie on these corners already: they were dragged there. */
  readonly fits: (corners: readonly Position[], closed: boolean) => boolean;
  readonly remove: () => void;
};

/** Corners that can be dragged. In a closed outline the middles of the sides can be dragged out to new corners. */
export function openHandles(
  map: LeafletMap,
  corners: readonly Position[],
  closed: boolean,
  events: HandleEvents,
): Handles {
  const options = { pmIgnore: false, interactive: false, stroke: false, fill: false, pane: HANDLES_PANE } as const;
  const latLngs = corners.map(toLatLng);
  const layer = closed ? polygon(latLngs, options) : polyline(latLngs, options);
  layer.addTo(map);
  const cornersNow = () => flat(layer.getLatLngs()).map(toPosition);
  let inserted = false;
  layer.on('pm:vertexadded', () => {
    inserted = true;
  });
  layer.on('pm:markerdrag', snapDrag(events, cornersNow));
  layer.on('pm:markerdragend', (event: unknown) => {
    const index = lastOf((event as { readonly indexPath?: unknown }).indexPath);
    const at = index === null ? undefined : cornersNow()[index];
    if (index === null || at === undefined) return;
    const isNew = inserted;
    inserted = false;
    if (isNew) events.onInserted(index, at);
    else events.onMoved(index, at);
  });
  map.on('layeradd', takeOffTabOrder);
  layer.pm.enable({
    snappable: false,
    draggable: false,
    allowSelfIntersection: true,
    preventMarkerRemoval: true,
    addVertexOnClick: false,
    hideMiddleMarkers: !closed,
    limitMarkersToCount: MOST_HANDLES,
  });
  return {
    fits: (wanted, wantedClosed) => {
      const now = cornersNow();
      const same = (at: Position, index: number) => at[0] === now[index]?.[0] && at[1] === now[index]?.[1];
      return wantedClosed === closed && wanted.length === now.length && wanted.every(same);
    },
    remove: () => {
      map.off('layeradd', takeOffTabOrder);
      layer.off();
      layer.pm.disable();
      layer.remove();
    },
  };
}

/** Handles are for the mouse; the crosshair and the table of sides serve the keyboard, so Tab passes handles over. */
function takeOffTabOrder({ layer }: LayerEvent): void {
  const element = layer instanceof Marker ? layer.getElement() : undefined;
  if (element?.classList.contains('marker-icon') !== true) return;
  element.removeAttribute('tabindex');
  element.removeAttribute('role');
  element.setAttribute('aria-hidden', 'true');
}

/** Moves the dragged corner to what it snaps to; moving it is reported again, which must not be answered again. */
function snapDrag(events: HandleEvents, cornersNow: () => readonly Position[]): (event: unknown) => void {
  let snapping = false;
  return (event) => {
    if (snapping) return;
    const { target } = (event as { readonly markerEvent: { readonly target: Marker } }).markerEvent;
    const at = toPosition(target.getLatLng());
    const to = events.snap(at);
    snapping = true;
    if (to !== at) target.setLatLng(toLatLng(to));
    snapping = false;
    events.onDragging(cornersNow());
  };
}

function flat(latLngs: LatLng[] | LatLng[][] | LatLng[][][]): LatLng[] {
  return latLngs.flat(2) as LatLng[];
}

/** An index path is a number for a line, and a list that ends in one for an outline. */
function lastOf(path: unknown): number | null {
  const last = Array.isArray(path) ? path.at(-1) : path;
  return typeof last === 'number' ? last : null;
}
