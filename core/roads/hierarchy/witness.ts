import { Heap } from '../heap.ts';
import type { Shrinking } from './shrinking.ts';

/** Looks for ways round a node that are as good as the way through it. */
export type Witness = {
  /**
   * Searches from a node before another to all that follow that other, and looks at so many nodes. A way that is not found makes a
   * shortcut too many, which costs time and never an answer.
   *
   * @param into the link by which one comes to the node that is to be gone round
   */
  readonly run: (into: number, mostNodes: number) => void;
  /** Whether no way round was found to a node that follows. */
  readonly isMissing: (node: number) => boolean;
};

export function witness(graph: Shrinking): Witness {
  const best = new Float64Array(graph.nodes).fill(Number.POSITIVE_INFINITY);
  /** What the way through costs, for nodes to which no way round is found yet; -1 for all others. */
  const through = new Float64Array(graph.nodes).fill(-1);
  const touched: number[] = [];
  const goals: number[] = [];
  const heap = new Heap(graph.nodes);

  const clear = (): void => {
    for (const node of touched) best[node] = Number.POSITIVE_INFINITY;
    for (const node of goals) through[node] = -1;
    touched.length = 0;
    goals.length = 0;
    heap.clear();
  };
  const run = (into: number, mostNodes: number): void => {
    clear();
    const from = graph.from[into] as number;
    const without = graph.to[into] as number;
    let mostWeight = -1;
    for (let out = graph.firstOut[without] as number; out >= 0; out = graph.nextOut[out] as number) {
      const goal = graph.to[out] as number;
      if (goal === from) continue;
      const whole = (graph.weight[into] as number) + (graph.weight[out] as number);
      through[goal] = whole;
      goals.push(goal);
      if (whole > mostWeight) mostWeight = whole;
    }
    let left = goals.length;
    if (left === 0) return;
    best[from] = 0;
    touched.push(from);
    heap.put(from, 0);
    for (let taken = 0; taken < mostNodes && !heap.isEmpty(); taken += 1) {
      const here = heap.take();
      const so = best[here] as number;
      for (let link = graph.firstOut[here] as number; link >= 0; link = graph.nextOut[link] as number) {
        const next = graph.to[link] as number;
        const there = so + (graph.weight[link] as number);
        if (there > mostWeight || next === without) continue;
        const known = best[next] as number;
        if (there >= known) continue;
        if (known === Number.POSITIVE_INFINITY) touched.push(next);
        best[next] = there;
        heap.put(next, there);
        if (there > (through[next] as number)) continue;
        through[next] = -1;
        left -= 1;
        if (left === 0) return;
      }
    }
  };
  return { run, isMissing: (node) => (through[node] as number) >= 0 };
}
