import { type PlanePoint, partArea, partsOf, type RegionPart, STEPS_PER_METRE } from '../geometry/index.ts';
import { type Chord, type Cut, chordsInside, keyOf } from './chords.ts';

type Path = readonly PlanePoint[];
/** One step round a face, the face on its left; `chord` is the number of the chord it runs along. */
type Step = { readonly from: PlanePoint; readonly to: PlanePoint; readonly chord: number | null };
type Loop = readonly Step[];

/** Rounding may move a side by this much, steps. */
const ROUNDING_STEPS = 2;
/** A face smaller than this is a graze of a corner and no piece, m2. */
const LEAST_PIECE_SQ_M = 0.01;

/**
 * The pieces that a line makes of one connected piece of ground; the piece itself where it does not go right across.
 * Sides and the runs of the line inside the ground ("chords") make a planar graph, whose faces are walked with the
 * leftmost turn at every corner. A chord with the same face on both sides separates nothing and is left out, and so is one
 * that only grazes a corner.
 */
export function splitPart(part: RegionPart, line: Path): readonly RegionPart[] {
  const rings = [part.outer, ...part.holes];
  let { chords, cuts } = chordsInside(rings, line);
  while (chords.length > 0) {
    const loops = walkFaces(stepsOf(rings, chords, cuts));
    const idle = idleChords(loops);
    if (idle.size === 0) return piecesOf(loops, part);
    chords = chords.filter((_, index) => !idle.has(index));
  }
  return [part];
}

/** All steps of the graph: the sides, cut where chords end, in their own direction; the chords in both. */
function stepsOf(rings: readonly Path[], chords: readonly Chord[], cuts: readonly Cut[]): readonly Step[] {
  const ends = new Set(chords.flatMap(({ from, to }) => [keyOf(from), keyOf(to)]));
  const used = cuts.filter((cut) => ends.has(keyOf(cut.at))).sort((left, right) => left.share - right.share);
  const steps: Step[] = [];
  for (const [ring, path] of rings.entries()) {
    for (const [side, corner] of path.entries()) {
      let from = corner;
      const points = used.filter((cut) => cut.ring === ring && cut.side === side).map((cut) => cut.at);
      for (const to of [...points, path[(side + 1) % path.length] ?? corner]) {
        if (keyOf(from) !== keyOf(to)) steps.push({ from, to, chord: null });
        from = to;
      }
    }
  }
  for (const [chord, { from, to }] of chords.entries()) {
    steps.push({ from, to, chord }, { from: to, to: from, chord });
  }
  return steps;
}

function walkFaces(steps: readonly Step[]): readonly Loop[] {
  const leaving = new Map<string, Step[]>();
  for (const step of steps) {
    const key = keyOf(step.from);
    const others = leaving.get(key);
    if (others === undefined) leaving.set(key, [step]);
    else others.push(step);
  }
  const taken = new Set<Step>();
  const loops: Loop[] = [];
  for (const first of steps) {
    const loop: Step[] = [];
    for (let step: Step | undefined = first; step !== undefined && !taken.has(step); ) {
      taken.add(step);
      loop.push(step);
      step = leftmost(step, leaving.get(keyOf(step.to)) ?? []);
    }
    if (loop.length > 0) loops.push(loop);
  }
  return loops;
}

/** The step to go on with: the first one clockwise from the way back. */
function leftmost(step: Step, choices: readonly Step[]): Step | undefined {
  if (choices.length < 2) return choices[0];
  const back = Math.atan2(step.from.y - step.to.y, step.from.x - step.to.x);
  let best: Step | undefined;
  let bestTurn = Number.POSITIVE_INFINITY;
  for (const each of choices) {
    const angle = back - Math.atan2(each.to.y - each.from.y, each.to.x - each.from.x);
    const isBack = each.to.x === step.from.x && each.to.y === step.from.y;
    const turned = isBack ? 2 * Math.PI : positiveAngle(angle);
    if (turned < bestTurn) {
      best = each;
      bestTurn = turned;
    }
  }
  return best;
}

function positiveAngle(angle: number): number {
  const turned = angle % (2 * Math.PI);
  return turned <= 0 ? turned + 2 * Math.PI : turned;
}

function idleChords(loops: readonly Loop[]): ReadonlySet<number> {
  const idle = new Set<number>();
  for (const loop of loops) {
    const area = doubleAreaOf(loop);
    const isGraze = area > 0 && area < 2 * LEAST_PIECE_SQ_M * STEPS_PER_METRE ** 2;
    const seen = new Set<number>();
    for (const { chord } of loop) {
      if (chord === null) continue;
      if (isGraze || seen.has(chord)) idle.add(chord);
      seen.add(chord);
    }
  }
  return idle;
}

/** Twice the area that a loop goes round, square steps; negative for a hole. */
function doubleAreaOf(loop: Loop): number {
  const origin = loop[0]?.from ?? { x: 0, y: 0 };
  return loop.reduce(
    (sum, { from, to }) => sum + (from.x - origin.x) * (to.y - origin.y) - (to.x - origin.x) * (from.y - origin.y),
    0,
  );
}

/** The faces as ground; the piece unsplit where their areas do not add up to its own, as with a line along a side. */
function piecesOf(loops: readonly Loop[], part: RegionPart): readonly RegionPart[] {
  const paths = loops.map((loop) => loop.map((step) => step.from));
  const pieces = partsOf({ paths, box: { west: 0, south: 0, east: 0, north: 0 } });
  const areas = pieces.reduce((sum, piece) => sum + partArea(piece), 0);
  const sides = loops.flat().reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
  return Math.abs(areas - partArea(part)) <= 2 * ROUNDING_STEPS * sides ? pieces : [part];
}
