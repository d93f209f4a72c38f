import type { Random } from '../../base/index.ts';
import type { RouteModel, VisitGroups } from './contract.ts';
import type { Tours } from './tours.ts';

/** How often room is made around an absent customer, where there is one. */
const ABSENT_SHARE = 0.5;
/** Customers taken out in one step, on average. */
const REMOVALS = 10;
/** Longest string of customers taken out of one route. */
const LONGEST_STRING = 10;
/** How often a string leaves a piece in its middle alone. */
const SPLIT_SHARE = 0.5;
/** How often that piece grows by one more. */
const GROW_SHARE = 0.01;
/** How often all visits of a group go with one of them, so that its days may change. */
const WHOLE_GROUP_SHARE = 0.5;

/**
 * Takes strings of neighbouring customers out of routes near a random customer: slack induction by string removals (Christiaens and
 * Vanden Berghe, Transportation Science 54(2), 2020).
 */
export class Ruin {
  private readonly tours: Tours;
  private readonly model: RouteModel;
  private readonly random: Random;
  private readonly visited: Int32Array;
  private readonly listed: Int32Array;
  private round = 0;
  /** Customer around which customers were taken out last. */
  seed = 1;

  constructor(tours: Tours, random: Random) {
    this.tours = tours;
    this.model = tours.model;
    this.random = random;
    this.visited = new Int32Array(tours.routes);
    this.listed = new Int32Array(tours.customers + 1);
  }

  /** Appends the removed customers to `absent` from `count` on and returns the new count. */
  run(absent: Int32Array, count: number): number {
    const { tours, random } = this;
    const { near, nearWidth, customers } = this.model;
    const { placed } = tours;
    if (placed === 0) return count;
    this.round += 1;
    const longest = Math.min(LONGEST_STRING, placed / tours.used);
    const mostStrings = (4 * REMOVALS) / (1 + longest) - 1;
    let strings = Math.floor(random.unit() * mostStrings + 1);
    this.seed =
      count > 0 && random.unit() < ABSENT_SHARE ? (absent[random.below(count)] as number) : 1 + random.below(customers);
    const row = this.seed * nearWidth;
    // A single route is cut in several places; of several each gives one string, unless the model has it otherwise.
    const once = tours.used > 1 && this.model.manyStrings !== true;
    let absentCount = count;
    for (let rank = 0; rank < nearWidth && strings > 0; rank += 1) {
      const customer = near[row + rank] as number;
      const route = tours.routeOf[customer] as number;
      if (route < 0 || tours.fixed[customer] === 1 || (once && this.visited[route] === this.round)) continue;
      this.visited[route] = this.round;
      absentCount = this.removeString(route, customer, longest, absent, absentCount);
      this.model.renew(route);
      strings -= 1;
    }
    return this.model.groups === undefined ? absentCount : this.gather(this.model.groups, absent, count, absentCount);
  }

  /** Names the removed visits, from `count` on, by the first of their group, once each; now and then takes out the others as well. */
  private gather({ firstOf, countOf }: VisitGroups, absent: Int32Array, count: number, absentCount: number): number {
    const { tours, model } = this;
    const whole = this.random.unit() < WHOLE_GROUP_SHARE;
    let listed = count;
    for (let at = count; at < absentCount; at += 1) {
      const first = firstOf[absent[at] as number] as number;
      if (this.listed[first] === this.round) continue;
      this.listed[first] = this.round;
      absent[listed] = first;
      listed += 1;
      for (let visit = first; whole && visit < first + (countOf[first] as number); visit += 1) {
        const route = tours.routeOf[visit] as number;
        if (route < 0) continue;
        tours.remove(visit);
        model.renew(route);
      }
    }
    return listed;
  }

  private removeString(route: number, customer: number, longest: number, absent: Int32Array, count: number): number {
    const { tours, random } = this;
    const size = (tours.size[route] as number) - (tours.fixedSize[route] as number);
    const most = Math.min(size, longest);
    const length = Math.min(size, Math.floor(random.unit() * most + 1));
    let kept = 0;
    if (length > 1 && length < size && random.unit() < SPLIT_SHARE) {
      kept = 1;
      while (length + kept < size && random.unit() < GROW_SHARE) kept += 1;
    }
    let node = this.startOfString(customer, length + kept, tours.sentinel(route));
    const keepFrom = kept > 0 ? 1 + random.below(length - 1) : length;
    let absentCount = count;
    for (let at = 0; at < length + kept; at += 1) {
      const following = tours.next[node] as number;
      if (at < keepFrom || at >= keepFrom + kept) {
        tours.remove(node);
        absent[absentCount] = node;
        absentCount += 1;
      }
      node = following;
    }
    return absentCount;
  }

  /** First node of a random string of that length that holds the customer and no fixed one. */
  private startOfString(customer: number, length: number, sentinel: number): number {
    const { next, prev, fixed } = this.tours;
    let before = 0;
    let first = customer;
    while (before < length - 1 && prev[first] !== sentinel && fixed[prev[first] as number] === 0) {
      first = prev[first] as number;
      before += 1;
    }
    let after = 0;
    for (let node = next[customer] as number; after < length - 1 && node !== sentinel; node = next[node] as number) {
      after += 1;
    }
    const least = Math.max(0, length - 1 - after);
    const back = least + this.random.below(before - least + 1);
    for (let steps = before - back; steps > 0; steps -= 1) first = next[first] as number;
    return first;
  }
}
