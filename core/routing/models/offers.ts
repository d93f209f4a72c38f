/**
 * Where the customer at hand could go in parts: the cheapest position in each route that has some room, and which of these to take.
 * Costs and rooms are in the units of the model.
 */
export class Offers {
  /** Routes that offer something; the first `count` entries. */
  private readonly routes: Int32Array;
  private count = 0;
  private readonly added: Float64Array;
  private readonly after: Int32Array;
  private readonly room: Int32Array;
  private readonly stamps: Int32Array;
  private stamp = 0;
  /** Routes chosen, and what each is given. */
  readonly chosen: number[] = [];
  readonly amounts: number[] = [];

  constructor(routes: number) {
    this.routes = new Int32Array(routes);
    this.added = new Float64Array(routes);
    this.after = new Int32Array(routes);
    this.room = new Int32Array(routes);
    this.stamps = new Int32Array(routes);
  }

  clear(): void {
    this.count = 0;
    this.stamp += 1;
  }

  /** Keeps the position if it is the route's cheapest so far. */
  take(route: number, added: number, after: number, room: number): void {
    if (this.stamps[route] === this.stamp) {
      if (added >= (this.added[route] as number)) return;
    } else {
      this.stamps[route] = this.stamp;
      this.routes[this.count] = route;
      this.count += 1;
      this.room[route] = room;
    }
    this.added[route] = added;
    this.after[route] = after;
  }

  has(route: number): boolean {
    return this.stamps[route] === this.stamp;
  }

  positionIn(route: number): number {
    return this.after[route] as number;
  }

  /** Room of all offers together. */
  totalRoom(): number {
    let total = 0;
    for (let at = 0; at < this.count; at += 1) total += this.room[this.routes[at] as number] as number;
    return total;
  }

  /**
   * Chooses routes that together have the room for less than `most`: the best pair, or several by cost for each unit of room where
   * that is cheaper. At most `positions` of them may be real positions (0 or more). Returns whether there are any.
   */
  choose(need: number, most: number, positions: number): boolean {
    this.sortBy((route) => this.added[route] as number);
    const pair = this.choosePair(need, most, positions);
    const several = this.chooseSeveral(need, pair, positions);
    if (several || pair < most) this.share(need);
    return several || pair < most;
  }

  /** Chooses the one that costs least for each unit of room, where no choice has room for it all. */
  chooseOne(need: number, positions: number): boolean {
    const { routes, added, room } = this;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let at = 0; at < this.count; at += 1) {
      const route = routes[at] as number;
      const each = (added[route] as number) / (room[route] as number);
      if (each >= least || this.positionsOf(route) > positions) continue;
      least = each;
      best = route;
    }
    if (best < 0) return false;
    this.set([best]);
    this.share(need);
    return true;
  }

  /** Cost of the best pair below `most`, which it chooses; `most` where there is none. */
  private choosePair(need: number, most: number, positions: number): number {
    const { routes, added, room } = this;
    let best = most;
    for (let at = 0; at < this.count; at += 1) {
      const one = routes[at] as number;
      const first = added[one] as number;
      if (first >= best) break;
      if (this.positionsOf(one) > positions) continue;
      if ((room[one] as number) >= need) {
        best = first;
        this.set([one]);
        break;
      }
      for (let to = at + 1; to < this.count; to += 1) {
        const other = routes[to] as number;
        const total = first + (added[other] as number);
        if (total >= best) break;
        if ((room[one] as number) + (room[other] as number) < need) continue;
        if (this.positionsOf(one) + this.positionsOf(other) > positions) continue;
        best = total;
        this.set([one, other]);
        break;
      }
    }
    return best;
  }

  private chooseSeveral(need: number, most: number, positions: number): boolean {
    const { routes, added, room } = this;
    if (this.count < 3) return false;
    this.sortBy((route) => (added[route] as number) / (room[route] as number));
    let [left, total, used, taken] = [need, 0, 0, 0];
    while (left > 0 && taken < this.count) {
      const route = routes[taken] as number;
      total += added[route] as number;
      used += this.positionsOf(route);
      if (total >= most || used > positions) return false;
      left -= room[route] as number;
      taken += 1;
    }
    if (left > 0) return false;
    this.chosen.length = 0;
    for (let at = 0; at < taken; at += 1) {
      const route = routes[at] as number;
      if ((room[route] as number) <= -left && (added[route] as number) > 0) left += room[route] as number;
      else this.chosen.push(route);
    }
    return true;
  }

  /** The first are filled, the last is given the rest. */
  private share(need: number): void {
    let left = need;
    this.amounts.length = 0;
    for (const route of this.chosen) {
      const amount = Math.min(left, this.room[route] as number);
      this.amounts.push(amount);
      left -= amount;
    }
  }

  private positionsOf(route: number): number {
    return (this.after[route] as number) >= 0 ? 1 : 0;
  }

  private set(routes: readonly number[]): void {
    this.chosen.length = 0;
    this.chosen.push(...routes);
  }

  private sortBy(key: (route: number) => number): void {
    const { routes } = this;
    for (let at = 1; at < this.count; at += 1) {
      const route = routes[at] as number;
      const own = key(route);
      let to = at;
      while (to > 0 && key(routes[to - 1] as number) > own) {
        routes[to] = routes[to - 1] as number;
        to -= 1;
      }
      routes[to] = route;
    }
  }
}
