import type { Random } from '../../base/index.ts';
import type { Found, FoundRoute } from '../../routing/engine/index.ts';
import type { Near } from './near.ts';
import type { Slots } from './slots.ts';
import { costOf, isBetter } from './state.ts';
import type { RouteValues } from './values.ts';

/** Neighbours of a visit that say which days lie beside its own. */
const ASKED_NEIGHBOURS = 10;

/**
 * Parts the days of a plan into areas of neighbouring days. Each begins with a day that chance names and takes in the days that have
 * most neighbours in it, until it has enough jobs; every day is in one area.
 *
 * @param jobs how many jobs an area has at least, where there are as many left
 * @returns rows of routes
 */
export function areasOf(
  routes: readonly FoundRoute[],
  near: Near,
  jobs: number,
  random: Random,
): readonly (readonly FoundRoute[])[] {
  const routeOf = new Map(routes.flatMap(({ customers }, at) => customers.map((each) => [each, at] as const)));
  const links = routes.map(({ customers }) => linksOf(customers, near, routeOf));
  const free = new Set(routes.keys());
  const areas: number[][] = [];
  while (free.size > 0) {
    const seed = [...free][random.below(free.size)] as number;
    const area: number[] = [];
    const wanted = new Map<number, number>();
    let count = 0;
    for (let next: number | undefined = seed; next !== undefined && count < jobs; next = mostWanted(wanted, free)) {
      free.delete(next);
      area.push(next);
      count += routes[next]?.customers.length ?? 0;
      for (const [other, shared] of links[next] ?? []) wanted.set(other, (wanted.get(other) ?? 0) + shared);
    }
    areas.push(area);
  }
  return areas.map((area) => area.flatMap((at) => routes[at] ?? []));
}

/** How many neighbours the visits of a route have in each other one. */
function linksOf(
  customers: readonly number[],
  { near, width }: Near,
  routeOf: ReadonlyMap<number, number>,
): ReadonlyMap<number, number> {
  const links = new Map<number, number>();
  for (const customer of customers) {
    for (let rank = 1; rank < Math.min(width, ASKED_NEIGHBOURS + 1); rank += 1) {
      const route = routeOf.get(near[customer * width + rank] as number);
      if (route !== undefined) links.set(route, (links.get(route) ?? 0) + 1);
    }
  }
  return links;
}

function mostWanted(wanted: ReadonlyMap<number, number>, free: ReadonlySet<number>): number | undefined {
  let best: number | undefined;
  let most = 0;
  for (const [route, shared] of wanted) {
    if (shared <= most || !free.has(route)) continue;
    most = shared;
    best = route;
  }
  return best;
}

/** Empty slots of a kind that an area may take into use. */
const EMPTY_OF_A_KIND = 2;

/** A plan that is improved area by area. */
export class AreaPlan {
  private readonly values: RouteValues;
  private readonly slots: Slots;
  private readonly near: Near;
  /** [slot] */
  private readonly found: (FoundRoute | undefined)[];
  private readonly costs: number[];
  private readonly lengths: number[];
  private absent: readonly number[];

  constructor(values: RouteValues, slots: Slots, near: Near, { routes, absent }: Found) {
    this.values = values;
    this.slots = slots;
    this.near = near;
    this.found = Array.from({ length: slots.count });
    this.costs = Array.from({ length: slots.count }, () => 0);
    this.lengths = this.costs.slice();
    this.absent = absent;
    for (const each of routes) this.set(each.route, each);
  }

  /** Routes with visits. */
  get routes(): readonly FoundRoute[] {
    return this.found.flatMap((each) => (each === undefined || each.customers.length === 0 ? [] : [each]));
  }

  whole(iterations: number): Found {
    return { routes: this.routes, absent: this.absent, cost: this.cost(), iterations };
  }

  /** An area by itself: its routes, its jobs with those left out beside them, and its slots with some empty ones. */
  open(routes: readonly FoundRoute[]): {
    readonly jobs: readonly number[];
    readonly slotNumbers: readonly number[];
  } {
    const inside = new Set(routes.flatMap((each) => each.customers));
    const beside = this.absent.filter((customer) => this.isBeside(customer, inside));
    const jobs = [...inside, ...beside].map((customer) => customer - 1).sort((one, other) => one - other);
    const slotNumbers = [...routes.map((each) => each.route), ...this.emptySlots()].sort((one, other) => one - other);
    return { jobs, slotNumbers };
  }

  private isBeside(customer: number, inside: ReadonlySet<number>): boolean {
    const { near, width } = this.near;
    for (let rank = 1; rank < Math.min(width, ASKED_NEIGHBOURS + 1); rank += 1) {
      if (inside.has(near[customer * width + rank] as number)) return true;
    }
    return false;
  }

  private emptySlots(): readonly number[] {
    const counts = new Map<number, number>();
    return [...this.found.keys()].filter((slot) => {
      if ((this.found[slot]?.customers.length ?? 0) > 0) return false;
      const kind = this.slots.kindOf[slot] as number;
      const count = counts.get(kind) ?? 0;
      counts.set(kind, count + 1);
      return count < EMPTY_OF_A_KIND;
    });
  }

  /** Takes over what was found for some slots where the whole plan is better so. */
  take(slotNumbers: readonly number[], jobs: readonly number[], { routes, absent }: Found): void {
    const before = slotNumbers.map((slot) => this.found[slot]);
    const cost = this.cost();
    const own = new Set(jobs.map((job) => job + 1));
    const left = [...this.absent.filter((customer) => !own.has(customer)), ...absent];
    for (const slot of slotNumbers) this.set(slot, undefined);
    for (const each of routes) this.set(each.route, each);
    const isGain = isBetter({ absent: left, cost: this.cost() }, { absent: this.absent, cost });
    if (isGain) this.absent = left;
    else for (const [at, slot] of slotNumbers.entries()) this.set(slot, before[at]);
  }

  private set(slot: number, route: FoundRoute | undefined): void {
    const { width } = this.values.table;
    const codes = route?.customers.map((customer, at) => (customer - 1) * width + (route.ways[at] as number)) ?? [];
    this.found[slot] = route;
    this.costs[slot] = this.values.reckon(slot, codes);
    this.lengths[slot] = this.values.paidMs;
  }

  private cost(): number {
    return costOf(this.values.table.problem, this.costs, this.lengths);
  }
}
