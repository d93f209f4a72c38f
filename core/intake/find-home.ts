import type { AreaGeometry, Position } from '../book/index.ts';
import { type DegreesBox, distanceMetres, nearestOnOutline, outlinesOverlap, quickLie } from '../geometry/index.ts';
import { feetToMetres, quantity } from '../units/index.ts';
import { type Home, type Outline, outlinesOf, type Part } from './home.ts';
import { likeness, pointBox } from './likeness.ts';
import type { ExclusionRecord, Ground } from './record.ts';

/** A gate farther than this from every outline belongs to none of them, metres. Common practice, no source. */
const FARTHEST_GATE_M = 30;
/** More than that in degrees of latitude and of longitude, up to 75 degrees north. */
const GATE_MARGIN_DEG = 0.0012;

type Around = (box: DegreesBox, margin?: number) => readonly Outline[];

/** The properties that a part belongs to by where it lies; the only one, for a gate without a place. */
export function findByPlace(
  record: Part,
  around: Around,
  within: (box: DegreesBox) => readonly Home[],
  only: Home | null,
): readonly Home[] {
  switch (record.kind) {
    case 'exclusion':
      return homesUnder(record, around);
    case 'gate':
      return record.at === null ? (only === null ? [] : [only]) : nearestHome(record.at, around);
    case 'parcel':
      return homesInLot(record.ground, around, within);
    case 'lawn': {
      if (record.ground === null) return [];
      const { ground } = record;
      const close = around(ground.box).flatMap((each) => {
        const alike = likeness(ground, each);
        return alike === null ? [] : [{ home: each.home, alike }];
      });
      return close.sort((left, right) => right.alike - left.alike).map((each) => each.home);
    }
  }
}

/** Every property whose turf the exclusion, grown by its keep-away distance, takes something of. */
function homesUnder({ ground, keepAwayFt }: ExclusionRecord, around: Around): readonly Home[] {
  const margin = feetToMetres(quantity<'ft'>(keepAwayFt ?? 0));
  const found = new Set<Home>();
  for (const { geometry, home } of around(ground.box, margin / 50_000)) {
    if (found.has(home)) continue;
    const lie = quickLie(ground.geometry, geometry);
    if (lie === 'apart' && margin === 0) continue;
    if (lie === 'within' || lie === 'overlaps' || outlinesOverlap(ground.geometry, geometry, margin)) found.add(home);
  }
  return [...found];
}

function nearestHome(at: Position, around: Around): readonly Home[] {
  let best: Home | null = null;
  let least = FARTHEST_GATE_M;
  for (const { geometry, home } of around(pointBox({ parking: at }), GATE_MARGIN_DEG)) {
    const nearest = nearestOnOutline(geometry, at);
    const metres = nearest === null ? Number.POSITIVE_INFINITY : distanceMetres(nearest, at);
    if (metres > least || (metres === least && best !== null)) continue;
    least = metres;
    best = home;
  }
  return best === null ? [] : [best];
}

/** Every property most of whose outline lies in the lot, or that has no outline and parks in it. */
function homesInLot(lot: Ground, around: Around, within: (box: DegreesBox) => readonly Home[]): readonly Home[] {
  const found = around(lot.box).flatMap((each) => (mostlyWithin(each, lot) ? [each.home] : []));
  if (found.length > 0) return [...new Set(found)];
  // Where turf is drawn, it alone tells; a parking point is often only assumed.
  return within(lot.box).filter((home) => {
    if (outlinesOf(home).length > 0) return false;
    const at = home.property?.parking ?? home.draft?.lawns.find((each) => each.at !== null)?.at;
    return at !== undefined && at !== null && isInLot(at, lot.geometry);
  });
}

function isInLot([longitude, latitude]: Position, lot: AreaGeometry): boolean {
  const tiny = 1e-7;
  const ring = [
    [longitude - tiny, latitude],
    [longitude, latitude - tiny],
    [longitude + tiny, latitude],
    [longitude - tiny, latitude],
  ] as const;
  return quickLie({ type: 'Polygon', coordinates: [ring] }, lot) === 'within';
}

/** True where most of an outline lies in a lot. */
export function mostlyWithin(ground: Ground, lot: Ground): boolean {
  return quickLie(ground.geometry, lot.geometry) === 'within' || likeness(ground, lot) !== null;
}
