import type { RouteModel, Tours } from '../../routing/engine/index.ts';
import { unevenCost } from '../problem/index.ts';
import type { Near } from './near.ts';
import { BROKEN, PlanModel } from './plan-model.ts';
import type { Shortlist } from './shortlist.ts';
import type { Slots } from './slots.ts';
import { isBetter, type State } from './state.ts';
import type { JobTable } from './tables.ts';
import type { Codes, RouteValues } from './values.ts';

/**
 * A planning problem of a few jobs for the routing engine: every route is reckoned by the labels of ../refills, at every position.
 * The best different plans that the search meets are noted, as the labels reckon them.
 */
export class SmallModel extends PlanModel implements RouteModel {
  private readonly values: RouteValues;
  private readonly shortlist: Shortlist;
  private leastProved: State | null = null;

  constructor(table: JobTable, slots: Slots, near: Near, values: RouteValues, shortlist: Shortlist) {
    super(table, slots, near);
    this.values = values;
    this.shortlist = shortlist;
  }

  bind(tours: Tours): void {
    this.tours = tours;
  }

  linked(): void {
    // Everything is reckoned when a route is renewed.
  }

  unlinked(): void {
    // Likewise.
  }

  renew(route: number): void {
    const cost = Math.min(BROKEN, this.values.reckon(route, this.codesOf(route, -1, -1)));
    this.setRoute(route, cost, this.values.paidMs);
  }

  holds(route: number): boolean {
    return (this.routeCost[route] as number) < BROKEN;
  }

  admits(customer: number, route: number): boolean {
    const { slots, table } = this;
    const job = customer - 1;
    if (slots.dayAllowed[job * slots.days + (slots.dayOf[route] as number)] === 0) return false;
    const pinned = slots.pinned[job] as number;
    if (pinned >= 0 && pinned !== route) return false;
    return (table.rigs[slots.rigOf[route] as number]?.modes[job] ?? 0) > 0;
  }

  bound(): number {
    return Number.NEGATIVE_INFINITY;
  }

  price(customer: number, after: number): number {
    const { tours, table, slots } = this;
    const route = tours.routeOf[after] as number;
    const modes = table.rigs[slots.rigOf[route] as number]?.modes[customer - 1] ?? 0;
    let best = Number.POSITIVE_INFINITY;
    for (let mode = 0; mode < modes; mode += 1) {
      const codes = this.codesOf(route, after, (customer - 1) * table.width + mode);
      const cost = this.values.reckon(route, codes) - (this.routeCost[route] as number) + this.unevenAdded(route);
      if (cost >= best) continue;
      best = cost;
      this.way = mode;
    }
    return best;
  }

  /** What days of unlike length cost more with the route that was reckoned last. */
  private unevenAdded(route: number): number {
    const { problem } = this.table;
    if (problem.evenDays === undefined) return 0;
    return unevenCost(problem, this.lengths.with(route, this.values.paidMs)) - unevenCost(problem, this.lengths);
  }

  /**
   * Notes the plan as it stands. One that is better than any before counts only where it can really be driven; what cannot is known to
   * the values from then on.
   */
  settle(): void {
    const state = this.state();
    this.shortlist.add(state);
    const least = this.leastProved;
    if (least !== null && !isBetter(state, least)) return;
    const real = state.routes.reduce((sum, codes, slot) => sum + this.values.prove(slot, codes), 0);
    if (Number.isFinite(real)) this.leastProved = state;
    else for (const route of state.routes.keys()) this.renew(route);
  }

  private state(): State {
    const { tours, table } = this;
    const absent: number[] = [];
    for (let job = 0; job < table.jobs; job += 1) if (tours.routeOf[job + 1] === -1) absent.push(job);
    const routes = Array.from({ length: tours.routes }, (_, route) => this.codesOf(route, -1, -1));
    return { routes, costs: Array.from(this.routeCost), lengths: Array.from(this.lengths), absent, cost: this.cost };
  }

  /** Codes of a route, with another one after a node where one is given. */
  private codesOf(route: number, after: number, code: number): Codes {
    const { tours, table } = this;
    const sentinel = tours.sentinel(route);
    const codes: number[] = [];
    let node = sentinel;
    do {
      if (node !== sentinel) codes.push((node - 1) * table.width + (tours.way[node] as number));
      if (node === after) codes.push(code);
      node = tours.next[node] as number;
    } while (node !== sentinel);
    return codes;
  }
}
