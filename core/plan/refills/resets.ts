import type { Chain } from './chain.ts';
import type { Detours } from './detours.ts';
import type { Dominance } from './dominance.ts';
import {
  COST,
  DIRECT,
  DRAWN,
  FREE,
  HOME_DRAWN,
  type Labels,
  MATERIAL,
  PER_COMPARTMENT,
  PER_STOCK,
  PRELOADED,
  PRICE,
  TIME,
} from './labels.ts';
import type { RigModel } from './model.ts';

/** A trip that makes good all that has been used: the station, and what going there takes. */
export type Reset = { readonly station: number; readonly ms: number; readonly cost: number };

/**
 * Compares labels by what it would take the one with less aboard to catch up: a trip to a station that has everything. A label that
 * is earlier and cheaper by such a trip, and by what the parts of the other one may save, is never worse.
 */
export class Resets {
  private readonly model: RigModel;
  private readonly chain: Chain;
  private readonly labels: Labels;
  private readonly detours: Detours;
  private readonly costPerMs: number;
  private readonly costPerM: number;
  private readonly dominance: Dominance;
  /** Stations that are open all day. */
  private readonly open: readonly number[];
  private known: (Reset | null | undefined)[] = [];
  private row = -1;
  private insideAt = -1;
  private insideRow = -1;
  private insideTrip: Reset | null = null;
  private readonly midZoneMs: number;

  constructor(model: RigModel, chain: Chain, labels: Labels, detours: Detours, dominance: Dominance) {
    const { rig } = model;
    const latest = rig.shiftStartMs + rig.shiftMs + rig.overtimeMs;
    this.model = model;
    this.chain = chain;
    this.labels = labels;
    this.detours = detours;
    this.costPerMs = rig.costPerMs;
    this.costPerM = rig.costPerM;
    this.midZoneMs = rig.midZoneMs;
    this.dominance = dominance;
    this.open = model.problem.stations.flatMap((station, k) =>
      station.openMs <= rig.shiftStartMs && station.closeMs >= latest && model.holdsAllDry[k] === 1 ? [k] : [],
    );
  }

  /** The quickest such trip before the op at position i, with nothing of it done; null where no station has all that is needed. */
  before(i: number): Reset | null {
    const { chain } = this;
    if (this.row !== chain.loads) {
      this.row = chain.loads;
      this.known = [];
    }
    const known = this.known[i];
    if (known !== undefined) return known;
    const found = i >= chain.length ? null : this.find(i);
    this.known[i] = found;
    return found;
  }

  /** The quickest such trip from inside the op at position i. */
  inside(i: number): Reset | null {
    const { chain, model } = this;
    if (this.insideAt === i && this.insideRow === chain.loads) return this.insideTrip;
    const place = chain.place[chain.visitOf[i] as number] as number;
    this.insideAt = i;
    this.insideRow = chain.loads;
    this.insideTrip = this.quickest(
      i,
      place,
      place,
      (model.ops.reloadMs[chain.op[i] as number] as number) + this.midZoneMs,
    );
    return this.insideTrip;
  }

  private find(i: number): Reset | null {
    const { chain, model } = this;
    const v = chain.visitOf[i] as number;
    const to = chain.place[v] as number;
    const first = chain.start[v] === i;
    const from = first ? (v === 0 ? model.homePlace : (chain.place[v - 1] as number)) : to;
    return this.quickest(i, from, to, first ? 0 : (model.ops.reloadMs[chain.op[i] as number] as number));
  }

  private quickest(i: number, from: number, to: number, reload: number): Reset | null {
    const { detours } = this;
    let best: Reset | null = null;
    for (const k of this.open) {
      if (!this.holdsAll(i, k)) continue;
      const ms = detours.addedMs(k, from, to) + reload;
      const cost = ms * this.costPerMs + detours.addedM(k, from, to) * this.costPerM;
      if (best === null || cost < best.cost) best = { station: k, ms, cost };
    }
    return best;
  }

  private holdsAll(i: number, k: number): boolean {
    const { model, chain } = this;
    for (let s = 0; s < model.stocks; s += 1) {
      const need = chain.stockParts[i * model.stocks + s] as number;
      if (need > 0 && (((model.holds[k] as number) >> s) & 1) === 0) return false;
    }
    return true;
  }

