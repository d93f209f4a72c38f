import { issue } from '../base/index.ts';
import type { AreaGeometry } from '../book/index.ts';
import { outlineArea, polygonsOf } from '../geometry/index.ts';
import { boxOf, drawnZones, NOTICEABLE_SQ_M, zonePlace } from './drawn-zones.ts';
import { type Finding, propertyFix, type Rule, withOutline } from './rule.ts';

/** Parts of outlines under 10 ft2: slips of the hand, or crumbs of a cut. */
export const tinyParts: Rule = {
  code: 'part-tiny',
  find: (book) =>
    drawnZones(book).flatMap((each): readonly Finding[] => {
      const tiny = tinyOf(each.geometry);
      if (tiny.length === 0) return [];
      const { property, zone, geometry } = each;
      const all = tiny.length === polygonsOf(geometry).length;
      const parts = tiny.length === 1 ? 'One part of it is' : `${tiny.length} parts of it are`;
      const message = all
        ? 'It is smaller than 10 ft² (1 m²); draw it anew, or remove it.'
        : `${parts} smaller than 10 ft² (1 m²) and nobody would treat them; leave them out.`;
      const found: Finding = { ...issue('warning', 'part-tiny', zonePlace(each), message), propertyId: property.id };
      if (all) return [found];
      const label = 'Leave the tiny parts out';
      return [{ ...found, fix: propertyFix(label, property.id, (now) => withOutline(now, zone.id, withoutTiny)) }];
    }),
};

/** Places in the list of polygons of those that are too small. */
function tinyOf(geometry: AreaGeometry): readonly number[] {
  if (geometry.type === 'Polygon' && isClearlyLarge(geometry)) return [];
  return polygonsOf(geometry).flatMap((rings, index) => {
    const { areaSqM } = outlineArea({ type: 'Polygon', coordinates: rings });
    return areaSqM !== null && areaSqM < NOTICEABLE_SQ_M ? [index] : [];
  });
}

/** True where even a thin outline of that extent would be large: saves measuring nearly every zone. */
function isClearlyLarge(geometry: AreaGeometry): boolean {
  const box = boxOf(geometry);
  return box === null || Math.min(box.east - box.west, box.north - box.south) > 1e-4;
}

function withoutTiny(geometry: AreaGeometry): AreaGeometry | null {
  const tiny = tinyOf(geometry);
  const kept = polygonsOf(geometry).filter((_, index) => !tiny.includes(index));
  const [only] = kept;
  if (tiny.length === 0 || only === undefined) return null;
  return kept.length === 1 ? { type: 'Polygon', coordinates: only } : { type: 'MultiPolygon', coordinates: kept };
}
