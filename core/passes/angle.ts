import type { PlanePoint } from '../geometry/index.ts';
import { type Lanes, lanesOver } from './lanes.ts';
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
/** Where there are twice as many lanes or more, about so many of them, evenly apart, tell what a direction costs about ... */
const ROUGH_LANES = 100;
/** ... and so many of the directions that seem best are looked at lane by lane. */
const WHOLE = 5;
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

/** A direction that was tried, and its cost by all its lanes or by some of them. */
type Tried = { readonly angle: number; readonly cost: number; readonly isWhole: boolean };

const bestOf = (tried: readonly Tried[], count: number): readonly Tried[] =>
  tried.toSorted((left, right) => left.cost - right.cost).slice(0, count);

/**
 * Tries directions, keeps the best, and stops when it has looked at too many sides. A direction of which the lanes alone cost more
 * than the third best so far is not looked at: it cannot be the best, nor one about which others are tried.
 */
function lookAt(field: Field, pivot: PlanePoint, gauge: Gauge): Look {
  let best: Tried | null = null;
  const tried: Tried[] = [];
  const fewest: number[] = [];
  const bareSqM = areaOf(field.bare);
  let looked = 0;
  let wasCutShort = false;
  const lay = stripLayer();
  const turn = turner(field, pivot);
  const look = (angle: number, every: number): Tried => {
    const sum = lay(turn.whole(angle), gauge, undefined, every);
    looked += field.bare.length + field.ground.length + (SIDES_PER_LANE * sum.lanes.count) / every;
    return { angle, cost: costOf(sum, gauge), isWhole: every === 1 };
  };
  const note = (one: Tried): void => {
    if (one.isWhole && (best === null || one.cost < best.cost * (1 - TIE))) best = one;
    tried.push(one);
  };
  const tryOne = (angle: number): Tried | null => {
    const rest = turn.rest(angle);
    looked += field.rest.length;
    const lanes = lanesOver(rest, gauge.swathM, gauge.overlapM);
    if (leastCost(lanes, rest, bareSqM, gauge) > (fewest[REFINED - 1] ?? Number.POSITIVE_INFINITY)) return null;
    const one = look(angle, Math.max(1, Math.floor(lanes.count / ROUGH_LANES)));
    fewest.push(one.cost);
    fewest.sort((left, right) => left - right).splice(REFINED);
    return one;
  };
  const found = (): number => {
    if (best === null) throw new Error('no direction was tried');
    return best.angle;
  };
  return {
    tryAll: (angles) => {
      const rough: Tried[] = [];
      for (const angle of angles) {
        if (tried.length + rough.length > 0 && looked > MOST_SIDES) wasCutShort = true;
        else {
          const one = tryOne(halfTurn(angle));
          if (one?.isWhole === true) note(one);
          else if (one !== null) rough.push(one);
        }
      }
      for (const each of bestOf(rough, WHOLE)) note(look(each.angle, 1));
    },
    bestFew: (count) => bestOf(tried, count).map((each) => each.angle),
    result: () => ({ angle: found(), strips: stripsOver(turn.whole(found()), gauge, lay), wasCutShort }),
  };
}

type Turner = { readonly rest: (angle: number) => Sides; readonly whole: (angle: number) => Field };

/** A field turned into the frame of a direction. A frame holds until the next one. */
function turner({ rest, bare, ground }: Field, pivot: PlanePoint): Turner {
  const [turnedRest, turnedBare, turnedGround] = [rest, bare, ground].map((sides) => new Float64Array(sides.length));
  return {
    rest: (angle) => turnSides(rest, angle, pivot, turnedRest),
    whole: (angle) => ({
      rest: turnSides(rest, angle, pivot, turnedRest),
      bare: turnSides(bare, angle, pivot, turnedBare),
      ground: turnSides(ground, angle, pivot, turnedGround),
    }),
  };
}

/**
 * What swaths in a direction cost at least, seconds, by the lanes alone: together they are as long as the untreated ground needs where
 * each step between lanes is full of it, and all lanes but the two at the ends, where the swath may not fit, take a turn.
 * @param rest turned into the frame of the direction
 */
function leastCost(lanes: Lanes, rest: Sides, bareSqM: number, { swathM, metresPerSec, turnSec }: Gauge): number {
  if (lanes.count < 3) return 0;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let at = 0; at < rest.length; at += 2) {
    const x = rest[at] as number;
    if (x < low) low = x;
    if (x > high) high = x;
  }
  // Half a width less half a step lies beyond the outermost steps on either side.
  const within = Math.max(0, bareSqM - (swathM - lanes.stepM) * (high - low));
  const turns = lanes.count - 2;
  return (within / lanes.stepM + turns * lanes.stepM) / metresPerSec + turns * turnSec;
}

/** Area that sides go round, m2. */
function areaOf(sides: Sides): number {
  let twice = 0;
  for (let at = 0; at < sides.length; at += 4) {
    twice += (sides[at] as number) * (sides[at + 3] as number) - (sides[at + 2] as number) * (sides[at + 1] as number);
  }
  return twice / 2;
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
