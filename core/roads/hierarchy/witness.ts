import { Heap } from '../heap.ts';
import type { Shrinking } from './shrinking.ts';

/** Searches round a node, to see which ways through it are the least. */
export type Witness = {
  /**
   * Least weights from a node without going through another, up to a bound and so many nodes; read with `reached`. What is not
   * reached may still have a way: a shortcut too many costs time, never an answer.
   */
  readonly run: (from: number, without: number, mostWeight: number, mostNodes: number) => void;
  readonly reached: (node: number) => number;
};

export function witness(graph: Shrinking): Witness {
  const best = new Float64Array(graph.nodes).fill(Number.POSITIVE_INFINITY);
  const touched: number[] = [];
  const heap = new Heap(graph.nodes);
  return {
    run: (from, without, mostWeight, mostNodes) => {
      for (const node of touched) best[node] = Number.POSITIVE_INFINITY;
      touched.length = 0;
      heap.clear();
      best[from] = 0;
      touched.push(from);
      heap.put(from, 0);
      for (let taken = 0; taken < mostNodes && !heap.isEmpty(); taken += 1) {
        const here = heap.take();
        const so = best[here] as number;
        if (so > mostWeight) return;
        for (let link = graph.firstOut[here] as number; link >= 0; link = graph.nextOut[link] as number) {
          const next = graph.to[link] as number;
          if (next === without) continue;
          const there = so + (graph.weight[link] as number);
          const known = best[next] as number;
          if (there >= known || there > mostWeight) continue;
          if (known === Number.POSITIVE_INFINITY) touched.push(next);
          best[next] = there;
          heap.put(next, there);
        }
      }
    },
    reached: (node) => best[node] as number,
  };
}
