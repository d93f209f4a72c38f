import type { Result } from '../base/index.ts';
import type { AreaGeometry } from '../book/index.ts';
import {
  difference,
  grow,
  intersection,
  isEmpty,
  partsOf,
  type Region,
  regionArea,
  STEPS_PER_METRE,
  union,
  withoutHairs,
} from '../geometry/index.ts';
import { METRES_PER_FOOT } from '../units/index.ts';
import { type Ground, readGround, writeGround } from './ground.ts';
import { needless, refuse } from './refuse.ts';

/** Common ground smaller than this is rounding along a side drawn twice, m2. */
const LEAST_COMMON_SQ_M = 0.01;
const LARGEST_OFFSET_FT = 1000;

/**
 * One outline of several; slits under 1 cm between sides drawn twice are closed. Parts that keep apart stay parts.
 * Errors: `nothing-to-do` for fewer than two outlines; as `cutOut` where one cannot be used.
 */
export function merge(geometries: readonly AreaGeometry[]): Result<AreaGeometry> {
  if (geometries.length < 2) return needless('There is only one outline.', 'Choose two or more.');
  const ground = readGround(geometries);
  if (!ground.ok) return ground;
  const { plane, regions } = ground.value;
  const whole = union(regions);
  return writeGround(hasSeams(whole, regions) ? withoutSlits(whole) : whole, plane, 'Nothing is left.');
}

/**
 * The ground of the first outline that the other does not cover. Errors: `nothing-to-do` where they have none in
 * common; `geometry-not-lonlat`, `geometry-too-large` or `geometry-invalid` where one cannot be used,
 * `geometry-invalid` also where nothing would be left.
 */
export function cutOut(geometry: AreaGeometry, other: AreaGeometry): Result<AreaGeometry> {
  return withPair(geometry, other, (region, piece, { plane }) =>
    writeGround(difference(region, [piece]), plane, 'Nothing would be left of the outline.'),
  );
}

/**
 * The same for a piece that has to lie wholly inside, or over holes that are there already: a hole. Errors as of
 * `cutOut`; `geometry-invalid` for a piece that reaches outside.
 */
export function cutHole(geometry: AreaGeometry, hole: AreaGeometry): Result<AreaGeometry> {
  return withPair(geometry, hole, (region, piece, { plane }) => {
    if (regionArea(difference(piece, [withoutHoles(region)])) > LEAST_COMMON_SQ_M) {
      return refuse('The hole reaches outside the outline.', 'Draw it inside, or cut the piece off instead.');
    }
    return writeGround(difference(region, [piece]), plane, 'Nothing would be left of the outline.');
  });
}

/** The ground that both outlines cover. Errors as of `cutOut`. */
export function commonGround(geometry: AreaGeometry, other: AreaGeometry): Result<AreaGeometry> {
  return withPair(geometry, other, (region, piece, { plane }) =>
    writeGround(intersection(region, piece), plane, 'The outlines have no ground in common.'),
  );
}

/**
 * The outline moved out by so many feet, or in where negative: everything within that distance of it, or everything
 * inside that is at least so far from its edge. Where an edge turns round a corner it becomes an arc, true to 1 mm.
 * Errors: `nothing-to-do` for 0 ft, `geometry-invalid` beyond 1,000 ft; as `cutOut` for the rest.
 */
export function offsetOutline(geometry: AreaGeometry, feet: number): Result<AreaGeometry> {
  const fault = offsetFault(feet);
  if (fault !== null) return fault;
  const ground = readGround([geometry]);
  if (!ground.ok) return ground;
  const region = moveEdge(ground.value.regions[0], feet);
  return writeGround(region, ground.value.plane, `Nothing is left ${Math.abs(feet)} ft inside the outline.`);
}

/**
 * The strip of so many feet along the inside of the outline's edge, or along its outside where negative: a bed edge.
 * Errors as of `offsetOutline`.
 */
export function edgeStrip(geometry: AreaGeometry, feet: number): Result<AreaGeometry> {
  const fault = offsetFault(feet);
  if (fault !== null) return fault;
  const ground = readGround([geometry]);
  if (!ground.ok) return ground;
  const [region] = ground.value.regions;
  if (region === undefined) return refuse('There is no outline.', 'Choose one.');
  const moved = moveEdge(region, -feet);
  const strip = feet > 0 ? difference(region, [moved]) : difference(moved, [region]);
  return writeGround(strip, ground.value.plane, 'The strip has no ground.');
}

function withoutHoles(region: Region): Region {
  return { ...region, paths: partsOf(region).map((part) => part.outer) };
}

type Pair = (region: Region, piece: Region, ground: Ground) => Result<AreaGeometry>;

function withPair(geometry: AreaGeometry, other: AreaGeometry, edit: Pair): Result<AreaGeometry> {
  const ground = readGround([geometry, other]);
  if (!ground.ok) return ground;
  const [region, piece] = ground.value.regions;
  if (region === undefined || piece === undefined) return refuse('There is no outline.', 'Choose two.');
  if (regionArea(intersection(region, piece)) <= LEAST_COMMON_SQ_M) {
    return needless('The two outlines have no ground in common.', 'Draw the piece over the outline.');
  }
  return edit(region, piece, ground.value);
}

function offsetFault(feet: number): Result<AreaGeometry> | null {
  if (feet === 0) return needless('The distance is zero.', 'Type a distance in feet.');
  return Math.abs(feet) <= LARGEST_OFFSET_FT
    ? null
    : refuse('The distance cannot be used.', `Type at most ${LARGEST_OFFSET_FT} ft.`);
}

function moveEdge(region: Region | undefined, feet: number): Region {
  if (region === undefined) return { paths: [], box: { west: 0, south: 0, east: 0, north: 0 } };
  const metres = Math.abs(feet) * METRES_PER_FOOT;
  return feet > 0 ? grow(region, metres) : difference(region, [grow(outsideOf(region, metres), metres)]);
}

/** A frame of ground round the region, holes included, as wide as is needed to grow inwards by `metres`. */
function outsideOf(region: Region, metres: number): Region {
  return difference(frameRound(region, metres), [region]);
}

function frameRound({ box }: Region, metres: number): Region {
  const margin = Math.ceil((2 * metres + 1) * STEPS_PER_METRE);
  const [west, south] = [box.west - margin, box.south - margin];
  const [east, north] = [box.east + margin, box.north + margin];
  const path = [
    { x: west, y: south },
    { x: east, y: south },
    { x: east, y: north },
    { x: west, y: north },
  ];
  return { paths: [path], box: { west, south, east, north } };
}

/** True where pieces that were drawn side by side did not grow together. */
function hasSeams(whole: Region, regions: readonly Region[]): boolean {
  const holes = regions.reduce((sum, region) => sum + holeCount(region), 0);
  return partsOf(whole).length > 1 || holeCount(whole) > holes;
}

function holeCount(region: Region): number {
  return region.paths.length - partsOf(region).length;
}

/** Ground grown together over slits under 1 cm: hairs are taken out of what lies round it. */
function withoutSlits(region: Region): Region {
  const frame = frameRound(region, 1);
  const closed = difference(frame, [withoutHairs(difference(frame, [region]))]);
  return isEmpty(closed) ? region : closed;
}
