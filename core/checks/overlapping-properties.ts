import { issue } from '../base/index.ts';
import type { AreaGeometry, Book } from '../book/index.ts';
import { commonGround, type DegreesBox, placeIndex } from '../geometry/index.ts';
import { areaWords, boxOf, cornersKey, type DrawnZone, drawnZones, NOTICEABLE_SQ_M, zonePlace } from './drawn-zones.ts';
import type { Finding, Rule } from './rule.ts';

/** After so many overlaps the rest is not looked for: the book is then one mistake, not many. */
const MOST_FOUND = 300;

/**
 * Ground that two properties have in common: it would be treated and billed twice. The very same outline at two properties is
 * told by a rule of its own, and overlaps inside one property are cut by the measure.
 */
export const overlappingProperties: Rule = {
  code: 'properties-overlap',
  find: (book) => {
    const zones = unlike(drawnZones(book));
    const boxes = zones.map((each) => boxOf(each.geometry));
    const index = placeIndex(boxes);
    const found: Finding[] = [];
    for (const [at, zone] of zones.entries()) {
      const box = boxes[at];
      if (box === null || box === undefined) continue;
      for (const next of index.meeting(box)) {
        const other = zones[next];
        const otherBox = boxes[next];
        if (next <= at || other === undefined || otherBox === null || otherBox === undefined) continue;
        if (other.property.id === zone.property.id || !boxesShareGround(box, otherBox)) continue;
        const both = shared(zone.geometry, other.geometry);
        if (both > NOTICEABLE_SQ_M) found.push(overlap(book, other, zone, both));
        if (found.length >= MOST_FOUND) return [...found, unfinished()];
      }
    }
    return found;
  },
};

/** Each outline once: the later ones of the same corners are doubled, not overlapping. */
function unlike(zones: readonly DrawnZone[]): readonly DrawnZone[] {
  const first = new Map<string, DrawnZone>();
  for (const each of zones) {
    const key = cornersKey(each.geometry);
    if (!first.has(key)) first.set(key, each);
  }
  return [...first.values()];
}

/** Neighbours that only touch have boxes that share a strip too thin to hold noticeable ground. */
function boxesShareGround(left: DegreesBox, right: DegreesBox): boolean {
  const wide = Math.min(left.east, right.east) - Math.max(left.west, right.west);
  const high = Math.min(left.north, right.north) - Math.max(left.south, right.south);
  const metresPerDegree = 111_700;
  return wide * high * metresPerDegree ** 2 > NOTICEABLE_SQ_M;
}

const known = new WeakMap<AreaGeometry, WeakMap<AreaGeometry, number>>();

/** Common ground of two outlines, m2; kept, since most of a book stays the same from edit to edit. */
function shared(first: AreaGeometry, second: AreaGeometry): number {
  let of = known.get(first);
  if (of === undefined) {
    of = new WeakMap();
    known.set(first, of);
  }
  let both = of.get(second);
  if (both === undefined) {
    both = commonGround(first, second)?.bothSqM ?? 0;
    of.set(second, both);
  }
  return both;
}

function overlap(book: Book, each: DrawnZone, other: DrawnZone, bothSqM: number): Finding {
  const message = `${areaWords(bothSqM, book.units)} of it belong to ${zonePlace(other)} as well and would be treated twice; draw the border where it is.`;
  return { ...issue('warning', 'properties-overlap', zonePlace(each), message), propertyId: each.property.id };
}

function unfinished(): Finding {
  const message = `More than ${MOST_FOUND} overlaps were found; the others were not looked for. Correct these first.`;
  return issue('warning', 'properties-overlap', 'properties', message);
}
