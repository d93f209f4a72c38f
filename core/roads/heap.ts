/** A queue of nodes, the lightest first, in which a node stands once and may become lighter. Four children to a place. */
export class Heap {
  private readonly nodes: Uint32Array;
  private readonly weights: Float64Array;
  /** Where a node stands plus one; 0 where it does not. */
  private readonly places: Uint32Array;
  private size = 0;

  constructor(nodes: number) {
    this.nodes = new Uint32Array(nodes + 1);
    this.weights = new Float64Array(nodes + 1);
    this.places = new Uint32Array(nodes);
  }

  isEmpty(): boolean {
    return this.size === 0;
  }

  /** Weight of the first; only where there is one. */
  least(): number {
    return this.weights[0] as number;
  }

  clear(): void {
    for (let at = 0; at < this.size; at += 1) this.places[this.nodes[at] as number] = 0;
    this.size = 0;
  }

  /** Puts a node in, or brings it forward to a smaller weight. */
  put(node: number, weight: number): void {
    const place = this.places[node] as number;
    let at = place === 0 ? this.size++ : place - 1;
    while (at > 0) {
      const parent = (at - 1) >> 2;
      const above = this.weights[parent] as number;
      if (above <= weight) break;
      this.set(at, this.nodes[parent] as number, above);
      at = parent;
    }
    this.set(at, node, weight);
  }

  /** Takes the first out; only where there is one. */
  take(): number {
    const first = this.nodes[0] as number;
    this.places[first] = 0;
    this.size -= 1;
    if (this.size > 0) this.sink(this.nodes[this.size] as number, this.weights[this.size] as number);
    return first;
  }

  private sink(node: number, weight: number): void {
    let at = 0;
    for (;;) {
      const begin = 4 * at + 1;
      if (begin >= this.size) break;
      const end = Math.min(begin + 4, this.size);
      let child = begin;
      for (let each = begin + 1; each < end; each += 1) {
        if ((this.weights[each] as number) < (this.weights[child] as number)) child = each;
      }
      const lightest = this.weights[child] as number;
      if (lightest >= weight) break;
      this.set(at, this.nodes[child] as number, lightest);
      at = child;
    }
    this.set(at, node, weight);
  }

  private set(at: number, node: number, weight: number): void {
    this.nodes[at] = node;
    this.weights[at] = weight;
    this.places[node] = at + 1;
  }
}
