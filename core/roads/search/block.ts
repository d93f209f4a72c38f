import { type Hierarchy, meetAll } from '../hierarchy/index.ts';
import type { RoadNetwork } from '../network/index.ts';
import type { Snap } from '../types.ts';
import { dijkstra } from './dijkstra.ts';
import { alongOneArc, type Seed, seedsFrom, seedsTo } from './ends.ts';

/** Every pair of a row and a column. */
export type Block = { readonly rows: readonly Snap[]; readonly columns: readonly Snap[] };

/** Takes the least weight of a pair, by their places in the block; infinite where there is no way. */
export type PutWeight = (row: number, column: number, weight: number) => void;

/** Asked before each search: whether to go on. */
export type GoesOn = () => boolean;

/** One search per row, or one per column against the links where those are fewer; false where it was told to stop. */
export function fillByDijkstra(
  network: RoadNetwork,
  { rows, columns }: Block,
  put: PutWeight,
  goesOn: GoesOn,
): boolean {
  const isForward = rows.length <= columns.length;
  const begins = isForward ? rows : columns;
  const ends = isForward ? columns : rows;
  const search = dijkstra(isForward ? network.next : network.previous, false);
  const endSeeds = ends.map((each) => (isForward ? seedsTo : seedsFrom)(network, each));
  const { marks, count } = markArcs(network, endSeeds);
  for (const [at, begin] of begins.entries()) {
    if (!goesOn()) return false;
    const best = search.run((isForward ? seedsFrom : seedsTo)(network, begin), marks, count);
    for (const [place, end] of ends.entries()) {
      const byLinks = leastOver(best, endSeeds[place] ?? []);
      if (isForward) put(at, place, Math.min(byLinks, alongOneArc(network, begin, end)));
      else put(place, at, Math.min(byLinks, alongOneArc(network, end, begin)));
    }
  }
  return true;
}

/** The same by a hierarchy of the network's links. */
export function fillByHierarchy(
  network: RoadNetwork,
  hierarchy: Hierarchy,
  { rows, columns }: Block,
  put: PutWeight,
  goesOn: GoesOn,
): boolean {
  const footholds = (seeds: readonly Seed[]) =>
    seeds.map(({ arc, weight }) => ({ rank: hierarchy.rank[arc] as number, weight }));
  return meetAll(
    hierarchy,
    rows.map((each) => footholds(seedsFrom(network, each))),
    columns.map((each) => footholds(seedsTo(network, each))),
    (row, least) =>
      columns.forEach((column, at) => {
        put(row, at, Math.min(least[at] as number, alongOneArc(network, rows[row] as Snap, column)));
      }),
    goesOn,
  );
}

function markArcs(network: RoadNetwork, seeds: readonly (readonly Seed[])[]): { marks: Uint8Array; count: number } {
  const marks = new Uint8Array(network.arcEdge.length);
  for (const ofPlace of seeds) for (const { arc } of ofPlace) marks[arc] = 1;
  return { marks, count: marks.reduce((sum, each) => sum + each, 0) };
}

function leastOver(best: Float64Array, seeds: readonly Seed[]): number {
  return seeds.reduce(
    (least, seed) => Math.min(least, (best[seed.arc] as number) + seed.weight),
    Number.POSITIVE_INFINITY,
  );
}
