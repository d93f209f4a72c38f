import { parseArgs } from 'node:util';
import { createRandom } from '../../../core/base/index.ts';
import {
  difference,
  grow,
  joinParts,
  partsOf,
  type Region,
  regionArea,
  STEPS_PER_METRE,
  shrink,
  withoutHairs,
} from '../../../core/geometry/index.ts';
import { groundUnder, type Interval, intervalsIn, lanesOver } from '../../../core/passes/lanes.ts';
import { type Sides, sidesOf, turnSides } from '../../../core/passes/sides.ts';
import { isOn } from '../../core/passes/grounds.ts';
import { HEADS, isThere, regionsOf, SETS } from './grounds.ts';

/**
 * What of public outlines a swath can reach at all, whatever passes are driven:
 * npm run bench:passes:fits -- [--set NAME] [--every N]
 *
 * Per swath: ground beyond every disc of its width, which a machine that turns on the spot leaves; how much of that lies in pieces
 * larger than the square of the width; and ground beyond every square of its width, as it lies in 36 directions and along the
 * edges, by places drawn at random: what no straight run reaches that is at least as long as the swath is wide. Medians in % of the ground.
 */
const { values } = parseArgs({
  options: { set: { type: 'string', default: 'lots' }, every: { type: 'string', default: '3' } },
});

const PLACES = 20_000;
const DIRECTIONS = 36;
/** Squares are laid this much apart, metres. */
const STEP_M = 0.03;
/** Shorter edges give no direction of their own, metres. */
const LEAST_EDGE_M = 0.5;

type Place = { readonly x: number; readonly y: number };

function placesOn(ground: Region, among: Region): { readonly all: number; readonly places: Place[] } {
  const { west, south, east, north } = ground.box;
  const step = Math.sqrt(((east - west) * (north - south)) / PLACES);
  const random = createRandom(7);
  const places: Place[] = [];
  let all = 0;
  for (let column = west; column < east; column += step) {
    for (let row = south; row < north; row += step) {
      const [x, y] = [column + step * random.unit(), row + step * random.unit()].map((each) => each / STEPS_PER_METRE);
      if (x === undefined || y === undefined || !isOn(ground, x, y)) continue;
      all += 1;
      if (isOn(among, x, y)) places.push({ x, y });
    }
  }
  return { all, places };
}

function directionsOf(sides: Sides): readonly number[] {
  const found = Array.from({ length: DIRECTIONS }, (_, step) => (step * Math.PI) / DIRECTIONS);
  for (let at = 0; at < sides.length; at += 4) {
    const [x, y] = [(sides[at + 2] ?? 0) - (sides[at] ?? 0), (sides[at + 3] ?? 0) - (sides[at + 1] ?? 0)];
    if (Math.hypot(x, y) >= LEAST_EDGE_M) found.push(Math.atan2(y, x));
  }
  return found;
}

/** The places that no square with sides in a direction covers. */
function beyondSquares(places: readonly Place[], sides: Sides, angle: number, widthM: number): Place[] {
  const turned = turnSides(sides, angle, { x: 0, y: 0 });
  const lanes = lanesOver(turned, widthM, widthM - STEP_M);
  const { full } = groundUnder(lanes, turned);
  const runs = Array.from({ length: lanes.count }, (_, lane) =>
    intervalsIn(full, lane).filter(([from, to]) => to - from >= widthM),
  );
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  const isIn = (runsOfLane: readonly Interval[], along: number): boolean =>
    runsOfLane.some(([from, to]) => along >= from && along <= to);
  return places.filter(({ x, y }) => {
    const [along, across] = [cosine * x + sine * y, cosine * y - sine * x];
    const first = Math.max(0, Math.ceil((across - widthM / 2 - lanes.firstM) / lanes.stepM));
    const last = Math.min(lanes.count - 1, Math.floor((across + widthM / 2 - lanes.firstM) / lanes.stepM));
    for (let lane = first; lane <= last; lane += 1) if (isIn(runs[lane] ?? [], along)) return false;
    return true;
  });
}

function fitsOf(ground: Region, widthM: number) {
  const beyondDiscs = difference(ground, [grow(shrink(ground, widthM / 2), widthM / 2)]);
  const pieces = partsOf(withoutHairs(beyondDiscs)).map((part) => regionArea(joinParts([part])));
  const sides = sidesOf(ground);
  const { all, places } = placesOn(ground, beyondDiscs);
  const left = directionsOf(sides).reduce((some, angle) => beyondSquares(some, sides, angle, widthM), places);
  const sum = (areas: readonly number[]): number => areas.reduce((total, each) => total + each, 0);
  return {
    discs: regionArea(beyondDiscs) / regionArea(ground),
    squares: left.length / Math.max(1, all),
    piecesSqM: sum(pieces),
    largeSqM: sum(pieces.filter((each) => each > widthM ** 2)),
  };
}

const median = (numbers: readonly number[]): number =>
  numbers.toSorted((left, right) => left - right)[Math.floor(numbers.length / 2)] ?? Number.NaN;

for (const set of SETS.filter((each) => each.name === values.set)) {
  if (!isThere(set)) {
    console.log(`skipped: ${set.file} is not there`);
    continue;
  }
  const every = Number(values.every);
  const grounds = regionsOf(set).filter((ground, index) => index % every === 0 && ground.paths.length > 0);
  for (const { swathM } of HEADS.slice(0, 3)) {
    const found = grounds.map((ground) => fitsOf(ground, swathM));
    const large = found.reduce((sum, each) => sum + each.largeSqM, 0);
    const pieces = found.reduce((sum, each) => sum + each.piecesSqM, 0);
    console.log(
      [
        `${set.name}, swath ${swathM} m, ${grounds.length} outlines`,
        `beyond discs ${(100 * median(found.map((each) => each.discs))).toFixed(3)} %`,
        `of it in pieces larger than the square of the swath ${((100 * large) / pieces).toFixed(0)} %`,
        `beyond squares ${(100 * median(found.map((each) => each.squares))).toFixed(3)} %`,
      ].join('; '),
    );
  }
}
