import { divIcon, type Layer, layerGroup, marker, polyline, type Renderer } from 'leaflet';
import { toLatLng } from './bounds.ts';
import { plainText } from './lawn-layers.ts';
import type { FillMark, RouteLeg } from './scene.ts';

/**
 * The drives of a day: a dark line with a light casing; ways to and from a fill point are dashed. Where some follow the roads, those that
 * do not are dotted.
 */
export function routeLayers(route: readonly RouteLeg[], renderer: Renderer): Layer {
  const anyByRoad = route.some((leg) => leg.along !== undefined);
  const casings = route.map((leg) => line(leg, renderer, 'route-casing', 5, undefined));
  const lines = route.map((leg) => {
    const isGuess = anyByRoad && leg.along === undefined;
    const dashes = isGuess ? '1 6' : DASHES[leg.kind];
    return line(leg, renderer, `route route-${leg.kind}`, leg.kind === 'between' ? 2.2 : 1.8, dashes);
  });
  return layerGroup([...casings, ...lines]);
}

const DASHES = { between: undefined, fill: '2 5', out: '7 5', home: '7 5' } as const;

function line(
  leg: RouteLeg,
  renderer: Renderer,
  className: string,
  weight: number,
  dashArray: string | undefined,
): Layer {
  return polyline((leg.along ?? [leg.from, leg.to]).map(toLatLng), {
    renderer,
    className,
    weight,
    interactive: false,
    ...(dashArray === undefined ? {} : { dashArray }),
  });
}

/** Shop, hydrants, suppliers. */
export function fillMarkLayer(mark: FillMark): Layer {
  return marker(toLatLng(mark.at), {
    interactive: false,
    keyboard: false,
    pane: 'marks',
    icon: divIcon({
      className: 'mark',
      iconSize: [0, 0],
      html: `<span class="fill-mark${mark.isHome ? ' fill-home' : ''}"><svg viewBox="0 0 12 14" aria-hidden="true"><path d="M6 1C8.4 4.3 10 6.5 10 8.6a4 4 0 0 1-8 0C2 6.5 3.6 4.3 6 1z"/></svg>${plainText(mark.name)}</span>`,
    }),
  });
}
