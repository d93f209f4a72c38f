import { mapWords } from '../texts/index.ts';
import 'leaflet/dist/leaflet.css';
import {
  canvas,
  circleMarker,
  map as createMap,
  type LatLng,
  type LatLngBounds,
  type Layer,
  type Map as LeafletMap,
  latLngBounds,
  type Renderer,
  svg,
} from 'leaflet';
import type { Position, Property } from '../../core/book/index.ts';
import { openAvoidedLayers } from './avoided-layers.ts';
import { openBackdrop } from './background-layer.ts';
import type { MapBackdrop } from './background-scene.ts';
import { labelPoint, propertyBounds, toLatLng } from './bounds.ts';
import { crowdedLabels, LEAST_APART } from './crowding.ts';
import type { DrawEvents, DrawWish, SnapFinder } from './drawing/draw-surface.ts';
import { openDrawSurface } from './drawing/leaflet-surface.ts';
import { type Detail, type LawnEvents, type LawnLook, lawnLayers } from './lawn-layers.ts';
import { openPassLayers } from './pass-layers.ts';
import { fillMarkLayer, routeLayers } from './route-layers.ts';
import type { LawnLabel, MapScene } from './scene.ts';

/** More lawns than this in view are drawn as dots. */
const MOST_OUTLINES = 260;
/** From this zoom on gates, parking and names are drawn. */
const FULL_ZOOM = 19;
const NAME_ZOOM = 19.25;
/** From this zoom on the same is drawn of the selected lawn. */
const NEAR_ZOOM = 18;
const EMPTY_VIEW = { at: [40, -83] as [number, number], zoom: 4 };
/** Farther out than this no lawn can be drawn; the map then comes as near as a block of houses. */
const DRAWING_ZOOM = { least: 15, near: 18.5 };

/** What the view is now: the frame around the map draws grid and scale bar from it. */
export type MapFrame = {
  readonly latitude: number;
  readonly zoom: number;
  /** Where a fixed point of the ground lies on screen, so that the grid moves with the map. px */
  readonly anchorX: number;
  readonly anchorY: number;
};

export type MapLook = { readonly centre: LatLng; readonly zoom: number };

export type MapView = {
  readonly show: (scene: MapScene) => void;
  /** What lies behind the lawns. */
  readonly backdrop: (backdrop: MapBackdrop) => void;
  readonly fitAll: () => void;
  readonly fitProperty: (propertyId: string) => void;
  readonly zoomBy: (steps: number) => void;
  /** Moves the map by shares of its width and height, to the east and to the south. */
  readonly panBy: (east: number, south: number) => void;
  readonly resized: () => void;
  readonly centre: () => readonly [number, number];
  /** What the map shows now, and the way back to it. */
  readonly look: () => MapLook;
  readonly lookAgain: (look: MapLook) => void;
  /** Draws; only where the map was opened with events for it. */
  readonly draw: (wish: DrawWish | null) => void;
  /** Puts the crosshair at a place, or in the middle. */
  readonly pointAt: (at: Position | null) => void;
  /** Shows all of these places where they are out of view or too small to be told apart. */
  readonly keepInView: (places: readonly Position[]) => void;
  readonly close: () => void;
};

export type MapDrawing = { readonly events: DrawEvents; readonly snapTo: SnapFinder };

type Handlers = LawnEvents & {
  readonly onFrame: (frame: MapFrame) => void;
  /** A pass was pointed at: its number along the way. */
  readonly onPass: (leg: number) => void;
  readonly drawing: MapDrawing | null;
};

type Drawn = { readonly property: Property; readonly key: string; readonly layer: Layer };

