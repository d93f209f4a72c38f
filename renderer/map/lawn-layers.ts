import {
  divIcon,
  type Layer,
  layerGroup,
  type Marker,
  marker,
  type Path,
  type PathOptions,
  polygon,
  type Renderer,
} from 'leaflet';
import type { Exclusion, Gate, Position, Property, Zone } from '../../core/book/index.ts';
import { treatableOutline } from '../../core/measure/index.ts';
import { mapWords } from '../texts/index.ts';
import { labelPoint, polygonsOf, toLatLng, topPoint } from './bounds.ts';
import { type LawnLabel, type MapPart, type MapScene, partKey } from './scene.ts';

/** How much of a lawn is drawn at the present scale. */
export type Detail = 'outline' | 'full';

export type LawnLook = {
  readonly selected: boolean;
  readonly selectedZoneId: string | null;
  readonly dim: boolean;
  readonly detail: Detail;
  readonly label: LawnLabel | null;
  /** True where the label would hide others: it is drawn as a dot. */
  readonly crowded: boolean;
  /** Keys of the parts that are chosen, and of the one that is not drawn here. */
  readonly chosen: readonly string[];
  readonly hidden: string | null;
};

export type LawnEvents = {
  readonly onSelect: (propertyId: string, zoneId: string | null) => void;
  /** A part was clicked; absent where the map chooses lawns alone. With `add` it joins what is chosen. */
  readonly onPart?: (part: MapPart, add: boolean) => void;
};

type Callbacks = LawnEvents & {
  readonly renderer: Renderer;
};

/** The layers of one lawn: turf hatched, exclusions cross-hatched, water dotted, gates as brackets, a dot where the rig parks. */
export function lawnLayers(property: Property, look: LawnLook, scene: MapScene, to: Callbacks): Layer {
  const layers: Layer[] = [];
  for (const zone of property.zones) layers.push(...zoneLayers(property, zone, look, to));
  for (const exclusion of property.exclusions) layers.push(exclusionLayer(property, exclusion, look, to));
  if (look.selected) layers.push(...treatableLayers(property, to.renderer));
  if (look.detail === 'full' && !look.dim) {
    for (const gate of property.gates) {
      if (gate.at !== undefined) layers.push(gateMark(property, gate, gate.at, { look, scene, to }));
    }
  }
  if (look.selected) layers.push(...hoseStands(property));
  // A lawn without an outline is seen by its parking point alone.
  const isBare = !look.dim && property.zones.every(({ shape }) => shape.kind === 'stated');
  if (isBare || look.selected || look.label?.kind === 'stop' || (look.detail === 'full' && !look.dim)) {
    layers.push(parkingMark(property, look));
  }
  if (look.label !== null) layers.push(labelMark(property, look.label, look, to));
  return layerGroup(layers);
}

function zoneLayers(property: Property, zone: Zone, look: LawnLook, to: Callbacks): readonly Layer[] {
  const key = partKey({ kind: 'zone', partId: zone.id });
  const selected =
    look.selected &&
    (look.chosen.includes(key) ||
      (look.chosen.length === 0 && (look.selectedZoneId === null || look.selectedZoneId === zone.id)));
  if (zone.shape.kind === 'stated' || look.hidden === key) return [];
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
    )
      .on('click', ({ originalEvent }) => pickZone(property, zone, look, to, originalEvent))
      .on('contextmenu', () => pickForMenu({ propertyId: property.id, kind: 'zone', partId: zone.id }, look, to))
      .on('add', ({ target }) => setSubject(target, look.selected && to.onPart !== undefined ? 'part' : 'lawn')),
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

type MouseKeys = Pick<MouseEvent, 'shiftKey' | 'ctrlKey' | 'metaKey'>;

function isAdding({ shiftKey, ctrlKey, metaKey }: MouseKeys): boolean {
  return shiftKey || ctrlKey || metaKey;
}

function pickZone(property: Property, zone: Zone, look: LawnLook, to: Callbacks, keys: MouseKeys): void {
  if (to.onPart === undefined || !look.selected) to.onSelect(property.id, look.selected ? zone.id : null);
  else to.onPart({ propertyId: property.id, kind: 'zone', partId: zone.id }, isAdding(keys));
}

/** The other button is for the menu of a thing, which is chosen for it unless it is already: a part of the selected lawn, or a lawn. */
function pickForMenu(part: MapPart, look: LawnLook, to: Callbacks): void {
  if (to.onPart === undefined || !look.selected) to.onSelect(part.propertyId, null);
  else if (!look.chosen.includes(partKey(part))) to.onPart(part, false);
}

function setSubject(target: unknown, subject: 'lawn' | 'part'): void {
  (target as Path | Marker).getElement()?.setAttribute('data-subject', subject);
}

