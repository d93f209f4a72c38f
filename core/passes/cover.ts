import {
  difference,
  type GridPath,
  type PlanePoint,
  type Region,
  regionArea,
  regionOf,
  STEPS_PER_METRE,
  union,
} from '../geometry/index.ts';
import type { Cell, Swath } from './cells.ts';
import type { TrimPass } from './trim.ts';

/** What passes treat: ground left over, its area, and the area treated outside, m2. */
export type Cover = { readonly left: Region; readonly leftSqM: number; readonly outsideSqM: number };

/** Treated ground by polygon operations in the plane. A swath is a rectangle, square at both ends. */
export function coverOf(ground: Region, trim: readonly TrimPass[], cells: readonly Cell[], widthM: number): Cover {
  const treated = union([...trim.map((each) => each.treated), ...cells.flatMap((cell) => cellGround(cell, widthM))]);
  const left = difference(ground, [treated]);
  const leftSqM = regionArea(left);
  // Inside and outside add up to all that is treated, and inside is the ground less what is left.
  return { left, leftSqM, outsideSqM: Math.max(0, regionArea(treated) - (regionArea(ground) - leftSqM)) };
}

/** The same with more ground treated, by rectangles that may share ground with all that is treated already. */
export function coverMore({ left, outsideSqM }: Cover, ground: Region, more: readonly Region[]): Cover {
  const still = difference(left, more);
  const outside = difference(union(more), [ground]);
  return { left: still, leftSqM: regionArea(still), outsideSqM: outsideSqM + regionArea(outside) };
}

/** A swath in the frame of its cell: from where to where along it, and where its middle lies across. */
type Bar = { readonly from: number; readonly to: number; readonly across: number };
/** A piece of a cell across which its ends stay where they are. */
type Step = { readonly low: number; readonly high: number; readonly from: number; readonly to: number };

/**
 * What the swaths of a cell treat: one outline, stepped at both sides. Neighbours share a band that is as long as both
 * together. Where a swath shares ground with more than its neighbours, each is a rectangle of its own.
 */
function cellGround(cell: Cell, widthM: number): readonly Region[] {
  const [first] = cell;
  if (first === undefined) return [];
  const lengthM = Math.hypot(first.to.x - first.from.x, first.to.y - first.from.y);
  const way = { x: (first.to.x - first.from.x) / lengthM, y: (first.to.y - first.from.y) / lengthM };
  const bars = cell.map((swath) => barOf(swath, way)).sort((left, right) => left.across - right.across);
  const isTight = bars.some((bar, index) => {
    const before = bars[index - 1];
    return before !== undefined && bar.across - before.across <= widthM / 2;
  });
  const groups = isTight ? bars.map((bar) => [bar]) : [bars];
  return groups.map((group) => outlineOf(stepsOf(group, widthM), way));
}

function barOf({ from, to }: Swath, way: PlanePoint): Bar {
  const along = (point: PlanePoint): number => point.x * way.x + point.y * way.y;
  const ends = [along(from), along(to)] as const;
  return { from: Math.min(...ends), to: Math.max(...ends), across: from.y * way.x - from.x * way.y };
}

/** Bars turned into steps from low to high: each alone, and the bands that two of them share. */
function stepsOf(bars: readonly Bar[], widthM: number): readonly Step[] {
  return bars.flatMap((bar, index) => {
    const before = bars[index - 1];
    const after = bars[index + 1];
    const low = bar.across - widthM / 2;
    const high = bar.across + widthM / 2;
    const own: Step = {
      low: before === undefined ? low : before.across + widthM / 2,
      high: after === undefined ? high : after.across - widthM / 2,
      from: bar.from,
      to: bar.to,
    };
    if (after === undefined) return [own];
    const shared = { from: Math.min(bar.from, after.from), to: Math.max(bar.to, after.to) };
    return [own, { low: own.high, high, ...shared }];
  });
}

/** The stepped outline, anticlockwise: up at the far ends, down at the near ones. */
function outlineOf(steps: readonly Step[], way: PlanePoint): Region {
  const corner = (along: number, across: number) => ({
    x: Math.round((along * way.x - across * way.y) * STEPS_PER_METRE),
    y: Math.round((along * way.y + across * way.x) * STEPS_PER_METRE),
  });
  const far = endsOf(steps.map(({ low, high, to }) => ({ low, high, at: to }))).flatMap(({ low, high, at }) => [
    corner(at, low),
    corner(at, high),
  ]);
  const near = endsOf(steps.map(({ low, high, from }) => ({ low, high, at: from })))
    .toReversed()
    .flatMap(({ low, high, at }) => [corner(at, high), corner(at, low)]);
  const path = [...far, ...near];
  return regionOf([path.filter((point, index) => !isSame(point, path[(index + 1) % path.length]))]);
}

type End = { readonly low: number; readonly high: number; readonly at: number };

/** Ends of steps from low to high; those that follow one another at the same place are one: a shared band ends where one of the two does. */
function endsOf(steps: readonly End[]): readonly End[] {
  const ends: End[] = [];
  for (const step of steps) {
    const before = ends[ends.length - 1];
    if (before === undefined || before.at !== step.at) ends.push(step);
    else ends[ends.length - 1] = { ...before, high: step.high };
  }
  return ends;
}

function isSame(point: GridPath[number], other: GridPath[number] | undefined): boolean {
  return other !== undefined && point.x === other.x && point.y === other.y;
}
