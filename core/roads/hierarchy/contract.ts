import { NEVER_STOP, type StopSignal } from '../../base/index.ts';
import { Heap } from '../heap.ts';
import type { Links } from '../network/index.ts';
import { Shrinking } from './shrinking.ts';
import { type Witness, witness } from './witness.ts';

/** Nodes that a search for another way looks at: before all begins, and when a node is about to be taken out. */
const FIRST_NODES = 8;
const LATER_NODES = 32;
/**
 * One node of so many stays in the core, the last ones: by then each has so many links that taking them out would cost half of all
 * time and save little (measured, see docs/methods/roads.md).
 */
const CORE_SHARE = 16;
/** Nodes taken out between two questions whether to stop. */
const BREATH = 512;

/** Links by which searches go upwards only, nodes numbered by their rank. */
export type Hierarchy = {
  /** Rank of a node of the network. */
  readonly rank: Uint32Array;
  /** From a node to higher ones, and between those of the core. */
  readonly up: Links;
  /** To a node from higher ones, found from their lower end. */
  readonly down: Links;
};

type Work = {
  readonly graph: Shrinking;
  readonly search: Witness;
  readonly level: Int32Array;
  /**
   * Shortcuts that each node needs, from, to and weight in turn, where none of its neighbours went since they were found. Ways
   * between the nodes that are left never change, so that they still hold.
   */
  readonly shortcuts: (readonly number[] | undefined)[];
};

/**
 * Contraction hierarchy (R. Geisberger, P. Sanders, D. Schultes, D. Delling, WEA 2008): nodes are taken out one by one, the
 * least needed first, and shortcuts put in where a least way led through them. Null where it was told to stop.
 *
 * @param onNodes told how many nodes are out, now and then
 */
export function contract(
  links: Links,
  signal: StopSignal = NEVER_STOP,
  onNodes: (done: number) => void = () => {},
): Hierarchy | null {
  const graph = new Shrinking(links);
  const work: Work = { graph, search: witness(graph), level: new Int32Array(graph.nodes), shortcuts: [] };
  work.shortcuts.length = graph.nodes;
  const queue = new Heap(graph.nodes);
  for (let node = 0; node < graph.nodes; node += 1) {
    if (node % BREATH === 0 && signal.stopped()) return null;
    queue.put(node, needOf(work, node, findShortcuts(work, node, FIRST_NODES)));
  }
  const rank = new Uint32Array(graph.nodes);
  const core = Math.ceil(graph.nodes * (1 - 1 / CORE_SHARE));
  for (let done = 0; done < graph.nodes; ) {
    if (done % BREATH === 0) {
      if (signal.stopped()) return null;
      onNodes(done);
    }
    const node = queue.take();
    if (done >= core) {
      rank[node] = done++;
      continue;
    }
    const known = work.shortcuts[node];
    const shortcuts = known ?? findShortcuts(work, node, LATER_NODES);
    const need = known === undefined ? needOf(work, node, shortcuts) : 0;
    if (known === undefined && !queue.isEmpty() && need > queue.least()) {
      work.shortcuts[node] = shortcuts;
      queue.put(node, need);
      continue;
    }
    takeOut(work, node, shortcuts);
    rank[node] = done++;
  }
  return { rank, ...upwards(graph, rank, core) };
}

/** How much a node is needed: shortcuts that its loss would cost less links that would go, and how much is under it already. */
function needOf({ graph, level }: Work, node: number, shortcuts: readonly number[]): number {
  let links = 0;
  for (let link = graph.firstOut[node] as number; link >= 0; link = graph.nextOut[link] as number) links += 1;
  for (let link = graph.firstIn[node] as number; link >= 0; link = graph.nextIn[link] as number) links += 1;
  return 2 * (shortcuts.length / 3 - links) + (level[node] as number);
}

function takeOut({ graph, level, shortcuts: known }: Work, node: number, shortcuts: readonly number[]): void {
  graph.remove(node);
  for (let at = 0; at < shortcuts.length; at += 3) {
    graph.join(shortcuts[at] as number, shortcuts[at + 1] as number, shortcuts[at + 2] as number);
  }
  known[node] = undefined;
  const above = (level[node] as number) + 1;
  const touch = (neighbour: number): void => {
    level[neighbour] = Math.max(level[neighbour] as number, above);
    known[neighbour] = undefined;
  };
  for (let link = graph.firstOut[node] as number; link >= 0; link = graph.nextOut[link] as number) {
    touch(graph.to[link] as number);
  }
  for (let link = graph.firstIn[node] as number; link >= 0; link = graph.nextIn[link] as number) {
    touch(graph.from[link] as number);
  }
}

/** The shortcuts that are needed when a node goes: from, to and weight in turn. */
function findShortcuts({ graph, search }: Work, node: number, mostNodes: number): readonly number[] {
  const shortcuts: number[] = [];
  for (let into = graph.firstIn[node] as number; into >= 0; into = graph.nextIn[into] as number) {
    search.run(into, mostNodes);
    for (let out = graph.firstOut[node] as number; out >= 0; out = graph.nextOut[out] as number) {
      const to = graph.to[out] as number;
      if (!search.isMissing(to)) continue;
      shortcuts.push(graph.from[into] as number, to, (graph.weight[into] as number) + (graph.weight[out] as number));
    }
  }
  return shortcuts;
}

/** The links that are left, as climbs use them. */
function upwards(graph: Shrinking, rank: Uint32Array, core: number): { readonly up: Links; readonly down: Links } {
  const from = (link: number): number => rank[graph.from[link] as number] as number;
  const to = (link: number): number => rank[graph.to[link] as number] as number;
  const isUp = (link: number): boolean => to(link) > from(link) || to(link) >= core;
  return {
    up: rowsOf(graph, (link) => (isUp(link) ? from(link) : -1), to),
    down: rowsOf(graph, (link) => (isUp(link) ? -1 : to(link)), from),
  };
}

/** Links in rows, by the node that owns each (-1 for links of none) and the one that it leads to. */
function rowsOf(graph: Shrinking, owner: (link: number) => number, other: (link: number) => number): Links {
  const start = new Uint32Array(graph.nodes + 1);
  for (let link = 0; link < graph.links; link += 1) {
    const node = owner(link);
    if (node >= 0) start[node + 1] = (start[node + 1] as number) + 1;
  }
  for (let at = 0; at < graph.nodes; at += 1) start[at + 1] = (start[at + 1] as number) + (start[at] as number);
  const fill = start.slice(0, graph.nodes);
  const node = new Uint32Array(start[graph.nodes] as number);
  const weight = new Float64Array(node.length);
  for (let link = 0; link < graph.links; link += 1) {
    const mine = owner(link);
    if (mine < 0) continue;
    const place = fill[mine] as number;
    fill[mine] = place + 1;
    node[place] = other(link);
    weight[place] = graph.weight[link] as number;
  }
  return { start, node, weight };
}
