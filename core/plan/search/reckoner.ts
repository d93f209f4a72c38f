import { FillPoints } from './fill-points.ts';
import { stockLimits } from './stock-limits.ts';
import type { JobTable, RigTable } from './tables.ts';

/** Offsets of a state that all rigs have. */
const TIME = 0;
const METRES = 1;
const BROKE = 2;
const FIXED = 3;
/** No load takes longer. ms */
const NEAR_CLOSE_MS = 3_600_000;

/**
 * Reckons routes of one rig with refills placed by rule, in time proportional to their ops: a compartment that cannot last through an
 * op is filled before it where the rest in it is worth less than a fill inside the op, else where it runs dry; the rig goes to the fill
 * point with the least detour where its stock cannot last through a visit. Never better than the placed optimum where no time of day
 * binds, and close to it; routes that are kept are placed exactly afterwards.
 *
 * The state after a visit is a row of `stateSize` numbers, so that a route can be reckoned on from any visit. Nothing is allocated.
 */
export class Reckoner {
  /** Numbers in a state: time, metres, whether there was a break, and the levels of every compartment, stock and head. */
  readonly stateSize: number;
  private readonly table: JobTable;
  private readonly of: RigTable;
  private readonly travelMs: Int32Array;
  private readonly travelM: Int32Array;
  private readonly places: number;
  private readonly compartments: number;
  private readonly stocks: number;
  /** [c]: what a compartment holds by itself, and with the bags that are poured into it; time to pour a part of them. */
  private readonly own: Float64Array;
  private readonly capacity: Float64Array;
  private readonly pourMs: Float64Array;
  private readonly fillMs: Float64Array;
  private readonly stockLimit: Float64Array;
  private readonly fillPoints: FillPoints;
  private readonly stockOf: Int32Array;
  private readonly rinseMs: Float64Array;
  private readonly rinseParts: Float64Array;
  private readonly startMs: number;
  /** When the rig has to be home at the latest. */
  readonly latestMs: number;
  /** When the last visit was reached: with every fill point on the way, before any wait. */
  arrivedMs = 0;
  /** The state, and where its parts begin. */
  private readonly state: Float64Array;
  private readonly used: number;
  private readonly given: number;
  private readonly held: number;
  private readonly drawn: number;
  private readonly topUp: number;
  private readonly head: number;
  /** The first person's work less the second's since both last came together at a stop; and whether no refill fell into the op. */
  private lead = 0;
  private parted = true;
  /** Where the hours of the day begin in the table. */
  private hours = 0;

  constructor(table: JobTable, rigIndex: number) {
    const { problem } = table;
    const of = table.rigs[rigIndex] as RigTable;
    const { rig } = of;
    this.table = table;
    this.of = of;
    this.travelMs = problem.travelMs;
    this.travelM = problem.travelM;
    this.places = table.places;
    this.compartments = rig.compartments.length;
    this.stocks = problem.stocks.length;
    const bags = rig.compartments.map((_, c) => rig.compartments.find((each) => each.pours?.into === c));
    this.own = Float64Array.from(rig.compartments, (each) => each.capacityParts);
    this.capacity = this.own.map((parts, c) => parts + (bags[c]?.capacityParts ?? 0));
    this.pourMs = Float64Array.from(bags, (each) => each?.pours?.msPerPart ?? 0);
    this.fillMs = Float64Array.from(rig.compartments, (each) => each.fillMsPerPart);
    this.stockLimit = stockLimits(table, rigIndex);
    this.fillPoints = new FillPoints(table);
    this.stockOf = Int32Array.from(problem.materials, (each) => each.stock);
    this.rinseMs = Float64Array.from(problem.materials, (each) => each.rinseMs);
    this.rinseParts = Float64Array.from(problem.materials, (each) => each.rinseParts);
    this.startMs = rig.shiftStartMs + rig.morningMs;
    this.latestMs = rig.shiftStartMs + rig.shiftMs + rig.overtimeMs - rig.eveningMs;
    this.used = FIXED;
    this.given = this.used + this.compartments;
    this.held = this.given + this.compartments;
    this.drawn = this.held + this.compartments;
    this.topUp = this.drawn + this.stocks;
    this.head = this.topUp + this.stocks;
    this.stateSize = this.head + of.machines;
    this.state = new Float64Array(this.stateSize);
  }

