import type { Chain } from './chain.ts';
import {
  CARRIED_STOCK,
  COST,
  DIRECT,
  DONE,
  DRAWN,
  FREE,
  GIVEN,
  type Labels,
  LEAD,
  MATERIAL,
  MOST_DRAWN,
  NODE,
  OPENED,
  PAST_MOST,
  PER_COMPARTMENT,
  PER_STOCK,
  PRELOADED,
  PRICE,
  REFILLED,
  STATIONS,
  TIME,
  USED,
} from './labels.ts';
import type { RigModel } from './model.ts';
import { drawnAfter, servedAfter } from './part-done.ts';
import { Parts } from './parts.ts';
import type { Stores } from './stores.ts';
import { addedMs, leadAfter } from './strands.ts';

/**
 * What changes a label: work on ground, a refill from the rig, a visit to a station. Amounts are put off: a compartment that could be
 * filled counts as filled as far as it turns out to be used, and is paid for when used (see Parts).
 */
export class Steps {
  readonly model: RigModel;
  readonly chain: Chain;
  readonly labels: Labels;
  readonly parts: Parts;
  private readonly stores: Stores;
  private readonly refillMs: number;
  private readonly midZoneMs: number;
  private readonly costPerMs: number;
  private readonly costPerM: number;
  private readonly moved: Float64Array;

  constructor(model: RigModel, chain: Chain, labels: Labels, stores: Stores) {
    const { rig } = model;
    this.model = model;
    this.chain = chain;
    this.labels = labels;
    this.parts = new Parts(model, labels);
    this.stores = stores;
    this.refillMs = rig.refillMs;
    this.midZoneMs = rig.midZoneMs;
    this.costPerMs = rig.costPerMs;
    this.costPerM = rig.costPerM;
    this.moved = new Float64Array(model.moments.count);
  }

  spend(at: number, ms: number): void {
    this.labels.spend(at, ms);
  }

  drive(at: number, from: number, to: number): void {
    if (from === to) return;
    const { data } = this.labels;
    const { problem, places } = this.model;
    const ms = problem.travelMs[from * places + to] as number;
    data[at + TIME] = (data[at + TIME] as number) + ms;
    data[at + COST] =
      (data[at + COST] as number) +
      ms * this.costPerMs +
      (problem.travelM[from * places + to] as number) * this.costPerM;
  }

  /** Works on op i from what is done up to `to` units. */
  work(at: number, i: number, to: number): void {
    const { data } = this.labels;
    const { ops } = this.model;
    const op = this.chain.op[i] as number;
    const area = ops.area[op] as number;
    const done = data[at + DONE] as number;
    const service = ops.serviceMs[op] as number;
    const swap = done === 0 ? (this.chain.swapMs[i] as number) : 0;
    this.workFor(at, i, op, swap + servedAfter(service, to, area) - servedAfter(service, done, area));
    const end = ops.drawStart[op + 1] as number;
    const stock = ops.stock[op] as number;
    for (let draw = ops.drawStart[op] as number; draw < end; draw += 1) {
      const parts = ops.drawParts[draw] as number;
      const y = drawnAfter(parts, to, area) - drawnAfter(parts, done, area);
      const c = ops.drawCompartment[draw] as number;
      const poured = this.stores.outOfBags(at, c, stock, y);
      this.parts.use(at, c, stock, y - poured);
      if (poured > 0) {
        const bags = this.model.bagsOf[c] as number;
        this.parts.use(at, bags, stock, poured);
        this.workFor(at, i, op, poured * (this.model.pourMs[bags] as number));
      }
    }
    data[at + DONE] = to;
    data[at + STATIONS] = 0;
    data[at + GIVEN] = 0;
    data[at + REFILLED] = 0;
  }

  /** Time of work at a visit, less what is done beside the other person's work since both last came together. */
  private workFor(at: number, i: number, op: number, ms: number): void {
    if (!this.chain.isShared(this.chain.visitOf[i] as number)) {
      this.spend(at, ms);
      return;
    }
    const { data } = this.labels;
    const lead = data[at + LEAD] as number;
    const second = this.model.ops.second[op] === 1;
    this.spend(at, addedMs(lead, second, ms));
    data[at + LEAD] = leadAfter(lead, second, ms);
  }

  /** Refills from the rig before the rest of op i, with the changes of `mask`. False where the rinse water is lacking. */
  refillFromRig(at: number, i: number, mask: number): boolean {
    const { labels, model } = this;
    const { data, compartmentsAt, stocksAt } = labels;
    const done = data[at + DONE] as number;
    this.spend(at, this.refillMs + (done > 0 ? this.midZoneMs : 0));
    data[at + LEAD] = 0;
    for (let c = 0; c < model.compartments; c += 1) data[at + compartmentsAt + c * PER_COMPARTMENT + USED] = 0;
    for (let s = 0; s < model.stocks; s += 1) data[at + stocksAt + s * PER_STOCK + OPENED] = 1;
    if (mask !== 0 && !this.change(at, i, mask, true)) return false;
    data[at + REFILLED] = 1;
    data[at + NODE] = labels.addNode(data[at + NODE] as number, i, done, -1, mask);
    return true;
  }

