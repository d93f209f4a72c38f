import { issue } from '../base/index.ts';
import type { Property } from '../book/index.ts';
import { measureProperty, type ZoneMeasure } from '../measure/index.ts';
import { formatArea, formatShare } from '../units/index.ts';
import { type Finding, named, propertyRule, type Rule, type Units } from './rule.ts';

/** A difference of less than this is nothing to speak of, whatever the drawing's error. */
const WORTH_A_WORD = 0.05;

/** Drawn zones whose area is far from what a card or the customer says: more than the likely error, and more than 5 %. */
export const statedAreas: Rule = propertyRule('area-off-stated', (property, units) =>
  property.zones.some((zone) => zone.statedAreaSqFt !== undefined) ? off(units, property) : [],
);

function off(units: Units, property: Property): readonly Finding[] {
  const measure = measureProperty(property);
  return property.zones.flatMap((zone) => {
    const measured = measure.zones.find((each) => each.zoneId === zone.id);
    if (zone.statedAreaSqFt === undefined || measured === undefined || measured.source === 'stated') return [];
    return compared(units, property, measured, zone.statedAreaSqFt);
  });
}

function compared(units: Units, property: Property, measured: ZoneMeasure, statedSqFt: number): readonly Finding[] {
  if (measured.areaSqFt === null) return [];
  const difference = measured.areaSqFt - statedSqFt;
  const error = measured.errorSqFt ?? 0;
  if (Math.abs(difference) <= Math.max(error, WORTH_A_WORD * statedSqFt)) return [];
  const likely = measured.errorSqFt === null ? '' : ` ± ${formatArea(error, units)}`;
  const share = formatShare(Math.abs(difference) / statedSqFt);
  const message = `It measures ${formatArea(measured.areaSqFt, units)}${likely}, ${share} ${difference > 0 ? 'more' : 'less'} than the stated ${formatArea(statedSqFt, units)}; look which of the two is right.`;
  const where = `${named('property', property)}, zone ${measured.name}`;
  return [{ ...issue('warning', 'area-off-stated', where, message), propertyId: property.id }];
}