  /** The day whose hours count from now on. */
  setDay(day: number): void {
    this.hours = (this.table.rowOf[day] as number) * this.table.jobs;
  }

  /** The state in which the rig leaves home. */
  leaveHome(): void {
    const { state, compartments } = this;
    state.fill(0);
    state[TIME] = this.startMs;
    state[BROKE] = this.of.rig.breakAfterMs < 0 ? 1 : 0;
    for (let c = 0; c < compartments; c += 1) {
      state[this.given + c] = this.capacity[c] as number;
      state[this.held + c] = -1;
    }
    this.takeUpAboard();
    for (let at = this.head; at < this.stateSize; at += 1) state[at] = -1;
  }

  /** What a rig that is under way has aboard. */
  private takeUpAboard(): void {
    const { state, compartments, of } = this;
    const { begins } = of.rig;
    if (begins === undefined) return;
    for (let c = 0; c < compartments; c += 1) {
      const bags = of.rig.compartments.findIndex((each) => each.pours?.into === c);
      const parts = (begins.parts[c] ?? 0) + (begins.parts[bags] ?? 0);
      state[this.given + c] = parts;
      state[this.used + c] = (this.capacity[c] as number) - parts;
      state[this.held + c] = begins.materials[c] ?? -1;
    }
    for (let s = 0; s < this.stocks; s += 1) {
      state[this.drawn + s] = Math.max(0, (this.stockLimit[s] as number) - (begins.stockParts[s] ?? 0));
    }
  }

  /** Takes up a state that was stored before. */
  load(rows: Float64Array, at: number): void {
    const { state, stateSize } = this;
    for (let k = 0; k < stateSize; k += 1) state[k] = rows[at + k] as number;
  }

  store(rows: Float64Array, at: number): void {
    const { state, stateSize } = this;
    for (let k = 0; k < stateSize; k += 1) rows[at + k] = state[k] as number;
  }

  /** Time of day of the state. ms */
  get timeMs(): number {
    return this.state[TIME] as number;
  }

  /** Length of the paid day, once it is finished. ms */
  get paidMs(): number {
    return (this.state[TIME] as number) + this.of.rig.eveningMs - this.of.rig.shiftStartMs;
  }

  get hadBreak(): boolean {
    return this.of.rig.breakAfterMs >= 0 && this.state[BROKE] === 1;
  }

  /** Drives from a place to a visit and does it; false where a window is missed, it is too late, or a stock is not to be had. */
  visit(from: number, code: number): boolean {
    const { state, table, of } = this;
    const job = Math.trunc(code / table.width);
    const place = table.placeOf[job] as number;
    const first = of.opStart[code] as number;
    const end = of.opStart[code + 1] as number;
    if (!this.arrive(from, place, first, end)) return false;
    this.arrivedMs = state[TIME] as number;
    const opens = table.openMs[this.hours + job] as number;
    if ((state[TIME] as number) < opens) state[TIME] = opens;
    if (!this.inTime(table.closeMs[job] as number)) return false;
    this.takeBreak();
    this.spend(of.beforeMs[code] as number);
    this.lead = 0;
    for (let op = first; op < end; op += 1) if (!this.work(op, place)) return false;
    if (!this.inTime(table.doneMs[this.hours + job] as number)) return false;
    this.spend(of.afterMs[code] as number);
    return (state[TIME] as number) <= this.latestMs;
  }

  /** Drives home and ends the day. Cost without lateness, nano-dollars; infinite where the day is too long. */
  finish(from: number): number {
    const { rig, homePlace } = this.of;
    this.drive(from, homePlace);
    if ((this.state[TIME] as number) > this.latestMs) return Number.POSITIVE_INFINITY;
    const paid = this.paidMs;
    const over = Math.max(0, paid - rig.shiftMs);
    const metres = this.state[METRES] as number;
    return rig.costPerDay + paid * rig.costPerMs + over * rig.overtimeCostPerMs + metres * rig.costPerM;
  }

  private spend(ms: number): void {
    this.state[TIME] = (this.state[TIME] as number) + ms;
  }

  private drive(from: number, to: number): void {
    const { state } = this;
    const at = from * this.places + to;
    state[TIME] = (state[TIME] as number) + (this.travelMs[at] as number);
    state[METRES] = (state[METRES] as number) + (this.travelM[at] as number);
  }

