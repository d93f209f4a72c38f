import {
  boxesMeet,
  difference,
  type GridPath,
  intersection,
  type PlanePoint,
  type Region,
  regionOf,
  STEPS_PER_METRE,
} from '../geometry/index.ts';
import { freeAhead, underBar } from './bar.ts';
import type { Sides } from './sides.ts';
import type { TrimPass } from './trim.ts';

/** A straight run out of a corner of a trim pass, square at its end; `from` is the corner. Metres. */
export type CornerRun = { readonly from: PlanePoint; readonly to: PlanePoint };

/** A run must treat this share of the square of the trim swath at least; a round turn in a right angle leaves (1 - pi / 4) / 4 of it. */
const LEAST_GAIN_SHARE = 0.01;
/** Where a trim pass turns by less than this it leaves less than that: (tan(t / 2) - t / 2) / 4, here 0.004. */
const LEAST_TURN = (40 * Math.PI) / 180;
/** How much farther than what is left a run goes where there is room, metres. */
const END_M = 0.01;
/** Shorter runs than this are none, metres. */
const LEAST_RUN_M = 0.02;
/** Gains in steps of this many square metres: where two are equal but for rounding, the way on comes before the way back. */
const GAIN_STEP_SQM = 1e-4;

/** A run that may be driven, and what it treats of the ground that is left. */
type Choice = {
  readonly from: PlanePoint;
  readonly way: PlanePoint;
  readonly freeM: number;
  readonly farM: number;
  readonly gainSqM: number;
};

/**
 * Runs by which corners are driven out: from a corner of a trim pass, where the machine can turn, straight on along one of the
 * two sides that meet there, by no more than the swath is wide, until the end of the swath stands at the edge or beyond what is
 * left, and back. The whole width stays on the ground all the way. Those that treat most come first; each must treat enough
 * that those before it do not.
 * @param left what the passes leave
 * @param sides of the ground
 * @param widthM of a trim pass
 */
export function cornerRuns(
  left: Region,
  sides: Sides,
  passes: readonly TrimPass[],
  widthM: number,
): readonly CornerRun[] {
  const leastSqM = LEAST_GAIN_SHARE * widthM ** 2;
  const pieces = left.paths.map((path) => regionOf([path]));
  const taken: { readonly run: CornerRun; readonly bar: Region }[] = [];
  const choices = passes
    .flatMap(({ middle }) => middle.paths.flatMap(cornersOf))
    .flatMap((corner) => choicesAt(corner, pieces, sides, widthM))
    .filter((choice) => choice.gainSqM >= leastSqM);
  for (const choice of choices.sort((one, other) => stepsOf(other) - stepsOf(one))) {
    const bar = barOf(runOf(choice, choice.farM), widthM);
    const before = taken.map((each) => each.bar).filter((each) => boxesMeet(each.box, bar.box));
    const still =
      before.length === 0 ? choice : chooseAgain(choice, difference(intersection(left, bar), before), widthM);
    if (still.gainSqM < leastSqM) continue;
    const run = runOf(choice, still.farM);
    taken.push({ run, bar: barOf(run, widthM) });
  }
  return taken.map((each) => each.run);
}

const stepsOf = ({ gainSqM }: Choice): number => Math.round(gainSqM / GAIN_STEP_SQM);

function chooseAgain(choice: Choice, rest: Region, widthM: number): Choice {
  const { areaSqM, farM } = underBar(rest, choice.from, choice.way, widthM / 2, choice.freeM);
  return { ...choice, gainSqM: areaSqM, farM };
}

function runOf({ from, way, freeM }: Choice, farM: number): CornerRun {
  const lengthM = Math.min(freeM, farM + END_M);
  return { from, to: { x: from.x + lengthM * way.x, y: from.y + lengthM * way.y } };
}

/** What a run treats. */
export function barOf({ from, to }: CornerRun, widthM: number): Region {
  const lengthM = Math.hypot(to.x - from.x, to.y - from.y);
  const x = ((to.x - from.x) / lengthM) * (widthM / 2);
  const y = ((to.y - from.y) / lengthM) * (widthM / 2);
  const corner = (east: number, north: number) => ({
    x: Math.round(east * STEPS_PER_METRE),
    y: Math.round(north * STEPS_PER_METRE),
  });
  return regionOf([
    [
      corner(from.x + y, from.y - x),
      corner(to.x + y, to.y - x),
      corner(to.x - y, to.y + x),
      corner(from.x - y, from.y + x),
    ],
  ]);
}

/** A corner of a trim pass and the two ways straight out of it: on from the side before, and back from the side after. */
type Corner = { readonly at: PlanePoint; readonly ways: readonly PlanePoint[] };

/** Corners of a loop towards the edge: those at which a pass with the edge on its right turns left. */
function cornersOf(path: GridPath): readonly Corner[] {
  return path.flatMap((point, index): readonly Corner[] => {
    const before = wayFrom(path[(index + path.length - 1) % path.length] ?? point, point);
    const after = wayFrom(point, path[(index + 1) % path.length] ?? point);
    const turn = Math.atan2(before.x * after.y - before.y * after.x, before.x * after.x + before.y * after.y);
    if (turn < LEAST_TURN) return [];
    const at = { x: point.x / STEPS_PER_METRE, y: point.y / STEPS_PER_METRE };
    return [{ at, ways: [before, { x: -after.x, y: -after.y }] }];
  });
}

function wayFrom(from: PlanePoint, to: PlanePoint): PlanePoint {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

function choicesAt(
  { at: from, ways }: Corner,
  pieces: readonly Region[],
  sides: Sides,
  widthM: number,
): readonly Choice[] {
  // No corner of a bar that is driven by its own length lies farther away.
  const reachM = 1.2 * widthM;
  const [west, south, east, north] = [from.x - reachM, from.y - reachM, from.x + reachM, from.y + reachM];
  const box = {
    west: west * STEPS_PER_METRE,
    south: south * STEPS_PER_METRE,
    east: east * STEPS_PER_METRE,
    north: north * STEPS_PER_METRE,
  };
  const left = regionOf(pieces.filter((each) => boxesMeet(each.box, box)).flatMap((each) => each.paths));
  if (left.paths.length === 0) return [];
  const near = sidesIn(sides, west, south, east, north);
  return ways.flatMap((way): readonly Choice[] => {
    const freeM = Math.min(widthM, freeAhead(from, way, near, widthM / 2));
    if (freeM < LEAST_RUN_M) return [];
    const { areaSqM, farM } = underBar(left, from, way, widthM / 2, freeM);
    return [{ from, way, freeM, farM, gainSqM: areaSqM }];
  });
}

/** The sides of which the boxes meet a box, metres. */
function sidesIn(sides: Sides, west: number, south: number, east: number, north: number): Sides {
  const found: number[] = [];
  for (let at = 0; at < sides.length; at += 4) {
    const [x1, y1] = [sides[at] as number, sides[at + 1] as number];
    const [x2, y2] = [sides[at + 2] as number, sides[at + 3] as number];
    if ((x1 < west && x2 < west) || (x1 > east && x2 > east)) continue;
    if ((y1 < south && y2 < south) || (y1 > north && y2 > north)) continue;
    found.push(x1, y1, x2, y2);
  }
  return Float64Array.from(found);
}
