import { roundDegrees, windPolygons } from './degrees.ts';
import type { ExportRecord, RecordGeometry } from './members.ts';

/** A feature collection (RFC 7946). One feature a line, so that two files can be compared. */
export function geojsonFile(title: string, records: readonly ExportRecord[]): string {
  const lines = records.map((each) => JSON.stringify(featureOf(each)));
  const name = JSON.stringify(title);
  return `{"type":"FeatureCollection","name":${name},"features":[\n${lines.join(',\n')}\n]}\n`;
}

function featureOf({ id, geometry, members }: ExportRecord): object {
  return { type: 'Feature', id, properties: members, geometry: geometryOf(geometry) };
}

function geometryOf(geometry: RecordGeometry): object | null {
  if (geometry === null) return null;
  if (geometry.type === 'Point') return { type: 'Point', coordinates: roundDegrees(geometry.at) };
  if (geometry.type === 'LineString') {
    return { type: 'LineString', coordinates: geometry.positions.map(roundDegrees) };
  }
  const polygons = windPolygons(geometry);
  const [only] = polygons;
  if (only === undefined) return null;
  return polygons.length === 1
    ? { type: 'Polygon', coordinates: only }
    : { type: 'MultiPolygon', coordinates: polygons };
}
