import {
  divIcon,
  type Layer,
  type Map as LeafletMap,
  latLngBounds,
  layerGroup,
  marker,
  polygon,
  type Renderer,
  svg,
} from 'leaflet';
import { mapWords } from '../texts/index.ts';
import { polygonsOf, toLatLng } from './bounds.ts';
import { plainText } from './lawn-layers.ts';
import type { AvoidedArea } from './scene.ts';

/** Opens a pane under the lawns, and gives what draws in it the areas that trucks drive round. */
export function openAvoidedLayers(map: LeafletMap): (areas: readonly AvoidedArea[]) => void {
  map.createPane(PANE).style.zIndex = '390';
  const renderer = svg({ pane: PANE, padding: 0.3 });
  let drawn: readonly Layer[] = [];
  return (areas) => {
    for (const layer of drawn) layer.remove();
    drawn = areas.map((each) => avoidedLayer(each, renderer).addTo(map));
  };
}

const PANE = 'avoided';

/** An area that trucks drive round: wide hatching within a broken line, and words over its northern edge. Clicks go through it. */
function avoidedLayer({ name, area }: AvoidedArea, renderer: Renderer): Layer {
  const shells = polygonsOf(area).map((rings) => rings.map((ring) => ring.map(toLatLng)));
  const shapes = shells.map((rings) =>
    polygon(rings, {
      renderer,
      className: 'avoided-area',
      fillColor: 'url(#hatch-avoided)',
      fillOpacity: 1,
      weight: 1.8,
      dashArray: '9 4 2 4',
      interactive: false,
    }),
  );
  const [shell = []] = shells[0] ?? [];
  if (shell.length === 0) return layerGroup(shapes);
  const html = `<span class="avoided-mark">${mapWords.marks.drivenRound(plainText(name))}</span>`;
  const icon = divIcon({ className: 'mark', iconSize: [0, 0], html });
  const bounds = latLngBounds(shell);
  const words = marker([bounds.getNorth(), bounds.getCenter().lng], {
    interactive: false,
    keyboard: false,
    pane: 'marks',
    // Under the numbers of stops.
    zIndexOffset: -1000,
    icon,
  });
  return layerGroup([...shapes, words]);
}
