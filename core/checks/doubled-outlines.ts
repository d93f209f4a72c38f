import { type Issue, issue } from '../base/index.ts';
import type { AreaGeometry, Book, Property, Zone } from '../book/index.ts';
import { polygonsOf } from '../geometry/index.ts';
import { named, type Rule } from './rule.ts';

type Drawn = { readonly property: Property; readonly zone: Zone; readonly geometry: AreaGeometry };

/**
 * The same outline at two properties: its ground would be treated and billed twice. Inside one property the measure cuts a
 * second outline off and says so itself.
 */
export const doubledOutlines: Rule = {
  code: 'duplicate-outline',
  find: (book) => {
    const first = new Map<string, Drawn>();
    return drawnZones(book).flatMap((each) => {
      const key = cornersKey(each.geometry);
      const other = first.get(key);
      if (other === undefined) first.set(key, each);
      return other === undefined || other.property === each.property ? [] : [doubled(each, other)];
    });
  },
};

function drawnZones(book: Book): readonly Drawn[] {
  return book.properties.flatMap((property) =>
    property.zones.flatMap((zone) =>
      zone.shape.kind === 'drawn' && polygonsOf(zone.shape.geometry).some((rings) => (rings[0]?.length ?? 0) > 0)
        ? [{ property, zone, geometry: zone.shape.geometry }]
        : [],
    ),
  );
}

/** The same for the same corners, wherever the outline starts and whichever way it runs. */
function cornersKey(geometry: AreaGeometry): string {
  const rings = polygonsOf(geometry).flatMap((rings) =>
    rings.map((ring) => [...new Set(ring.map((position) => position.join(' ')))].sort().join(',')),
  );
  return rings.sort().join(';');
}

function doubled(each: Drawn, other: Drawn): Issue {
  const where = `${named('property', each.property)}, zone ${each.zone.name}`;
  const message = `Its outline is that of ${named('property', other.property)}, zone ${other.zone.name}, so the ground would be treated twice; remove one of the two or draw it anew.`;
  return issue('warning', 'duplicate-outline', where, message);
}
