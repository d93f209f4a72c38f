import { divIcon, type Layer, layerGroup, marker, type PathOptions, polygon, type Renderer } from 'leaflet';
import type { Exclusion, Property, Zone } from '../../core/book/index.ts';
import { treatableOutline } from '../../core/measure/index.ts';
import { labelPoint, polygonsOf, toLatLng, topPoint } from './bounds.ts';
import type { LawnLabel, MapScene } from './scene.ts';

/** How much of a lawn is drawn at the present scale. */
export type Detail = 'outline' | 'full';

export type LawnLook = {
  readonly selected: boolean;
  readonly selectedZoneId: string | null;
  readonly dim: boolean;
  readonly detail: Detail;
  readonly label: LawnLabel | null;
};

type Callbacks = {
  readonly onSelect: (propertyId: string, zoneId: string | null) => void;
  readonly renderer: Renderer;
};

/** The layers of one lawn: turf hatched, exclusions cross-hatched, water dotted, gates as brackets, a dot where the rig parks. */
export function lawnLayers(property: Property, look: LawnLook, scene: MapScene, to: Callbacks): Layer {
  const layers: Layer[] = [];
  for (const zone of property.zones) layers.push(...zoneLayers(property, zone, look, to));
  for (const exclusion of property.exclusions) layers.push(exclusionLayer(exclusion, look, to.renderer));
  if (look.selected) layers.push(...treatableLayers(property, to.renderer));
  if (look.detail === 'full' && !look.dim) {
    for (const gate of property.gates) {
      if (gate.at !== undefined) layers.push(gateMark(gate.at, gate.clearWidthIn, gate.name, scene));
    }
  }
  if (look.selected || look.label?.kind === 'stop' || (look.detail === 'full' && !look.dim)) {
    layers.push(parkingMark(property, look));
  }
  if (look.label !== null) layers.push(labelMark(property, look.label, look, to));
  return layerGroup(layers);
}

function zoneLayers(property: Property, zone: Zone, look: LawnLook, to: Callbacks): readonly Layer[] {
  const selected = look.selected && (look.selectedZoneId === null || look.selectedZoneId === zone.id);
  if (zone.shape.kind === 'stated') return [];
  const style: PathOptions = {
    renderer: to.renderer,
    className: `turf${selected ? ' turf-selected' : ''}${look.dim ? ' turf-dim' : ''}`,
    fillColor: look.dim ? 'url(#hatch-turf-dim)' : selected ? 'url(#hatch-turf-selected)' : 'url(#hatch-turf)',
    fillOpacity: 1,
    weight: selected ? 2.4 : look.dim ? 1 : 1.4,
  };
  return polygonsOf(zone.shape.geometry).map((rings) =>
    polygon(
      rings.map((ring) => ring.map(toLatLng)),
      style,
    ).on('click', () => to.onSelect(property.id, look.selected ? zone.id : null)),
  );
}

const EXCLUSION_FILL: Readonly<Record<Exclusion['what'], string>> = {
  building: 'url(#cross-house)',
  paving: 'url(#cross-paving)',
  bed: 'url(#cross-bed)',
  garden: 'url(#cross-bed)',
  play: 'url(#cross-bed)',
  other: 'url(#cross-bed)',
  water: 'url(#dots-water)',
};

function exclusionLayer(exclusion: Exclusion, look: LawnLook, renderer: Renderer): Layer {
  return layerGroup(
    polygonsOf(exclusion.geometry).map((rings) =>
      polygon(
        rings.map((ring) => ring.map(toLatLng)),
        {
          renderer,
          className: `kept-out kept-out-${exclusion.what}${look.dim ? ' turf-dim' : ''}`,
          fillColor: EXCLUSION_FILL[exclusion.what],
          fillOpacity: 1,
          weight: 1,
          interactive: false,
        },
      ),
    ),
  );
}

/** What is really treated, keep-away distances included, as a dashed line inside the zone. */
function treatableLayers(property: Property, renderer: Renderer): readonly Layer[] {
  return property.zones.flatMap((zone) =>
    zone.shape.kind === 'stated'
      ? []
      : treatableOutline(property, zone.id).map((rings) =>
          polygon(
            rings.map((ring) => ring.map(toLatLng)),
            { renderer, className: 'treatable-line', fill: false, weight: 1.2, dashArray: '4 3', interactive: false },
          ),
        ),
  );
}

/** Text for use inside markup. */
export function plainText(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

function gateMark(at: readonly [number, number], widthIn: number, name: string, scene: MapScene): Layer {
  const { gateScale } = scene;
  const spare = gateScale === null ? Number.POSITIVE_INFINITY : widthIn - gateScale.narrowestMachineIn;
  const tone = spare < 0 ? 'stop' : spare < (gateScale?.spareIn ?? 0) ? 'caution' : 'plain';
  const words = plainText(scene.gateWords(widthIn));
  return marker(toLatLng(at), {
    interactive: false,
    keyboard: false,
    pane: 'marks',
    icon: divIcon({
      className: 'mark',
      iconSize: [0, 0],
      html: `<span class="gate-mark gate-${tone}" title="${plainText(name)}">${words}</span>`,
    }),
  });
}

function parkingMark(property: Property, look: LawnLook): Layer {
  return marker(toLatLng(property.parking), {
    interactive: false,
    keyboard: false,
    pane: 'marks',
    icon: divIcon({
      className: 'mark',
      iconSize: [0, 0],
      html: `<span class="parking-mark${look.selected ? ' parking-selected' : ''}"></span>`,
    }),
  });
}

function labelMark(property: Property, label: LawnLabel, look: LawnLook, to: Callbacks): Layer {
  const at = label.kind === 'name' && look.selected ? topPoint(property) : labelPoint(property);
  const shown = `<span class="lawn-label lawn-label-${label.kind} day-${label.day}${look.selected ? ' lawn-label-selected' : ''}">${plainText(label.text)}</span>`;
  return marker(at, {
    keyboard: false,
    pane: 'marks',
    zIndexOffset: look.selected ? 1000 : label.kind === 'stop' ? 500 : 0,
    icon: divIcon({ className: 'mark', iconSize: [0, 0], html: shown }),
  }).on('click', () => to.onSelect(property.id, null));
}
