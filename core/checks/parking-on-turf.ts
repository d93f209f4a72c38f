import { issue } from '../base/index.ts';
import type { Position, Property } from '../book/index.ts';
import { containsPosition, distanceMetres, nearestOnOutline } from '../geometry/index.ts';
import { formatLength, METRES_PER_FOOT } from '../units/index.ts';
import { type DrawnZone, drawnZonesOf } from './drawn-zones.ts';
import { type Finding, named, propertyFix, propertyRule, type Rule } from './rule.ts';

/** Nearer to the edge it is taken to be at the kerb, and the outline to be a little wide, ft. */
const AT_THE_EDGE_FT = 10;

/** A truck does not stand on the turf that it comes to treat: the point was set on the lawn and not at the street. */
export const parkingOnTurf: Rule = propertyRule('parking-on-turf', (property, units): readonly Finding[] => {
  const found = zoneUnder(property);
  if (found === null) return [];
  const depth = formatLength(found.depthFt, units);
  const message = `The parking point lies ${depth} within zone ${found.zone.zone.name}; move it to where the truck stands.`;
  const fix = propertyFix('Move the parking point to the edge of the zone', property.id, atTheEdge);
  return [
    { ...issue('warning', 'parking-on-turf', named('property', property), message), propertyId: property.id, fix },
  ];
});

type Under = { readonly zone: DrawnZone; readonly edge: Position; readonly depthFt: number };

/** The zone that the parking point lies deep in; null where there is none, or where something is kept out there, such as a drive. */
function zoneUnder(property: Property): Under | null {
  const { parking, exclusions } = property;
  if (exclusions.some(({ geometry }) => containsPosition(geometry, parking))) return null;
  for (const zone of drawnZonesOf(property)) {
    if (!containsPosition(zone.geometry, parking)) continue;
    const edge = nearestOnOutline(zone.geometry, parking);
    const depthFt = edge === null ? 0 : distanceMetres(edge, parking) / METRES_PER_FOOT;
    if (edge !== null && depthFt > AT_THE_EDGE_FT) return { zone, edge, depthFt };
  }
  return null;
}

function atTheEdge(property: Property): Property | null {
  const found = zoneUnder(property);
  return found === null ? null : { ...property, parking: found.edge };
}
