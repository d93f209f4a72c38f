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
  LEAD,
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
import { FROM_HOME, NOT_ABOARD, type RigModel } from './model.ts';

/** Tells which labels before one chain position cannot lead to a better day than another one. */
export class Dominance {
  /** Whether only time counts, and not what a day costs: see `SearchLimits`. */
  hasty = false;
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
    const { rig } = model;
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

  /** Bits of what may not last from position i to the end of the day: stock s, or (bit `stocks`) the payload. 0: all lasts. */
  shortage(at: number, i: number): number {
    const { data, stocksAt, momentsAt } = this.labels;
    const { model, chain } = this;
    const S = model.stocks;
    let bags = 0;
    let short = 0;
    let dry = 0;
    for (let s = 0; s < S; s += 1) {
      const place = at + stocksAt + s * PER_STOCK;
      const most = chain.stockParts[i * S + s] as number;
      const water = s === model.water;
      if (!water) dry |= 1 << s;
      if (most === 0 && !water) {
        const drawn = Math.max(data[place + DRAWN] as number, data[place + MOST_DRAWN] as number);
        if (drawn > 0) bags += Math.ceil(drawn / (model.bagParts[s] as number));
        continue;
      }
      const need = this.stockNeed(at, i, s);
      const drawn = (data[place + DRAWN] as number) + need;
      if (need > 0 && data[place + PRICE] === NOT_ABOARD) short |= 1 << s;
      else if (water && need > 0 && drawn > (model.stockCapacity[s] as number)) short |= 1 << s;
      else if (need > 0 && data[place + PRICE] === FROM_HOME && drawn > (model.homeStock[s] as number)) short |= 1 << s;
      const full = Math.max(drawn, data[place + MOST_DRAWN] as number);
      if (!water && full > 0) bags += Math.ceil(full / (model.bagParts[s] as number));
    }
    if (bags > this.bagPlaces) short |= dry;
    if (!model.mayOverload) return short;
    const room = this.cargoLimit - (chain.weightLeft[i] as number) - this.rinseWeight(at, i);
    for (let m = 0; m < model.moments.count; m += 1)
      if ((data[at + momentsAt + m] as number) > room) return short | (1 << S);
    return short;
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
        if (source.stock === s) need -= this.directLeft(at, c, chain.runParts[i * C + c] as number);
      } else if (next >= 0 && s === model.water) {
        need += source.rinseParts;
      }
    }
    return need;
  }

  /** Of `parts` still to be used from compartment c, those that were put in directly, with the bags beside it counted once. */
  private directLeft(at: number, c: number, parts: number): number {
    const { data, compartmentsAt } = this.labels;
    const { bagsOf, poursInto } = this.model;
    if ((poursInto[c] as number) >= 0) return 0;
    const bags = bagsOf[c] as number;
    const own = data[at + compartmentsAt + c * PER_COMPARTMENT + DIRECT] as number;
    const beside = bags < 0 ? 0 : (data[at + compartmentsAt + bags * PER_COMPARTMENT + DIRECT] as number);
    return Math.min(own + beside, parts);
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
   * True where label `a` is never worse than `b` from position i on. `short`: what a may run short of (see `shortage`).
   * A label that has used more of a compartment still wins where it is earlier and cheaper by one refill from the rig.
   * `waitMs`: before this time of day a wait may lie ahead.
   */
  beats(a: number, b: number, i: number, short: number, waitMs: number): boolean {
    const { data } = this.labels;
    const late = (data[a + TIME] as number) - (data[b + TIME] as number);
    if (late > 0) return false;
    const dear = (data[a + COST] as number) - (data[b + COST] as number);
    if (dear > 0 && !this.hasty) return false;
    const most = this.lead(a, b, waitMs);
    if (most < 0) return false;
    let handicap = this.breakAhead(a, b, waitMs) + this.besideAhead(a, b);
    if (handicap > most) return false;
    const compartments = this.compareCompartments(a, b, i, short);
    if (compartments < 0) return false;
    handicap += compartments;
    if (handicap > most) return false;
    const stocks = this.compareStocks(a, b, i, short);
    if (stocks < 0 || handicap + stocks > most) return false;
    return ((short >> this.model.stocks) & 1) === 0 || this.compareMoments(a, b);
  }

  /**
   * Milliseconds by which a is ahead of b for good, in time and in cost: what it is ahead before `waitMs`, a later wait may take
   * away again. Negative where b may turn out cheaper.
   */
  lead(a: number, b: number, waitMs: number): number {
    const { data } = this.labels;
    const [timeA, timeB] = [data[a + TIME] as number, data[b + TIME] as number];
    const waitA = Math.max(0, waitMs - timeA);
    const waitB = Math.max(0, waitMs - timeB);
    const early = timeB + waitB - timeA - waitA;
    if (this.hasty) return early;
    const cheap = ((data[b + COST] as number) - (data[a + COST] as number)) / this.costPerMs + waitB - waitA;
    return Math.min(early, cheap);
  }

  /** What a's break may still cost it more than b's. A break that b takes before a wait may cost it nothing. */
  breakAhead(a: number, b: number, waitMs: number): number {
    const { data } = this.labels;
    if (data[a + BREAK] === 1) return 0;
    if (data[b + BREAK] === 1) return this.breakMs;
    return (data[a + TIME] as number) < waitMs && data[a + TIME] !== data[b + TIME] ? this.breakMs : 0;
  }

  /**
   * What b may still save more than a by work beside other work at this stop. Also where a first refills and so brings both persons
   * together.
   */
  besideAhead(a: number, b: number): number {
    const { data } = this.labels;
    const lead = data[b + LEAD] as number;
    return Math.max(Math.abs(lead), Math.abs((data[a + LEAD] as number) - lead));
  }

  /** Milliseconds by which a's stocks may cost more than b's later on; -1 where they cannot be compared. */
  private compareStocks(a: number, b: number, i: number, short: number): number {
    const { data, stocksAt } = this.labels;
    const { model, chain } = this;
    let handicap = 0;
    for (let s = 0; s < model.stocks; s += 1) {
      const need = chain.stockParts[i * model.stocks + s] as number;
      const left = a + stocksAt + s * PER_STOCK;
      const right = b + stocksAt + s * PER_STOCK;
      if (need === 0 && s !== model.water) {
        if (((short >> s) & 1) === 1 && this.bags(left, s) > this.bags(right, s)) return -1;
        continue;
      }
      if (((short >> s) & 1) === 1) {
        if (data[left + PRICE] === NOT_ABOARD && data[right + PRICE] !== NOT_ABOARD) return -1;
        if ((data[left + DRAWN] as number) > (data[right + DRAWN] as number)) return -1;
        if ((data[left + MOST_DRAWN] as number) > (data[right + MOST_DRAWN] as number)) return -1;
      }
      handicap += this.dearerParts(left, right, s, need);
    }
    return handicap;
  }

  /** Bag places that a stock has taken up at most since a station had all dry goods. */
  private bags(place: number, s: number): number {
    const { data } = this.labels;
    const most = Math.max(data[place + DRAWN] as number, data[place + MOST_DRAWN] as number);
    return Math.ceil(most / (this.model.bagParts[s] as number));
  }

  /** Milliseconds by which later parts of one stock may cost a more than b. */
  private dearerParts(left: number, right: number, s: number, need: number): number {
    const { data } = this.labels;
    const { model } = this;
    let ms = 0;
    const price = Math.max(0, data[left + PRICE] as number);
    const other = Math.max(0, data[right + PRICE] as number);
    if (price > other) ms += need * (price - other);
    if (price > 0 && (data[left + OPENED] as number) < (data[right + OPENED] as number)) {
      const fromHome = (model.stockCapacity[s] as number) - (data[right + HOME_DRAWN] as number);
      if (fromHome > 0) ms += Math.min(need, fromHome) * price;
    }
    const more = (data[left + HOME_DRAWN] as number) - (data[right + HOME_DRAWN] as number);
    const carried = s !== model.water || model.mayOverload ? this.carried(left) - this.carried(right) : 0;
    return ms + Math.max(0, more, carried) * (model.topPrice[s] as number);
  }

  private carried(place: number): number {
    const { data } = this.labels;
    return (
      (data[place + CARRIED_STOCK] as number) +
      (data[place + CARRIED_DIRECT] as number) +
      (data[place + CARRIED_PRELOADED] as number)
    );
  }

  private compareCompartments(a: number, b: number, i: number, short: number): number {
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
      const stock = (model.problem.materials[next] as { stock: number }).stock;
      if (((short >> stock) & 1) === 1 && (data[left + DIRECT] as number) < (data[right + DIRECT] as number)) return -1;
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
