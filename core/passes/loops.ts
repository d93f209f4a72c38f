import { type PlanePoint, STEPS_PER_METRE } from '../geometry/index.ts';
import { turnBack } from './sides.ts';
import type { TrimPass } from './trim.ts';
import { distanceM } from './visits.ts';

/** Corners level within this count as one row, metres. */
const LEVEL_M = 0.01;

/**
 * The closed ways of the trim passes in the order in which they are driven, pass by pass from the outside in. Each begins and
 * ends at the place of it that is nearest to where the next one begins, the last one nearest to `next`.
 * Driven as the outlines go, the edge is on the right, at obstacles as well.
 * @param next where the swaths begin; null without swaths
 * @param angle direction, radians, in which the lowest left corner is taken where there are none, whatever the corners' order
 */
export function driveLoops(
  passes: readonly TrimPass[],
  next: PlanePoint | null,
  angle: number,
): readonly (readonly PlanePoint[])[] {
  const driven: (readonly PlanePoint[])[] = [];
  let there = next;
  for (const { middle } of passes.toReversed()) {
    const left = new Set(
      middle.paths.map((path) => path.map(({ x, y }) => ({ x: x / STEPS_PER_METRE, y: y / STEPS_PER_METRE }))),
    );
    while (left.size > 0) {
      const found = nearestLoop(left, there ?? lowestLeft([...left].flat(), angle));
      left.delete(found.loop);
      driven.push(openAt(found));
      there = found.point;
    }
  }
  return driven.reverse();
}

function lowestLeft(points: readonly PlanePoint[], angle: number): PlanePoint {
  let best: PlanePoint = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY };
  for (const point of points) {
    const turned = turnBack(point, -angle, { x: 0, y: 0 });
    const lower = best.y - turned.y;
    if (lower > LEVEL_M || (lower > -LEVEL_M && turned.x < best.x)) best = turned;
  }
  return turnBack(best, angle, { x: 0, y: 0 });
}

type OnLoop = { readonly loop: PlanePoint[]; readonly side: number; readonly point: PlanePoint };

function nearestLoop(loops: ReadonlySet<PlanePoint[]>, here: PlanePoint): OnLoop {
  let best: OnLoop | null = null;
  let bestM = Number.POSITIVE_INFINITY;
  for (const loop of loops) {
    let from = loop[loop.length - 1];
    for (const [side, to] of loop.entries()) {
      const point = from === undefined ? to : nearestOnSide(from, to, here);
      const away = distanceM(here, point);
      if (away < bestM) {
        best = { loop, side, point };
        bestM = away;
      }
      from = to;
    }
  }
  if (best === null) throw new Error('a trim pass without corners');
  return best;
}

function nearestOnSide(from: PlanePoint, to: PlanePoint, here: PlanePoint): PlanePoint {
  const x = to.x - from.x;
  const y = to.y - from.y;
  const square = x * x + y * y;
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((here.x - from.x) * x + (here.y - from.y) * y) / square));
  return { x: from.x + share * x, y: from.y + share * y };
}

/** The loop as a way that begins and ends at a point of one of its sides. */
function openAt({ loop, side, point }: OnLoop): readonly PlanePoint[] {
  return [point, ...loop.slice(side), ...loop.slice(0, side), point];
}
