import type { Chain } from './chain.ts';
import { type Ledger, type Run, rinsedOut } from './ledger.ts';
import type { RigModel } from './model.ts';
import type { RefillSearch } from './refill-search.ts';
import type { RefillEvent } from './search-limits.ts';
import { findSources, type Sources } from './sources.ts';
import type { CompartmentFill, StockFill } from './types.ts';

/** What is moved at each event of a ledger; entry 0 is the morning load. */
export type Moves = { readonly fills: readonly CompartmentFill[]; readonly stock: readonly StockFill[] };

/** What is moved at each event, and what is poured out of bags on machines, by `stintKey`. */
export type Amounts = { readonly moves: readonly Moves[]; readonly pours: ReadonlyMap<number, number> };

/**
 * Settles all amounts of a day whose events are known. A compartment is filled where it would not last to the next event that can fill
 * it, as far as capacity and the rest of its run allow, so that nothing is left at the end of a run.
 *
 * @param sparing true: a refill from the rig fills only what is needed up to the next event; else as far as it goes
 * @returns null where the amounts do not fit (bag places or payload shared in a way that the labels do not count)
 */
export function settleAmounts(search: RefillSearch, ledger: Ledger, sparing: boolean): Amounts | null {
  const sources = findSources(search, ledger);
  const moves = new Settling(search.chain, ledger, sources, sparing).run();
  return moves === null ? null : { moves, pours: sources.poured };
}

class Settling {
  private readonly chain: Chain;
  private readonly model: RigModel;
  private readonly ledger: Ledger;
  private readonly sources: Sources;
  private readonly sparing: boolean;
  private readonly content: Float64Array;
  private readonly stock: Float64Array;
  /** [run]: parts that it still takes from the rig's stock before the next station that fills it. */
  private readonly due: Float64Array;
  private fits = true;

  constructor(chain: Chain, ledger: Ledger, sources: Sources, sparing: boolean) {
    const { model } = chain;
    this.chain = chain;
    this.model = model;
    this.ledger = ledger;
    this.sources = sources;
    this.sparing = sparing;
    this.content = new Float64Array(model.compartments);
    this.stock = Float64Array.from(sources.homeStock);
    this.due = Float64Array.from(ledger.runs, (_, r) => (sources.fromStock[r] as Float64Array)[0] as number);
  }

  run(): readonly Moves[] | null {
    const { ledger, model } = this;
    const moves = ledger.events.map((event, e) => {
      const fills: CompartmentFill[] = [];
      const stock: StockFill[] = [];
      if (event === null) this.morning(fills, stock);
      else {
        this.rinse(e, event);
        if (event.station < 0) this.fromRig(e, fills);
        else this.fromStation(e, event.station, fills, stock);
      }
      this.checkLoad(e);
      for (let c = 0; c < model.compartments; c += 1) {
        this.content[c] = (this.content[c] as number) - this.usedAfter(e, c);
        if ((this.content[c] as number) < 0) this.fits = false;
      }
      return { fills, stock };
    });
    return this.fits ? moves : null;
  }

  private morning(fills: CompartmentFill[], stock: StockFill[]): void {
    for (let c = 0; c < this.model.compartments; c += 1) {
      const r = this.ledger.runAt[c] as number;
      this.put(c, r, this.sources.homeDirect[r] ?? 0, fills);
    }
    this.stock.forEach((parts, s) => {
      if (parts > 0) stock.push({ stock: s, parts });
    });
  }

  /** Water out of the rig's stock for the changes of event e. */
  private rinse(e: number, event: RefillEvent): void {
    const { model, ledger } = this;
    const held = event.station < 0 ? 0 : (model.holds[event.station] as number);
    for (let c = 0; event.changes >> c !== 0; c += 1) {
      if (((event.changes >> c) & 1) === 0) continue;
      if ((this.content[c] as number) !== 0) this.fits = false;
      if (((held >> model.water) & 1) === 0)
        this.takeStock(model.water, rinsedOut(this.chain, ledger, e, c).rinseParts);
    }
  }

