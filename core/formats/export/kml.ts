import type { Position, Property } from '../../book/index.ts';
import { degreesText, type Rings, windPolygons } from './degrees.ts';
import { type ExportRecord, type Members, recordsOf } from './members.ts';
import type { WriteOptions } from './writers.ts';
import { xmlField, xmlText } from './xml-text.ts';

/** KML 2.2 (OGC 07-147r2): a folder for every property, a placemark for every zone, exclusion and gate, and where to park. */
export function writeKml(properties: readonly Property[], { title }: WriteOptions): string {
  const folders = properties.map(
    (property) =>
      `<Folder>${xmlField('name', property.name)}\n${[parkingMark(property), ...recordsOf(property).map(placemark)].join('\n')}\n</Folder>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${xmlField('name', title)}
${folders.join('\n')}
</Document></kml>
`;
}

function parkingMark({ id, name, parking }: Property): string {
  const members = { role: 'parking', property: id };
  return `<Placemark>${xmlField('name', `Park: ${name}`)}${extendedData(members)}${point(parking)}</Placemark>`;
}

function placemark({ id, geometry, members }: ExportRecord): string {
  const { name, address, ...others } = members;
  const head = `${xmlField('name', String(name ?? ''))}${xmlField('address', String(address ?? ''))}`;
  return `<Placemark>${head}${extendedData({ id, ...others })}${geometryText(geometry)}</Placemark>`;
}

function extendedData(members: Members): string {
  const data = Object.entries(members).map(
    ([name, value]) => `<Data name="${xmlText(name)}"><value>${xmlText(valueText(value))}</value></Data>`,
  );
  return `<ExtendedData>${data.join('')}</ExtendedData>`;
}

function valueText(value: Members[string]): string {
  return typeof value === 'object' ? value.join(', ') : String(value);
}

function point(at: Position): string {
  return `<Point><coordinates>${tuple(at)}</coordinates></Point>`;
}

function tuple([longitude, latitude]: Position): string {
  return `${degreesText(longitude)},${degreesText(latitude)}`;
}

function geometryText(geometry: ExportRecord['geometry']): string {
  if (geometry === null) return '';
  if (geometry.type === 'Point') return point(geometry.at);
  const polygons = windPolygons(geometry).map(polygonText);
  return polygons.length === 1 ? (polygons[0] ?? '') : `<MultiGeometry>${polygons.join('')}</MultiGeometry>`;
}

function polygonText(rings: Rings): string {
  const boundaries = rings.map((ring, index) => {
    const name = index === 0 ? 'outerBoundaryIs' : 'innerBoundaryIs';
    return `<${name}><LinearRing><coordinates>${ring.map(tuple).join(' ')}</coordinates></LinearRing></${name}>`;
  });
  return `<Polygon>${boundaries.join('')}</Polygon>`;
}
