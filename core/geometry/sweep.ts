import { Clipper64, ClipType, FillRule, type Paths64 } from 'clipper2-ts';
import { type Filling, filledArea } from './filled-area.ts';
import {
  doubleArea,
  type GridPath,
  type GridPoint,
  pathLength,
  type Region,
  regionOf,
  STEPS_PER_METRE,
} from './region.ts';

/** A boolean operation on paths that may cross. */
export type Operation = 'union' | 'difference' | 'intersection' | 'positive';

type Recipe = { readonly type: ClipType; readonly rule: FillRule; readonly filling: Filling };
const RECIPES: Readonly<Record<Operation, Recipe>> = {
  union: { type: ClipType.Union, rule: FillRule.NonZero, filling: (subject) => subject !== 0 },
  positive: { type: ClipType.Union, rule: FillRule.Positive, filling: (subject) => subject > 0 },
  difference: {
    type: ClipType.Difference,
    rule: FillRule.NonZero,
    filling: (subject, clip) => subject !== 0 && clip === 0,
  },
  intersection: {
    type: ClipType.Intersection,
    rule: FillRule.NonZero,
    filling: (subject, clip) => subject !== 0 && clip !== 0,
  },
};

/** How the coordinates are turned and refined where the plain attempt comes out wrong. */
const ATTEMPTS: readonly { readonly scale: number; readonly angle: number }[] = [
  { scale: 16, angle: 1 },
  { scale: 256, angle: 2 },
  { scale: 1024, angle: 0.4 },
  { scale: 64, angle: 2.7 },
  { scale: 4096, angle: 1.9 },
];
/** Rounding may move every side by this much, steps. */
const ROUNDING_STEPS = 2;
/** Above this many sides the result is not checked; the check would cost more than the operation. */
const MOST_SIDES_CHECKED = 30_000;

/** One clipper serves all calls: it is emptied after each, and core runs on one thread. */
const clipper = new Clipper64();

/**
 * Runs an operation on paths of any kind and makes a region of the result.
 *
 * The clipper (clipper2-ts 2.0.1) rounds crossings to the grid, which in about one in ten thousand near-degenerate inputs
 * closes or opens a gap and loses or adds whole pieces (its upstream issues 1067 and 1109). So its area is compared with
 * `filledArea`, and where they differ the operation is done again with finer, turned coordinates.
 */
export function sweep(operation: Operation, subject: readonly GridPath[], clip: readonly GridPath[] = []): Region {
  const recipe = RECIPES[operation];
  const plain = execute(recipe, subject, clip);
  const all = [...subject, ...clip];
  const sides = all.reduce((sum, path) => sum + path.length, 0);
  if (sides > MOST_SIDES_CHECKED) return regionOf(plain);
  const wanted = 2 * filledArea(subject, clip, recipe.filling);
  const length = all.reduce((sum, path) => sum + pathLength(path), 0);
  const tolerance = 2 * ROUNDING_STEPS * STEPS_PER_METRE * (length + 1);
  let best = plain;
  let bestError = Math.abs(areaOf(plain) - wanted);
  for (const attempt of ATTEMPTS) {
    if (bestError <= tolerance) break;
    const paths = turned(attempt, recipe, subject, clip);
    const error = Math.abs(areaOf(paths) - wanted);
    if (error >= bestError) continue;
    best = paths;
    bestError = error;
  }
  return regionOf(best);
}

function areaOf(paths: readonly GridPath[]): number {
  return paths.reduce((sum, path) => sum + doubleArea(path), 0);
}

function turned(
  { scale, angle }: { readonly scale: number; readonly angle: number },
  recipe: Recipe,
  subject: readonly GridPath[],
  clip: readonly GridPath[],
): readonly GridPath[] {
  const there = turner(scale * Math.cos(angle), scale * Math.sin(angle));
  const back = turner(Math.cos(angle) / scale, -Math.sin(angle) / scale);
  const paths = execute(recipe, subject.map(there), clip.map(there));
  return paths.map((path) => withoutRepeats(back(path))).filter((path) => path.length > 2);
}

function turner(cosine: number, sine: number): (path: GridPath) => GridPath {
  return (path) =>
    path.map(({ x, y }) => ({ x: Math.round(cosine * x - sine * y), y: Math.round(sine * x + cosine * y) }));
}

function execute(recipe: Recipe, subject: readonly GridPath[], clip: readonly GridPath[]): readonly GridPath[] {
  clipper.clear();
  clipper.addSubject(subject.map(withoutFlatRuns) as Paths64);
  if (clip.length > 0) clipper.addClip(clip.map(withoutFlatRuns) as Paths64);
  const outcome: Paths64 = [];
  clipper.execute(recipe.type, recipe.rule, outcome);
  clipper.clear();
  return outcome;
}

/**
 * A path without corners inside exactly east-west runs. The clipper never ends on such a run that turns back on itself
 * (its pull request 36), and no area depends on them.
 */
function withoutFlatRuns(path: GridPath): GridPath {
  if (!hasFlatRun(path)) return path;
  const kept: GridPoint[] = [];
  for (const point of path) {
    push(kept, point);
  }
  // The run may go on across the start.
  for (let before = kept.length + 1; kept.length > 2 && before !== kept.length; ) {
    before = kept.length;
    const [first, second] = kept;
    const last = kept[kept.length - 1];
    const nextToLast = kept[kept.length - 2];
    if (first === undefined || second === undefined || last === undefined || nextToLast === undefined) break;
    if (isFlat(nextToLast, last, first)) kept.pop();
    else if (isFlat(last, first, second)) kept.shift();
  }
  return kept;
}

function push(kept: GridPoint[], point: GridPoint): void {
  for (;;) {
    const last = kept[kept.length - 1];
    const before = kept[kept.length - 2];
    if (last !== undefined && last.x === point.x && last.y === point.y) return;
    if (last === undefined || before === undefined || !isFlat(before, last, point)) break;
    kept.pop();
  }
  kept.push(point);
}

function hasFlatRun(path: GridPath): boolean {
  let before = path[path.length - 2];
  let last = path[path.length - 1];
  for (const point of path) {
    if (before !== undefined && last !== undefined && isFlat(before, last, point)) return true;
    before = last;
    last = point;
  }
  return false;
}

/** True where the middle one of three corners lies on an east-west run, or is one of them again. */
function isFlat(before: GridPoint, point: GridPoint, after: GridPoint): boolean {
  return (before.y === point.y && point.y === after.y) || (point.x === after.x && point.y === after.y);
}

function withoutRepeats(path: GridPath): GridPath {
  return path.filter((point, index) => {
    const before = path[index === 0 ? path.length - 1 : index - 1];
    return before === undefined || before.x !== point.x || before.y !== point.y;
  });
}
