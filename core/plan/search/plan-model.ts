import type { Order, RouteModel, Tours } from '../../routing/engine/index.ts';
import { unevenCost } from '../problem/index.ts';
import type { Near } from './near.ts';
import { FEW_ROUTES, HEAT, ordersOf, usualDrive } from './orders.ts';
import type { Slots } from './slots.ts';
import type { JobTable } from './tables.ts';

/** What a route costs that cannot be driven: more than any plan, and small enough for sums to stay whole. nano-dollars */
export const BROKEN = 1e15;

/** What both models of a planning problem say to the routing engine alike: jobs as customers, rigs' days as routes. */
export abstract class PlanModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly orders: readonly Order[];
  readonly heat: RouteModel['heat'] = HEAT;
  way = 0;
  protected readonly table: JobTable;
  protected readonly slots: Slots;
  protected readonly routeCost: Float64Array;
  /** [route]: length of its paid day, 0 where it is empty or cannot be driven. ms */
  protected readonly lengths: Float64Array;
  /** Cost of a usual drive between neighbours. */
  protected readonly drive: number;
  protected tours!: Tours;
  private routesCost = 0;
  /** What days of unlike length cost; NaN where it has to be reckoned anew. */
  private uneven = Number.NaN;

  constructor(table: JobTable, slots: Slots, near: Near) {
    this.customers = table.jobs;
    this.kindOf = slots.kindOf;
    this.near = near.near;
    this.nearWidth = near.width;
    this.orders = ordersOf(table, slots);
    this.table = table;
    this.slots = slots;
    this.routeCost = new Float64Array(slots.count);
    this.lengths = new Float64Array(slots.count);
    this.drive = usualDrive(table, near.near, near.width);
  }

  /** Of all routes as they stand, and of days of unlike length. */
  get cost(): number {
    const { problem } = this.table;
    if (problem.evenDays === undefined) return this.routesCost;
    if (Number.isNaN(this.uneven)) this.uneven = unevenCost(problem, this.lengths);
    return this.routesCost + this.uneven;
  }

  protected setRoute(route: number, cost: number, paidMs: number): void {
    this.routesCost += cost - (this.routeCost[route] as number);
    this.routeCost[route] = cost;
    this.lengths[route] = paidMs;
    this.uneven = Number.NaN;
  }

  /** A step may take several strings out of one day where there are one or two. */
  get manyStrings(): boolean {
    return this.tours.used < FEW_ROUTES;
  }

  meanEdge(): number {
    return this.drive;
  }
}