function exclusionLayer(property: Property, exclusion: Exclusion, look: LawnLook, to: Callbacks): Layer {
  const part: MapPart = { propertyId: property.id, kind: 'exclusion', partId: exclusion.id };
  const key = partKey(part);
  if (look.hidden === key) return layerGroup([]);
  const { onPart, renderer } = to;
  const interactive = look.selected && onPart !== undefined;
  const chosen = look.chosen.includes(key);
  return layerGroup(
    polygonsOf(exclusion.geometry).map((rings) =>
      polygon(
        rings.map((ring) => ring.map(toLatLng)),
        {
          renderer,
          className: `kept-out kept-out-${exclusion.what}${look.dim ? ' turf-dim' : ''}${chosen ? ' kept-out-chosen' : ''}`,
          fillColor: EXCLUSION_FILL[exclusion.what],
          fillOpacity: 1,
          weight: chosen ? 2.4 : 1,
          interactive,
        },
      )
        .on('click', ({ originalEvent }) => onPart?.(part, isAdding(originalEvent)))
        .on('contextmenu', () => pickForMenu(part, look, to))
        .on('add', ({ target }) => setSubject(target, interactive ? 'part' : 'lawn')),
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

type GateTools = { readonly look: LawnLook; readonly scene: MapScene; readonly to: Callbacks };

function gateMark(property: Property, gate: Gate, at: Position, { look, scene, to }: GateTools): Layer {
  const { gateScale } = scene;
  const { clearWidthIn: widthIn, name } = gate;
  const part: MapPart = { propertyId: property.id, kind: 'gate', partId: gate.id };
  const chosen = look.chosen.includes(partKey(part)) ? ' gate-chosen' : '';
  const spare = gateScale === null ? Number.POSITIVE_INFINITY : widthIn - gateScale.narrowestMachineIn;
  const tone = spare < 0 ? 'stop' : spare < (gateScale?.spareIn ?? 0) ? 'caution' : 'plain';
  const words = plainText(scene.gateWords(widthIn));
  const interactive = look.selected && to.onPart !== undefined;
  return marker(toLatLng(at), {
    interactive,
    keyboard: false,
    pane: 'marks',
    icon: divIcon({
      className: 'mark',
      iconSize: [0, 0],
      html: `<span class="gate-mark gate-${tone}${chosen}" title="${plainText(name)}">${words}</span>`,
    }),
  })
    .on('click', ({ originalEvent }) => to.onPart?.(part, isAdding(originalEvent)))
    .on('contextmenu', () => pickForMenu(part, look, to))
    .on('add', ({ target }) => setSubject(target, interactive ? 'part' : 'lawn'));
}

/** Where a hose is reeled out for a zone. */
function hoseStands({ zones }: Property): readonly Layer[] {
  return zones.flatMap(({ name, hoseStand }) => {
    if (hoseStand === undefined) return [];
    const html = `<span class="hose-mark" title="${mapWords.marks.hoseStandOf(plainText(name))}">${mapWords.marks.hose}</span>`;
    const icon = divIcon({ className: 'mark', iconSize: [0, 0], html });
    return [marker(toLatLng(hoseStand), { interactive: false, keyboard: false, pane: 'marks', icon })];
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
      html: parkingHtml(property, look),
    }),
  });
}

/** A place that comes from an address range is a ring with a question mark until it is set by hand. */
function parkingHtml({ placedBy }: Property, { selected }: LawnLook): string {
  const assumed = placedBy === 'address-range';
  const tone = `${selected ? ' parking-selected' : ''}${assumed ? ' parking-assumed' : ''}`;
  const title = assumed ? ` title="${mapWords.marks.byAddressRange}"` : '';
  return `<span class="parking-mark${tone}"${title}>${assumed ? '?' : ''}</span>`;
}

function labelMark(property: Property, label: LawnLabel, look: LawnLook, to: Callbacks): Layer {
  const at = label.kind === 'name' && look.selected ? topPoint(property) : labelPoint(property);
  const tone = `${look.selected ? ' lawn-label-selected' : ''}${look.crowded ? ' lawn-label-crowded' : ''}`;
  const shown = `<span class="lawn-label lawn-label-${label.kind} day-${label.day}${tone}" title="${plainText(label.text)}">${plainText(label.text)}</span>`;
  return marker(at, {
    keyboard: false,
    pane: 'marks',
    zIndexOffset: look.selected ? 1000 : look.crowded ? 400 : label.kind === 'stop' ? 500 : 0,
    icon: divIcon({ className: 'mark', iconSize: [0, 0], html: shown }),
  }).on('click', () => to.onSelect(property.id, null));
}
