import type { Chain } from './chain.ts';
import { keepLedger, type Ledger, type Run, rinsedOut } from './ledger.ts';
import { add, LinearProgramme, type Sum } from './linear.ts';
import type { RigModel } from './model.ts';
import { drawnAfter } from './part-done.ts';
import { Pours } from './programme-bags.ts';
import { TimeOfDay } from './programme-times.ts';
import type { RefillEvent } from './search-limits.ts';

/** What a part that is moved during the day costs beside its time, so that nothing is moved to no end. seconds */
const MOVED_S = 1e-8;
/** What it costs to refill inside an op a whole op too early. seconds */
const EARLY_S = 1e-5;

export type ProgrammeOptions = {
  /** True: where refills inside ops lie is to be found, and draws count as even over the ground; false: it is as given, to the part. */
  readonly free: boolean;
  /** Visit on whose arrival the break falls, or -1. */
  readonly breakVisit: number;
};

/**
 * The day between given events as a linear programme: how much is moved at each event, from where, and (`free`) after how many units
 * the refills inside ops lie. Times in seconds, amounts in parts. The least value is that of the paid day, with overtime at its price.
 */
export class DayProgramme {
  readonly chain: Chain;
  readonly model: RigModel;
  readonly events: readonly (RefillEvent | null)[];
  readonly ledger: Ledger;
  readonly linear: LinearProgramme;
  readonly options: ProgrammeOptions;
  /** Variables, -1 for none: [e * compartments + c] parts into a compartment, [e * stocks + s] into the stock, [e] share of the op left. */
  readonly fillAt: Int32Array;
  readonly buyAt: Int32Array;
  readonly leftAt: Int32Array;
  /** [e * stocks + s]: bag places that a dry stock takes up after the event. */
  readonly bagsAt: Int32Array;
  /** What is poured out of the bags on machines. */
  readonly pours: Pours;
  /** Cost of the day without what the variables cost. nano-dollars */
  readonly fixedCost: number;
  /** [e * compartments + c]: parts used after event e. */
  private readonly uses: Sum[] = [];
  private readonly dryStocks: readonly number[];
  private count = 0;

  constructor(chain: Chain, events: readonly RefillEvent[], options: ProgrammeOptions) {
    const { model } = chain;
    this.chain = chain;
    this.model = model;
    this.options = options;
    this.events = [null, ...events];
    this.ledger = keepLedger(chain, events);
    this.dryStocks = Array.from(model.bagParts.keys()).filter((s) => s !== model.water && this.isUsed(s));
    const rows = this.events.length;
    this.fillAt = new Int32Array(rows * model.compartments).fill(-1);
    this.buyAt = new Int32Array(rows * model.stocks).fill(-1);
    this.bagsAt = new Int32Array(rows * model.stocks).fill(-1);
    this.leftAt = new Int32Array(rows).fill(-1);
    for (let e = 0; e < rows; e += 1) this.declare(e);
    this.pours = new Pours(chain, this.events, this.count);
    const times = new TimeOfDay(this, this.count + this.pours.count);
    this.linear = new LinearProgramme(times.variables);
    this.cutUses();
    for (let c = 0; c < model.compartments; c += 1) this.boundCompartment(c);
    for (let s = 0; s < model.stocks; s += 1) this.boundStock(s);
    if (this.dryStocks.length > 1) this.boundBags();
    if (model.mayOverload) this.boundPayload();
    this.fixedCost = times.play();
    for (const variable of this.fillAt.subarray(model.compartments)) this.addMoved(variable);
    for (const variable of this.buyAt.subarray(model.stocks)) this.addMoved(variable);
  }

  /** Cost of a day at a value of the programme. nano-dollars */
  costOf(objective: number): number {
    return this.fixedCost + objective * 1000 * this.model.rig.costPerMs;
  }

  /** Value of the programme at a cost of the day. */
  valueOf(cost: number): number {
    return (cost - this.fixedCost) / (1000 * this.model.rig.costPerMs);
  }

  /** Material's run of compartment c after event e, or undefined. */
  runOf(e: number, c: number) {
    return this.ledger.runs[this.ledger.runAt[e * this.model.compartments + c] as number];
  }

  /** Whether stock s can be had at event e from outside the rig. */
  gives(e: number, s: number): boolean {
    const { model } = this;
    const event = this.eventAt(e);
    if (event === null) return model.homeHolds[s] === 1;
    return event.station >= 0 && (((model.holds[event.station] as number) >> s) & 1) === 1;
  }

