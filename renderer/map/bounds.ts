import { type LatLngBounds, type LatLngTuple, latLngBounds } from 'leaflet';
import type { AreaGeometry, Position, Property } from '../../core/book/index.ts';

/** Rings of a polygon or of every polygon of a multi-polygon. */
export function polygonsOf(geometry: AreaGeometry): readonly (readonly (readonly Position[])[])[] {
  return geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
}

export function toLatLng([longitude, latitude]: Position): LatLngTuple {
  return [latitude, longitude];
}

export function toPosition({ lat, lng }: { readonly lat: number; readonly lng: number }): Position {
  return [lng, lat];
}

const cache = new WeakMap<Property, LatLngBounds>();

/** The ground of a property on the map: its outlines and its parking point. Kept for each property object. */
export function propertyBounds(property: Property): LatLngBounds {
  const known = cache.get(property);
  if (known !== undefined) return known;
  const bounds = latLngBounds([toLatLng(property.parking)]);
  for (const zone of property.zones) {
    if (zone.shape.kind === 'drawn') extend(bounds, zone.shape.geometry);
  }
  cache.set(property, bounds);
  return bounds;
}

function extend(bounds: LatLngBounds, geometry: AreaGeometry): void {
  for (const polygon of polygonsOf(geometry)) {
    for (const at of polygon[0] ?? []) bounds.extend(toLatLng(at));
  }
}

/** Where the label of a property stands: the middle of its largest outline, or its parking point. */
export function labelPoint(property: Property): LatLngTuple {
  const outlines = property.zones.flatMap((zone) =>
    zone.shape.kind === 'drawn' ? polygonsOf(zone.shape.geometry).map((polygon) => polygon[0] ?? []) : [],
  );
  if (outlines.length === 0) return toLatLng(property.parking);
  const centre = propertyBounds(property).getCenter();
  return [centre.lat, centre.lng];
}

/** Just above the ground of a property, where a label hides none of it. */
export function topPoint(property: Property): LatLngTuple {
  const bounds = propertyBounds(property);
  return [bounds.getNorth(), bounds.getCenter().lng];
}
