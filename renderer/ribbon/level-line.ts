import type { LevelLine } from '../../core/plan/result/index.ts';
import type { TimeScale } from './time-scale.ts';

/** The drawn form of one level line: the line itself and the area below it, as SVG path data. */
export type LevelPaths = { readonly line: string; readonly area: string };

/**
 * The level at a moment, by straight interpolation between the points of the line. At a jump the later value counts.
 *
 * @returns the level in the line's own unit; 0 for a line without points
 */
export function levelAt(line: LevelLine, sec: number): number {
  const { points } = line;
  const first = points[0];
  if (first === undefined) return 0;
  if (sec < first[0]) return first[1];
  let previous = first;
  for (const point of points) {
    if (point[0] > sec) return between(previous, point, sec);
    previous = point;
  }
  return previous[1];
}

type Point = readonly [number, number];

function between(from: Point, to: Point, sec: number): number {
  const share = to[0] === from[0] ? 1 : (sec - from[0]) / (to[0] - from[0]);
  return from[1] + (to[1] - from[1]) * share;
}

/** Path data of a line in a lane from `top` (full) to `top + height` (empty). */
export function levelPaths(line: LevelLine, scale: TimeScale, top: number, height: number): LevelPaths {
  const spots = line.points.map(([sec, level]) => {
    const share = line.capacity > 0 ? Math.min(1, Math.max(0, level / line.capacity)) : 0;
    return `${round(scale.toX(sec))},${round(top + height * (1 - share))}`;
  });
  const first = line.points[0];
  const last = line.points.at(-1);
  if (first === undefined || last === undefined) return { line: '', area: '' };
  const path = `M${spots.join('L')}`;
  const floor = round(top + height);
  return {
    line: path,
    area: `${path}L${round(scale.toX(last[0]))},${floor}L${round(scale.toX(first[0]))},${floor}Z`,
  };
}

const round = (value: number): number => Math.round(value * 100) / 100;