  private eventAt(e: number): RefillEvent | null {
    return this.events[e] as RefillEvent | null;
  }

  /** Whether event e is at home or at a station. */
  private isSupplied(e: number): boolean {
    const event = this.eventAt(e);
    return event === null || event.station >= 0;
  }

  private isUsed(s: number): boolean {
    return (this.chain.stockParts[s] as number) > 0;
  }

  private givesDry(e: number): boolean {
    return this.dryStocks.some((s) => this.gives(e, s));
  }

  private declare(e: number): void {
    const { model } = this;
    const event = this.eventAt(e);
    for (let c = 0; c < model.compartments; c += 1) {
      const run = this.runOf(e, c);
      if (run === undefined) continue;
      if (this.isSupplied(e) ? this.gives(e, run.stock) : (model.stockCapacity[run.stock] as number) > 0)
        this.fillAt[e * model.compartments + c] = this.count++;
    }
    for (let s = 0; s < model.stocks; s += 1) {
      if (!this.isUsed(s) || !this.gives(e, s) || (model.stockCapacity[s] as number) === 0) continue;
      this.buyAt[e * model.stocks + s] = this.count++;
    }
    if (this.dryStocks.length > 1 && this.givesDry(e))
      for (const s of this.dryStocks) this.bagsAt[e * model.stocks + s] = this.count++;
    if (this.options.free && event !== null && event.done > 0) this.leftAt[e] = this.count++;
  }

  private addMoved(variable: number): void {
    if (variable >= 0) this.linear.addCost(variable, MOVED_S);
  }

  /** Parts of a draw that are gone at event e, which lies inside its op. */
  addDrawn(target: Sum, e: number, parts: number, area: number, times: number): void {
    const left = this.leftAt[e] as number;
    const n = this.linear.variables;
    if (left >= 0) {
      target[left] = (target[left] as number) - times * parts;
      target[n] = (target[n] as number) + times * parts;
    } else {
      const done = (this.events[e] as RefillEvent).done;
      target[n] = (target[n] as number) + times * (done > 0 ? drawnAfter(parts, done, area) : 0);
    }
  }

