import {
  type FeatureGroup,
  featureGroup,
  type LatLngTuple,
  type Map as LeafletMap,
  type Polygon,
  type Polyline,
  type PolylineOptions,
  polygon,
  polyline,
  type Renderer,
  svg,
} from 'leaflet';
import type { AreaGeometry, Position } from '../../core/book/index.ts';
import type { PassPicture, PictureLeg } from '../../core/passes/index.ts';
import { polygonsOf, toLatLng } from './bounds.ts';
import { metresPerPixel } from './grid.ts';
import type { PassScene } from './scene.ts';

/** Bands narrower than this have no room for arrows, px. */
const LEAST_FOR_ARROWS_PX = 7;

export type PassLayers = { readonly show: (passes: PassScene | null) => void; readonly close: () => void };

type Band = { readonly line: Polyline; readonly widthM: number };

/**
 * Passes on the map: each as a band of its true width with a line along its middle, the ground gone over twice dotted, the ground not
 * reached crossed, ways without material dashed. Bands are lines, so their width is set anew with every zoom.
 */
export function openPassLayers(map: LeafletMap, onPass: (leg: number) => void): PassLayers {
  const pane = map.createPane('passes');
  pane.style.zIndex = '430';
  const renderer = svg({ pane: 'passes', padding: 0.3 });
  let picture: PassPicture | null = null;
  let group: FeatureGroup | null = null;
  let bands: readonly Band[] = [];
  let chosen: FeatureGroup | null = null;
  const pixels = (widthM: number): number => widthM / metresPerPixel(map.getCenter().lat, map.getZoom());
  const fitWidths = (): void => {
    let widest = 0;
    for (const { line, widthM } of bands) {
      const weight = pixels(widthM);
      widest = Math.max(widest, weight);
      line.setStyle({ weight });
    }
    pane.classList.toggle('passes-far', widest < LEAST_FOR_ARROWS_PX);
  };
  const draw = (next: PassPicture | null): void => {
    group?.remove();
    group = null;
    bands = [];
    picture = next;
    if (next === null) return;
    bands = next.legs.flatMap((leg, index) =>
      leg.kind === 'transit' ? [] : [bandOf(leg, renderer, () => onPass(index))],
    );
    group = featureGroup([
      ...bands.map((each) => each.line),
      ...areas(next.overlap, renderer, 'overlap'),
      ...areas(next.handTrim, renderer, 'missed'),
      ...next.legs.map((leg) => middleOf(leg, renderer)),
    ]).addTo(map);
  };
  const mark = (leg: PictureLeg | null): void => {
    chosen?.remove();
    chosen = null;
    if (leg === null) return;
    const line = polyline(withMiddle(leg), {
      renderer,
      className: `pass-chosen pass-chosen-${leg.kind}`,
      weight: leg.kind === 'transit' ? 3 : 4,
      interactive: false,
    });
    chosen = featureGroup([line]).addTo(map);
    line.bringToFront();
  };
  map.on('zoomend', fitWidths);
  return {
    show: (passes) => {
      const next = passes?.picture ?? null;
      if (next !== picture) draw(next);
      fitWidths();
      mark(passes === null || passes.leg === null ? null : (passes.picture.legs[passes.leg] ?? null));
    },
    close: () => {
      map.off('zoomend', fitWidths);
    },
  };
}

function bandOf(leg: PictureLeg, renderer: Renderer, onPointed: () => void): Band {
  const options: PolylineOptions = {
    renderer,
    className: `pass-band pass-band-${leg.kind}`,
    lineCap: 'butt',
    lineJoin: 'round',
    smoothFactor: 0,
  };
  const line = polyline(leg.positions.map(toLatLng), options).on('mouseover click', onPointed);
  return { line, widthM: leg.widthM };
}

function middleOf(leg: PictureLeg, renderer: Renderer): Polyline {
  const dashed = leg.kind === 'transit' ? { dashArray: '4 4' } : {};
  return polyline(withMiddle(leg), {
    renderer,
    className: `pass-line pass-line-${leg.kind}`,
    weight: 1,
    smoothFactor: 0,
    interactive: false,
    ...dashed,
  });
}

/** The arrow of a swath hangs on a corner in its middle. */
function withMiddle({ kind, positions }: PictureLeg): LatLngTuple[] {
  const [from, to] = positions;
  if (kind !== 'swath' || from === undefined || to === undefined) return positions.map(toLatLng);
  const middle: Position = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return [from, middle, to].map(toLatLng);
}

function areas(geometry: AreaGeometry, renderer: Renderer, kind: 'overlap' | 'missed'): readonly Polygon[] {
  return polygonsOf(geometry).map((rings) =>
    polygon(
      rings.map((ring) => ring.map(toLatLng)),
      {
        renderer,
        className: `pass-${kind}`,
        fillColor: `url(#pass-${kind})`,
        fillOpacity: 1,
        weight: kind === 'missed' ? 1 : 0,
        smoothFactor: 0,
        interactive: false,
      },
    ),
  );
}
