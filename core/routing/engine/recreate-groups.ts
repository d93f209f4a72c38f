import type { Random } from '../../base/index.ts';
import type { VisitGroups } from './contract.ts';
import { Recreate } from './recreate.ts';
import type { Tours } from './tours.ts';

const MOST_DAYS = 31;

/**
 * Puts groups of visits back: looks for the best position on each day, then takes the set of days with the least sum. Routes of
 * different days have nothing to do with each other, so this is the best set of days for the group as the routes stand.
 */
export class GroupRecreate extends Recreate {
  private readonly groups: VisitGroups;
  private readonly dayCost = new Float64Array(MOST_DAYS);
  private readonly dayAfter = new Int32Array(MOST_DAYS);
  private readonly dayWay = new Int32Array(MOST_DAYS);
  /** Days that some set of days still to be chosen from has beyond those of the visits in place. */
  private wanted = 0;
  /** Days of the visits in place. */
  private placed = 0;

  constructor(tours: Tours, random: Random, groups: VisitGroups) {
    super(tours, random);
    this.groups = groups;
  }

  protected override place(first: number, full: boolean): boolean {
    this.takeStock(first);
    const room = this.limit - this.model.cost;
    this.dayCost.fill(room);
    this.dayAfter.fill(-1);
    if (!full) this.scanNear(first);
    this.scanEmpty(first);
    let days = this.cheapest(first, room);
    if (full || (days < 0 && this.thorough)) {
      this.scanAll(first);
      days = this.cheapest(first, room);
    }
    if (days >= 0 && this.insertVisits(first, days & ~this.placed)) return true;
    this.removeVisits(first);
    return false;
  }

  protected override consider(customer: number, after: number): void {
    const { model, tours } = this;
    const day = this.groups.dayOf[tours.routeOf[after] as number] as number;
    if (((this.wanted >> day) & 1) === 0) return;
    const best = this.dayCost[day] as number;
    const bound = model.bound(customer, after);
    if (bound >= best || this.blinks()) return;
    if (tours.fixed[tours.next[after] as number] === 1) return;
    const price = model.price(customer, after, bound);
    if (price >= best) return;
    this.dayCost[day] = price;
    this.dayAfter[day] = after;
    this.dayWay[day] = model.way;
  }

  /** Days of the visits in place, and days that may be wanted for the others. */
  private takeStock(first: number): void {
    const { countOf, dayOf, patterns } = this.groups;
    this.placed = 0;
    for (let visit = first; visit < first + (countOf[first] as number); visit += 1) {
      const route = this.tours.routeOf[visit] as number;
      if (route >= 0) this.placed |= 1 << (dayOf[route] as number);
    }
    this.wanted = 0;
    for (const days of patterns[first] as readonly number[]) {
      if ((days & this.placed) === this.placed) this.wanted |= days & ~this.placed;
    }
  }

  /** The set of days with the least sum below a limit, or -1 where none can be had. */
  private cheapest(first: number, limit: number): number {
    let best = -1;
    let bestCost = limit;
    for (const days of this.groups.patterns[first] as readonly number[]) {
      if ((days & this.placed) !== this.placed) continue;
      let sum = 0;
      for (let rest = days & ~this.placed; rest !== 0; rest &= rest - 1) {
        const day = 31 - Math.clz32(rest & -rest);
        sum += this.dayAfter[day] === -1 ? Number.POSITIVE_INFINITY : (this.dayCost[day] as number);
      }
      if (sum >= bestCost) continue;
      best = days;
      bestCost = sum;
    }
    return best;
  }

  private insertVisits(first: number, days: number): boolean {
    const { tours, model } = this;
    let visit = first;
    for (let rest = days; rest !== 0; rest &= rest - 1) {
      const day = 31 - Math.clz32(rest & -rest);
      while (tours.routeOf[visit] !== -1) visit += 1;
      tours.insert(visit, this.dayAfter[day] as number, this.dayWay[day] as number);
      const route = tours.routeOf[visit] as number;
      model.renew(route);
      if (!model.holds(route)) return false;
    }
    return true;
  }

  private removeVisits(first: number): void {
    for (let visit = first; visit < first + (this.groups.countOf[first] as number); visit += 1) {
      const route = this.tours.routeOf[visit] as number;
      if (route < 0) continue;
      this.tours.remove(visit);
      this.model.renew(route);
    }
  }
}
