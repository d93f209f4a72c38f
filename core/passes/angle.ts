import type { PlanePoint } from '../geometry/index.ts';
import { type Sides, turnSides } from './sides.ts';
import { type Field, type StripSum, type Strips, stripLayer, stripsOver } from './strips.ts';
import { swathNumber } from './swath-number.ts';
import type { Gauge } from './types.ts';

/** Swaths over one piece of ground in the best direction found. Angles are radians in [0, pi). */
export type Directed = { readonly angle: number; readonly strips: Strips; readonly wasCutShort: boolean };

const GRID_STEPS = 60;
const REFINE_DEG = [0.5, 1, 1.5] as const;
/** Of so many directions those about them are tried. */
const REFINED = 3;
/** Directions of the edge that are tried beside the grid: the longest in sum. */
const MOST_EDGE_DIRECTIONS = 12;
/** Sides looked at over all directions before the search stops; about a second of work. */
const MOST_SIDES = 12_000_000;
/** What a lane costs on top, in sides. */
const SIDES_PER_LANE = 40;
/** Ground that has to be done by hand costs this many times its length. */
const HAND_FACTOR = 5;
const DEGREE = Math.PI / 180;
/** Costs closer than this share are equal: the first direction tried stays. */
const TIE = 1e-7;

/**
 * The direction in which swaths take least time: their length and the steps between them at working speed, and a turn for
 * each. Tried are 60 directions from the longest edge on, the directions of the edge, and half a degree to one and a half on both sides
 * of the three best. Measured from an edge, the choice does not depend on how the ground lies to the compass.
 */
export function bestDirection(field: Field, pivot: PlanePoint, gauge: Gauge): Directed {
  const edges = edgeDirections(field.ground);
  const base = edges[0] ?? 0;
  const grid = Array.from({ length: GRID_STEPS }, (_, step) => base + (step * Math.PI) / GRID_STEPS);
  const first = [...new Set([...edges, ...grid])]
    .map((angle) => ({ angle, swaths: swathNumber(field.rest, gauge.swathM, angle) }))
    .sort((left, right) => left.swaths - right.swaths)
    .map((each) => each.angle);
  const look = lookAt(field, pivot, gauge);
  look.tryAll(first);
  for (const near of look.bestFew(REFINED)) {
    look.tryAll(REFINE_DEG.flatMap((step) => [near - step * DEGREE, near + step * DEGREE]));
  }
  return look.result();
}

/** Swaths in a direction that is given. */
export function fixedDirection(field: Field, pivot: PlanePoint, gauge: Gauge, angleDeg: number): Directed {
  const look = lookAt(field, pivot, gauge);
  look.tryAll([angleDeg * DEGREE]);
  return look.result();
}

type Look = {
  readonly tryAll: (angles: readonly number[]) => void;
  /** The directions tried so far that cost least. */
  readonly bestFew: (count: number) => readonly number[];
  readonly result: () => Directed;
};

/** Tries directions, keeps the best, and stops when it has looked at too many sides. */
function lookAt(field: Field, pivot: PlanePoint, gauge: Gauge): Look {
  let best: number | null = null;
  let bestCost = Number.POSITIVE_INFINITY;
  const tried: { readonly angle: number; readonly cost: number }[] = [];
  let looked = 0;
  let wasCutShort = false;
  const lay = stripLayer();
  const turn = turner(field, pivot);
  const tryOne = (angle: number): void => {
    const sum = lay(turn(angle), gauge);
    looked += field.rest.length + field.bare.length + field.ground.length + SIDES_PER_LANE * sum.lanes.count;
    const cost = costOf(sum, gauge);
    tried.push({ angle, cost });
    if (best !== null && !(cost < bestCost * (1 - TIE))) return;
    bestCost = cost;
    best = angle;
  };
  const found = (): number => {
    if (best === null) throw new Error('no direction was tried');
    return best;
  };
  return {
    tryAll: (angles) => {
      for (const angle of angles) {
        if (best === null || looked <= MOST_SIDES) tryOne(halfTurn(angle));
        else wasCutShort = true;
      }
    },
    bestFew: (count) => {
      const ranked = tried.toSorted((left, right) => left.cost - right.cost);
      return ranked.slice(0, count).map((each) => each.angle);
    },
    result: () => ({ angle: found(), strips: stripsOver(turn(found()), gauge, lay), wasCutShort }),
  };
}

/** A field turned into the frame of a direction. A frame holds until the next one. */
function turner({ rest, bare, ground }: Field, pivot: PlanePoint): (angle: number) => Field {
  const [turnedRest, turnedBare, turnedGround] = [rest, bare, ground].map((sides) => new Float64Array(sides.length));
  return (angle) => ({
    rest: turnSides(rest, angle, pivot, turnedRest),
    bare: turnSides(bare, angle, pivot, turnedBare),
    ground: turnSides(ground, angle, pivot, turnedGround),
  });
}

/** Seconds for swaths in a direction, each with a turn and the step to the lane beside it. */
function costOf({ lanes, lengthM, lostM, count }: StripSum, { metresPerSec, turnSec }: Gauge): number {
  return (lengthM + HAND_FACTOR * lostM + count * lanes.stepM) / metresPerSec + count * turnSec;
}

const halfTurn = (angle: number): number => {
  const rest = angle % Math.PI;
  return rest < 0 ? rest + Math.PI : rest;
};

/** Directions of sides to a tenth of a degree, those with most length first. */
function edgeDirections(sides: Sides): readonly number[] {
  const sums = new Map<number, { lengthM: number; longestM: number; angle: number }>();
  for (let at = 0; at < sides.length; at += 4) {
    const x = (sides[at + 2] ?? 0) - (sides[at] ?? 0);
    const y = (sides[at + 3] ?? 0) - (sides[at + 1] ?? 0);
    const lengthM = Math.hypot(x, y);
    const angle = halfTurn(Math.atan2(y, x));
    const key = Math.round(angle / DEGREE / 0.1) % 1800;
    const sum = sums.get(key);
    if (sum === undefined) sums.set(key, { lengthM, longestM: lengthM, angle });
    else {
      sum.lengthM += lengthM;
      if (lengthM > sum.longestM) Object.assign(sum, { longestM: lengthM, angle });
    }
  }
  return [...sums.values()]
    .sort((left, right) => right.lengthM - left.lengthM || left.angle - right.angle)
    .slice(0, MOST_EDGE_DIRECTIONS)
    .map((each) => each.angle);
}
