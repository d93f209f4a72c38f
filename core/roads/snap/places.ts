import type { RoadNetwork } from '../network/index.ts';
import { EDGE, type RoadPlace, type Snap, type Snapping } from '../types.ts';
import { type EdgeGrid, edgeGrid } from './grid.ts';
import { type Nearest, nearestOnEdge, stepsOf } from './place-on-edge.ts';

/** How places are joined to roads. */
export type SnapOptions = {
  /** Places farther from every road than this are not joined, metres. */
  readonly mostM: number;
  /** `kerb`: on two-way roads a truck stops on the side that the place lies on. */
  readonly side: 'either' | 'kerb';
};

/** As in docs/methods/roads.md: 300 metres, either side. */
export const SNAP_OPTIONS: SnapOptions = { mostM: 300, side: 'either' };

/** Beyond this, nobody looks for how far off the nearest road is, metres. */
const LOOK_M = 5_000;

type Found = { readonly edge: number; readonly nearest: Nearest };

/**
 * Joins places to the nearest roads of the network's main part, in which all can be reached from all. A place that is too far
 * from it is told with its reason: `outside` the map, on an `island` of roads that lead nowhere else, or `too-far`.
 */
export function snapPlaces(
  network: RoadNetwork,
  places: readonly RoadPlace[],
  options: SnapOptions = SNAP_OPTIONS,
): readonly Snapping[] {
  const grid = edgeGrid(network.map, (edge) => arcsOf(network, edge).length > 0);
  return places.map((place) => snapOne(network, grid, place, options));
}

function arcsOf({ arcOfEdge }: RoadNetwork, edge: number): readonly number[] {
  return [arcOfEdge[2 * edge] as number, arcOfEdge[2 * edge + 1] as number].filter((arc) => arc >= 0);
}

function snapOne(network: RoadNetwork, grid: EdgeGrid, place: RoadPlace, options: SnapOptions): Snapping {
  const { id } = place;
  if (isOutside(network, place, options.mostM)) return { kind: 'outside', id, nearestM: null };
  const { main, other } = nearestRoads(network, grid, place, options.mostM);
  if (main === null || main.nearest.awayM > options.mostM) {
    const isIsland = other !== null && other.nearest.awayM <= options.mostM;
    return {
      kind: isIsland ? 'island' : 'too-far',
      id,
      nearestM: main === null ? null : Math.round(main.nearest.awayM),
    };
  }
  const { edge, nearest } = main;
  const length = network.map.edges.lengthDm[edge] as number;
  return {
    kind: 'snapped',
    id,
    edge,
    alongDm: Math.min(length, Math.max(0, Math.round(nearest.share * length))),
    directions: directionsAt(network, edge, nearest, options),
    at: [nearest.lon / 1e7, nearest.lat / 1e7],
    awayM: nearest.awayM,
  };
}

function isOutside({ map }: RoadNetwork, { at: [longitude, latitude] }: RoadPlace, mostM: number): boolean {
  const [west, south, east, north] = map.about.bounds;
  const up = stepsOf(mostM) / 1e7;
  const across = up / Math.max(0.01, Math.cos((latitude * Math.PI) / 180));
  const isInside =
    longitude >= west - across && longitude <= east + across && latitude >= south - up && latitude <= north + up;
  return !isInside;
}

/** The nearest edge of the main part, and the nearest of all others; looked for in ever wider boxes. */
function nearestRoads(
  network: RoadNetwork,
  grid: EdgeGrid,
  { at: [longitude, latitude] }: RoadPlace,
  mostM: number,
): { readonly main: Found | null; readonly other: Found | null } {
  const [lon, lat] = [longitude * 1e7, latitude * 1e7];
  const squeeze = Math.max(0.01, Math.cos((latitude * Math.PI) / 180));
  const best: { main: Found | null; other: Found | null } = { main: null, other: null };
  const farthest = Math.max(LOOK_M, mostM);
  for (let reach = 50; ; reach = Math.min(farthest, reach * 3)) {
    const seen = new Set<number>();
    grid.visit(lon, lat, stepsOf(reach) / squeeze, stepsOf(reach), (edge) => {
      if (seen.has(edge)) return;
      seen.add(edge);
      const nearest = nearestOnEdge(network.map, edge, lon, lat, squeeze);
      const part = arcsOf(network, edge).some((arc) => network.isMain[arc] === 1) ? 'main' : 'other';
      const known = best[part];
      if (known === null || isNearer({ edge, nearest }, known)) best[part] = { edge, nearest };
    });
    if ((best.main !== null && best.main.nearest.awayM <= reach) || reach >= farthest) return best;
  }
}

/** Ties go to the edge with the smaller number, so that the order in which edges are seen does not matter. */
function isNearer(one: Found, other: Found): boolean {
  const less = one.nearest.awayM - other.nearest.awayM;
  return less < 0 || (less === 0 && one.edge < other.edge);
}

function directionsAt(network: RoadNetwork, edge: number, nearest: Nearest, options: SnapOptions): Snap['directions'] {
  const [forward, backward] = [0, 1].map((isBackward) => {
    const arc = network.arcOfEdge[2 * edge + isBackward] as number;
    return arc >= 0 && network.isMain[arc] === 1;
  });
  const both = (forward === true ? EDGE.forward : 0) | (backward === true ? EDGE.backward : 0);
  if (options.side === 'either' || nearest.side === null || both !== (EDGE.forward | EDGE.backward)) return both;
  return nearest.side === network.drivesOn ? EDGE.forward : EDGE.backward;
}
