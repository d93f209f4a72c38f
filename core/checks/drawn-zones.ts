import type { AreaGeometry, Book, Property, Zone } from '../book/index.ts';
import { type DegreesBox, degreesBox, polygonsOf, quickLie } from '../geometry/index.ts';
import { formatArea, quantity, squareMetresToSquareFeet } from '../units/index.ts';
import { named, type Units } from './rule.ts';

/** A zone with an outline, and the property it belongs to. */
export type DrawnZone = { readonly property: Property; readonly zone: Zone; readonly geometry: AreaGeometry };

/** The zones of a property that have an outline with corners. */
export function drawnZonesOf(property: Property): readonly DrawnZone[] {
  return property.zones.flatMap((zone) =>
    zone.shape.kind === 'drawn' && polygonsOf(zone.shape.geometry).some((rings) => (rings[0]?.length ?? 0) > 0)
      ? [{ property, zone, geometry: zone.shape.geometry }]
      : [],
  );
}

export function drawnZones(book: Book): readonly DrawnZone[] {
  return book.properties.flatMap(drawnZonesOf);
}

export function zonePlace({ property, zone }: DrawnZone): string {
  return `${named('property', property)}, zone ${zone.name}`;
}

/** The same for the same corners, wherever the outline starts and whichever way it runs. */
export function cornersKey(geometry: AreaGeometry): string {
  const known = keys.get(geometry);
  if (known !== undefined) return known;
  const rings = polygonsOf(geometry).flatMap((rings) =>
    rings.map((ring) => [...new Set(ring.map((position) => position.join(' ')))].sort().join(',')),
  );
  const key = rings.sort().join(';');
  keys.set(geometry, key);
  return key;
}

/** Works the keys of all drawn zones out, one after the other. */
export function* prepareKeys(book: Book): Generator<undefined, void, undefined> {
  for (const { geometry } of drawnZones(book)) {
    if (keys.has(geometry)) continue;
    cornersKey(geometry);
    yield;
  }
}

/** Outlines never change, so what was found out about one holds as long as it lives. */
const keys = new WeakMap<AreaGeometry, string>();
const boxes = new WeakMap<AreaGeometry, DegreesBox | 'none'>();

/** Bounds of an outline; null where it cannot be read, which the measure tells. */
export function boxOf(geometry: AreaGeometry): DegreesBox | null {
  let known = boxes.get(geometry);
  if (known === undefined) {
    const read = degreesBox(geometry);
    known = 'box' in read ? read.box : 'none';
    boxes.set(geometry, known);
  }
  return known === 'none' ? null : known;
}

/** True where an outline lies wholly inside another one: a quick look that spares cutting nearly always. */
export function liesWithin(outline: AreaGeometry, around: AreaGeometry): boolean {
  const box = boxOf(outline);
  const other = boxOf(around);
  if (box === null || other === null || box.east > 180 || other.east > 180) return false;
  return quickLie(outline, around) === 'within';
}

/** "1,240 ft²" from square metres. */
export function areaWords(squareMetres: number, units: Units): string {
  return formatArea(squareMetresToSquareFeet(quantity<'m2'>(squareMetres)), units);
}

/** Ground below which nothing is said: 10 ft2, in m2. */
export const NOTICEABLE_SQ_M = 10 * 0.09290304;
