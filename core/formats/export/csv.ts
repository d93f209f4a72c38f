import type { Property, Zone } from '../../book/index.ts';
import type { PropertyMeasure } from '../../measure/index.ts';
import { degreesText, type Rings, windPolygons } from './degrees.ts';
import type { WriteOptions } from './options.ts';
import { plainFigure, tableText } from './table.ts';

const COLUMNS = [
  'property',
  'property name',
  'address',
  'lat',
  'lon',
  'id',
  'name',
  'area (sq ft)',
  'outline (sq ft)',
  'treatable (sq ft)',
  'slope (deg)',
  'wkt',
];

/**
 * A table of zones (RFC 4180, commas): the area as stated or that of the outline on the map, and what is left of it to treat.
 * A property without zones has one row.
 */
export function writeCsv(properties: readonly Property[], { measure }: WriteOptions): string {
  const rows = properties.flatMap((property) => {
    const measured = measure(property);
    const lot = [property.id, property.name, property.address, ...[...property.parking].reverse().map(degreesText)];
    if (property.zones.length === 0) return [[...lot, ...COLUMNS.slice(lot.length).map(() => '')]];
    return property.zones.map((zone) => [
      ...lot,
      ...zoneCells(
        zone,
        measured.zones.find((each) => each.zoneId === zone.id),
      ),
    ]);
  });
  return tableText([COLUMNS, ...rows]);
}

function zoneCells(zone: Zone, measured: PropertyMeasure['zones'][number] | undefined): readonly string[] {
  const { shape } = zone;
  return [
    zone.id,
    zone.name,
    plainFigure(shape.kind === 'stated' ? shape.areaSqFt : null),
    plainFigure(measured?.planAreaSqFt ?? null),
    plainFigure(measured?.areaSqFt ?? null),
    plainFigure(zone.slopeDeg),
    shape.kind === 'drawn' ? wellKnownText(windPolygons(shape.geometry)) : '',
  ];
}

function wellKnownText(polygons: readonly Rings[]): string {
  const texts = polygons.map((rings) => {
    const inBrackets = rings.map((ring) => `(${ring.map((at) => at.map(degreesText).join(' ')).join(', ')})`);
    return `(${inBrackets.join(', ')})`;
  });
  if (texts.length === 0) return '';
  return texts.length === 1 ? `POLYGON ${texts[0]}` : `MULTIPOLYGON (${texts.join(', ')})`;
}
