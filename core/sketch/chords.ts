import { isBetween, type PlanePoint, turn } from '../geometry/index.ts';
import { distanceToSide } from './straighten.ts';

type Path = readonly PlanePoint[];
/** A straight run of a line inside a piece of ground. */
export type Chord = { readonly from: PlanePoint; readonly to: PlanePoint };
/** A place where a line meets a side: `share` of the way along side `side` of ring `ring`. */
export type Cut = { readonly ring: number; readonly side: number; readonly share: number; readonly at: PlanePoint };

/** A run nearer to a side than this runs along it, steps. */
const ALONG_STEPS = 1.5;

/** Places in whole grid steps told apart. */
export function keyOf({ x, y }: PlanePoint): string {
  return `${x},${y}`;
}

/** The runs of a line inside rings, outer ones and holes, and where the line meets their sides. */
export function chordsInside(
  rings: readonly Path[],
  line: Path,
): { readonly chords: readonly Chord[]; readonly cuts: readonly Cut[] } {
  const chords: Chord[] = [];
  const cuts: Cut[] = [];
  for (let index = 1; index < line.length; index += 1) {
    const from = line[index - 1];
    const to = line[index];
    if (from === undefined || to === undefined) continue;
    const found = meetings(rings, { from, to });
    cuts.push(...found.cuts);
    const stops = [from, ...found.stops.sort((left, right) => left.share - right.share).map((each) => each.at), to];
    for (const [place, stop] of stops.entries()) {
      const next = stops[place + 1];
      if (next === undefined || keyOf(stop) === keyOf(next)) continue;
      if (isInside({ x: (stop.x + next.x) / 2, y: (stop.y + next.y) / 2 }, rings))
        chords.push({ from: stop, to: next });
    }
  }
  return { chords, cuts };
}

type Stop = { readonly share: number; readonly at: PlanePoint };

/** Where one run of the line meets the sides: stops along the run, and cuts of the sides. */
function meetings(rings: readonly Path[], run: Chord): { readonly stops: Stop[]; readonly cuts: readonly Cut[] } {
  const stops: Stop[] = [];
  const cuts: Cut[] = [];
  for (const [ring, path] of rings.entries()) {
    for (const [side, from] of path.entries()) {
      const to = path[(side + 1) % path.length] ?? from;
      for (const at of meetingPlaces(run, { from, to })) {
        stops.push({ share: shareAlong(run, at), at });
        cuts.push({ ring, side, share: shareAlong({ from, to }, at), at });
      }
    }
  }
  return { stops, cuts };
}

/** The place where two runs cross, or the ends of one that lie on the other. */
function meetingPlaces(run: Chord, side: Chord): readonly PlanePoint[] {
  if (boxesKeepApart(run, side)) return [];
  const start = turn(side.from, side.to, run.from);
  const end = turn(side.from, side.to, run.to);
  const sideStart = turn(run.from, run.to, side.from);
  const sideEnd = turn(run.from, run.to, side.to);
  if (start * end < 0 && sideStart * sideEnd < 0) {
    const share = start / (start - end);
    return [
      {
        x: Math.round(run.from.x + (run.to.x - run.from.x) * share),
        y: Math.round(run.from.y + (run.to.y - run.from.y) * share),
      },
    ];
  }
  const places: PlanePoint[] = [];
  if (start === 0 && isBetween(run.from, side.from, side.to)) places.push(run.from);
  if (end === 0 && isBetween(run.to, side.from, side.to)) places.push(run.to);
  if (sideStart === 0 && isBetween(side.from, run.from, run.to)) places.push(side.from);
  if (sideEnd === 0 && isBetween(side.to, run.from, run.to)) places.push(side.to);
  return places;
}

function boxesKeepApart(left: Chord, right: Chord): boolean {
  return (
    Math.max(left.from.x, left.to.x) < Math.min(right.from.x, right.to.x) ||
    Math.min(left.from.x, left.to.x) > Math.max(right.from.x, right.to.x) ||
    Math.max(left.from.y, left.to.y) < Math.min(right.from.y, right.to.y) ||
    Math.min(left.from.y, left.to.y) > Math.max(right.from.y, right.to.y)
  );
}

function shareAlong({ from, to }: Chord, point: PlanePoint): number {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const square = x * x + y * y;
  return square === 0 ? 0 : ((point.x - from.x) * x + (point.y - from.y) * y) / square;
}

/** True for a point inside an odd number of rings and not on a side of one. */
function isInside(point: PlanePoint, rings: readonly Path[]): boolean {
  let inside = false;
  for (const path of rings) {
    for (const [side, from] of path.entries()) {
      const to = path[(side + 1) % path.length] ?? from;
      if (distanceToSide(point, from, to) < ALONG_STEPS) return false;
      if (from.y > point.y !== to.y > point.y) {
        const x = from.x + ((to.x - from.x) * (point.y - from.y)) / (to.y - from.y);
        if (point.x < x) inside = !inside;
      }
    }
  }
  return inside;
}
