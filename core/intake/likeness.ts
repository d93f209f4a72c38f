import type { AreaGeometry, Property } from '../book/index.ts';
import { commonGround, type DegreesBox, degreesBox, outlineArea } from '../geometry/index.ts';
import type { Ground } from './record.ts';
import { sameOutline } from './same-outline.ts';

/** More than this share of the smaller outline has to be common ground. */
const LEAST_SHARE = 0.5;
const METRES_PER_DEGREE = 111_700;

/** Common ground as a share of both together, where it is more than half of the smaller one; else null. */
export function likeness(first: Ground, second: Ground): number | null {
  if (sameOutline(first.geometry, second.geometry)) return 1;
  const least = LEAST_SHARE * Math.min(first.areaSqM, second.areaSqM);
  if (mostCommonSqM(first.box, second.box) <= least) return null;
  const common = commonGround(first.geometry, second.geometry);
  if (common === null) return null;
  const { firstSqM, secondSqM, bothSqM } = common;
  if (bothSqM <= LEAST_SHARE * Math.min(firstSqM, secondSqM)) return null;
  return bothSqM / (firstSqM + secondSqM - bothSqM);
}

/** No more ground than this can be common to what lies in two boxes, m2. */
function mostCommonSqM(first: DegreesBox, second: DegreesBox): number {
  const north = Math.min(first.north, second.north) - Math.max(first.south, second.south);
  const east = Math.min(first.east, second.east) - Math.max(first.west, second.west);
  if (!(north > 0)) return 0;
  // Boxes on two sides of the 180th meridian are not compared by longitude.
  const isTurned = Math.abs(first.west - second.west) > 180;
  if (!isTurned && !(east > 0)) return 0;
  const width = isTurned ? first.east - first.west : east;
  const scale = Math.cos((Math.min(Math.abs(first.south), Math.abs(first.north)) * Math.PI) / 180);
  return north * METRES_PER_DEGREE * width * METRES_PER_DEGREE * scale;
}

/** An outline with its box and area; null where it has no ground. */
export function groundOf(geometry: AreaGeometry): Ground | null {
  const known = grounds.get(geometry);
  if (known !== undefined) return known;
  const checked = degreesBox(geometry);
  const { areaSqM } = outlineArea(geometry);
  const ground = 'fault' in checked || areaSqM === null ? null : { geometry, box: checked.box, areaSqM };
  grounds.set(geometry, ground);
  return ground;
}

/** Outlines are never changed, so what was found for one holds for as long as it is there. */
const grounds = new WeakMap<AreaGeometry, Ground | null>();

/** Every outline that a property has: of turf, and of its lot. */
export function groundsOf(property: Property): readonly Ground[] {
  const drawn = property.zones.flatMap((zone) => (zone.shape.kind === 'drawn' ? [zone.shape.geometry] : []));
  const all = property.parcel === undefined ? drawn : [...drawn, property.parcel];
  return all.flatMap((geometry) => groundOf(geometry) ?? []);
}

export function pointBox({ parking: [longitude, latitude] }: Pick<Property, 'parking'>): DegreesBox {
  return { west: longitude, east: longitude, south: latitude, north: latitude };
}