  /** True where label a, after the trip, is no worse than b from position i on. */
  beats(a: number, b: number, i: number, reset: Reset, waitMs: number): boolean {
    const { data } = this.labels;
    if ((data[a + TIME] as number) + reset.ms > (data[b + TIME] as number)) return false;
    const { hasty } = this.dominance;
    if (!hasty && (data[a + COST] as number) + reset.cost > (data[b + COST] as number)) return false;
    const trip = hasty ? reset.ms : Math.max(reset.ms, reset.cost / this.costPerMs);
    const most = this.dominance.lead(a, b, waitMs) - trip;
    if (most < 0) return false;
    const ahead = this.dominance.breakAhead(a, b, waitMs) + this.dominance.besideAhead(a, b);
    const handicap = ahead + this.savingOfCompartments(a, b, i);
    return handicap <= most && handicap + this.savingOfStocks(a, b, i, reset.station) <= most;
  }

  /** What b may save by having cheaper parts in its stock than the station sells. */
  private savingOfStocks(a: number, b: number, i: number, k: number): number {
    const { data, stocksAt } = this.labels;
    const { model, chain } = this;
    let ms = 0;
    for (let s = 0; s < model.stocks; s += 1) {
      const need = chain.stockParts[i * model.stocks + s] as number;
      if (need === 0) continue;
      const left = a + stocksAt + s * PER_STOCK;
      const right = b + stocksAt + s * PER_STOCK;
      const price = Math.max(0, model.price[k * model.stocks + s] as number);
      const other = data[right + PRICE] as number;
      const inHand =
        Math.max(0, (model.stockCapacity[s] as number) - (data[right + DRAWN] as number)) + this.direct(b, s);
      if (other < price) ms += Math.min(need, inHand) * (price - Math.max(0, other));
      const fromHome = Math.max(0, (model.stockCapacity[s] as number) - (data[right + HOME_DRAWN] as number));
      if (other >= 0) ms += Math.min(need, fromHome) * price;
      const more = (data[left + HOME_DRAWN] as number) - (data[right + HOME_DRAWN] as number);
      if (more > 0) ms += Math.min(more, need) * (model.topPrice[s] as number);
    }
    return ms;
  }

  private direct(at: number, s: number): number {
    const { data, compartmentsAt } = this.labels;
    const { model } = this;
    let parts = 0;
    for (let c = 0; c < model.compartments; c += 1) {
      const row = at + compartmentsAt + c * PER_COMPARTMENT;
      if (model.problem.materials[data[row + MATERIAL] as number]?.stock === s) parts += data[row + DIRECT] as number;
    }
    return parts;
  }

  /** What b may save by parts from home in its compartments, and by rinses that a has still to make. */
  private savingOfCompartments(a: number, b: number, i: number): number {
    const { data, compartmentsAt } = this.labels;
    const { model, chain } = this;
    const C = model.compartments;
    let ms = 0;
    for (let c = 0; c < C; c += 1) {
      const next = chain.nextMaterial[i * C + c] as number;
      if (next < 0) continue;
      const left = a + compartmentsAt + c * PER_COMPARTMENT;
      const right = b + compartmentsAt + c * PER_COMPARTMENT;
      const material = model.problem.materials[next] as { stock: number };
      const price = model.topPrice[material.stock] as number;
      const most = chain.runParts[i * C + c] as number;
      if (data[left + MATERIAL] !== next) {
        if (data[right + MATERIAL] !== data[left + MATERIAL])
          ms += model.problem.materials[data[left + MATERIAL] as number]?.rinseMs ?? 0;
        if (data[right + MATERIAL] !== next) continue;
      }
      const kept = data[left + MATERIAL] === next ? (data[left + FREE] as number) : 0;
      const less = Math.max(0, (data[right + FREE] as number) - kept);
      ms += Math.min(less, most) * ((model.fillMs[c] as number) + price);
      const lessPreloaded = Math.max(0, (data[right + PRELOADED] as number) - (data[left + PRELOADED] as number));
      ms += Math.min(lessPreloaded, most) * price;
    }
    return ms;
  }
}
