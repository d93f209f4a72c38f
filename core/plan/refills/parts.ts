import {
  CARRIED_DIRECT,
  CARRIED_PRELOADED,
  CARRIED_STOCK,
  CARRIES,
  DIRECT,
  DRAWN,
  FREE,
  HOME_DRAWN,
  type Labels,
  MOST_DRAWN,
  OPENED,
  PAST_MOST,
  PER_COMPARTMENT,
  PER_STOCK,
  PRELOADED,
  PRICE,
  USED,
} from './labels.ts';
import { FROM_HOME, type RigModel } from './model.ts';

/** Told where used parts come from. */
export type SourceBook = {
  /** `free` parts were in compartment c since home; of the `rest`, `cheap` came with the rig's stock from home. */
  readonly used: (c: number, s: number, free: number, rest: number, cheap: number, opened: boolean) => void;
  /** Water for a rinse, out of the rig's stock. */
  readonly rinsed: (parts: number, cheap: number) => void;
  /** Parts that were booked as from home, but have to be taken on at the station. */
  readonly returned: (s: number, fromStock: number, preloaded: number, direct: number) => void;
};

/**
 * What used parts cost a label, and what it may still carry from home. Each used part is paid for at
 *  - nothing, while the compartment holds parts from home;
 *  - the fill time alone, for parts out of the stock from home: once the stock has been opened since the last station, or where the
 *    rig put them into the compartment before it;
 *  - the fill time and the station's time per part, else.
 */
export class Parts {
  /** Told of every part, where a day is played to learn the sources; null while searching. */
  book: SourceBook | null = null;
  private readonly model: RigModel;
  private readonly labels: Labels;
  private readonly cargoLimit: number;
  private readonly bagPlaces: number;

  constructor(model: RigModel, labels: Labels) {
    const { rig } = model;
    this.model = model;
    this.labels = labels;
    this.cargoLimit = rig.cargoLimit;
    this.bagPlaces = rig.bagPlaces;
  }

  /** Uses `y` parts of stock s out of compartment c. */
  use(at: number, c: number, s: number, y: number): void {
    const { data, compartmentsAt, stocksAt } = this.labels;
    const row = at + compartmentsAt + c * PER_COMPARTMENT;
    const place = at + stocksAt + s * PER_STOCK;
    const direct = data[row + DIRECT] as number;
    let free = Math.min(y, data[row + FREE] as number);
    data[row + USED] = (data[row + USED] as number) + y;
    data[row + DIRECT] = Math.max(0, direct - y);
    data[row + FREE] = (data[row + FREE] as number) - free;
    if (y > direct) data[place + DRAWN] = (data[place + DRAWN] as number) + y - direct;
    if (this.model.mayOverload) this.weigh(at, s, y);
    if (free > 0 && data[place + PRICE] !== FROM_HOME) free = this.carryDirect(at, s, free);
    const opened = data[place + OPENED] === 1;
    let cheap = 0;
    if (y > free) {
      const preloaded = data[row + PRELOADED] as number;
      cheap = this.pay(at, s, y - free, this.model.fillMs[c] as number, opened, preloaded);
      if (!opened && preloaded > 0) data[row + PRELOADED] = preloaded - cheap;
    }
    if (this.book !== null) this.book.used(c, s, free, y - free, cheap, opened);
    if (data[at + CARRIES] === 1) this.unload(at);
  }

  /** Books parts that were in a compartment since home, as far as the payload then let them be aboard; returns how many. */
  private carryDirect(at: number, s: number, parts: number): number {
    const { data, stocksAt } = this.labels;
    const place = at + stocksAt + s * PER_STOCK + CARRIED_DIRECT;
    const before = data[place] as number;
    data[place] = before + parts;
    data[at + CARRIES] = 1;
    const heavy = this.model.mayOverload ? this.overweight(at) : 0;
    if (heavy <= 0) return parts;
    const kept = Math.max(0, parts - Math.ceil(heavy / (this.model.weight[s] as number)));
    data[place] = before + kept;
    return kept;
  }

  /** Pays for `parts` of stock s that were not in the compartment since home; returns how many of them came from home. */
  pay(at: number, s: number, parts: number, fillMs: number, opened: boolean, preloaded: number): number {
    const { data, stocksAt } = this.labels;
    const place = at + stocksAt + s * PER_STOCK;
    const price = data[place + PRICE] as number;
    let cheap = 0;
    if (price === FROM_HOME) {
      cheap = parts;
    } else if (price >= 0 && (opened || preloaded > 0)) {
      cheap = Math.min(opened ? parts : Math.min(parts, preloaded), this.leftFromHome(at, s));
      if (cheap > 0) {
        const field = place + (opened ? CARRIED_STOCK : CARRIED_PRELOADED);
        data[field] = (data[field] as number) + cheap;
        data[at + CARRIES] = 1;
      }
    }
    data[place + HOME_DRAWN] = (data[place + HOME_DRAWN] as number) + cheap;
    this.labels.spend(at, parts * fillMs + (parts - cheap) * Math.max(0, price));
    return cheap;
  }

  /** Parts of stock s that could have been taken along from home and are not used up. */
  private leftFromHome(at: number, s: number): number {
    const { model } = this;
    if (model.homeHolds[s] !== 1) return 0;
    const { data, stocksAt } = this.labels;
    const drawn = data[at + stocksAt + s * PER_STOCK + HOME_DRAWN] as number;
    const begun = (model.homeStock[s] as number) - drawn;
    if (s === model.water) return begun;
    let places = this.bagPlaces;
    let placesThen = this.bagPlaces;
    for (let other = 0; other < model.stocks; other += 1) {
      if (other === model.water || other === s) continue;
      const place = at + stocksAt + other * PER_STOCK;
      const bag = model.bagParts[other] as number;
      places -= Math.ceil((data[place + HOME_DRAWN] as number) / bag);
      const past = data[place + PAST_MOST] as number;
      if (past > 0) placesThen -= Math.ceil(Math.max(past, data[place + CARRIED_STOCK] as number) / bag);
    }
    const bag = model.bagParts[s] as number;
    const carried = data[at + stocksAt + s * PER_STOCK + CARRIED_STOCK] as number;
    return Math.max(0, Math.min(begun, places * bag - drawn, placesThen * bag - carried));
  }

