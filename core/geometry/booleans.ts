import { Clipper64, ClipperOffset, ClipType, EndType, FillRule, JoinType, type Paths64 } from 'clipper2-ts';
import { sortOut } from './free-holes.ts';
import { boxesMeet, EMPTY_REGION, type GridPath, isEmpty, type Region, regionOf, STEPS_PER_METRE } from './region.ts';

/** How far a round corner may lie inside the true arc when a region is grown: 1 mm. */
const ARC_TOLERANCE_STEPS = 0.001 * STEPS_PER_METRE;

/** One clipper serves all calls: it is emptied after each, and core runs on one thread. */
const clipper = new Clipper64();

/**
 * Everything that at least one of the regions covers. Regions whose boxes keep apart are only laid side by side.
 * Source of the operation: Clipper2 (B. R. Vatti's sweep), nonzero filling.
 */
export function union(regions: readonly Region[]): Region {
  const filled = regions.filter((each) => !isEmpty(each));
  const [first] = filled;
  if (first === undefined) return EMPTY_REGION;
  if (filled.length === 1) return first;
  const paths = filled.flatMap((each) => each.paths);
  return keepApart(filled) ? regionOf(paths) : run(ClipType.Union, paths, []);
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
  const left = clip.length === 0 ? region : run(ClipType.Difference, region.paths, clip);
  if (holes.length === 0) return left;
  const reversed = holes.flatMap((each) => each.paths.map((path) => path.toReversed()));
  return { paths: [...left.paths, ...reversed], box: left.box };
}

/** What both regions cover. */
export function intersection(region: Region, other: Region): Region {
  if (!boxesMeet(region.box, other.box)) return EMPTY_REGION;
  return run(ClipType.Intersection, region.paths, other.paths);
}

/** The region made larger all round by `metres`, with round corners. Zero or less gives the region unchanged. */
export function grow(region: Region, metres: number): Region {
  if (!(metres > 0) || isEmpty(region)) return region;
  const offset = new ClipperOffset(2, ARC_TOLERANCE_STEPS);
  offset.addPaths(region.paths as Paths64, JoinType.Round, EndType.Polygon);
  const grown: Paths64 = [];
  offset.execute(metres * STEPS_PER_METRE, grown);
  return regionOf(grown);
}

/** A closed path of any kind, self-crossing or not, as the region that nonzero filling gives it. */
export function fillNonzero(paths: readonly GridPath[]): Region {
  return run(ClipType.Union, paths, []);
}

/** The ground that a closed path goes round anticlockwise more often than clockwise. */
export function fillPositive(paths: readonly GridPath[]): Region {
  return run(ClipType.Union, paths, [], FillRule.Positive);
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

function run(
  operation: ClipType,
  subject: readonly GridPath[],
  clip: readonly GridPath[],
  rule: FillRule = FillRule.NonZero,
): Region {
  clipper.clear();
  clipper.addSubject(subject as Paths64);
  if (clip.length > 0) clipper.addClip(clip as Paths64);
  const outcome: Paths64 = [];
  const worked = clipper.execute(operation, rule, outcome);
  clipper.clear();
  if (!worked) throw new Error('the polygon operation failed inside the clipper');
  return regionOf(outcome);
}
