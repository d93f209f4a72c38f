/** Routes to choose from: route r has the customers `customers[first[r] .. first[r + 1])`. */
export type Choice = {
  readonly count: number;
  /** How many routes of each kind may be chosen. */
  readonly most: Int32Array;
  /** Of each route as one of each kind, [route * kinds + kind]; infinite where it cannot be one. */
  readonly cost: Float64Array;
  readonly first: Int32Array;
  readonly customers: Int32Array;
};

const ROUNDS = 300;
/** Rounds without a better bound before the steps are halved. */
const PATIENCE = 10;
/** Share of the last step's direction in the next: without it the prices swing from side to side. */
const INERTIA = 0.9;
/** Routes that are searched among at most, the most promising first. */
const MOST_SEARCHED = 3000;

/**
 * A price for each customer, and one that is not positive for each kind, so that no choice costs less than the sum of the prices and of
 * each route's least reduced cost where that is negative.
 */
export class Prices {
  /** Of customer c at `price[c]`, of kind k at `price[first + k]`, where `first` is one more than the customers. */
  readonly price: Float64Array;
  /** As `cost`. */
  readonly reduced: Float64Array;
  bound = Number.NEGATIVE_INFINITY;
  private readonly choice: Choice;
  private readonly customers: number;
  private readonly most: number;

  constructor(choice: Choice, customers: number, most: number) {
    this.choice = choice;
    this.customers = customers;
    this.most = most;
    this.reduced = new Float64Array(choice.count * choice.most.length);
    this.price = this.first();
    this.ascend();
  }

  /** Routes without which the bound does not already exclude a cheaper choice, most promising first. */
  worthwhile(): Int32Array {
    const { reduced, most, bound } = this;
    const room = most - bound;
    const list: number[] = [];
    if (room <= 0) return new Int32Array(0);
    for (let place = 0; place < reduced.length; place += 1) {
      if ((reduced[place] as number) < room) list.push(place);
    }
    list.sort((left, right) => (reduced[left] as number) - (reduced[right] as number) || left - right);
    return Int32Array.from(list.slice(0, MOST_SEARCHED));
  }

  private first(): Float64Array {
    const { count, cost, first, customers: list, most } = this.choice;
    const price = new Float64Array(this.customers + 1 + most.length).fill(Number.POSITIVE_INFINITY);
    price[0] = 0;
    price.fill(0, this.customers + 1);
    for (let route = 0; route < count; route += 1) {
      const [from, to] = [first[route] as number, first[route + 1] as number];
      let least = Number.POSITIVE_INFINITY;
      for (let place = route * most.length; place < (route + 1) * most.length; place += 1) {
        least = Math.min(least, cost[place] as number);
      }
      const share = least / (to - from);
      for (let at = from; at < to; at += 1)
        price[list[at] as number] = Math.min(price[list[at] as number] as number, share);
    }
    return price;
  }

  private ascend(): void {
    const { most, price } = this;
    const slope = new Float64Array(price.length);
    const way = new Float64Array(price.length);
    const kept = price.slice();
    let pace = 1;
    let stale = 0;
    for (let round = 0; round < ROUNDS && pace > 1e-3; round += 1) {
      const bound = this.reckon(slope);
      stale += 1;
      if (bound > this.bound) {
        this.bound = bound;
        kept.set(price);
        stale = 0;
      } else if (stale > PATIENCE) {
        stale = 0;
        pace /= 2;
        price.set(kept);
        this.reckon(slope);
      }
      let steepness = 0;
      for (let at = 0; at < price.length; at += 1) {
        way[at] = INERTIA * (way[at] as number) + (1 - INERTIA) * (slope[at] as number);
        steepness += (way[at] as number) ** 2;
      }
      if (steepness === 0) break;
      const step = (pace * Math.max(1e-9, most * 1.001 - bound)) / steepness;
      for (let at = 0; at < price.length; at += 1) price[at] = (price[at] as number) + step * (way[at] as number);
      for (let at = this.customers + 1; at < price.length; at += 1) price[at] = Math.min(0, price[at] as number);
    }
    price.set(kept);
    this.bound = this.reckon(slope);
  }

  /**
   * Reduced costs, the bound, and how often each customer is served too little, and each kind used too little, by the routes of negative
   * reduced cost.
   */
  private reckon(slope: Float64Array): number {
    const { price, reduced } = this;
    const { count, cost, first, customers, most } = this.choice;
    const kinds = most.length;
    const ofKinds = this.customers + 1;
    slope.fill(1);
    slope[0] = 0;
    let bound = 0;
    for (let customer = 1; customer < ofKinds; customer += 1) bound += price[customer] as number;
    for (let kind = 0; kind < kinds; kind += 1) {
      slope[ofKinds + kind] = most[kind] as number;
      bound += (price[ofKinds + kind] as number) * (most[kind] as number);
    }
    for (let route = 0; route < count; route += 1) {
      const [from, to] = [first[route] as number, first[route + 1] as number];
      let worth = 0;
      for (let at = from; at < to; at += 1) worth += price[customers[at] as number] as number;
      let left = 0;
      let best = -1;
      for (let kind = 0; kind < kinds; kind += 1) {
        const each = (cost[route * kinds + kind] as number) - (price[ofKinds + kind] as number) - worth;
        reduced[route * kinds + kind] = each;
        if (each >= left) continue;
        left = each;
        best = kind;
      }
      if (best < 0) continue;
      bound += left;
      slope[ofKinds + best] = (slope[ofKinds + best] as number) - 1;
      for (let at = from; at < to; at += 1) {
        const customer = customers[at] as number;
        slope[customer] = (slope[customer] as number) - 1;
      }
    }
    for (let at = ofKinds; at < price.length; at += 1) {
      if ((price[at] as number) === 0 && (slope[at] as number) > 0) slope[at] = 0;
    }
    return bound;
  }
}
