import type { Chain } from './chain.ts';
import {
  DIRECT,
  DONE,
  DRAWN,
  FREE,
  type Labels,
  MATERIAL,
  MOST_DRAWN,
  PER_COMPARTMENT,
  PER_STOCK,
  PRICE,
  USED,
} from './labels.ts';
import { FROM_HOME, NOT_ABOARD, type RigModel } from './model.ts';
import { drawnAfter } from './part-done.ts';

/**
 * What a label still has in its compartments, in the bags beside them and in the rig's stock, and how far that lasts. Asking changes
 * nothing.
 */
export class Stores {
  private readonly model: RigModel;
  private readonly chain: Chain;
  private readonly labels: Labels;
  private readonly cargoLimit: number;
  private readonly bagPlaces: number;

  constructor(model: RigModel, chain: Chain, labels: Labels) {
    this.model = model;
    this.chain = chain;
    this.labels = labels;
    this.cargoLimit = model.rig.cargoLimit;
    this.bagPlaces = model.rig.bagPlaces;
  }

  /** Whether the op at position i finds the wrong material in one of its compartments. */
  mismatched(at: number, i: number): boolean {
    const { data, compartmentsAt } = this.labels;
    const { ops } = this.model;
    const op = this.chain.op[i] as number;
    const material = ops.material[op] as number;
    const end = ops.drawStart[op + 1] as number;
    for (let draw = ops.drawStart[op] as number; draw < end; draw += 1) {
      const c = ops.drawCompartment[draw] as number;
      if (data[at + compartmentsAt + c * PER_COMPARTMENT + MATERIAL] !== material) return true;
    }
    return false;
  }