  /** Drives to a visit; by way of a fill point where the stock aboard does not last through the visit. */
  private arrive(from: number, to: number, first: number, end: number): boolean {
    const short = this.shortOf(first, end);
    if (short < 0) {
      this.drive(from, to);
      return true;
    }
    const { fillPoints } = this;
    const now = this.state[TIME] as number;
    if (fillPoints.find(now, to, to, short) < 0) return false;
    const round = fillPoints.wayMs;
    const station = fillPoints.find(now, from, to, short);
    const direct = this.travelMs[from * this.places + to] as number;
    if (fillPoints.wayMs - direct > round && this.couldStart(first, end)) {
      this.drive(from, to);
      return true;
    }
    this.goRound(station);
    return true;
  }

  private goRound(station: number): void {
    const { wayMs, wayM } = this.fillPoints;
    this.spend(wayMs);
    this.state[METRES] = (this.state[METRES] as number) + wayM;
    this.supply(station);
  }

  /** A stock that the ops of a visit use up, or -1. */
  private shortOf(first: number, end: number): number {
    const { state, of } = this;
    for (let stock = 0; stock < this.stocks; stock += 1) {
      let need = state[this.drawn + stock] as number;
      for (let op = first; op < end; op += 1) {
        if (of.stock[op] !== stock || (of.material[op] as number) < 0) continue;
        const last = of.drawStart[op + 1] as number;
        for (let draw = of.drawStart[op] as number; draw < last; draw += 1) {
          const c = of.drawCompartment[draw] as number;
          need += Math.max(0, (of.drawParts[draw] as number) - (state[this.given + c] as number));
        }
      }
      if (need > (this.stockLimit[stock] as number)) return stock;
    }
    return -1;
  }

  /** True where the first op finds at least something in its compartment. */
  private couldStart(first: number, end: number): boolean {
    const { of } = this;
    if (first === end) return true;
    const draw = of.drawStart[first] as number;
    if (draw === of.drawStart[first + 1]) return true;
    const c = of.drawCompartment[draw] as number;
    return (this.state[this.used + c] as number) < (this.capacity[c] as number) / 2;
  }

  private work(op: number, place: number): boolean {
    const { of } = this;
    const ms = this.swapMs(op) + (of.serviceMs[op] as number);
    const sign = of.second[op] === 1 ? -1 : 1;
    const before = sign * this.lead;
    this.lead = sign * (before + ms);
    // The stop has lasted as long as the longer of the two persons' work.
    const added = Math.max(0, before + ms) - Math.max(0, before);
    this.spend(added);
    this.parted = true;
    const last = of.drawStart[op + 1] as number;
    for (let draw = of.drawStart[op] as number; draw < last; draw += 1) {
      if (!this.use(op, of.drawCompartment[draw] as number, of.drawParts[draw] as number, place)) return false;
    }
    if (this.parted) return true;
    // A refill brings both together, at worst before anything of the op is done.
    this.spend(ms - added);
    this.lead = 0;
    return true;
  }

  /** Time to fit the head of an op. */
  private swapMs(op: number): number {
    const { state, of } = this;
    const machine = of.machine[op] as number;
    if (machine < 0) return 0;
    const at = this.head + machine;
    const fitted = state[at] as number;
    state[at] = of.head[op] as number;
    return fitted >= 0 && fitted !== of.head[op] ? (of.swapMs[op] as number) : 0;
  }

  /** Draws parts out of a compartment, with the refills that this takes. */
  private use(op: number, c: number, parts: number, place: number): boolean {
    const { state, of } = this;
    const { rig } = of;
    const stock = of.stock[op] as number;
    const capacity = this.capacity[c] as number;
    if (capacity <= 0) return parts <= 0;
    this.change(of.material[op] as number, c, stock);
    let left = parts;
    const rest = capacity - (state[this.used + c] as number);
    if (left > rest && rest * rig.refillMs < rig.midZoneMs * capacity) {
      if (!this.fill(c, stock, Math.min(capacity, left), op, place, false)) return false;
    }
    for (;;) {
      const step = Math.min(left, capacity - (state[this.used + c] as number));
      this.draw(c, stock, step);
      left -= step;
      if (left <= 0) return true;
      if (!this.fill(c, stock, Math.min(capacity, left), op, place, true)) return false;
    }
  }

  private change(material: number, c: number, stock: number): void {
    const { state } = this;
    const before = state[this.held + c] as number;
    if (before === material) return;
    state[this.held + c] = material;
    if (before < 0) return;
    this.parted = false;
    this.spend(this.of.rig.refillMs + (this.rinseMs[before] as number));
    state[this.drawn + stock] = (state[this.drawn + stock] as number) + (this.rinseParts[before] as number);
    this.emptyUsed();
    state[this.given + c] = 0;
  }

