import type { Links } from '../network/index.ts';

/**
 * A graph that loses its nodes one by one and gains shortcuts in their place. Links stand in two lists, that of their beginning
 * and that of their end, chained by number with -1 at the end; fields are open for speed, and only this folder uses them.
 */
export class Shrinking {
  readonly nodes: number;
  links: number;
  from: Int32Array;
  to: Int32Array;
  weight: Float64Array;
  nextOut: Int32Array;
  nextIn: Int32Array;
  readonly firstOut: Int32Array;
  readonly firstIn: Int32Array;
  readonly isGone: Uint8Array;

  constructor({ start, node, weight }: Links) {
    this.nodes = start.length - 1;
    this.links = 0;
    const room = Math.max(16, 2 * node.length);
    this.from = new Int32Array(room);
    this.to = new Int32Array(room);
    this.weight = new Float64Array(room);
    this.nextOut = new Int32Array(room);
    this.nextIn = new Int32Array(room);
    this.firstOut = new Int32Array(this.nodes).fill(-1);
    this.firstIn = new Int32Array(this.nodes).fill(-1);
    this.isGone = new Uint8Array(this.nodes);
    for (let from = 0; from < this.nodes; from += 1) {
      for (let link = start[from] as number; link < (start[from + 1] as number); link += 1) {
        this.join(from, node[link] as number, weight[link] as number);
      }
    }
  }

  /** Adds a link, or makes the one that there is lighter. A link from a node to itself is on no least way. */
  join(from: number, to: number, weight: number): void {
    if (from === to) return;
    for (let link = this.firstOut[from] as number; link >= 0; link = this.nextOut[link] as number) {
      if (this.to[link] !== to) continue;
      if (weight < (this.weight[link] as number)) this.weight[link] = weight;
      return;
    }
    if (this.links === this.from.length) this.widen();
    const link = this.links++;
    this.from[link] = from;
    this.to[link] = to;
    this.weight[link] = weight;
    this.nextOut[link] = this.firstOut[from] as number;
    this.firstOut[from] = link;
    this.nextIn[link] = this.firstIn[to] as number;
    this.firstIn[to] = link;
  }

  /** Takes a node out of its neighbours' lists. Its own lists stay as they are, and are its links upwards. */
  remove(node: number): void {
    this.isGone[node] = 1;
    for (let link = this.firstOut[node] as number; link >= 0; link = this.nextOut[link] as number) {
      this.cut(this.firstIn, this.nextIn, this.to[link] as number, link);
    }
    for (let link = this.firstIn[node] as number; link >= 0; link = this.nextIn[link] as number) {
      this.cut(this.firstOut, this.nextOut, this.from[link] as number, link);
    }
  }

  private cut(first: Int32Array, next: Int32Array, owner: number, link: number): void {
    if (first[owner] === link) {
      first[owner] = next[link] as number;
      return;
    }
    let before = first[owner] as number;
    while (next[before] !== link) before = next[before] as number;
    next[before] = next[link] as number;
  }

  private widen(): void {
    const grown = (row: Int32Array): Int32Array => {
      const wider = new Int32Array(2 * row.length);
      wider.set(row);
      return wider;
    };
    this.from = grown(this.from);
    this.to = grown(this.to);
    this.nextOut = grown(this.nextOut);
    this.nextIn = grown(this.nextIn);
    const weight = new Float64Array(2 * this.weight.length);
    weight.set(this.weight);
    this.weight = weight;
  }
}
