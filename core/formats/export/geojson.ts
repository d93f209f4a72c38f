import type { Property } from '../../book/index.ts';
import { roundDegrees, windPolygons } from './degrees.ts';
import { type ExportRecord, recordsOf } from './members.ts';
import type { WriteOptions } from './writers.ts';

/**
 * GeoJSON (RFC 7946) as the measure command and the import read it: a feature for every zone, exclusion and gate, joined by
 * `property`. Stated zones have no geometry but `areaSqFt`. One feature a line, so that two files can be compared.
 */
export function writeGeojson(properties: readonly Property[], { title }: WriteOptions): string {
  const lines = properties.flatMap(recordsOf).map((each) => JSON.stringify(featureOf(each)));
  const name = JSON.stringify(title);
  return `{"type":"FeatureCollection","name":${name},"features":[\n${lines.join(',\n')}\n]}\n`;
}

function featureOf({ id, geometry, members }: ExportRecord): object {
  return { type: 'Feature', id, properties: members, geometry: geometryOf(geometry) };
}

function geometryOf(geometry: ExportRecord['geometry']): object | null {
  if (geometry === null) return null;
  if (geometry.type === 'Point') return { type: 'Point', coordinates: roundDegrees(geometry.at) };
  const polygons = windPolygons(geometry);
  const [only] = polygons;
  if (only === undefined) return null;
  return polygons.length === 1
    ? { type: 'Polygon', coordinates: only }
    : { type: 'MultiPolygon', coordinates: polygons };
}
