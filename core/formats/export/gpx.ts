import type { Gate, Position, Property } from '../../book/index.ts';
import { degreesText } from './degrees.ts';
import type { WriteOptions } from './writers.ts';
import { xmlField } from './xml-text.ts';

/** GPX 1.1 waypoints: where to park at each property, and its gates with a place. Elements in the order of the schema. */
export function writeGpx(properties: readonly Property[], { title }: WriteOptions): string {
  const points = properties.flatMap((property) => [
    parkingPoint(property),
    ...property.gates.flatMap((gate) => gatePoint(property, gate)),
  ]);
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Swardway" xmlns="http://www.topografix.com/GPX/1/1">
<metadata>${xmlField('name', title)}</metadata>
${points.join('\n')}
</gpx>
`;
}

function parkingPoint({ id, name, address, parking }: Property): string {
  return waypoint(parking, [xmlField('name', name), xmlField('cmt', id), xmlField('desc', address)], 'parking');
}

function gatePoint(property: Property, { id, name, at, clearWidthIn, locked }: Gate): readonly string[] {
  if (at === undefined) return [];
  const width = `clear width ${clearWidthIn} in${locked ? ', locked' : ''}`;
  const fields = [xmlField('name', name), xmlField('cmt', id), xmlField('desc', width), xmlField('src', property.id)];
  return [waypoint(at, fields, 'gate')];
}

function waypoint([longitude, latitude]: Position, fields: readonly string[], type: string): string {
  const place = `lat="${degreesText(latitude)}" lon="${degreesText(longitude)}"`;
  return `<wpt ${place}>${fields.join('')}<type>${type}</type></wpt>`;
}
