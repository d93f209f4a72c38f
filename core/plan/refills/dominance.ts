import type { Chain } from './chain.ts';
import {
  BREAK,
  CARRIED_DIRECT,
  CARRIED_PRELOADED,
  CARRIED_STOCK,
  COST,
  DIRECT,
  DONE,
  DRAWN,
  FREE,
  HOME_DRAWN,
  type Labels,
  MATERIAL,
  MOST_DRAWN,
  OPENED,
  PER_COMPARTMENT,
  PER_STOCK,
  PRELOADED,
  PRICE,
  TIME,
  USED,
} from './labels.ts';
import { NOT_ABOARD, type RigModel } from './model.ts';

/** Tells which labels before one chain position cannot lead to a better day than another one. */
export class Dominance {
  private readonly model: RigModel;
  private readonly chain: Chain;
  private readonly labels: Labels;
  private readonly breakMs: number;
  private readonly refillMs: number;
  private readonly midZoneMs: number;
  private readonly costPerMs: number;
  private readonly cargoLimit: number;
  private readonly bagPlaces: number;

  constructor(model: RigModel, chain: Chain, labels: Labels) {
    const rig = model.problem.rigs[model.rig];
    if (rig === undefined) throw new RangeError('no such rig');
    this.model = model;
    this.chain = chain;
    this.labels = labels;
    this.breakMs = rig.breakAfterMs < 0 ? 0 : rig.breakMs;
    this.refillMs = rig.refillMs;
    this.midZoneMs = rig.midZoneMs;
    this.costPerMs = rig.costPerMs;
    this.cargoLimit = rig.cargoLimit;
    this.bagPlaces = rig.bagPlaces;
  }

  /** Whether some stock, or the payload, may not last from position i to the end of the day. */
  runsShort(at: number, i: number): boolean {
    const { data, stocksAt, momentsAt } = this.labels;
    const { model, chain } = this;
    const S = model.stocks;
    let bags = 0;
    for (let s = 0; s < S; s += 1) {
      const need = this.stockNeed(at, i, s);
      const place = at + stocksAt + s * PER_STOCK;
      const drawn = (data[place + DRAWN] as number) + need;
      if (need > 0 && data[place + PRICE] === NOT_ABOARD) return true;
      if (s === model.water) {
        if (need > 0 && drawn > (model.stockCapacity[s] as number)) return true;
      } else {
        const most = Math.max(drawn, data[place + MOST_DRAWN] as number);
        if (most > 0) bags += Math.ceil(most / (model.bagParts[s] as number));
      }
    }
    if (bags > this.bagPlaces) return true;
    if (!model.mayOverload) return false;
    const room = this.cargoLimit - (chain.weightLeft[i] as number) - this.rinseWeight(at, i);
    for (let m = 0; m < model.moments.count; m += 1) if ((data[at + momentsAt + m] as number) > room) return true;
    return false;
  }

  /** Parts of stock s that the rest of the day takes out of the rig, at most: what compartments hold directly is taken off. */
  private stockNeed(at: number, i: number, s: number): number {
    const { data, compartmentsAt } = this.labels;
    const { model, chain } = this;
    const C = model.compartments;
    let need = chain.stockParts[i * model.stocks + s] as number;
    for (let c = 0; c < C; c += 1) {
      const row = at + compartmentsAt + c * PER_COMPARTMENT;
      const material = data[row + MATERIAL] as number;
      if (material < 0) continue;
      const next = chain.nextMaterial[i * C + c] as number;
      const source = model.problem.materials[material];
      if (source === undefined) continue;
      if (next === material) {
        if (source.stock === s) need -= Math.min(data[row + DIRECT] as number, chain.runParts[i * C + c] as number);
      } else if (next >= 0 && s === model.water) {
        need += source.rinseParts;
      }
    }
    return need;
  }

  private rinseWeight(at: number, i: number): number {
    const { data, compartmentsAt } = this.labels;
    const { model, chain } = this;
    const C = model.compartments;
    if (model.water < 0) return 0;
    let parts = 0;
    for (let c = 0; c < C; c += 1) {
      const material = data[at + compartmentsAt + c * PER_COMPARTMENT + MATERIAL] as number;
      const next = chain.nextMaterial[i * C + c] as number;
      if (next >= 0 && material >= 0 && next !== material) parts += model.problem.materials[material]?.rinseParts ?? 0;
    }
    return parts * (model.weight[model.water] as number);
  }

  /**
   * True where label `a` is never worse than `b` from position i on. `lasting`: a's stocks last to the end of the day anyway.
   * A label that has used more of a compartment still wins where it is earlier and cheaper by one refill from the rig.
   */
  beats(a: number, b: number, i: number, lasting: boolean): boolean {
    const { data } = this.labels;
    let late = (data[a + TIME] as number) - (data[b + TIME] as number);
    if (late > 0) return false;
    const dear = (data[a + COST] as number) - (data[b + COST] as number);
    if (dear > 0) return false;
    if (data[a + BREAK] === 0 && data[b + BREAK] === 1) late += this.breakMs;
    const stocks = this.compareStocks(a, b, i, lasting);
    if (stocks < 0) return false;
    const compartments = this.compareCompartments(a, b, i, lasting);
    if (compartments < 0) return false;
    const handicap = stocks + compartments;
    const costHandicap = handicap + (data[a + BREAK] === 0 && data[b + BREAK] === 1 ? this.breakMs : 0);
    if (late + handicap > 0 || dear + costHandicap * this.costPerMs > 0) return false;
    return lasting || !this.model.mayOverload || this.compareMoments(a, b);
  }

