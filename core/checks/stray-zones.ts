import { type Issue, issue } from '../base/index.ts';
import type { Book, Position, Property, Zone } from '../book/index.ts';
import { boxCentre, degreesBox, distanceMetres } from '../geometry/index.ts';
import { named, type Rule } from './rule.ts';

/** From where the rig parks to the middle of a zone; no lawn is as large as that. metres */
const FARTHEST_M = 5000;

/** Zones that lie nowhere near the place where their rig parks. Outlines that cannot be read are left to the measure. */
export const strayZones: Rule = {
  code: 'zone-far-from-parking',
  find: (book: Book) => book.properties.flatMap((property) => property.zones.flatMap((zone) => stray(property, zone))),
};

function stray(property: Property, zone: Zone): readonly Issue[] {
  const at = middleOf(zone);
  if (at === null) return [];
  const metres = distanceMetres(property.parking, at);
  if (metres <= FARTHEST_M) return [];
  const exchanged = Math.abs(at[0]) <= 90 && distanceMetres(property.parking, [at[1], at[0]]) <= FARTHEST_M;
  const remedy = exchanged
    ? 'latitude and longitude of the outline look exchanged'
    : 'correct the outline or the parking point';
  const where = `${named('property', property)}, zone ${zone.name}`;
  const message = `It lies ${Math.round(metres / 1000)} km from where the rig parks; ${remedy}.`;
  return [issue('warning', 'zone-far-from-parking', where, message)];
}

function middleOf(zone: Zone): Position | null {
  if (zone.shape.kind !== 'drawn') return null;
  const read = degreesBox(zone.shape.geometry);
  return 'box' in read ? boxCentre(read.box) : null;
}
