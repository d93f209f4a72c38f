import { issue } from '../base/index.ts';
import { cornersKey, type DrawnZone, drawnZones, prepareKeys, zonePlace } from './drawn-zones.ts';
import type { Finding, Rule } from './rule.ts';

/**
 * The same outline at two properties: its ground would be treated and billed twice. Inside one property the measure cuts a
 * second outline off and says so itself.
 */
export const doubledOutlines: Rule = {
  code: 'duplicate-outline',
  prepare: prepareKeys,
  find: (book) => {
    const first = new Map<string, DrawnZone>();
    return drawnZones(book).flatMap((each) => {
      const key = cornersKey(each.geometry);
      const other = first.get(key);
      if (other === undefined) first.set(key, each);
      return other === undefined || other.property === each.property ? [] : [doubled(each, other)];
    });
  },
};

function doubled(each: DrawnZone, other: DrawnZone): Finding {
  const message = `Its outline is that of ${zonePlace(other)}, so the ground would be treated twice; remove one of the two or draw it anew.`;
  return { ...issue('warning', 'duplicate-outline', zonePlace(each), message), propertyId: each.property.id };
}
