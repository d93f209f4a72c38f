import { issue } from '../base/index.ts';
import type { AreaGeometry, Property } from '../book/index.ts';
import {
  boxCentre,
  commonGround,
  intersection,
  isEmpty,
  localPlane,
  readOutline,
  toGeometry,
  withoutHairs,
} from '../geometry/index.ts';
import {
  areaWords,
  boxOf,
  type DrawnZone,
  drawnZonesOf,
  liesWithin,
  NOTICEABLE_SQ_M,
  zonePlace,
} from './drawn-zones.ts';
import { type Finding, propertyFix, propertyRule, type Rule, type Units, withOutline } from './rule.ts';

/** Turf that lies outside the lot of its property: a neighbour's ground, or a parcel that is out of place. */
export const outsideParcel: Rule = propertyRule('zone-outside-parcel', (property, units) => {
  const { parcel } = property;
  return parcel === undefined ? [] : drawnZonesOf(property).flatMap((each) => outside(units, each, parcel));
});

function outside(units: Units, each: DrawnZone, parcel: AreaGeometry): readonly Finding[] {
  if (liesWithin(each.geometry, parcel)) return [];
  const ground = commonGround(each.geometry, parcel);
  if (ground === null) return [];
  const outsideSqM = ground.firstSqM - ground.bothSqM;
  if (outsideSqM <= NOTICEABLE_SQ_M) return [];
  const { property, zone } = each;
  const whole = ground.bothSqM <= NOTICEABLE_SQ_M;
  const message = whole
    ? 'It lies outside the parcel of its property; correct one of the two.'
    : `${areaWords(outsideSqM, units)} of it lie outside the parcel of its property; draw its edge back, or correct the parcel.`;
  const found: Finding = {
    ...issue('warning', 'zone-outside-parcel', zonePlace(each), message),
    propertyId: property.id,
  };
  if (whole) return [found];
  return [{ ...found, fix: propertyFix('Clip the zone to the parcel', property.id, (now) => clipped(now, zone.id)) }];
}

function clipped(property: Property, zoneId: string): Property | null {
  const { parcel } = property;
  return parcel === undefined ? null : withOutline(property, zoneId, (geometry) => inside(geometry, parcel));
}

/** The part of an outline within another one; null where one is refused or nothing is left. */
function inside(geometry: AreaGeometry, around: AreaGeometry): AreaGeometry | null {
  const box = boxOf(geometry);
  if (box === null || boxOf(around) === null) return null;
  const plane = localPlane(boxCentre(box));
  const outline = readOutline(geometry, plane);
  const bounds = readOutline(around, plane);
  if (outline.kind === 'refused' || bounds.kind === 'refused') return null;
  const left = withoutHairs(intersection(outline.net, bounds.net));
  return isEmpty(left) ? null : toGeometry(left, plane);
}
