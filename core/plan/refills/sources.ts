import { DONE, TIME } from './labels.ts';
import type { Ledger } from './ledger.ts';
import type { SourceBook } from './parts.ts';
import { stintKey } from './programme-bags.ts';
import type { RefillSearch } from './refill-search.ts';
import type { RefillEvent } from './search-limits.ts';

/** Stations split the day of a stock into legs; leg 0 begins at home. */
export type Sources = {
  /** [run]: parts from home put into its compartment in the morning. */
  readonly homeDirect: Float64Array;
  /** [s]: parts of the stock taken along from home. */
  readonly homeStock: Float64Array;
  /** [run][e]: parts put into the compartment at the station of event e. */
  readonly direct: readonly Float64Array[];
  /** [s][e]: parts taken into the stock at event e. */
  readonly stock: readonly Float64Array[];
  /** [run][e]: parts that the run takes out of the rig's stock in the leg that begins with event e. */
  readonly fromStock: readonly Float64Array[];
  /** [e][c]: parts taken from each compartment after event e; of a hopper and the bags beside it, as the labels share them out. */
  readonly used: readonly Float64Array[];
  /** What comes out of bags on machines, by `stintKey`. */
  readonly poured: ReadonlyMap<number, number>;
};

type Leg = {
  readonly event: number;
  /** Parts used once the rig's stock was open, and for rinses; of these, from home. */
  opened: number;
  fromHome: number;
  /**
   * [run]: parts from home in the compartment; parts out of the stock from home put in before the station; parts of the station
   * used before the stock was open; parts used after.
   */
  readonly free: Float64Array;
  readonly preloaded: Float64Array;
  readonly forced: Float64Array;
  readonly later: Float64Array;
};

/**
 * Decides where each used part comes from, by playing the day once more in the way in which the labels paid for it. What a station
 * gives goes into compartments as far as they take it, then into the stock.
 */
export function findSources(search: RefillSearch, ledger: Ledger): Sources {
  const book = new Legs(search, ledger);
  book.play();
  const { runs, events } = ledger;
  const { stocks } = search.model;
  const grid = (rows: number): Float64Array[] => Array.from({ length: rows }, () => new Float64Array(events.length));
  const sources: Sources = {
    homeDirect: new Float64Array(runs.length),
    homeStock: new Float64Array(stocks),
    direct: grid(runs.length),
    stock: grid(stocks),
    fromStock: grid(runs.length),
    used: book.taken,
    poured: book.poured,
  };
  for (let s = 0; s < stocks; s += 1) settleStock(search, ledger, book.legs[s] as Leg[], s, sources);
  return sources;
}

function settleStock(search: RefillSearch, ledger: Ledger, legs: readonly Leg[], s: number, sources: Sources): void {
  const { model } = search;
  legs.forEach((leg, number) => {
    // Nothing is bought at home.
    let bought = leg.opened - leg.fromHome;
    sources.homeStock[s] = (sources.homeStock[s] as number) + leg.fromHome;
    ledger.runs.forEach((run, r) => {
      if (run.stock !== s) return;
      sources.homeDirect[r] = (sources.homeDirect[r] as number) + (leg.free[r] as number);
      let fromStock = leg.later[r] as number;
      const forced = leg.forced[r] as number;
      const alive = ledger.runAt[leg.event * model.compartments + run.compartment] === r;
      const kept = legs.slice(number).reduce((sum, each) => {
        const before = refillBefore(ledger, each.event) < leg.event ? (each.preloaded[r] as number) : 0;
        return sum + (each.free[r] as number) + before;
      }, 0);
      const room = alive ? (model.capacity[run.compartment] as number) - kept - forced : 0;
      const extra = Math.max(0, Math.min(room, fromStock, bought));
      (sources.direct[r] as Float64Array)[leg.event] = forced + extra;
      bought -= extra;
      fromStock -= extra;
      const row = sources.fromStock[r] as Float64Array;
      row[leg.event] = (row[leg.event] as number) + fromStock;
      preload(ledger, legs, leg, r, s, sources);
    });
    (sources.stock[s] as Float64Array)[leg.event] = bought;
  });
}

/** Books what a run has in its compartment out of the stock from home, put in by the last refill from the rig before the leg. */
function preload(ledger: Ledger, legs: readonly Leg[], leg: Leg, r: number, s: number, sources: Sources): void {
  const parts = leg.preloaded[r] as number;
  const event = refillBefore(ledger, leg.event);
  const start = legs.reduce((latest, each) => (each.event <= event ? each.event : latest), 0);
  const row = sources.fromStock[r] as Float64Array;
  row[start] = (row[start] as number) + parts;
  sources.homeStock[s] = (sources.homeStock[s] as number) + parts;
}