  private emptyUsed(): void {
    for (let at = this.used; at < this.given; at += 1) this.state[at] = 0;
  }

  private draw(c: number, stock: number, parts: number): void {
    const { state } = this;
    const used = state[this.used + c] as number;
    const own = this.own[c] as number;
    const poured = Math.max(0, used + parts - own) - Math.max(0, used - own);
    state[this.used + c] = used + parts;
    const given = state[this.given + c] as number;
    const free = Math.min(parts, given);
    state[this.given + c] = given - free;
    const more = parts - free;
    state[this.drawn + stock] = (state[this.drawn + stock] as number) + more;
    // Bags are put on the machine in no time, and poured into the hopper where it works.
    this.spend(poured * (this.pourMs[c] as number) + Math.max(0, more - poured) * (this.fillMs[c] as number));
    this.spend(more * (state[this.topUp + stock] as number));
  }

  /** A refill from the rig, or a trip to a fill point where the rig has too little left. */
  private fill(c: number, stock: number, wanted: number, op: number, place: number, inside: boolean): boolean {
    const { state } = this;
    const { rig } = this.of;
    const spent = (state[this.drawn + stock] as number) - (state[this.given + c] as number);
    this.parted = false;
    // However much is wanted: a day has an end.
    if (!((state[TIME] as number) <= this.latestMs)) return false;
    if (inside) this.spend(rig.midZoneMs);
    if ((this.stockLimit[stock] as number) - spent >= wanted) {
      this.spend(rig.refillMs);
      this.emptyUsed();
      return true;
    }
    const station = this.fillPoints.find(state[TIME] as number, place, place, stock);
    if (station < 0) return false;
    this.spend(this.of.reloadMs[op] as number);
    this.goRound(station);
    return true;
  }

  private supply(station: number): void {
    const { state, stocks, fillPoints } = this;
    this.emptyUsed();
    for (let stock = 0; stock < stocks; stock += 1) {
      const ms = fillPoints.partMs(station, stock);
      if (ms < 0) continue;
      state[this.topUp + stock] = ms;
      state[this.drawn + stock] = -this.compartmentParts(stock);
    }
    for (let c = 0; c < this.compartments; c += 1) {
      const stock = this.stockHeld(c);
      // What goes into a compartment here is paid for as it is used, like what goes into the rig's stock.
      if (fillPoints.partMs(station, Math.max(0, stock)) >= 0) state[this.given + c] = 0;
    }
  }

  /** What the compartments that hold a stock can take beside the rig's own store. */
  private compartmentParts(stock: number): number {
    let parts = 0;
    for (let c = 0; c < this.compartments; c += 1) {
      if (this.stockHeld(c) === stock) parts += this.capacity[c] as number;
    }
    return parts;
  }

  /** Stock of what a compartment holds, or -1. */
  private stockHeld(c: number): number {
    const material = this.state[this.held + c] as number;
    return material < 0 ? -1 : (this.stockOf[material] as number);
  }

  /**
   * Whether it is not yet later than a time of day. Parts are paid for when they are used; where it is close, the time is added that
   * they may have taken when they were loaded.
   */
  private inTime(closeMs: number): boolean {
    const { state, stocks, compartments } = this;
    let time = state[TIME] as number;
    if (time > closeMs) return false;
    if (time < closeMs - NEAR_CLOSE_MS) return true;
    for (let c = 0; c < compartments; c += 1) {
      if ((state[this.held + c] as number) < 0 || (state[this.given + c] as number) > 0) continue;
      time += ((this.capacity[c] as number) - (state[this.used + c] as number)) * (this.fillMs[c] as number);
    }
    for (let stock = 0; stock < stocks; stock += 1) {
      const aboard = (this.stockLimit[stock] as number) - (state[this.drawn + stock] as number);
      time += Math.max(0, aboard) * (state[this.topUp + stock] as number);
    }
    return time <= closeMs;
  }

  private takeBreak(): void {
    const { state } = this;
    const { rig } = this.of;
    if (state[BROKE] === 1 || (state[TIME] as number) < rig.breakAfterMs) return;
    this.spend(rig.breakMs);
    state[BROKE] = 1;
  }
}