  weigh(at: number, s: number, parts: number): void {
    const { data, momentsAt } = this.labels;
    const { moments, stocks, weight } = this.model;
    const more = parts * (weight[s] as number);
    for (let m = 0; m < moments.count; m += 1) {
      if (moments.counts[m * stocks + s] === 1) data[at + momentsAt + m] = (data[at + momentsAt + m] as number) + more;
    }
  }

  /**
   * Parts from home that are used after a station gave their stock were aboard ever since. Where they crowd out what else has to be
   * aboard, they are taken on at the station instead, and paid for after all.
   */
  private unload(at: number): void {
    const { model } = this;
    for (;;) {
      const heavy = model.mayOverload ? this.overweight(at) : 0;
      const crowded = this.bagsTooMany(at);
      if (heavy <= 0 && !crowded) return;
      if (!this.giveBack(at, heavy, crowded)) return;
    }
  }

  private overweight(at: number): number {
    const { data, momentsAt, stocksAt } = this.labels;
    const { moments, stocks, weight } = this.model;
    let most = 0;
    for (let m = 0; m < moments.count; m += 1) {
      let aboard = data[at + momentsAt + m] as number;
      for (let s = 0; s < stocks; s += 1) {
        if (moments.counts[m * stocks + s] === 1) continue;
        const place = at + stocksAt + s * PER_STOCK;
        aboard += this.carriedParts(place) * (weight[s] as number);
      }
      most = Math.max(most, aboard - this.cargoLimit);
    }
    return most;
  }

  /** Parts from home that were used after a station gave their stock. */
  private carriedParts(place: number): number {
    const { data } = this.labels;
    return (
      (data[place + CARRIED_STOCK] as number) +
      (data[place + CARRIED_DIRECT] as number) +
      (data[place + CARRIED_PRELOADED] as number)
    );
  }

  private bagsTooMany(at: number): boolean {
    const { data, stocksAt } = this.labels;
    const { model } = this;
    let bags = 0;
    for (let s = 0; s < model.stocks; s += 1) {
      if (s === model.water) continue;
      const most = this.mostOf(at, s, data[at + stocksAt + s * PER_STOCK + CARRIED_STOCK] as number);
      if (most > 0) bags += Math.ceil(most / (model.bagParts[s] as number));
    }
    return bags > this.bagPlaces;
  }

  /** Most parts of stock s in bags at once, with `carried` parts from home. */
  mostOf(at: number, s: number, carried: number): number {
    const { data, stocksAt } = this.labels;
    const place = at + stocksAt + s * PER_STOCK;
    return Math.max(carried, data[place + DRAWN] as number, data[place + MOST_DRAWN] as number);
  }

  /** Takes the cheapest step back from carrying parts from home; false where there is none. */
  private giveBack(at: number, heavy: number, crowded: boolean): boolean {
    const { data, stocksAt } = this.labels;
    const { model } = this;
    let best = -1;
    let bestParts = 0;
    let bestMs = Number.POSITIVE_INFINITY;
    for (let s = 0; s < model.stocks; s += 1) {
      const place = at + stocksAt + s * PER_STOCK;
      const carried = data[place + CARRIED_STOCK] as number;
      const weighty = Math.min(Math.ceil(heavy / (model.weight[s] as number)), this.carriedParts(place));
      const parts = heavy > 0 ? weighty : crowded && s !== model.water ? this.bagStep(at, s, carried) : 0;
      const ms = parts * Math.max(0, data[place + PRICE] as number);
      if (parts <= 0 || ms >= bestMs) continue;
      best = s;
      bestParts = parts;
      bestMs = ms;
    }
    if (best < 0) return false;
    this.returnParts(at, best, bestParts);
    return true;
  }

  /** Parts of stock s to leave at home so that one bag place gets free; 0 where that does not help. */
  private bagStep(at: number, s: number, carried: number): number {
    const bag = this.model.bagParts[s] as number;
    const fewer = (Math.ceil(carried / bag) - 1) * bag;
    if (carried <= 0 || Math.ceil(this.mostOf(at, s, fewer) / bag) >= Math.ceil(this.mostOf(at, s, carried) / bag))
      return 0;
    return carried - fewer;
  }

  private returnParts(at: number, s: number, parts: number): void {
    const { data, stocksAt } = this.labels;
    const place = at + stocksAt + s * PER_STOCK;
    const stock = Math.min(parts, data[place + CARRIED_STOCK] as number);
    const preloaded = Math.min(parts - stock, data[place + CARRIED_PRELOADED] as number);
    const direct = parts - stock - preloaded;
    data[place + CARRIED_STOCK] = (data[place + CARRIED_STOCK] as number) - stock;
    data[place + CARRIED_PRELOADED] = (data[place + CARRIED_PRELOADED] as number) - preloaded;
    data[place + CARRIED_DIRECT] = (data[place + CARRIED_DIRECT] as number) - direct;
    data[place + HOME_DRAWN] = (data[place + HOME_DRAWN] as number) - stock - preloaded;
    const price = Math.max(0, data[place + PRICE] as number);
    this.labels.spend(at, parts * price + direct * (this.model.topFillMs[s] as number));
    if (this.book !== null) this.book.returned(s, stock, preloaded, direct);
  }
}
