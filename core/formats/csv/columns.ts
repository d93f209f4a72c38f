import { err, ok, type Result } from '../../base/index.ts';
import { findColumn, plain } from './table.ts';

/** Places of the columns of a table of lawns; -1 where there is none. */
export type Columns = {
  readonly id: number;
  readonly name: number;
  readonly address: number;
  readonly latitude: number;
  readonly longitude: number;
  readonly area: number;
  /** Unit of bare numbers in the area column, from its name; empty for ft2. */
  readonly areaUnit: string;
  readonly gateWidth: number;
  readonly slope: number;
};

const AREA_UNITS: readonly { readonly pattern: RegExp; readonly unit: string }[] = [
  { pattern: /\b(?:ac|acres?)\b/, unit: 'ac' },
  { pattern: /\b(?:ha|hectares?)\b/, unit: 'ha' },
  { pattern: /\b(?:m2|m\^2|sq m|sqm|square met(?:er|re)s)\b/, unit: 'm2' },
];
const AREA_NAMES = [
  'area',
  'lawnarea',
  'turfarea',
  'areasqft',
  'areaft2',
  'sqft',
  'squarefeet',
  'areaacres',
  'areaac',
  'acres',
  'aream2',
  'areasqm',
  'areaha',
];

/** Finds the columns by their names. Error `format-invalid` where latitude or longitude is missing. */
export function findColumns(names: readonly string[], where: string): Result<Columns> {
  const latitude = findColumn(names, ['lat', 'latitude']);
  const longitude = findColumn(names, ['lon', 'lng', 'long', 'longitude']);
  if (latitude < 0 || longitude < 0) {
    const missing = latitude < 0 ? 'latitude (lat)' : 'longitude (lon)';
    const there = names.filter((each) => each !== '').join(', ');
    return err(
      'format-invalid',
      `${where}, row 1`,
      `No column for ${missing}; the columns are: ${there.slice(0, 300)}.`,
      'Name the columns id, name, address, lat, lon, area, gate width, slope in the first row.',
    );
  }
  const area = findColumn(names, AREA_NAMES);
  return ok({
    id: findColumn(names, ['id', 'propertyid', 'key', 'number']),
    name: findColumn(names, ['name', 'property', 'customer']),
    address: findColumn(names, ['address', 'street', 'streetaddress']),
    latitude,
    longitude,
    area,
    areaUnit: unitOf(names[area] ?? ''),
    gateWidth: findColumn(names, ['gatewidth', 'gate', 'gatewidthin', 'gatein', 'gateinches']),
    slope: findColumn(names, ['slope', 'slopedeg', 'slopedegrees']),
  });
}

function unitOf(name: string): string {
  const words =
    `${name.toLowerCase().replace(/[_()[\]-]/g, ' ')} ${/^area/.test(plain(name)) ? plain(name).slice(4) : ''}`
      .replace(/\u00b2/g, '2')
      .replace(/\s+/g, ' ');
  return AREA_UNITS.find((each) => each.pattern.test(words))?.unit ?? '';
}
