import { issue } from '../base/index.ts';
import type { Property, Zone } from '../book/index.ts';
import { polygonsOf } from '../geometry/index.ts';
import { type Finding, named, type Rule } from './rule.ts';

/** Lawns and zones without any area. What is wrong with an outline that is there is told by the measure. */
export const emptyZones: Rule = {
  code: 'zone-without-area',
  find: (book) =>
    book.properties.flatMap((property) =>
      property.zones.length === 0 ? [noZones(property)] : property.zones.flatMap((zone) => empty(property, zone)),
    ),
};

function noZones(property: Property): Finding {
  const message = 'It has no zone, so there is nothing to treat; draw one or enter its area.';
  const found = issue('warning', 'zone-without-area', named('property', property), message);
  return { ...found, propertyId: property.id };
}

function empty(property: Property, zone: Zone): readonly Finding[] {
  const { shape } = zone;
  const hasArea =
    shape.kind === 'stated'
      ? shape.areaSqFt > 0
      : polygonsOf(shape.geometry).some((rings) => (rings[0]?.length ?? 0) > 0);
  if (hasArea) return [];
  const message = 'It has no area, so plans leave it out; draw its outline or enter its area.';
  const found = issue('warning', 'zone-without-area', `${named('property', property)}, zone ${zone.name}`, message);
  return [{ ...found, propertyId: property.id }];
}