  /** Milliseconds by which a's stocks may cost more than b's later on; -1 where they cannot be compared. */
  private compareStocks(a: number, b: number, i: number, lasting: boolean): number {
    const { data, stocksAt } = this.labels;
    const { model, chain } = this;
    let handicap = 0;
    for (let s = 0; s < model.stocks; s += 1) {
      if ((chain.stockParts[i * model.stocks + s] as number) === 0 && s !== model.water) continue;
      const left = a + stocksAt + s * PER_STOCK;
      const right = b + stocksAt + s * PER_STOCK;
      if (data[left + PRICE] === NOT_ABOARD && data[right + PRICE] !== NOT_ABOARD) return -1;
      if (!lasting) {
        if ((data[left + DRAWN] as number) > (data[right + DRAWN] as number)) return -1;
        if ((data[left + MOST_DRAWN] as number) > (data[right + MOST_DRAWN] as number)) return -1;
      }
      if ((data[left + PRICE] as number) > (data[right + PRICE] as number)) {
        if (!lasting) return -1;
        // All later use, paid at a's price instead of nothing.
        const most = chain.stockParts[i * model.stocks + s] as number;
        handicap += most * Math.max(0, (data[left + PRICE] as number) - Math.max(0, data[right + PRICE] as number));
      }
      if ((data[left + OPENED] as number) < (data[right + OPENED] as number) && (data[left + PRICE] as number) > 0)
        return -1;
      const more = (data[left + HOME_DRAWN] as number) - (data[right + HOME_DRAWN] as number);
      const carried =
        (data[left + CARRIED_STOCK] as number) +
        (data[left + CARRIED_DIRECT] as number) +
        (data[left + CARRIED_PRELOADED] as number) -
        (data[right + CARRIED_STOCK] as number) -
        (data[right + CARRIED_DIRECT] as number) -
        (data[right + CARRIED_PRELOADED] as number);
      const returnable = s !== model.water || model.mayOverload ? carried : 0;
      handicap += Math.max(0, more, returnable) * (model.topPrice[s] as number);
    }
    return handicap;
  }

  private compareCompartments(a: number, b: number, i: number, lasting: boolean): number {
    const { data, compartmentsAt } = this.labels;
    const { model, chain } = this;
    const C = model.compartments;
    let handicap = 0;
    let emptier = false;
    for (let c = 0; c < C; c += 1) {
      const next = chain.nextMaterial[i * C + c] as number;
      if (next < 0) continue;
      const left = a + compartmentsAt + c * PER_COMPARTMENT;
      const right = b + compartmentsAt + c * PER_COMPARTMENT;
      const leftFits = data[left + MATERIAL] === next;
      if (leftFits !== (data[right + MATERIAL] === next)) {
        if (!leftFits) return -1;
        continue;
      }
      if (!leftFits) {
        if (data[left + MATERIAL] !== data[right + MATERIAL]) return -1;
        continue;
      }
      if ((data[left + USED] as number) > (data[right + USED] as number)) emptier = true;
      if (!lasting && (data[left + DIRECT] as number) < (data[right + DIRECT] as number)) return -1;
      handicap += this.compareFree(left, right, c, next, chain.runParts[i * C + c] as number);
    }
    if (!emptier) return handicap;
    return handicap + this.refillMs + ((data[a + DONE] as number) > 0 ? this.midZoneMs : 0);
  }

  /** Milliseconds that parts from home in b's compartment, but not in a's, may save. */
  private compareFree(left: number, right: number, c: number, material: number, most: number): number {
    const { data } = this.labels;
    const { model } = this;
    const less = (data[right + FREE] as number) - (data[left + FREE] as number);
    const lessPreloaded = (data[right + PRELOADED] as number) - (data[left + PRELOADED] as number);
    if (less <= 0 && lessPreloaded <= 0) return 0;
    const price = model.topPrice[(model.problem.materials[material] as { stock: number }).stock] as number;
    const free = less > 0 ? Math.min(less, most) * ((model.fillMs[c] as number) + price) : 0;
    return free + (lessPreloaded > 0 ? Math.min(lessPreloaded, most) * price : 0);
  }

  private compareMoments(a: number, b: number): boolean {
    const { data, momentsAt } = this.labels;
    for (let m = 0; m < this.model.moments.count; m += 1) {
      if ((data[a + momentsAt + m] as number) > (data[b + momentsAt + m] as number)) return false;
    }
    return true;
  }
}
