import { issue } from '../base/index.ts';
import type { Exclusion, Property } from '../book/index.ts';
import { type DegreesBox, outlinesOverlap } from '../geometry/index.ts';
import { feetToMetres, quantity } from '../units/index.ts';
import { boxOf, drawnZonesOf, liesWithin } from './drawn-zones.ts';
import { type Finding, named, propertyRule, type Rule } from './rule.ts';

/** A metre east or west is less than this up to 63 degrees of latitude; a box too wide only costs a closer look. */
const MOST_DEGREES_PER_METRE = 1 / 50_000;

/**
 * Exclusions beside the zones of their property, so that nothing is cut for them. A house drawn next to the turf is in order;
 * one that was meant to lie in it is not. Those far from every zone are told by the measure.
 */
export const idleExclusions: Rule = propertyRule('exclusion-cuts-nothing', (property) =>
  property.exclusions.filter((each) => isIdle(property, each)).map((each) => idle(property, each)),
);

function isIdle(property: Property, exclusion: Exclusion): boolean {
  const box = boxOf(exclusion.geometry);
  const zones = drawnZonesOf(property);
  if (box === null || zones.length === 0) return false;
  if (zones.some((each) => liesWithin(exclusion.geometry, each.geometry))) return false;
  const margin = feetToMetres(quantity<'ft'>(exclusion.keepAwayFt));
  const near = zones.filter(({ geometry }) => {
    const zoneBox = boxOf(geometry);
    return zoneBox !== null && meet(box, zoneBox, margin * MOST_DEGREES_PER_METRE);
  });
  return near.length > 0 && !near.some(({ geometry }) => outlinesOverlap(exclusion.geometry, geometry, margin));
}

function meet(left: DegreesBox, right: DegreesBox, margin: number): boolean {
  return (
    left.west <= right.east + margin &&
    right.west <= left.east + margin &&
    left.south <= right.north + margin &&
    right.south <= left.north + margin
  );
}

function idle(property: Property, exclusion: Exclusion): Finding {
  const name = exclusion.name === '' ? exclusion.id : exclusion.name;
  const message = 'It lies beside the zones, so nothing is cut for it; move it if it was meant to lie in the turf.';
  const where = `${named('property', property)}, exclusion ${name}`;
  return { ...issue('note', 'exclusion-cuts-nothing', where, message), propertyId: property.id };
}
