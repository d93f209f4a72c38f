import type { Chain } from './chain.ts';
import { COST, DONE, DRAWN, FREE, type Labels, MATERIAL, PER_COMPARTMENT, PER_STOCK, TIME, USED } from './labels.ts';
import type { RigModel } from './model.ts';
import { servedAfter } from './part-done.ts';

/** What a label still has before it at least: for dropping labels that cannot become good enough. */
export class Outlook {
  private readonly model: RigModel;
  private readonly chain: Chain;
  private readonly labels: Labels;
  /** Least time of one event of any kind. */
  private readonly eventMs: number;
  private readonly costPerMs: number;
  private readonly costPerM: number;
  private readonly regularEndMs: number;
  private readonly overtimeCostPerMs: number;
  private readonly guessCompartment: number;
  private readonly guessStock: Float64Array;

  constructor(model: RigModel, chain: Chain, labels: Labels) {
    const { rig } = model;
    this.model = model;
    this.chain = chain;
    this.labels = labels;
    this.eventMs = model.problem.stations.reduce((least, each) => Math.min(least, each.visitMs), rig.refillMs);
    this.costPerMs = rig.costPerMs;
    this.costPerM = rig.costPerM;
    this.regularEndMs = rig.shiftStartMs + rig.shiftMs;
    this.overtimeCostPerMs = rig.overtimeCostPerMs;
    this.guessCompartment = rig.refillMs * rig.costPerMs * 0.5;
    this.guessStock = Float64Array.from(model.stockCapacity, (size) =>
      size > 0 ? (3 * rig.refillMs * rig.costPerMs) / size : 0,
    );
  }

  /** Least time from before op i to the end of the day. `from`: op i itself, or the one done last. */
  restMs(at: number, i: number, from: number): number {
    const { chain, model } = this;
    const ms = chain.leastMs[from] as number;
    const op = chain.op[from] as number;
    const after = ms - (chain.workMs[from] as number);
    if (from !== i) return after + this.refillMs(at, i);
    const done = this.labels.data[at + DONE] as number;
    if (done === 0) return ms + this.refillMs(at, i);
    // Inside an op only its time is counted, not its refills.
    const served = servedAfter(model.ops.serviceMs[op] as number, done, model.ops.area[op] as number);
    return Math.max(after, ms - served - (chain.swapMs[from] as number));
  }

  /** Time of day before which a wait may lie ahead. `from`: op i itself, or the one done last. */
  waitMs(i: number, from: number): number {
    const { chain, model } = this;
    const wait = chain.waitBefore[from] as number;
    if (from === i) return wait + (model.ops.serviceMs[chain.op[from] as number] as number);
    return wait + (model.ops.serviceMs[chain.op[from] as number] as number) + (chain.swapMs[from] as number);
  }

  /** Least time for what has still to be filled. */
  private refillMs(at: number, i: number): number {
    const { chain, model } = this;
    const { data, compartmentsAt } = this.labels;
    const C = model.compartments;
    let fills = 0;
    let events = 0;
    for (let c = 0; c < C; c += 1) {
      const look = i * C + c;
      const next = chain.nextMaterial[look] as number;
      if (next < 0 || (model.poursInto[c] as number) >= 0) continue;
      const row = at + compartmentsAt + c * PER_COMPARTMENT;
      const fits = data[row + MATERIAL] === next;
      // Pouring bags takes no less than filling, and bags are filled in the same events.
      const size = model.store[c] as number;
      if (size <= 0) continue;
      const free = fits ? (data[row + FREE] as number) : 0;
      if (!chain.poursBeside(c))
        fills += Math.max(0, (chain.totalParts[look] as number) - free) * (model.fillMs[c] as number);
      const short = (chain.runParts[look] as number) - (fits ? size - this.used(at, c) : 0);
      events = Math.max(events, Math.ceil(Math.max(0, short) / size) + (chain.laterRefills[look] as number));
    }
    return fills + events * this.eventMs;
  }

  /** What has been used of compartment c and of the bags beside it. */
  private used(at: number, c: number): number {
    const { data, compartmentsAt } = this.labels;
    const bags = this.model.bagsOf[c] as number;
    const own = data[at + compartmentsAt + c * PER_COMPARTMENT + USED] as number;
    return bags < 0 ? own : own + (data[at + compartmentsAt + bags * PER_COMPARTMENT + USED] as number);
  }

  /** Least cost of a day that goes on from a label, `restMs` of which are still to come. */
  cost(at: number, from: number, restMs: number): number {
    const { data } = this.labels;
    const end = (data[at + TIME] as number) + restMs;
    const over = Math.max(0, end - this.regularEndMs) * this.overtimeCostPerMs;
    const metres = this.chain.leastM[from] as number;
    return (data[at + COST] as number) + restMs * this.costPerMs + metres * this.costPerM + over;
  }

  /** Cost so far, and a guess at what it takes to make good what has been used: for choosing among labels, not for proving. */
  guess(at: number): number {
    const { labels, model } = this;
    const { data } = labels;
    let cost = data[at + COST] as number;
    for (let c = 0; c < model.compartments; c += 1) {
      const row = at + labels.compartmentsAt + c * PER_COMPARTMENT;
      const size = model.capacity[c] as number;
      if ((data[row + MATERIAL] as number) >= 0 && size > 0) {
        cost += ((data[row + USED] as number) / size) * this.guessCompartment;
      }
    }
    for (let s = 0; s < model.stocks; s += 1) {
      cost += (data[at + labels.stocksAt + s * PER_STOCK + DRAWN] as number) * (this.guessStock[s] as number);
    }
    return cost;
  }
}
