import type { Position } from '../../book/index.ts';
import { degreesText, type Rings, windPolygons } from './degrees.ts';
import type { ExportRecord, Members, RecordGeometry } from './members.ts';
import { xmlField, xmlText } from './xml-text.ts';

/** A folder of a KML file, with everything that stands in it. */
export function kmlFolder(name: string, elements: readonly string[]): string {
  return `<Folder>${xmlField('name', name)}\n${elements.join('\n')}\n</Folder>`;
}

/**
 * A KML 2.2 file (OGC 07-147r2). Viewers show a description as HTML, so none has a text from a book in it: what there is to say stands
 * in ExtendedData.
 */
export function kmlFile(title: string, folders: readonly string[]): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${xmlField('name', title)}
${folders.join('\n')}
</Document></kml>
`;
}

/** A placemark with its fields as ExtendedData; name and address stand where viewers look for them. */
export function placemark({ id, geometry, members }: ExportRecord): string {
  const { name, address, ...others } = members;
  const head = `${xmlField('name', String(name ?? ''))}${xmlField('address', String(address ?? ''))}`;
  return `<Placemark>${head}${extendedData({ id, ...others })}${geometryText(geometry)}</Placemark>`;
}

/** Where to park, as a placemark without an id of its own. */
export function parkingMark(name: string, propertyId: string, at: Position): string {
  const members = extendedData({ role: 'parking', property: propertyId });
  return `<Placemark>${xmlField('name', `Park: ${name}`)}${members}${point(at)}</Placemark>`;
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

function geometryText(geometry: RecordGeometry): string {
  if (geometry === null) return '';
  if (geometry.type === 'Point') return point(geometry.at);
  if (geometry.type === 'LineString') {
    return `<LineString><coordinates>${geometry.positions.map(tuple).join(' ')}</coordinates></LineString>`;
  }
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
