import { Heap } from '../heap.ts';
import type { Links } from '../network/index.ts';
import type { Seed } from './ends.ts';

/** A search that may be asked again and again; its answer stands until the next one. */
export type Dijkstra = {
  /** Least weights from the seeds to the nodes; only those of `goals`, and of nodes nearer than them, are final. */
  readonly run: (seeds: readonly Seed[], goals: Uint8Array, goalCount: number) => Float64Array;
  /** Node before each on the quickest way, -1 for seeds; after `run` with `keepsWay`. */
  readonly before: Int32Array;
};

/**
 * Least ways by links (E. W. Dijkstra, Numerische Mathematik 1, 1959).
 *
 * @param keepsWay whether `before` is written
 */
export function dijkstra({ start, node, weight }: Links, keepsWay: boolean): Dijkstra {
  const count = start.length - 1;
  const best = new Float64Array(count);
  const heap = new Heap(count);
  const before = new Int32Array(keepsWay ? count : 0);
  const run: Dijkstra['run'] = (seeds, goals, goalCount) => {
    best.fill(Number.POSITIVE_INFINITY);
    heap.clear();
    for (const seed of seeds) {
      if (seed.weight >= (best[seed.arc] as number)) continue;
      best[seed.arc] = seed.weight;
      heap.put(seed.arc, seed.weight);
      if (keepsWay) before[seed.arc] = -1;
    }
    let left = goalCount;
    while (!heap.isEmpty()) {
      const here = heap.take();
      left -= goals[here] as number;
      if (left <= 0) break;
      const so = best[here] as number;
      const end = start[here + 1] as number;
      for (let link = start[here] as number; link < end; link += 1) {
        const next = node[link] as number;
        const there = so + (weight[link] as number);
        if (there >= (best[next] as number)) continue;
        best[next] = there;
        heap.put(next, there);
        if (keepsWay) before[next] = here;
      }
    }
    return best;
  };
  return { run, before };
}