  private cutUses(): void {
    const { chain, model, linear, uses } = this;
    const { ops, compartments } = model;
    for (let k = 0; k < this.events.length * compartments; k += 1) uses.push(linear.sum());
    let e = 0;
    for (let i = 0; i < chain.length; i += 1) {
      const op = chain.op[i] as number;
      const area = ops.area[op] as number;
      const before = e;
      while (this.events[e + 1]?.position === i) e += 1;
      for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1) {
        const c = ops.drawCompartment[draw] as number;
        const parts = ops.drawParts[draw] as number;
        for (let inside = before + 1; inside <= e; inside += 1) {
          this.addDrawn(uses[(inside - 1) * compartments + c] as Sum, inside, parts, area, 1);
          this.addDrawn(uses[inside * compartments + c] as Sum, inside, parts, area, -1);
        }
        const last = uses[e * compartments + c] as Sum;
        last[linear.variables] = (last[linear.variables] as number) + parts;
      }
      this.orderRefills(before + 1, e);
    }
  }

  /** Refills inside one op lie one after the other, and not before its beginning; as late as may be where it costs no more. */
  private orderRefills(from: number, to: number): void {
    const { linear } = this;
    let earlier = -1;
    for (let e = from; e <= to; e += 1) {
      const left = this.leftAt[e] as number;
      if (left < 0) continue;
      linear.addCost(left, EARLY_S);
      const order = linear.sum();
      order[left] = 1;
      if (earlier >= 0) order[earlier] = -1;
      linear.atMost(order, earlier >= 0 ? 0 : 1);
      earlier = left;
    }
  }

  /** A compartment never holds less than nothing or more than its capacity. */
  private boundCompartment(c: number): void {
    const { linear, model } = this;
    if ((model.poursInto[c] as number) >= 0) return;
    if ((model.bagsOf[c] as number) >= 0) {
      this.pours.bound(this, c);
      return;
    }
    const C = model.compartments;
    const level = linear.sum();
    for (let e = 0; e < this.events.length; e += 1) {
      // Before the morning and after the last event there is no run, which differs from any.
      const run = this.ledger.runAt[e * C + c];
      if (run !== this.ledger.runAt[(e - 1) * C + c]) level.fill(0);
      const fill = this.fillAt[e * C + c] as number;
      if (fill >= 0) {
        level[fill] = 1;
        linear.atMost(level, (e === 0 ? model.homeParts : model.capacity)[c] as number);
      }
      add(level, this.uses[e * C + c] as Sum, -1);
      const last = run !== this.ledger.runAt[(e + 1) * C + c];
      if (this.runOf(e, c) === undefined) continue;
      if (last || (this.fillAt[(e + 1) * C + c] as number) >= 0) linear.atLeast(level);
    }
  }

  /** What the rig carries of a stock never falls below nothing or rises above its room. */
  private boundStock(s: number): void {
    const { linear, model } = this;
    const level = linear.sum();
    for (let e = 0; e < this.events.length; e += 1) {
      const taken = this.takeFromStock(level, e, s);
      if (taken) linear.atLeast(level);
      const buy = this.buyAt[e * model.stocks + s] as number;
      if (buy >= 0) {
        level[buy] = 1;
        linear.atMost(level, (e === 0 ? model.homeStock : model.stockCapacity)[s] as number);
      }
      const bags = this.bagsAt[e * model.stocks + s] as number;
      if (bags < 0) continue;
      const loose = level.slice();
      loose[bags] = -(model.bagParts[s] as number);
      linear.atMost(loose, 0);
    }
  }

  /** Rinses and refills from the rig at event e; false where there are none. */
  private takeFromStock(level: Sum, e: number, s: number): boolean {
    const { model } = this;
    const event = this.eventAt(e);
    if (event === null) return false;
    let taken = false;
    const rinse = s === model.water ? this.rinsedFromRig(e) : 0;
    if (rinse > 0) {
      level[this.linear.variables] = (level[this.linear.variables] as number) - rinse;
      taken = true;
    }
    if (event.station >= 0) return taken;
    for (let c = 0; c < model.compartments; c += 1) {
      const fill = this.fillAt[e * model.compartments + c] as number;
      if (fill < 0 || (this.runOf(e, c) as Run).stock !== s) continue;
      level[fill] = (level[fill] as number) - 1;
      taken = true;
    }
    return taken;
  }

  /** Water out of the rig's stock for the changes of event e. parts */
  rinsedFromRig(e: number): number {
    if (this.gives(e, this.model.water)) return 0;
    const changes = this.eventAt(e)?.changes ?? 0;
    let parts = 0;
    for (let c = 0; changes >> c !== 0; c += 1) {
      if (((changes >> c) & 1) === 0) continue;
      parts += rinsedOut(this.chain, this.ledger, e, c).rinseParts;
    }
    return parts;
  }

  /** Bag places that the dry stocks take up together, wherever one of them can be taken on. */
  private boundBags(): void {
    const { linear, model } = this;
    for (let e = 0; e < this.events.length; e += 1) {
      if (!this.givesDry(e)) continue;
      const taken = linear.sum();
      for (const s of this.dryStocks) taken[this.bagsAt[e * model.stocks + s] as number] = 1;
      linear.atMost(taken, model.rig.bagPlaces);
    }
  }

  private boundPayload(): void {
    const { linear, model } = this;
    const C = model.compartments;
    const aboard = linear.sum();
    const limit = model.rig.cargoLimit / 1000;
    for (let e = 0; e < this.events.length; e += 1) {
      for (let c = 0; c < C; c += 1) {
        const fill = this.fillAt[e * C + c] as number;
        const weight = (model.weight[this.runOf(e, c)?.stock ?? 0] as number) / 1000;
        if (fill >= 0 && this.isSupplied(e)) aboard[fill] = (aboard[fill] as number) + weight;
      }
      for (let s = 0; s < model.stocks; s += 1) {
        const buy = this.buyAt[e * model.stocks + s] as number;
        if (buy >= 0) aboard[buy] = (model.weight[s] as number) / 1000;
      }
      const rinse = this.rinsedFromRig(e) * (model.weight[model.water] ?? 0);
      aboard[linear.variables] = (aboard[linear.variables] as number) - rinse / 1000;
      if (this.isSupplied(e)) linear.atMost(aboard, limit);
      for (let c = 0; c < C; c += 1)
        add(aboard, this.uses[e * C + c] as Sum, -(model.weight[this.runOf(e, c)?.stock ?? 0] as number) / 1000);
    }
  }
}
