import { distanceMetres } from '../../geometry/index.ts';
import { JUNCTION } from '../types.ts';
import type { Collected } from './collect.ts';
import { damaged } from './fault.ts';
import { growing } from './growing.ts';

/** Longer pieces of road than this are none, metres. */
const MOST_EDGE_M = 2_000_000;

/** Edges as they are cut from ways, by numbers of nodes and ways. */
export type EdgeDraft = {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly way: Int32Array;
  readonly lengthDm: Int32Array;
  readonly signalsForward: Int32Array;
  readonly signalsBackward: Int32Array;
  /** Where the nodes between the ends begin in `shape`; one more entry than edges. */
  readonly shapeStart: Int32Array;
  readonly shape: Int32Array;
  /** Where the edges of a way begin; one more entry than ways. */
  readonly ofWay: Int32Array;
  readonly brokenRoads: number;
};

/** Cuts the roads where they meet, end, or have something standing in the way. Nodes that are missing end a piece. */
export function cutEdges(collected: Collected): EdgeDraft {
  const { wayStart, standing } = collected;
  const isCut = cutNodes(collected);
  const [from, to, ways, lengths] = [growing(), growing(), growing(), growing()];
  const [forward, backward, shapeStart, shape, ofWay] = [growing(), growing(), growing(), growing(), growing()];
  let brokenRoads = 0;
  const put = (way: number, nodes: readonly number[]): void => {
    let [ahead, back, metres] = [0, 0, 0];
    shapeStart.push(shape.size());
    nodes.forEach((node, at) => {
      if (at > 0) metres += metresBetween(collected, nodes[at - 1] as number, node);
      if (at === 0 || at === nodes.length - 1) return;
      shape.push(node);
      const signal = standing.get(node)?.signal ?? 'none';
      if (signal === 'both' || signal === 'forward') ahead += 1;
      if (signal === 'both' || signal === 'backward') back += 1;
    });
    if (metres > MOST_EDGE_M) throw damaged('points of one road lie thousands of kilometres apart');
    from.push(nodes[0] as number);
    to.push(nodes[nodes.length - 1] as number);
    ways.push(way);
    lengths.push(Math.round(10 * metres));
    forward.push(Math.min(255, ahead));
    backward.push(Math.min(255, back));
  };
  for (let way = 0; way + 1 < wayStart.length; way += 1) {
    ofWay.push(from.size());
    const runs = runsOf(collected, way);
    if (runs.isBroken) brokenRoads += 1;
    for (const run of runs.nodes) {
      let begin = 0;
      for (let at = 1; at < run.length; at += 1) {
        if (at + 1 < run.length && isCut[run[at] as number] !== 1) continue;
        put(way, run.slice(begin, at + 1));
        begin = at;
      }
    }
  }
  shapeStart.push(shape.size());
  ofWay.push(from.size());
  return {
    from: from.view(),
    to: to.view(),
    way: ways.view(),
    lengthDm: lengths.view(),
    signalsForward: forward.view(),
    signalsBackward: backward.view(),
    shapeStart: shapeStart.view(),
    shape: shape.view(),
    ofWay: ofWay.view(),
    brokenRoads,
  };
}

/** Marks nodes at which roads meet, end, or something stands in the way. */
function cutNodes(collected: Collected): Uint8Array {
  const { wayStart, isThere, standing } = collected;
  const uses = new Uint8Array(isThere.length);
  for (let way = 0; way + 1 < wayStart.length; way += 1) {
    for (const run of runsOf(collected, way).nodes) {
      for (const [at, node] of run.entries()) {
        const isEnd = at === 0 || at === run.length - 1;
        uses[node] = Math.min(2, (uses[node] as number) + (isEnd ? 2 : 1));
      }
    }
  }
  for (const [node, { flags, heightCm }] of standing) {
    if ((flags & ~JUNCTION.signal) !== 0 || heightCm > 0) uses[node] = 2;
  }
  return uses.map((each) => (each === 2 ? 1 : 0));
}

/** Rows of at least two nodes that follow each other along a way, without those that the file lacks and without repetition. */
function runsOf(
  { refs, wayStart, isThere }: Collected,
  way: number,
): { readonly nodes: readonly (readonly number[])[]; readonly isBroken: boolean } {
  const runs: number[][] = [];
  let run: number[] = [];
  let isBroken = false;
  for (let at = wayStart[way] as number; at < (wayStart[way + 1] as number); at += 1) {
    const node = refs[at] as number;
    if (isThere[node] === 1) {
      if (run[run.length - 1] !== node) run.push(node);
      continue;
    }
    isBroken = true;
    runs.push(run);
    run = [];
  }
  runs.push(run);
  const nodes = runs.filter((each) => each.length > 1);
  return { nodes, isBroken: isBroken || nodes.length === 0 };
}

function metresBetween({ lon, lat }: Collected, one: number, other: number): number {
  return distanceMetres(
    [(lon[one] as number) / 1e7, (lat[one] as number) / 1e7],
    [(lon[other] as number) / 1e7, (lat[other] as number) / 1e7],
  );
}
