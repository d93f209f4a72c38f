import type { Chain } from './chain.ts';
import { FROM_HOME, NOT_ABOARD, type RigModel } from './model.ts';
import type { RefillEvent } from './search-limits.ts';

/** Fields at the head of a label. */
export const TIME = 0;
/** Linear cost so far: pay at the regular wage and distance. */
export const COST = 1;
/** 1 once the break has been taken. */
export const BREAK = 2;
/** Last event node, -1 for none. */
export const NODE = 3;
/** Units of the op in hand that are done. */
export const DONE = 4;
/** Stations visited since work last went on, and their stocks. */
export const STATIONS = 5;
export const GIVEN = 6;
/** 1 right after a refill from the rig. */
export const REFILLED = 7;
/** 1 where parts from home were used after a station had given their stock. */
export const CARRIES = 8;
/** The first person's work less the second's since both last came together at this stop. ms */
export const LEAD = 9;
const HEAD = 10;

/**
 * Fields per compartment: used since it could last be filled; left of what was put in directly; of that, from home; material; what
 * a refill from the rig before the last station may have left in it out of the stock from home.
 */
export const USED = 0;
export const DIRECT = 1;
export const FREE = 2;
export const MATERIAL = 3;
export const PRELOADED = 4;
export const PER_COMPARTMENT = 5;

/**
 * Fields per stock: drawn from the rig since the last station; drawn in all of what home gave; price of the last station; 1 where
 * the rig's stock has been opened since that station; most drawn between two stations before; parts from home used after a station
 * had given the stock, out of the rig's stock and out of compartments.
 */
export const DRAWN = 0;
export const HOME_DRAWN = 1;
export const PRICE = 2;
export const OPENED = 3;
export const MOST_DRAWN = 4;
export const CARRIED_STOCK = 5;
export const CARRIED_DIRECT = 6;
/** Most of a dry stock in bags after a station, in the stretches between stations before. */
export const PAST_MOST = 7;
/** Parts from home used after a station had given the stock, put into a compartment by the rig before it. */
export const CARRIED_PRELOADED = 8;
export const PER_STOCK = 9;

/** Labels as rows of one typed array, taken and given back by number; and the tree of their events. */
export class Labels {
  readonly model: RigModel;
  readonly stride: number;
  readonly compartmentsAt = HEAD;
  readonly stocksAt: number;
  readonly momentsAt: number;
  data: Float64Array;
  private readonly costPerMs: number;
  private used = 0;
  private readonly spare: number[] = [];

  nodes = 0;
  nodeParent = new Int32Array(64);
  nodePosition = new Int32Array(64);
  nodeDone = new Float64Array(64);
  nodeStation = new Int32Array(64);
  /** Bit c: compartment c is rinsed at the event. */
  nodeChanges = new Int32Array(64);

  constructor(model: RigModel) {
    this.model = model;
    this.costPerMs = model.rig.costPerMs;
    this.stocksAt = HEAD + PER_COMPARTMENT * model.compartments;
    this.momentsAt = this.stocksAt + PER_STOCK * model.stocks;
    this.stride = this.momentsAt + model.moments.count;
    this.data = new Float64Array(this.stride * 64);
  }

  /** Time that passes, at the regular wage. */
  spend(at: number, ms: number): void {
    const { data } = this;
    data[at + TIME] = (data[at + TIME] as number) + ms;
    data[at + COST] = (data[at + COST] as number) + ms * this.costPerMs;
  }

  clear(): void {
    this.used = 0;
    this.spare.length = 0;
    this.nodes = 0;
  }

  /** A row with the contents of another; its start index in `data`. Read `data` anew afterwards: it may have moved. */
  copy(from: number): number {
    const at = this.take();
    const { data } = this;
    for (let k = 0; k < this.stride; k += 1) data[at + k] = data[from + k] as number;
    return at;
  }

  /** A row with these contents; its start index in `data`. */
  put(row: Float64Array): number {
    const at = this.take();
    this.data.set(row, at);
    return at;
  }

  release(at: number): void {
    this.spare.push(at);
  }

  private take(): number {
    const again = this.spare.pop();
    if (again !== undefined) return again;
    const at = this.used * this.stride;
    this.used += 1;
    if (at + this.stride > this.data.length) {
      const data = new Float64Array(this.data.length * 2);
      data.set(this.data);
      this.data = data;
    }
    return at;
  }

  /** The label of a rig that leaves home at `timeMs` with everything loaded as far as it goes, or with what it begins with. */
  first(chain: Chain, timeMs: number, cost: number): number {
    const at = this.take();
    const { data, model } = this;
    data.fill(0, at, at + this.stride);
    data[at + TIME] = timeMs;
    data[at + COST] = cost;
    data[at + NODE] = -1;
    for (let s = 0; s < model.stocks; s += 1) {
      data[at + this.stocksAt + s * PER_STOCK + PRICE] = model.homeHolds[s] === 1 ? FROM_HOME : NOT_ABOARD;
    }
    for (let c = 0; c < model.compartments; c += 1) {
      const material = chain.firstMaterial(c);
      const row = at + HEAD + c * PER_COMPARTMENT;
      data[row + MATERIAL] = material;
      const stock = material < 0 ? -1 : (model.problem.materials[material] as { stock: number }).stock;
      const held = stock >= 0 && model.homeHolds[stock] === 1 ? (model.homeParts[c] as number) : 0;
      data[row + USED] = (model.capacity[c] as number) - held;
      data[row + DIRECT] = held;
      data[row + FREE] = held;
    }
    return at;
  }

  addNode(parent: number, position: number, done: number, station: number, changes: number): number {
    const node = this.nodes;
    if (node === this.nodeParent.length) this.growNodes();
    this.nodes = node + 1;
    this.nodeParent[node] = parent;
    this.nodePosition[node] = position;
    this.nodeDone[node] = done;
    this.nodeStation[node] = station;
    this.nodeChanges[node] = changes;
    return node;
  }

  /** The events that lead to a label, in order of time. */
  eventsOf(label: number): RefillEvent[] {
    const events: RefillEvent[] = [];
    for (let node = this.data[label + NODE] as number; node >= 0; node = this.nodeParent[node] as number) {
      events.push({
        position: this.nodePosition[node] as number,
        done: this.nodeDone[node] as number,
        station: this.nodeStation[node] as number,
        changes: this.nodeChanges[node] as number,
      });
    }
    return events.reverse();
  }

  private growNodes(): void {
    const size = this.nodeParent.length * 2;
    const grown = (from: Int32Array): Int32Array<ArrayBuffer> => {
      const to = new Int32Array(size);
      to.set(from);
      return to;
    };
    this.nodeParent = grown(this.nodeParent);
    this.nodePosition = grown(this.nodePosition);
    this.nodeStation = grown(this.nodeStation);
    this.nodeChanges = grown(this.nodeChanges);
    const done = new Float64Array(size);
    done.set(this.nodeDone);
    this.nodeDone = done;
  }
}
