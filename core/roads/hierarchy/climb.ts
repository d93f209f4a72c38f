import { Heap } from '../heap.ts';
import type { Links } from '../network/index.ts';

/** Where a climb begins: a rank and what it costs to be there. */
export type Foothold = { readonly rank: number; readonly weight: number };

/**
 * Searches that only go upwards. Calls `see` with every rank that is reached by a least way, as far as climbing alone can tell.
 *
 * @param up the links to climb by
 * @param other those of the other direction: a node to which a higher one has a lighter way is left aside
 */
export function climber(
  up: Links,
  other: Links,
): (footholds: readonly Foothold[], see: (rank: number, weight: number) => void) => void {
  const count = up.start.length - 1;
  const best = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const heap = new Heap(count);
  const touched: number[] = [];
  const isPassed = (rank: number, weight: number): boolean => {
    for (let link = other.start[rank] as number; link < (other.start[rank + 1] as number); link += 1) {
      if ((best[other.node[link] as number] as number) + (other.weight[link] as number) < weight) return true;
    }
    return false;
  };
  const reach = (rank: number, weight: number): void => {
    const known = best[rank] as number;
    if (weight >= known) return;
    if (known === Number.POSITIVE_INFINITY) touched.push(rank);
    best[rank] = weight;
    heap.put(rank, weight);
  };
  return (footholds, see) => {
    for (const rank of touched) best[rank] = Number.POSITIVE_INFINITY;
    touched.length = 0;
    for (const { rank, weight } of footholds) reach(rank, weight);
    while (!heap.isEmpty()) {
      const here = heap.take();
      const so = best[here] as number;
      if (isPassed(here, so)) continue;
      see(here, so);
      const end = up.start[here + 1] as number;
      for (let link = up.start[here] as number; link < end; link += 1) {
        reach(up.node[link] as number, so + (up.weight[link] as number));
      }
    }
  };
}
