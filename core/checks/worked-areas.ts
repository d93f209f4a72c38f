import { issue } from '../base/index.ts';
import type { Property, Zone } from '../book/index.ts';
import { workedArea } from '../field-work/index.ts';
import { formatArea } from '../units/index.ts';
import { type Finding, named, propertyFix, propertyRule, type Rule, type Units } from './rule.ts';

/** Areas nearer to what follows from their field work than this are the same, as a share. */
const ROUNDING = 0.005;

/** Stated areas that do not follow from the field work that is kept with them. */
export const workedAreas: Rule = propertyRule('area-off-working', (property, units) =>
  property.zones.flatMap((zone) => off(units, property, zone)),
);

function off(units: Units, property: Property, zone: Zone): readonly Finding[] {
  const { shape } = zone;
  const worked = workedOut(zone);
  if (worked === null || shape.kind !== 'stated') return [];
  if (Math.abs(shape.areaSqFt - worked) <= ROUNDING * worked) return [];
  const message = `It has ${formatArea(shape.areaSqFt, units)}, but its field work gives ${formatArea(worked, units)}; take the worked-out area, or enter the figure without the field work.`;
  const found: Finding = {
    ...issue('warning', 'area-off-working', `${named('property', property)}, zone ${zone.name}`, message),
    propertyId: property.id,
  };
  return [{ ...found, fix: propertyFix('Take the worked-out area', property.id, (now) => corrected(now, zone.id)) }];
}

function workedOut({ shape }: Zone): number | null {
  if (shape.kind !== 'stated' || shape.working === undefined) return null;
  const worked = workedArea(shape.working, 'us');
  return worked.ok ? worked.value.areaSqFt : null;
}

function corrected(property: Property, zoneId: string): Property | null {
  const zone = property.zones.find((each) => each.id === zoneId);
  const areaSqFt = zone === undefined ? null : workedOut(zone);
  if (zone?.shape.kind !== 'stated' || areaSqFt === null) return null;
  const shape = { ...zone.shape, areaSqFt };
  return { ...property, zones: property.zones.map((each) => (each.id === zoneId ? { ...zone, shape } : each)) };
}
