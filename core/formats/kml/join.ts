import type { Geometry, Position } from 'geojson';

/** One geometry of several: the multi-type where all are of one kind, else a collection. Collections are taken apart. */
export function joinGeometries(members: readonly Geometry[]): Geometry {
  const parts = members.flatMap(partsOf);
  const points = parts.flatMap((each) => (each.type === 'Point' ? [each.coordinates] : []));
  const lines = parts.flatMap((each) => (each.type === 'LineString' ? [each.coordinates] : []));
  const polygons = parts.flatMap((each) => (each.type === 'Polygon' ? [each.coordinates] : []));
  if (polygons.length === parts.length) return { type: 'MultiPolygon', coordinates: polygons };
  if (lines.length === parts.length) return { type: 'MultiLineString', coordinates: lines };
  if (points.length === parts.length) return { type: 'MultiPoint', coordinates: points };
  return { type: 'GeometryCollection', geometries: parts };
}

function partsOf(geometry: Geometry): Geometry[] {
  switch (geometry.type) {
    case 'GeometryCollection':
      return geometry.geometries.flatMap(partsOf);
    case 'MultiPoint':
      return geometry.coordinates.map((coordinates: Position): Geometry => ({ type: 'Point', coordinates }));
    case 'MultiLineString':
      return geometry.coordinates.map((coordinates): Geometry => ({ type: 'LineString', coordinates }));
    case 'MultiPolygon':
      return geometry.coordinates.map((coordinates): Geometry => ({ type: 'Polygon', coordinates }));
    default:
      return [geometry];
  }
}