/** Opens a Leaflet map in an element. Tiles come from the host's own address alone; without any the ground is drawn by the frame around it. */
export function openMap(element: HTMLElement, { onFrame, onPass, drawing, ...asked }: Handlers): MapView {
  const map = createMap(element, {
    zoomControl: false,
    attributionControl: false,
    zoomSnap: 0.25,
    zoomDelta: 0.5,
    wheelPxPerZoomLevel: 120,
    minZoom: 3,
    maxZoom: 22,
    zoomAnimation: false,
    fadeAnimation: false,
    markerZoomAnimation: false,
    inertia: false,
    // The drawing's handles need this; lawns are left alone.
    pmIgnore: false,
  }).setView(EMPTY_VIEW.at, EMPTY_VIEW.zoom);
  map.createPane('marks').style.zIndex = '620';
  const backdrop = openBackdrop(map);
  map.createPane('routes').style.zIndex = '450';
  const tools = {
    lines: svg({ padding: 0.3 }),
    routes: svg({ pane: 'routes', padding: 0.3 }),
    dots: canvas({ padding: 0.3 }),
  };
  const drawn = new Map<string, Drawn>();
  const passes = openPassLayers(map, onPass);
  const showAvoided = openAvoidedLayers(map);
  let scene: MapScene | null = null;
  let overlays: readonly Layer[] = [];

  const surface = drawing === null ? null : openDrawSurface(map, drawing.events, drawing.snapTo);
  /** While something is drawn, a click means a corner and not the lawn under it. */
  let isDrawing = false;
  const events = whileNot(() => isDrawing, asked);
  const redrawLawns = () => {
    if (scene !== null) drawLawns(map, scene, drawn, tools, events);
  };
  const tellFrame = () => onFrame(frameOf(map, scene?.properties[0]?.parking ?? [0, 0]));
  map.on('moveend', redrawLawns);
  map.on('move zoom moveend', tellFrame);
  tellFrame();

  const frameOn = (bounds: LatLngBounds) => {
    if (bounds.isValid()) map.fitBounds(bounds.pad(0.06), { animate: false, maxZoom: 19.5 });
  };
  return {
    show: (next) => {
      const before = scene;
      scene = next;
      if (before?.avoided !== next.avoided) showAvoided(next.avoided);
      redrawLawns();
      if (before?.passes !== next.passes) passes.show(next.passes ?? null);
      if (before?.route !== next.route || before?.fillMarks !== next.fillMarks) {
        for (const layer of overlays) layer.remove();
        overlays = [routeLayers(next.route, tools.routes), ...next.fillMarks.map(fillMarkLayer)];
        for (const layer of overlays) layer.addTo(map);
      }
    },
    backdrop: backdrop.show,
    fitAll: () => {
      if (scene !== null) frameOn(boundsOfScene(scene));
    },
    fitProperty: (propertyId) => {
      const property = scene?.properties.find((each) => each.id === propertyId);
      if (property !== undefined) frameOn(propertyBounds(property).pad(0.35));
    },
    zoomBy: (steps) => {
      map.setZoom(map.getZoom() + steps);
    },
    panBy: (east, south) => {
      const { x, y } = map.getSize();
      map.panBy([x * east, y * south], { animate: false });
    },
    resized: () => {
      map.invalidateSize({ animate: false, pan: false });
      tellFrame();
    },
    centre: () => {
      const { lat, lng } = map.getCenter();
      return [lng, lat];
    },
    draw: (wish) => {
      const begins = !isDrawing && wish !== null && wish.kind !== 'choose';
      isDrawing = wish !== null && wish.kind !== 'choose';
      if (begins && scene?.properties.length === 0 && map.getZoom() < DRAWING_ZOOM.least) {
        map.setZoom(DRAWING_ZOOM.near, { animate: false });
      }
      surface?.show(wish);
    },
    pointAt: (at) => surface?.pointAt(at),
    keepInView: (places) => keepInView(map, places),
    look: () => ({ centre: map.getCenter(), zoom: map.getZoom() }),
    lookAgain: ({ centre, zoom }) => {
      map.setView(centre, zoom, { animate: false });
    },
    close: () => {
      backdrop.close();
      passes.close();
      surface?.close();
      map.off();
      map.remove();
    },
  };
}

/** Keys of the map itself, of Leaflet's own hand. */
export const MAP_KEYS = { move: ['ArrowLeft', 'ArrowUp', 'ArrowRight', 'ArrowDown'], zoom: ['+', '-'] } as const;

function whileNot(isBusy: () => boolean, { onSelect, onPart }: LawnEvents): LawnEvents {
  return {
    onSelect: (propertyId, zoneId) => {
      if (!isBusy()) onSelect(propertyId, zoneId);
    },
    ...(onPart === undefined ? {} : { onPart: (part, add) => !isBusy() && onPart(part, add) }),
  };
}

/** A smaller figure cannot be worked on, px. */
const LEAST_SIZE_PX = 24;

function keepInView(map: LeafletMap, places: readonly Position[]): void {
  if (places.length < 2) return;
  const bounds = latLngBounds(places.map(toLatLng));
  const corner = map.latLngToContainerPoint(bounds.getNorthWest());
  const size = map.latLngToContainerPoint(bounds.getSouthEast()).subtract(corner);
  const small = Math.max(size.x, size.y) < LEAST_SIZE_PX;
  if (small || !map.getBounds().contains(bounds)) map.fitBounds(bounds.pad(0.5), { animate: false, maxZoom: 19.5 });
}

/** The grid hangs on one point of the ground: the first lawn's parking point. */
function frameOf(map: LeafletMap, anchorAt: Position): MapFrame {
  const anchor = map.latLngToContainerPoint(toLatLng(anchorAt));
  return { latitude: map.getCenter().lat, zoom: map.getZoom(), anchorX: anchor.x, anchorY: anchor.y };
}

