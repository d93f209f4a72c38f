import type { Tours } from '../engine/index.ts';
import type { ReloadLabels } from './reload-labels.ts';
import type { ReloadKind } from './reload-problem.ts';

/** Least detours of a route with one load that spans a gap, or with a new stop in the gap; looks one load back and one ahead. */
export class ReloadWindow {
  /** Least detours of the route and the number of reloads in them, as last reckoned. */
  least = 0;
  count = 0;
  private readonly labels: ReloadLabels;
  private readonly tours: Tours;
  /** Next reloads, or the end, by growing load: least detours so far from there on. */
  private readonly loads: Float64Array;
  private readonly sums: Float64Array;
  private readonly counts: Int32Array;
  private listed = 0;

  constructor(labels: ReloadLabels, tours: Tours) {
    this.labels = labels;
    this.tours = tours;
    this.loads = new Float64Array(tours.customers + 2);
    this.sums = new Float64Array(tours.customers + 2);
    this.counts = new Int32Array(tours.customers + 2);
  }

  /** Least detours with no reload in the gap after a customer. */
  through(node: number, capacity: number): number {
    this.least = Number.POSITIVE_INFINITY;
    this.listOnward(capacity, node, false);
    this.spanGap(capacity, node, Number.POSITIVE_INFINITY, 0);
    return this.least;
  }

  /**
   * Sets `least` and `count` for one more stop of a demand in the gap: without a reload beside it, with one ahead of it, with one behind
   * it, with both, each at its own detour, infinite where there can be none.
   */
  replan(kind: ReloadKind, demand: number, after: number, ahead: number, behind: number): void {
    const { before, beforeCount, after: rest, afterCount } = this.labels;
    const room = kind.capacity - demand;
    this.listOnward(room, after, kind.lastReload);
    const forth = behind + (rest[after] as number);
    const forthCount = 1 + (afterCount[after] as number);
    const back = (before[after] as number) + ahead;
    const backCount = 1 + (beforeCount[after] as number);
    this.least = back + forth;
    this.count = backCount + forthCount;
    if (this.listed > 0)
      this.offer(back + (this.sums[this.listed - 1] as number), backCount + (this.counts[this.listed - 1] as number));
    this.spanGap(room, after, forth, forthCount);
  }

  /** Lists how far a load with so much room goes on after the gap. */
  private listOnward(room: number, after: number, lastReload: boolean): void {
    const { tours, loads, sums, counts } = this;
    const { loadTo, onward, onwardCount } = this.labels;
    const customers = tours.customers;
    const loaded = loadTo[after] as number;
    const first = tours.next[after] as number;
    let best = Number.POSITIVE_INFINITY;
    let bestCount = 0;
    this.listed = 0;
    if (first > customers && !lastReload) {
      loads[0] = 0;
      sums[0] = 0;
      counts[0] = 0;
      this.listed = 1;
    }
    for (let node = first; node <= customers; node = tours.next[node] as number) {
      const load = (loadTo[node] as number) - loaded;
      if (load > room) return;
      const sum = onward[node] as number;
      if (sum < best) {
        best = sum;
        bestCount = onwardCount[node] as number;
      }
      loads[this.listed] = load;
      sums[this.listed] = best;
      counts[this.listed] = bestCount;
      this.listed += 1;
    }
  }

  /** One load across the gap, from each reload before it: on to a reload in the gap behind the stop (`forth`), or to a listed one. */
  private spanGap(room: number, after: number, forth: number, forthCount: number): void {
    const { tours, loads, sums, counts } = this;
    const { loadTo, full, fullCount } = this.labels;
    const loaded = loadTo[after] as number;
    let reach = this.listed - 1;
    let node = after > tours.customers ? after : (tours.prev[after] as number);
    for (;;) {
      const load = loaded - (loadTo[node] as number);
      if (load > room) return;
      const sum = full[node] as number;
      this.offer(sum + forth, (fullCount[node] as number) + forthCount);
      while (reach >= 0 && (loads[reach] as number) + load > room) reach -= 1;
      if (reach >= 0)
        this.offer(sum + (sums[reach] as number), (fullCount[node] as number) + (counts[reach] as number));
      if (node > tours.customers) return;
      node = tours.prev[node] as number;
    }
  }

  private offer(sum: number, count: number): void {
    if (sum >= this.least) return;
    this.least = sum;
    this.count = count;
  }
}