/** The last refill from the rig before event e; 0 where there is none. */
function refillBefore(ledger: Ledger, e: number): number {
  for (let event = e - 1; event > 0; event -= 1) if ((ledger.events[event] as RefillEvent).station < 0) return event;
  return 0;
}

/** The legs of every stock, filled while the day is played. */
class Legs implements SourceBook {
  readonly legs: Leg[][];
  readonly taken: readonly Float64Array[];
  readonly poured = new Map<number, number>();
  private readonly search: RefillSearch;
  private readonly ledger: Ledger;
  private event = 0;
  private position = 0;

  constructor(search: RefillSearch, ledger: Ledger) {
    this.search = search;
    this.ledger = ledger;
    this.taken = ledger.events.map(() => new Float64Array(search.model.compartments));
    this.legs = Array.from({ length: search.model.stocks }, () => [this.leg(0)]);
  }

  private leg(event: number): Leg {
    const fresh = (): Float64Array => new Float64Array(this.ledger.runs.length);
    return { event, opened: 0, fromHome: 0, free: fresh(), preloaded: fresh(), forced: fresh(), later: fresh() };
  }

  play(): void {
    const { search, ledger } = this;
    const { chain, labels, steps, model } = search;
    const at = labels.first(chain, 0, 0);
    steps.parts.book = this;
    let next = 1;
    for (let i = 0; i < chain.length; i += 1) {
      this.position = i;
      labels.data[at + DONE] = 0;
      for (; ledger.events[next]?.position === i; next += 1) {
        const event = ledger.events[next] as RefillEvent;
        if (event.done > (labels.data[at + DONE] as number)) steps.work(at, i, event.done);
        if (event.station < 0) steps.refillFromRig(at, i, event.changes);
        else this.station(at, i, event, next);
        this.event = next;
      }
      steps.work(at, i, model.ops.area[chain.op[i] as number] as number);
    }
    steps.parts.book = null;
    labels.release(at);
  }

  private legsOf(s: number): Leg[] {
    return this.legs[s] as Leg[];
  }

  private station(at: number, i: number, event: RefillEvent, number: number): void {
    const { labels, steps, model } = this.search;
    labels.data[at + TIME] = 0;
    steps.visitStation(at, i, event.station, event.changes);
    const held = model.holds[event.station] as number;
    for (let s = 0; s < model.stocks; s += 1) if (((held >> s) & 1) === 1) this.legsOf(s).push(this.leg(number));
  }

  used(c: number, s: number, free: number, rest: number, cheap: number, opened: boolean): void {
    const leg = this.legsOf(s).at(-1) as Leg;
    const r = this.ledger.runAt[this.event * this.search.model.compartments + c] as number;
    const taken = this.taken[this.event] as Float64Array;
    taken[c] = (taken[c] as number) + free + rest;
    if ((this.search.model.poursInto[c] as number) >= 0) {
      const key = stintKey(this.position, this.event, this.ledger.events.length);
      this.poured.set(key, (this.poured.get(key) ?? 0) + free + rest);
    }
    leg.free[r] = (leg.free[r] as number) + free;
    if (!opened && leg.event > 0) {
      leg.preloaded[r] = (leg.preloaded[r] as number) + cheap;
      leg.forced[r] = (leg.forced[r] as number) + rest - cheap;
      return;
    }
    leg.later[r] = (leg.later[r] as number) + rest;
    leg.opened += rest;
    leg.fromHome += cheap;
  }

  rinsed(parts: number, cheap: number): void {
    const leg = this.legsOf(this.search.model.water).at(-1) as Leg;
    leg.opened += parts;
    leg.fromHome += cheap;
  }

  /** Takes back from the latest legs first. */
  returned(s: number, stock: number, preloaded: number, direct: number): void {
    let left = { stock, preloaded, direct };
    for (const leg of this.legsOf(s).toReversed()) {
      if (leg.event === 0) continue;
      const less = Math.min(left.stock, leg.fromHome);
      leg.fromHome -= less;
      left = { ...left, stock: left.stock - less };
      for (let r = 0; r < leg.forced.length; r += 1) {
        const free = Math.min(left.direct, leg.free[r] as number);
        const again = Math.min(left.preloaded, leg.preloaded[r] as number);
        leg.free[r] = (leg.free[r] as number) - free;
        leg.preloaded[r] = (leg.preloaded[r] as number) - again;
        leg.forced[r] = (leg.forced[r] as number) + free + again;
        left = { ...left, preloaded: left.preloaded - again, direct: left.direct - free };
      }
    }
  }
}
