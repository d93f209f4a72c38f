import type { AreaGeometry, Position } from '../book/index.ts';
import { difference, intersection, union } from './booleans.ts';
import { polygonsOf } from './degrees-box.ts';
import { type GeometryFault, holeIgnoredFault, holeOutsideFault, invalidFault, partIgnoredFault } from './faults.ts';
import type { LocalPlane } from './local-plane.ts';
import { type Region, regionArea } from './region.ts';
import { readRing } from './rings.ts';

/** An outline as ground in a plane. */
export type Outline = {
  readonly kind: 'outline';
  /** Inside the shells and outside their holes. */
  readonly net: Region;
  /** Inside the shells, holes included. */
  readonly gross: Region;
  readonly faults: readonly GeometryFault[];
};
/** An outline that has no area at all, and why. */
export type RefusedOutline = { readonly kind: 'refused'; readonly faults: readonly GeometryFault[] };

/** Cut ground smaller than this does not count as a hole that sticks out, m2. */
const TOLERANCE_SQ_M = 0.001;

/**
 * Puts a polygon or multi-polygon into the plane. Each polygon is its shell without its holes; the polygons are united.
 * Parts and holes without ground are left out with a warning; an outline of which nothing is left is refused.
 * The geometry must have passed `degreesBox`.
 */
export function readOutline(geometry: AreaGeometry, plane: LocalPlane): Outline | RefusedOutline {
  const polygons = polygonsOf(geometry);
  const only = polygons[0];
  if (polygons.length === 1 && only !== undefined) return readPolygon(only, plane);
  const outlines: Outline[] = [];
  const refusals: GeometryFault[] = [];
  for (const polygon of polygons) {
    const reading = readPolygon(polygon, plane);
    if (reading.kind === 'outline') outlines.push(reading);
    else refusals.push(...reading.faults);
  }
  if (outlines.length === 0) {
    return { kind: 'refused', faults: refusals.length > 0 ? refusals : [invalidFault('The outline has no corners.')] };
  }
  return {
    kind: 'outline',
    net: union(outlines.map((each) => each.net)),
    gross: union(outlines.map((each) => each.gross)),
    faults: [...outlines.flatMap((each) => each.faults), ...refusals.map(partIgnoredFault)],
  };
}

function readPolygon(rings: readonly (readonly Position[])[], plane: LocalPlane): Outline | RefusedOutline {
  const [shellRing, ...holeRings] = rings;
  if (shellRing === undefined) return { kind: 'refused', faults: [invalidFault('The outline has no corners.')] };
  const shell = readRing(shellRing, plane);
  if (shell.kind === 'refused') return { kind: 'refused', faults: [shell.fault] };
  if (holeRings.length === 0) return { kind: 'outline', net: shell.region, gross: shell.region, faults: shell.faults };
  const faults = [...shell.faults];
  const holes: Hole[] = [];
  for (const ring of holeRings) {
    const hole = readRing(ring, plane);
    if (hole.kind === 'refused') {
      faults.push(holeIgnoredFault(hole.fault));
    } else {
      holes.push({ region: hole.region, at: ring[0] ?? plane.origin });
      faults.push(...hole.faults);
    }
  }
  const cut = cutHoles(shell.region, holes);
  return { kind: 'outline', net: cut.net, gross: shell.region, faults: [...faults, ...cut.faults] };
}

type Hole = { readonly region: Region; readonly at: Position };

function cutHoles(
  shell: Region,
  holes: readonly Hole[],
): { readonly net: Region; readonly faults: readonly GeometryFault[] } {
  if (holes.length === 0) return { net: shell, faults: [] };
  const net = difference(
    shell,
    holes.map((each) => each.region),
  );
  return { net, faults: misplacedHoles(shell, net, holes) };
}

function misplacedHoles(shell: Region, net: Region, holes: readonly Hole[]): GeometryFault[] {
  let inside = 0;
  const faults: GeometryFault[] = [];
  for (const { region, at } of holes) {
    const cut = regionArea(intersection(region, shell));
    inside += cut;
    if (regionArea(region) - cut > TOLERANCE_SQ_M) faults.push(holeOutsideFault(at));
  }
  const first = holes[0];
  const overlap = inside - (regionArea(shell) - regionArea(net));
  if (faults.length === 0 && overlap > TOLERANCE_SQ_M && first !== undefined) faults.push(holeOutsideFault(first.at));
  return faults;
}
