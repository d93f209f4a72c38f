import { findContacts } from './contacts.ts';
import { sortOut } from './free-holes.ts';
import { movePath, movePathTrimmed } from './offset.ts';
import { boxesMeet, EMPTY_REGION, type GridPath, isEmpty, type Region, regionOf, STEPS_PER_METRE } from './region.ts';
import { sweep } from './sweep.ts';

/** Half the width below which ground counts as a hair left by rounding along a shared side: 5 mm. */
const HAIR_STEPS = 0.005 * STEPS_PER_METRE;

/** Everything that at least one of the regions covers. Regions whose boxes keep apart are only laid side by side. */
export function union(regions: readonly Region[]): Region {
  const filled = regions.filter((each) => !isEmpty(each));
  const [first] = filled;
  if (first === undefined) return EMPTY_REGION;
  if (filled.length === 1) return first;
  const paths = filled.flatMap((each) => each.paths);
  return keepApart(filled) ? regionOf(paths) : sweep('union', paths);
}

/**
 * What `region` covers and none of `others` does. Others that lie free inside it become holes without a sweep; only those
 * that meet its edge or one another are handed to the clipper.
 */
export function difference(region: Region, others: readonly Region[]): Region {
  const meeting = others.filter((each) => boxesMeet(region.box, each.box));
  if (meeting.length === 0 || isEmpty(region)) return region;
  const { tangled, holes } = sortOut(region, meeting);
  const clip = tangled.flatMap((each) => each.paths);
  const left = clip.length === 0 ? region : sweep('difference', region.paths, clip);
  if (holes.length === 0) return left;
  const reversed = holes.flatMap((each) => each.paths.map((path) => path.toReversed()));
  return { paths: [...left.paths, ...reversed], box: left.box };
}

/** What both regions cover. */
export function intersection(region: Region, other: Region): Region {
  return boxesMeet(region.box, other.box) ? sweep('intersection', region.paths, other.paths) : EMPTY_REGION;
}

/** The region made larger all round by `metres`, with round corners. Zero or less gives the region unchanged. */
export function grow(region: Region, metres: number): Region {
  if (!(metres > 0) || isEmpty(region)) return region;
  const distance = metres * STEPS_PER_METRE;
  const plain =
    region.paths.length === 1 && region.paths[0] !== undefined ? movePathTrimmed(region.paths[0], distance) : null;
  if (plain !== null && isPlain(plain)) return regionOf([plain]);
  return sweep(
    'positive',
    region.paths.map((path) => movePath(path, distance, 'round')),
  );
}

/**
 * The region made smaller all round by `metres`: every place whose disc of that radius lies within it (erosion by a disc),
 * inner corners rounded to within 1 mm. Zero or less gives the region unchanged; nothing may be left.
 */
export function shrink(region: Region, metres: number): Region {
  if (!(metres > 0) || isEmpty(region)) return region;
  return sweep(
    'positive',
    region.paths.map((path) => movePath(path, -metres * STEPS_PER_METRE, 'round')),
  );
}

function isPlain(path: GridPath): boolean {
  const { crossingCount, touch } = findContacts([path]);
  return crossingCount === 0 && touch === null;
}

/**
 * The region without hairs: strips narrower than 1 cm, which sides drawn twice leave behind. Done by drawing the edge in by
 * 5 mm and out again with sharp corners; what is wider comes back where it was.
 */
export function withoutHairs(region: Region): Region {
  if (isEmpty(region)) return region;
  const inner = sweep(
    'positive',
    region.paths.map((path) => movePath(path, -HAIR_STEPS, 'sharp')),
  );
  return sweep(
    'positive',
    inner.paths.map((path) => movePath(path, HAIR_STEPS, 'sharp')),
  );
}

/** What at least two of the regions cover. */
export function coveredTwice(regions: readonly Region[]): Region {
  const all = regionOf(regions.flatMap((each) => each.paths));
  if (isEmpty(all)) return EMPTY_REGION;
  // A clockwise frame round everything takes one from every winding, so that only twice is still positive.
  const { west, south, east, north } = all.box;
  const frame: GridPath = [
    { x: west - 1, y: south - 1 },
    { x: west - 1, y: north + 1 },
    { x: east + 1, y: north + 1 },
    { x: east + 1, y: south - 1 },
  ];
  return sweep('positive', [...all.paths, frame]);
}

/** A closed path of any kind, self-crossing or not, as the region that nonzero filling gives it. */
export function fillNonzero(paths: readonly GridPath[]): Region {
  return sweep('union', paths);
}

/** The ground that a closed path goes round anticlockwise more often than clockwise. */
export function fillPositive(paths: readonly GridPath[]): Region {
  return sweep('positive', paths);
}

function keepApart(regions: readonly Region[]): boolean {
  for (const [index, region] of regions.entries()) {
    for (let other = index + 1; other < regions.length; other += 1) {
      const against = regions[other];
      if (against !== undefined && boxesMeet(region.box, against.box)) return false;
    }
  }
  return true;
}
