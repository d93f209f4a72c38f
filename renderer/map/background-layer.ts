import { divIcon, type Layer, type Map as LeafletMap, latLngBounds, marker, type TileLayer, tileLayer } from 'leaflet';
import type { MapBackdrop, PlacingMark, TileLook } from './background-scene.ts';
import { toLatLng } from './bounds.ts';
import { plainText } from './lawn-layers.ts';
import { PictureLayer } from './overlay-layer.ts';

export type BackdropView = { readonly show: (backdrop: MapBackdrop) => void; readonly close: () => void };

/** Draws what lies behind the lawns: tiles, above them pictures laid on the ground, and marks while one is being laid. */
export function openBackdrop(map: LeafletMap): BackdropView {
  map.createPane('pictures').style.zIndex = '250';
  const pictures = new Map<string, { readonly layer: PictureLayer; readonly address: string }>();
  const container = map.getContainer();
  let tiles: { readonly layer: TileLayer; readonly look: TileLook } | null = null;
  let marks: readonly Layer[] = [];
  let now: MapBackdrop | null = null;

  const showTiles = ({ tiles: look, opacity, onMissing }: MapBackdrop) => {
    if (tiles?.look !== look && JSON.stringify(tiles?.look ?? null) !== JSON.stringify(look)) {
      tiles?.layer.remove();
      tiles = look === null ? null : { look, layer: tileLayerOf(look, onMissing).addTo(map) };
    }
    tiles?.layer.setOpacity(opacity);
  };
  const showPictures = ({ overlays, onPictureLost }: MapBackdrop) => {
    const wanted = new Map(overlays.map((each) => [each.id, each]));
    for (const [id, { layer, address }] of pictures) {
      if (wanted.get(id)?.address === address) continue;
      layer.remove();
      pictures.delete(id);
    }
    for (const look of overlays) {
      const known = pictures.get(look.id);
      if (known !== undefined) known.layer.show(look);
      else
        pictures.set(look.id, {
          layer: new PictureLayer(look, () => onPictureLost(look.id)).addTo(map),
          address: look.address,
        });
    }
  };
  const stopPicking = listenForPick(map, container, () => now?.onPick ?? null);
  return {
    show: (backdrop) => {
      showTiles(backdrop);
      showPictures(backdrop);
      if (now?.marks !== backdrop.marks) {
        for (const mark of marks) mark.remove();
        marks = backdrop.marks.map((mark) => markLayer(mark).addTo(map));
      }
      const { lookAt } = backdrop;
      if (now !== null && lookAt !== null && lookAt !== now.lookAt)
        map.fitBounds(boundsOf(lookAt.bounds), { animate: false });
      container.classList.toggle('map-with-tiles', backdrop.tiles !== null && backdrop.opacity > 0.3);
      container.classList.toggle('map-picking', backdrop.onPick !== null);
      now = backdrop;
    },
    close: stopPicking,
  };
}

function tileLayerOf(look: TileLook, onMissing: MapBackdrop['onMissing']): TileLayer {
  const half = look.tilePx === 512 ? 1 : 0;
  const layer = tileLayer(look.address, {
    tileSize: look.tilePx,
    zoomOffset: -half,
    minNativeZoom: look.leastZoom + half,
    maxNativeZoom: look.mostZoom + half,
    minZoom: Math.max(0, look.leastZoom + half - 1),
    maxZoom: 22,
    updateWhenZooming: false,
    // Nothing is fetched that is not seen.
    keepBuffer: 0,
    ...(look.bounds === null ? {} : { bounds: boundsOf(look.bounds) }),
  });
  let missing = 0;
  layer.on('loading', () => {
    missing = 0;
  });
  layer.on('tileerror', () => {
    missing += 1;
  });
  layer.on('load', () => onMissing(look.id, missing));
  return layer;
}

function boundsOf([west, south, east, north]: readonly [number, number, number, number]) {
  return latLngBounds([south, west], [north, east]);
}

function markLayer({ words, at }: PlacingMark): Layer {
  return marker(toLatLng(at), {
    interactive: false,
    keyboard: false,
    pane: 'marks',
    icon: divIcon({
      className: 'mark',
      iconSize: [0, 0],
      html: `<span class="placing-mark">${plainText(words)}</span>`,
    }),
  });
}

/** Pixels that a hand may move between pressing and letting go of a click. */
const STILL_PX = 4;

/** Before any lawn hears of a click, it is taken as a place where one is asked for. Dragging the map is left alone. */
function listenForPick(
  map: LeafletMap,
  container: HTMLElement,
  wanted: () => MapBackdrop['onPick'],
): BackdropView['close'] {
  let from = { x: 0, y: 0 };
  const press = (event: PointerEvent) => {
    from = { x: event.clientX, y: event.clientY };
  };
  const click = (event: MouseEvent) => {
    const pick = wanted();
    if (pick === null) return;
    event.stopPropagation();
    if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > STILL_PX) return;
    const { lat, lng } = map.mouseEventToLatLng(event).wrap();
    pick([lng, lat]);
  };
  container.addEventListener('pointerdown', press, { capture: true });
  container.addEventListener('click', click, { capture: true });
  return () => {
    container.removeEventListener('pointerdown', press, { capture: true });
    container.removeEventListener('click', click, { capture: true });
  };
}