  /** Puts the next material into the compartments of `mask`, out of the rig's stock. */
  private change(at: number, i: number, mask: number, fromRig: boolean): boolean {
    const { data, compartmentsAt, stocksAt } = this.labels;
    const { model, chain } = this;
    const water = model.water;
    for (let c = 0; mask >> c !== 0; c += 1) {
      if (((mask >> c) & 1) === 0) continue;
      const row = at + compartmentsAt + c * PER_COMPARTMENT;
      const old = model.problem.materials[data[row + MATERIAL] as number];
      if (old === undefined) return false;
      if ((model.poursInto[c] as number) < 0) this.spend(at, old.rinseMs);
      if (fromRig && old.rinseParts > 0) {
        if (water < 0 || !this.stores.stockGives(at, water, old.rinseParts)) return false;
        if (!this.stores.weightFits(at, water, old.rinseParts)) return false;
        if (model.mayOverload) this.parts.weigh(at, water, old.rinseParts);
        const place = at + stocksAt + water * PER_STOCK;
        data[place + DRAWN] = (data[place + DRAWN] as number) + old.rinseParts;
        const cheap = this.parts.pay(at, water, old.rinseParts, 0, true, 0);
        if (this.parts.book !== null) this.parts.book.rinsed(old.rinseParts, cheap);
      }
      data[row + MATERIAL] = chain.nextMaterial[i * model.compartments + c] as number;
      data[row + USED] = 0;
      data[row + DIRECT] = 0;
      data[row + FREE] = 0;
      data[row + PRELOADED] = 0;
    }
    return true;
  }

  /**
   * The visit itself at station k (drives and reload are the caller's): wait, resupply, changes of `mask`.
   * False where it is closed. Transfer times come with use; the hours are checked without them.
   */
  visitStation(at: number, i: number, k: number, mask: number): boolean {
    const { labels, model } = this;
    const { data } = labels;
    const station = model.problem.stations[k];
    if (station === undefined) return false;
    const early = station.openMs - (data[at + TIME] as number);
    if (early > 0) this.spend(at, early);
    if ((data[at + TIME] as number) + station.visitMs > station.closeMs) return false;
    const done = data[at + DONE] as number;
    this.spend(at, station.visitMs + (done > 0 ? this.midZoneMs : 0));
    data[at + LEAD] = 0;
    const held = model.holds[k] as number;
    const givesWater = model.water >= 0 && ((held >> model.water) & 1) === 1;
    if (mask !== 0 && !this.change(at, i, mask, !givesWater)) return false;
    this.fillDirect(at, i, held, mask);
    this.resupply(at, k, held);
    data[at + STATIONS] = (data[at + STATIONS] as number) + 1;
    data[at + GIVEN] = (data[at + GIVEN] as number) | held;
    data[at + REFILLED] = 0;
    data[at + NODE] = labels.addNode(data[at + NODE] as number, i, done, k, mask);
    return true;
  }

  private resupply(at: number, k: number, held: number): void {
    const { data, stocksAt, momentsAt } = this.labels;
    const { model, moved } = this;
    const allDry = model.holdsAllDry[k] === 1;
    for (let s = 0; s < model.stocks; s += 1) {
      if (((held >> s) & 1) === 0) continue;
      const place = at + stocksAt + s * PER_STOCK;
      const drawn = data[place + DRAWN] as number;
      data[place + MOST_DRAWN] = allDry || s === model.water ? 0 : Math.max(drawn, data[place + MOST_DRAWN] as number);
      if (s !== model.water && (data[place + PRICE] as number) >= 0) {
        data[place + PAST_MOST] = Math.max(
          data[place + PAST_MOST] as number,
          this.parts.mostOf(at, s, data[place + CARRIED_STOCK] as number),
        );
      }
      data[place + DRAWN] = 0;
      data[place + PRICE] = model.price[k * model.stocks + s] as number;
      data[place + OPENED] = 0;
    }
    const { count, next } = model.moments;
    moved.fill(0);
    for (let m = 0; m < count; m += 1) {
      const to = next[k * count + m] as number;
      moved[to] = Math.max(moved[to] as number, data[at + momentsAt + m] as number);
    }
    if (held !== 0) moved[0] = 0;
    for (let m = 0; m < count; m += 1) data[at + momentsAt + m] = moved[m] as number;
  }

  private fillDirect(at: number, i: number, held: number, changed: number): void {
    const { data, compartmentsAt } = this.labels;
    const { model, chain } = this;
    for (let c = 0; c < model.compartments; c += 1) {
      const row = at + compartmentsAt + c * PER_COMPARTMENT;
      const material = data[row + MATERIAL] as number;
      if (material < 0 || chain.nextMaterial[i * model.compartments + c] !== material) continue;
      const stock = (model.problem.materials[material] as { stock: number }).stock;
      if (((held >> stock) & 1) === 1) {
        if (((changed >> c) & 1) === 0) this.preload(at, row, stock, c);
        data[row + USED] = 0;
        data[row + DIRECT] = model.capacity[c] as number;
      } else if (((changed >> c) & 1) === 1) {
        data[row + USED] = model.capacity[c] as number;
      }
    }
  }

  /** What the compartment may still hold out of the stock from home: its last refill from the rig, less what was used since. */
  private preload(at: number, row: number, s: number, c: number): void {
    const { data, stocksAt } = this.labels;
    const left = (this.model.capacity[c] as number) - (data[row + USED] as number) - (data[row + FREE] as number);
    const opened = data[at + stocksAt + s * PER_STOCK + OPENED] === 1;
    data[row + PRELOADED] = Math.max(0, opened ? left : Math.min(left, data[row + PRELOADED] as number));
  }
}
