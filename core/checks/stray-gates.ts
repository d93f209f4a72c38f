import { issue } from '../base/index.ts';
import type { AreaGeometry, Gate, Position, Property } from '../book/index.ts';
import { containsPosition, distanceMetres, nearestOnOutline } from '../geometry/index.ts';
import { formatLength, METRES_PER_FOOT } from '../units/index.ts';
import { boxOf, drawnZonesOf } from './drawn-zones.ts';
import { type Finding, named, propertyFix, propertyRule, type Rule, type Units } from './rule.ts';

/** A gate farther than this from every edge that it could open stands somewhere else, ft. */
const FARTHEST_FT = 10;

/** Gates that touch neither a zone nor the edge of the lot, though the property has zones with outlines. */
export const strayGates: Rule = propertyRule('gate-off-zone', (property, units) =>
  property.gates.flatMap((gate) => stray(units, property, gate)),
);

function stray(units: Units, property: Property, gate: Gate): readonly Finding[] {
  const outlines = outlinesOf(property);
  if (gate.at === undefined || outlines === null) return [];
  const nearest = nearestOf(outlines.all, gate.at);
  if (nearest === null) return [];
  const apartFt = distanceMetres(gate.at, nearest) / METRES_PER_FOOT;
  if (apartFt <= FARTHEST_FT || outlines.zones.some((each) => containsPosition(each, gate.at ?? nearest))) return [];
  const message = `It stands ${formatLength(apartFt, units)} from the nearest zone and from the edge of the lot; move it to the fence it opens.`;
  const where = `${named('property', property)}, gate ${gate.name === '' ? gate.id : gate.name}`;
  const fix = propertyFix('Move the gate to the nearest edge', property.id, (now) => moved(now, gate.id));
  return [{ ...issue('warning', 'gate-off-zone', where, message), propertyId: property.id, fix }];
}

type Outlines = { readonly zones: readonly AreaGeometry[]; readonly all: readonly AreaGeometry[] };

/** Outlines that can be read; null where no zone has one. */
function outlinesOf(property: Property): Outlines | null {
  const zones = drawnZonesOf(property)
    .map((each) => each.geometry)
    .filter((each) => boxOf(each) !== null);
  if (zones.length === 0) return null;
  const parcel = property.parcel !== undefined && boxOf(property.parcel) !== null ? [property.parcel] : [];
  return { zones, all: [...zones, ...parcel] };
}

function nearestOf(outlines: readonly AreaGeometry[], at: Position): Position | null {
  return outlines
    .map((each) => nearestOnOutline(each, at))
    .filter((each) => each !== null)
    .reduce<Position | null>(
      (best, each) => (best === null || distanceMetres(at, each) < distanceMetres(at, best) ? each : best),
      null,
    );
}

function moved(property: Property, gateId: string): Property | null {
  const gate = property.gates.find((each) => each.id === gateId);
  const outlines = outlinesOf(property);
  if (gate?.at === undefined || outlines === null) return null;
  const at = nearestOf(outlines.all, gate.at);
  if (at === null) return null;
  return { ...property, gates: property.gates.map((each) => (each.id === gateId ? { ...each, at } : each)) };
}
