import { type Map as LeafletMap, type Point, point } from 'leaflet';
import type { Position } from '../../../core/book/index.ts';
import { toLatLng, toPosition } from '../bounds.ts';
import { type Crosshair, footPx } from './crosshair.ts';
import type { DraftLayers } from './draft-layers.ts';
import type { DrawEvents, DrawWish, OutlineWish, SnapFinder, Snapped } from './draw-surface.ts';
import type { Handles } from './geoman-handles.ts';
import type { Readout } from './readout.ts';

/** How near counts as meaning a thing, px. */
const SNAP_PX = 12;
const CORNER_PX = 14;

/** All that drawing on one map shares. */
export type Pad = {
  readonly map: LeafletMap;
  readonly events: DrawEvents;
  readonly snapTo: SnapFinder;
  readonly layers: DraftLayers;
  readonly readout: Readout;
  readonly crosshair: Crosshair;
  wish: DrawWish | null;
  handles: Handles | null;
  /** Where the pointer was last, px; null while it is off the map. */
  pointer: Point | null;
  /** Alt is held down: nothing snaps. */
  altHeld: boolean;
  /** The corner that the crosshair carries; null for none. */
  carried: number | null;
  /** Where Enter was last pressed: once more at the same place finishes, as a double click does. */
  lastEnterAt: Position | null;
};

export function ownCorners({ wish }: Pad): readonly Position[] {
  return wish?.kind === 'outline' ? wish.corners : [];
}

/** What a place snaps to. A corner that is moved must not stick to where it was, so its own outline is left out then. */
export function snapFrom(pad: Pad, at: Position, moving: boolean): Snapped | null {
  if (pad.altHeld || pad.wish === null || pad.wish.kind === 'choose') return null;
  return pad.snapTo(at, SNAP_PX / footPx(pad.map), moving ? [] : ownCorners(pad));
}

/** The place under a pixel, snapped. */
export function placeUnder(pad: Pad, pixel: Point): { readonly at: Position; readonly snap: Snapped | null } {
  const raw = toPosition(pad.map.containerPointToLatLng(pixel));
  const isNew = pad.carried === null && pad.wish?.kind === 'outline' && pad.wish.mode === 'drawing';
  const snap = snapFrom(pad, raw, !isNew);
  return { at: snap?.at ?? raw, snap };
}

export function pixelOf({ map }: Pad, at: Position): Point {
  return map.latLngToContainerPoint(toLatLng(at));
}

export function isNear(pad: Pad, at: Position, pixel: Point): boolean {
  return pixelOf(pad, at).distanceTo(pixel) <= SNAP_PX;
}

/** The corner under a pixel, by its index; null for none. */
export function cornerUnder(pad: Pad, pixel: Point): number | null {
  let best: number | null = null;
  let least = CORNER_PX;
  ownCorners(pad).forEach((at, index) => {
    const px = pixelOf(pad, at).distanceTo(pixel);
    if (px > least) return;
    least = px;
    best = index;
  });
  return best;
}

/** The index that a corner on the side under the pixel would get; null where there is no side. */
export function sideUnder(pad: Pad, { corners, closes }: OutlineWish, pixel: Point): number | null {
  const points = corners.map((at) => pixelOf(pad, at));
  const ends = closes ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  const found = ends.findIndex((to, index) => distanceToSide(pixel, points[index] ?? to, to) <= SNAP_PX);
  return found < 0 ? null : found + 1;
}

function distanceToSide(at: Point, from: Point, to: Point): number {
  const along = to.subtract(from);
  const length = along.x * along.x + along.y * along.y;
  const share = length === 0 ? 0 : ((at.x - from.x) * along.x + (at.y - from.y) * along.y) / length;
  const bounded = Math.min(1, Math.max(0, share));
  return at.distanceTo(point(from.x + along.x * bounded, from.y + along.y * bounded));
}

/** Shows what the pointer or the crosshair means just now; null: it is off the map. */
export function hoverOver(pad: Pad, pixel: Point | null): void {
  const { wish, layers, readout } = pad;
  if (wish === null || wish.kind === 'choose' || pixel === null) {
    layers.snap(null);
    if (wish?.kind === 'outline' && pixel === null) layers.preview(wish, null);
    readout.hide();
    return;
  }
  const { at, snap } = placeUnder(pad, pixel);
  layers.snap(snap);
  if (wish.kind === 'place') {
    readout.show(pixel, [wish.words]);
    return;
  }
  if (wish.mode === 'drawing') layers.preview(wish, wish.preview(at));
  else if (pad.carried !== null) layers.preview(wish, wish.corners.with(pad.carried, at));
  readout.show(pixel, wish.readout(wish.mode === 'drawing' ? at : null));
}