/** What "show all" shows: the labelled lawns where others are dimmed, else every lawn; fill points where there is a route. */
function boundsOfScene(scene: MapScene): LatLngBounds {
  const bounds = latLngBounds([]);
  for (const property of scene.properties) {
    if (!scene.dimOthers || scene.labels.has(property.id)) bounds.extend(propertyBounds(property));
  }
  if (scene.properties.length === 0) for (const mark of scene.fillMarks) bounds.extend(toLatLng(mark.at));
  return bounds;
}

type Tools = { readonly lines: Renderer; readonly routes: Renderer; readonly dots: Renderer };

/** Draws the lawns in view and takes away the others; a lawn that looks as before is left alone. */
function drawLawns(
  map: LeafletMap,
  scene: MapScene,
  drawn: Map<string, Drawn>,
  tools: Tools,
  events: LawnEvents,
): void {
  const view = map.getBounds().pad(0.25);
  const visible = scene.properties.filter((property) => view.intersects(propertyBounds(property)));
  const asDots = visible.length > MOST_OUTLINES;
  const detail: Detail = map.getZoom() >= FULL_ZOOM ? 'full' : 'outline';
  const keep = new Set<string>();
  const colourOf = colourReader();
  const crowded = asDots ? NO_LAWNS : crowdedLawns(map, scene);
  for (const property of visible) {
    const look = { ...lookOf(property, scene, detail, map.getZoom()), crowded: crowded.has(property.id) };
    const dot = asDots && !look.selected;
    const key = dot ? `dot ${look.dim} ${look.label?.day ?? ''}` : JSON.stringify([look, scene.gateScale]);
    keep.add(property.id);
    const before = drawn.get(property.id);
    if (before !== undefined && before.key === key && before.property === property) continue;
    before?.layer.remove();
    const layer = dot
      ? dotOf(property, look, tools.dots, colourOf, events)
      : lawnLayers(property, look, scene, { ...events, renderer: tools.lines });
    drawn.set(property.id, { property, key, layer: layer.addTo(map) });
  }
  for (const [id, { layer }] of drawn) {
    if (keep.has(id)) continue;
    layer.remove();
    drawn.delete(id);
  }
}

const NO_LAWNS: ReadonlySet<string> = new Set();

/** Lawns whose number gives way at this zoom: to the selected one first, then to the lower numbers. Names give way to nothing. */
function crowdedLawns(map: LeafletMap, scene: MapScene): ReadonlySet<string> {
  const [first] = scene.labels.values();
  const kind = first?.kind ?? 'name';
  if (kind === 'name') return NO_LAWNS;
  const rank = ({ id }: Property) =>
    id === scene.selectedPropertyId ? 0 : Number.parseInt(scene.labels.get(id)?.text ?? '', 10) || 0;
  const spots = scene.properties
    .filter(({ id }) => scene.labels.has(id))
    .sort((left, right) => rank(left) - rank(right))
    .map((property) => {
      const { x, y } = map.project(labelPoint(property));
      return { id: property.id, x, y };
    });
  return crowdedLabels(spots, LEAST_APART[kind]);
}

function lookOf(property: Property, scene: MapScene, detail: Detail, zoom: number): Omit<LawnLook, 'crowded'> {
  const label = scene.labels.get(property.id) ?? null;
  const selected = property.id === scene.selectedPropertyId;
  const near = selected && zoom >= NEAR_ZOOM;
  return {
    selected,
    selectedZoneId: selected ? scene.selectedZoneId : null,
    dim: scene.dimOthers && label === null && !selected,
    detail: near ? mapWords.view.full : detail,
    label: labelShown(label, zoom, selected) ? label : null,
    chosen: selected ? (scene.chosen ?? NO_KEYS) : NO_KEYS,
    hidden: selected ? (scene.hidden ?? null) : null,
  };
}

const NO_KEYS: readonly string[] = [];

function labelShown(label: LawnLabel | null, zoom: number, selected: boolean): boolean {
  return label !== null && (label.kind !== 'name' || zoom >= NAME_ZOOM || selected);
}

function dotOf(
  property: Property,
  look: LawnLook,
  renderer: Renderer,
  colourOf: (token: string) => string,
  { onSelect }: LawnEvents,
): Layer {
  const day = look.label?.day ?? 0;
  const colour = colourOf(day > 0 ? `--day-${day}` : look.dim ? '--rule-strong' : '--accent');
  return circleMarker(labelPoint(property), {
    renderer,
    radius: look.label === null ? 3 : 4,
    weight: 1,
    color: colour,
    fillColor: colour,
    fillOpacity: 0.75,
  }).on('click', () => onSelect(property.id, null));
}

/** The colours of the style sheet, each asked for once: asking is slow, and dots come by the thousand. */
function colourReader(): (token: string) => string {
  const style = getComputedStyle(document.documentElement);
  const known = new Map<string, string>();
  return (token) => {
    const before = known.get(token);
    if (before !== undefined) return before;
    const colour = style.getPropertyValue(token).trim();
    known.set(token, colour);
    return colour;
  };
}