  /** The last whole unit of the op at position i that the label reaches without another event. */
  furthest(at: number, i: number): number {
    const op = this.chain.op[i] as number;
    const area = this.model.ops.area[op] as number;
    const done = this.labels.data[at + DONE] as number;
    if (this.reaches(at, op, done, area)) return area;
    let low = done;
    let high = area;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (this.reaches(at, op, done, middle)) low = middle;
      else high = middle;
    }
    return low;
  }

  /** What stops the label at `done` units: a compartment, a stock, or the payload. */
  limitAt(at: number, i: number): { kind: 'compartment' | 'stock' | 'payload'; index: number } {
    const { ops } = this.model;
    const op = this.chain.op[i] as number;
    const area = ops.area[op] as number;
    const done = this.labels.data[at + DONE] as number;
    const end = ops.drawStart[op + 1] as number;
    for (let draw = ops.drawStart[op] as number; draw < end; draw += 1) {
      const c = ops.drawCompartment[draw] as number;
      const parts = ops.drawParts[draw] as number;
      const next = drawnAfter(parts, done + 1, area) - drawnAfter(parts, done, area);
      if (next > this.leftIn(at, c)) return { kind: 'compartment', index: c };
    }
    const stock = ops.stock[op] as number;
    if (stock >= 0 && this.weightFits(at, stock, 1)) return { kind: 'stock', index: stock };
    return { kind: 'payload', index: -1 };
  }

  private reaches(at: number, op: number, done: number, to: number): boolean {
    const { ops } = this.model;
    const stock = ops.stock[op] as number;
    if (stock < 0) return true;
    const area = ops.area[op] as number;
    const end = ops.drawStart[op + 1] as number;
    let total = 0;
    let fromStock = 0;
    for (let draw = ops.drawStart[op] as number; draw < end; draw += 1) {
      const c = ops.drawCompartment[draw] as number;
      const parts = ops.drawParts[draw] as number;
      const y = drawnAfter(parts, to, area) - (done > 0 ? drawnAfter(parts, done, area) : 0);
      if (y > this.leftIn(at, c)) return false;
      fromStock += this.notDirect(at, c, y);
      total += y;
    }
    if (fromStock > 0 && !this.stockGives(at, stock, fromStock)) return false;
    return this.weightFits(at, stock, total);
  }

  /** What is left of compartment c and of the bags beside it since both could last be filled. */
  private leftIn(at: number, c: number): number {
    const { data, compartmentsAt } = this.labels;
    const { bagsOf, store } = this.model;
    const bags = bagsOf[c] as number;
    const used = data[at + compartmentsAt + c * PER_COMPARTMENT + USED] as number;
    if (bags < 0) return (store[c] as number) - used;
    return (store[c] as number) - used - (data[at + compartmentsAt + bags * PER_COMPARTMENT + USED] as number);
  }

  /**
   * Of `y` parts, those that come out of the bags beside compartment c: what it does not hold; what the rig's stock s cannot give for it
   * while there are bags from home or a station; and bags from home where pouring them costs less than what a station gives.
   */
  outOfBags(at: number, c: number, s: number, y: number): number {
    const { data, compartmentsAt, stocksAt } = this.labels;
    const { bagsOf, capacity, fillMs, pourMs } = this.model;
    const bags = bagsOf[c] as number;
    if (bags < 0) return 0;
    const row = at + compartmentsAt + c * PER_COMPARTMENT;
    const own = Math.min(y, (capacity[c] as number) - (data[row + USED] as number));
    const fromStock = own - (data[row + DIRECT] as number);
    const short = fromStock > 0 ? Math.max(0, fromStock - this.stockLeft(at, s)) : 0;
    const price = data[at + stocksAt + s * PER_STOCK + PRICE] as number;
    const cheaper = price > 0 && (pourMs[bags] as number) < (fillMs[c] as number) + price;
    const paid = Math.max(0, own - (data[row + FREE] as number));
    const beyond = y - own;
    const free = (data[at + compartmentsAt + bags * PER_COMPARTMENT + FREE] as number) - beyond;
    const fromHome = cheaper ? Math.min(paid, Math.max(0, free)) : 0;
    return beyond + Math.max(Math.min(own, short), fromHome);
  }

  /** Of `y` parts out of compartment c, those that have to come from the rig's stock: all but what was put in at home or at a station. */
  private notDirect(at: number, c: number, y: number): number {
    const { data, compartmentsAt } = this.labels;
    const bags = this.model.bagsOf[c] as number;
    const own = y - (data[at + compartmentsAt + c * PER_COMPARTMENT + DIRECT] as number);
    if (bags < 0) return Math.max(0, own);
    return Math.max(0, own - (data[at + compartmentsAt + bags * PER_COMPARTMENT + DIRECT] as number));
  }

  /** Parts of dry stock s that the rig still gives. */
  private stockLeft(at: number, s: number): number {
    const { data, stocksAt } = this.labels;
    const { model } = this;
    const row = at + stocksAt + s * PER_STOCK;
    if (data[row + PRICE] === NOT_ABOARD) return 0;
    let places = this.bagPlaces;
    for (let other = 0; other < model.stocks; other += 1) {
      if (other === model.water || other === s) continue;
      const place = at + stocksAt + other * PER_STOCK;
      const most = Math.max(data[place + DRAWN] as number, data[place + MOST_DRAWN] as number);
      if (most > 0) places -= Math.ceil(most / (model.bagParts[other] as number));
    }
    const room = places * (model.bagParts[s] as number);
    const most = data[row + PRICE] === FROM_HOME ? Math.min(room, model.homeStock[s] as number) : room;
    return Math.max(0, most - (data[row + DRAWN] as number));
  }

  /** Whether the rig's stock s still gives `parts`, by nurse tank or bag places. */
  stockGives(at: number, s: number, parts: number): boolean {
    const { data, stocksAt } = this.labels;
    const { model } = this;
    const row = at + stocksAt + s * PER_STOCK;
    if (data[row + PRICE] === NOT_ABOARD) return false;
    const drawn = (data[row + DRAWN] as number) + parts;
    if (data[row + PRICE] === FROM_HOME && drawn > (model.homeStock[s] as number)) return false;
    if (s === model.water) return drawn <= (model.stockCapacity[s] as number);
    let bags = 0;
    for (let other = 0; other < model.stocks; other += 1) {
      if (other === model.water) continue;
      const place = at + stocksAt + other * PER_STOCK;
      const now = other === s ? drawn : (data[place + DRAWN] as number);
      const most = Math.max(now, data[place + MOST_DRAWN] as number);
      if (most > 0) bags += Math.ceil(most / (model.bagParts[other] as number));
    }
    return bags <= this.bagPlaces;
  }

  weightFits(at: number, s: number, parts: number): boolean {
    if (!this.model.mayOverload) return true;
    const { data, momentsAt } = this.labels;
    const { moments, stocks, weight } = this.model;
    const room = this.cargoLimit - parts * (weight[s] as number);
    for (let m = 0; m < moments.count; m += 1) {
      if (moments.counts[m * stocks + s] === 1 && (data[at + momentsAt + m] as number) > room) return false;
    }
    return true;
  }

  /** Whether two persons work at visit v and some compartment does not last through it, or holds the wrong material. */
  runsShort(at: number, v: number): boolean {
    const { chain, model } = this;
    if (!chain.isShared(v)) return false;
    const { data, compartmentsAt } = this.labels;
    const { ops, poursInto } = model;
    const left = model.store.slice();
    for (let c = 0; c < model.compartments; c += 1) {
      const into = (poursInto[c] as number) < 0 ? c : (poursInto[c] as number);
      left[into] = (left[into] as number) - (data[at + compartmentsAt + c * PER_COMPARTMENT + USED] as number);
    }
    for (let i = chain.start[v] as number; i < (chain.start[v + 1] as number); i += 1) {
      const op = chain.op[i] as number;
      if (this.mismatched(at, i)) return true;
      for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1) {
        const c = ops.drawCompartment[draw] as number;
        left[c] = (left[c] as number) - (ops.drawParts[draw] as number);
        if ((left[c] as number) < 0) return true;
      }
    }
    return false;
  }

  /** Bits of the compartments whose next use wants another material. */
  pendingChanges(at: number, i: number): number {
    const { data, compartmentsAt } = this.labels;
    const C = this.model.compartments;
    let mask = 0;
    for (let c = 0; c < C; c += 1) {
      const next = this.chain.nextMaterial[i * C + c] as number;
      if (next >= 0 && data[at + compartmentsAt + c * PER_COMPARTMENT + MATERIAL] !== next) mask |= 1 << c;
    }
    return mask;
  }

  /** Of the pending changes, those that need water. */
  wetChanges(at: number, mask: number): number {
    const { data, compartmentsAt } = this.labels;
    let wet = 0;
    for (let c = 0; mask >> c !== 0; c += 1) {
      if (((mask >> c) & 1) === 0) continue;
      const old = data[at + compartmentsAt + c * PER_COMPARTMENT + MATERIAL] as number;
      if ((this.model.problem.materials[old] as { rinseParts: number }).rinseParts > 0) wet |= 1 << c;
    }
    return wet;
  }
}
