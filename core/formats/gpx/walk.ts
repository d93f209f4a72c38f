import type { Geometry, Position } from 'geojson';
import { localPlane, type PlanePoint } from '../../geometry/index.ts';
import type { WalkOptions } from '../types.ts';
import { simplify } from './simplify.ts';

/** What a walk came to: an outline, or a line with the reason why it is none. */
export type Walk =
  | { readonly kind: 'none' }
  | { readonly kind: 'point'; readonly geometry: Geometry }
  | { readonly kind: 'line'; readonly geometry: Geometry; readonly why: 'gap' | 'short'; readonly gapM: number }
  | { readonly kind: 'outline'; readonly geometry: Geometry; readonly gapM: number };

/**
 * A walk whose gap is more than this share of its length did not go round anything: three sides of a square leave just this
 * share open. Ours, no source.
 */
const LARGEST_GAP_SHARE = 1 / 3;

/**
 * Makes an outline of a walked perimeter: repeated points are dropped, the ends joined where they are near each other, and
 * points within the tolerance left out. Loops stay in; filling them is for whoever measures (nonzero).
 */
export function readWalk(track: readonly Position[], options: WalkOptions): Walk {
  const positions = withoutRepeats(track);
  const [first, second] = positions;
  if (first === undefined) return { kind: 'none' };
  if (second === undefined) return { kind: 'point', geometry: { type: 'Point', coordinates: first } };
  const plane = localPlane([first[0] ?? 0, first[1] ?? 0]);
  const points = positions.map(([longitude = 0, latitude = 0]) => plane.toPlane([longitude, latitude]));
  const gapM = distance(points[0], points.at(-1));
  const why = whyOpen(points, gapM, options.closeWithinM);
  if (why !== null) {
    const kept = simplify(points, options.simplifyM).map((index) => positions[index] as Position);
    return { kind: 'line', geometry: { type: 'LineString', coordinates: kept }, why, gapM };
  }
  const ring = gapM === 0 ? positions : [...positions, first];
  const corners = gapM === 0 ? points : [...points, points[0] as PlanePoint];
  const kept = simplify(corners, options.simplifyM).map((index) => ring[index] as Position);
  if (kept.length < 4)
    return { kind: 'line', geometry: { type: 'LineString', coordinates: [...ring] }, why: 'short', gapM };
  return { kind: 'outline', geometry: { type: 'Polygon', coordinates: [kept] }, gapM };
}

function whyOpen(points: readonly PlanePoint[], gapM: number, closeWithinM: number): 'gap' | 'short' | null {
  if (!(gapM <= closeWithinM)) return 'gap';
  let length = 0;
  for (let index = 1; index < points.length; index += 1) length += distance(points[index - 1], points[index]);
  return points.length < 3 || gapM > length * LARGEST_GAP_SHARE ? 'short' : null;
}

function distance(from: PlanePoint | undefined, to: PlanePoint | undefined): number {
  return from === undefined || to === undefined ? 0 : Math.hypot(to.x - from.x, to.y - from.y);
}

function withoutRepeats(track: readonly Position[]): readonly Position[] {
  return track.filter(([longitude, latitude], index) => {
    const before = index === 0 ? undefined : track[index - 1];
    return before === undefined || before[0] !== longitude || before[1] !== latitude;
  });
}