  private fromRig(e: number, fills: CompartmentFill[]): void {
    const { model, ledger, content, due } = this;
    for (let c = 0; c < model.compartments; c += 1) {
      const r = ledger.runAt[e * model.compartments + c] as number;
      const run = ledger.runs[r];
      if (run === undefined) continue;
      const missing = this.untilNextFill(e, r, run) - (content[c] as number);
      const last = !this.refillsAgain(e, r, run);
      if (missing <= 0 && !last) continue;
      const room = (model.capacity[c] as number) - (content[c] as number);
      const parts = last ? (due[r] as number) : Math.min(this.sparing ? missing : room, due[r] as number);
      due[r] = (due[r] as number) - parts;
      this.takeStock(run.stock, parts);
      this.put(c, r, parts, fills);
    }
  }

  private fromStation(e: number, k: number, fills: CompartmentFill[], stock: StockFill[]): void {
    const { model, ledger, sources } = this;
    const held = model.holds[k] as number;
    for (let c = 0; c < model.compartments; c += 1) {
      const r = ledger.runAt[e * model.compartments + c] as number;
      const run = ledger.runs[r];
      if (run === undefined || ((held >> run.stock) & 1) === 0) continue;
      this.put(c, r, (sources.direct[r] as Float64Array)[e] as number, fills);
    }
    ledger.runs.forEach((run, r) => {
      if (((held >> run.stock) & 1) === 1) this.due[r] = (sources.fromStock[r] as Float64Array)[e] as number;
    });
    for (let s = 0; s < model.stocks; s += 1) {
      const parts = (sources.stock[s] as Float64Array)[e] as number;
      if (parts === 0) continue;
      this.stock[s] = (this.stock[s] as number) + parts;
      stock.push({ stock: s, parts });
    }
  }

  /** Use of run r from event e to the next one that can fill its compartment. */
  private untilNextFill(e: number, r: number, run: Run): number {
    const { model, ledger } = this;
    let parts = this.usedAfter(e, run.compartment);
    for (let next = e + 1; next < ledger.events.length; next += 1) {
      const { station } = ledger.events[next] as RefillEvent;
      if (station < 0 || (((model.holds[station] as number) >> run.stock) & 1) === 1) break;
      if (ledger.runAt[next * model.compartments + run.compartment] !== r) break;
      parts += this.usedAfter(next, run.compartment);
    }
    return parts;
  }

  /** Whether the rig fills run r once more before its stock is taken on anew or the run ends. */
  private refillsAgain(e: number, r: number, run: Run): boolean {
    const { model, ledger } = this;
    for (let next = e + 1; next < ledger.events.length; next += 1) {
      if (ledger.runAt[next * model.compartments + run.compartment] !== r) return false;
      const { station } = ledger.events[next] as RefillEvent;
      if (station < 0) return true;
      if ((((model.holds[station] as number) >> run.stock) & 1) === 1) return false;
    }
    return false;
  }

  /** Parts out of compartment c after event e. */
  private usedAfter(e: number, c: number): number {
    return (this.sources.used[e] as Float64Array)[c] as number;
  }

  private put(c: number, r: number, parts: number, fills: CompartmentFill[]): void {
    const run = this.ledger.runs[r];
    if (parts <= 0 || run === undefined) return;
    this.content[c] = (this.content[c] as number) + parts;
    if ((this.content[c] as number) > (this.model.capacity[c] as number)) this.fits = false;
    fills.push({ compartment: c, material: run.material, parts });
  }

  private takeStock(s: number, parts: number): void {
    this.stock[s] = (this.stock[s] as number) - parts;
    if ((this.stock[s] as number) < 0) this.fits = false;
  }

  /** Nurse tank, bag places and payload right after an event. */
  private checkLoad(e: number): void {
    const { model, stock, content, ledger } = this;
    const { rig } = model;
    let weight = 0;
    let bags = 0;
    stock.forEach((parts, s) => {
      weight += parts * (model.weight[s] as number);
      if (s === model.water) {
        if (parts > (model.stockCapacity[s] as number)) this.fits = false;
      } else bags += Math.ceil(parts / (model.bagParts[s] as number));
    });
    content.forEach((parts, c) => {
      const run = ledger.runs[ledger.runAt[e * model.compartments + c] as number];
      weight += parts * (model.weight[run?.stock ?? 0] as number);
    });
    if (bags > rig.bagPlaces || weight > rig.cargoLimit) this.fits = false;
  }
}
