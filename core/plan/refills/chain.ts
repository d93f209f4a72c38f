import type { RigModel } from './model.ts';
import { addedMs, leadAfter } from './strands.ts';

/** Longest row in which waits for a stop to open are looked ahead to: they multiply the labels. */
const LOOKS_AHEAD = 10;

/**
 * A row of visits of one rig as a row of ops, in buffers that are used again for the next row. Chain positions `i` count the ops of
 * all visits; position `length` stands for the end of the day.
 */
export class Chain {
  readonly model: RigModel;
  visits = 0;
  length = 0;
  /** [visit] */
  job = new Int32Array(16);
  place = new Int32Array(16);
  mode = new Int32Array(16);
  start = new Int32Array(17);
  /** Counts the rows taken up, so that figures kept elsewhere can tell when they are stale. */
  loads = 0;
  /** [i] */
  op = new Int32Array(32);
  visitOf = new Int32Array(32);
  swapMs = new Float64Array(32);
  /** [i]: what the op adds to its visit where no refill lies in it: head swap and service, less what is done beside other work. */
  workMs = new Float64Array(32);
  /** [i * compartments + c]: material of the next use of c at or after i, -1 for none. */
  nextMaterial = new Int32Array(0);
  /** [i * compartments + c]: parts still to be used from c at or after i before its next change of material. */
  runParts = new Float64Array(0);
  /** [i * compartments + c]: parts still to be used from c in all; and refills that the runs after the one in hand take at least. */
  totalParts = new Float64Array(0);
  laterRefills = new Float64Array(0);
  /** [i * stocks + s]: parts still to be used at or after i, rinses with it. */
  stockParts = new Float64Array(0);
  /** [i]: weight still to be used. */
  weightLeft = new Float64Array(0);
  /** [i]: time from the start of op i to the end of the day without any refill, waiting or break; and metres. */
  leastMs = new Float64Array(0);
  leastM = new Float64Array(0);
  /** [i]: before this time of day at the start of op i, the rig may have to wait for a later stop to open. */
  waitBefore = new Float64Array(0);
  /** [visit]: the same at its arrival. */
  arriveWaitBefore = new Float64Array(0);
  /** [visit] leastMs at its arrival. */
  arriveLeastMs = new Float64Array(0);
  private anyShared = false;
  private readonly heads: Int32Array;

  constructor(model: RigModel) {
    this.model = model;
    const machines = model.ops.machine.reduce((top, each) => Math.max(top, each), -1);
    this.heads = new Int32Array(machines + 1);
  }

  /** Takes up a new row of visits: `count` jobs with their mode numbers (0 for a job's first mode). */
  load(jobs: ArrayLike<number>, modes: ArrayLike<number>, count: number): void {
    const { model } = this;
    this.reserveVisits(count);
    this.visits = count;
    let length = 0;
    for (let v = 0; v < count; v += 1) {
      const job = jobs[v] as number;
      const mode = (model.modes.first[job] as number) + (modes[v] as number);
      this.job[v] = job;
      this.mode[v] = mode;
      this.place[v] = (model.problem.jobs[job] as { place: number }).place;
      this.start[v] = length;
      const from = model.modes.opStart[mode] as number;
      const to = model.modes.opStart[mode + 1] as number;
      if (length + to - from > this.op.length) this.growOps(length + to - from);
      for (let op = from; op < to; op += 1) {
        this.visitOf[length] = v;
        this.op[length++] = op;
      }
    }
    this.start[count] = length;
    this.length = length;
    this.loads += 1;
    this.fitHeads();
    this.addWork();
    this.lookAhead();
  }

  private reserveVisits(count: number): void {
    if (count <= this.job.length) return;
    const size = count * 2;
    this.job = new Int32Array(size);
    this.place = new Int32Array(size);
    this.mode = new Int32Array(size);
    this.start = new Int32Array(size + 1);
  }

  private growOps(need: number): void {
    const op = new Int32Array(need * 2);
    op.set(this.op);
    this.op = op;
    const visitOf = new Int32Array(need * 2);
    visitOf.set(this.visitOf);
    this.visitOf = visitOf;
    this.swapMs = new Float64Array(need * 2);
    this.workMs = new Float64Array(need * 2);
  }

  /** The first op of each machine finds its head fitted. */
  private fitHeads(): void {
    const { heads, model } = this;
    heads.fill(-1);
    for (let i = 0; i < this.length; i += 1) {
      const op = this.op[i] as number;
      const machine = model.ops.machine[op] as number;
      const head = model.ops.head[op] as number;
      this.swapMs[i] = 0;
      if (machine < 0 || head < 0) continue;
      const fitted = heads[machine] as number;
      if (fitted >= 0 && fitted !== head) this.swapMs[i] = model.ops.swapMs[op] as number;
      heads[machine] = head;
    }
  }

  private addWork(): void {
    const { ops } = this.model;
    this.anyShared = false;
    for (let v = 0; v < this.visits; v += 1) {
      let lead = 0;
      if (this.isShared(v)) this.anyShared = true;
      for (let i = this.start[v] as number; i < (this.start[v + 1] as number); i += 1) {
        const op = this.op[i] as number;
        const ms = (this.swapMs[i] as number) + (ops.serviceMs[op] as number);
        this.workMs[i] = this.isShared(v) ? addedMs(lead, ops.second[op] === 1, ms) : ms;
        lead = leadAfter(lead, ops.second[op] === 1, ms);
      }
    }
  }

  /** Whether bags that are poured into compartment c may be poured beside other work, so that it takes no time. */
  poursBeside(c: number): boolean {
    return this.anyShared && (this.model.bagsOf[c] as number) >= 0;
  }

  /** Material of compartment c when the day begins: what it then holds or, where it is clean, what is used first; -1 for none. */
  firstMaterial(c: number): number {
    const held = this.model.homeMaterial[c] as number;
    return held < 0 ? (this.nextMaterial[c] as number) : held;
  }

  /** Whether two persons work side by side at a visit. */
  isShared(v: number): boolean {
    return this.model.modes.shared[this.mode[v] as number] === 1;
  }

  private lookAhead(): void {
    const { length } = this;
    const C = this.model.compartments;
    const S = this.model.stocks;
    if (this.weightLeft.length <= length) {
      const size = (length + 1) * 2;
      this.nextMaterial = new Int32Array(size * C);
      this.runParts = new Float64Array(size * C);
      this.totalParts = new Float64Array(size * C);
      this.laterRefills = new Float64Array(size * C);
      this.stockParts = new Float64Array(size * S);
      this.weightLeft = new Float64Array(size);
      this.leastMs = new Float64Array(size);
      this.leastM = new Float64Array(size);
      this.waitBefore = new Float64Array(size);
    }
    if (this.arriveLeastMs.length < this.visits + 1) {
      this.arriveLeastMs = new Float64Array(this.visits * 2 + 1);
      this.arriveWaitBefore = new Float64Array(this.visits * 2 + 1);
    }
    this.nextMaterial.fill(-1, length * C, (length + 1) * C);
    this.runParts.fill(0, length * C, (length + 1) * C);
    this.totalParts.fill(0, length * C, (length + 1) * C);
    this.laterRefills.fill(0, length * C, (length + 1) * C);
    this.stockParts.fill(0, length * S, (length + 1) * S);
    this.weightLeft[length] = 0;
    for (let i = length - 1; i >= 0; i -= 1) this.lookAheadFrom(i);
    this.addTimes();
  }

  /** Works out the look-ahead figures of position i from those of i + 1. */
  private lookAheadFrom(i: number): void {
    const { model, nextMaterial, runParts, stockParts, totalParts, laterRefills } = this;
    const { ops } = model;
    const C = model.compartments;
    const S = model.stocks;
    const row = i * C;
    for (let c = 0; c < C; c += 1) {
      nextMaterial[row + c] = nextMaterial[row + C + c] as number;
      runParts[row + c] = runParts[row + C + c] as number;
      totalParts[row + c] = totalParts[row + C + c] as number;
      laterRefills[row + c] = laterRefills[row + C + c] as number;
    }
    for (let s = 0; s < S; s += 1) stockParts[i * S + s] = stockParts[(i + 1) * S + s] as number;
    let weight = this.weightLeft[i + 1] as number;
    const op = this.op[i] as number;
    const material = ops.material[op] as number;
    const stock = ops.stock[op] as number;
    const end = ops.drawStart[op + 1] as number;
    for (let draw = ops.drawStart[op] as number; draw < end; draw += 1) {
      const at = row + (ops.drawCompartment[draw] as number);
      const parts = ops.drawParts[draw] as number;
      const later = nextMaterial[at] as number;
      if (later !== material) {
        const rinse = later < 0 ? 0 : (model.problem.materials[material] as { rinseParts: number }).rinseParts;
        if (model.water >= 0) {
          stockParts[i * S + model.water] = (stockParts[i * S + model.water] as number) + rinse;
          weight += rinse * (model.weight[model.water] as number);
        }
        if (later >= 0)
          laterRefills[at] = (laterRefills[at] as number) + this.fillsOf(at - row, runParts[at] as number);
        nextMaterial[at] = material;
        runParts[at] = 0;
      }
      runParts[at] = (runParts[at] as number) + parts;
      totalParts[at] = (totalParts[at] as number) + parts;
      stockParts[i * S + stock] = (stockParts[i * S + stock] as number) + parts;
      weight += parts * (model.weight[stock] as number);
    }
    this.weightLeft[i] = weight;
    if (model.carriesBags) this.lookBeside(row);
  }

  /** Bags beside a hopper hold what it holds. What is used of them counts with it. */
  private lookBeside(row: number): void {
    const { bagsOf, compartments } = this.model;
    for (let c = 0; c < compartments; c += 1) {
      const bags = bagsOf[c] as number;
      if (bags < 0) continue;
      this.nextMaterial[row + bags] = this.nextMaterial[row + c] as number;
      this.runParts[row + bags] = this.runParts[row + c] as number;
    }
  }

  private fillsOf(c: number, parts: number): number {
    const size = this.model.store[c] as number;
    return size > 0 ? Math.ceil(parts / size) : 0;
  }

  private addTimes(): void {
    const { model, leastMs, leastM, waitBefore } = this;
    const { travelMs, travelM } = model.problem;
    let least = model.rig.eveningMs;
    let metres = 0;
    leastMs[this.length] = 0;
    leastM[this.length] = 0;
    waitBefore[this.length] = Number.NEGATIVE_INFINITY;
    let wait = Number.NEGATIVE_INFINITY;
    let to = model.homePlace;
    for (let v = this.visits - 1; v >= 0; v -= 1) {
      const place = this.place[v] as number;
      const mode = this.mode[v] as number;
      metres += travelM[place * model.places + to] as number;
      const away = (travelMs[place * model.places + to] as number) + (model.modes.afterMs[mode] as number);
      least += away;
      wait -= away;
      const first = this.start[v] as number;
      for (let i = (this.start[v + 1] as number) - 1; i >= first; i -= 1) {
        const work = this.workMs[i] as number;
        least += work;
        wait -= work;
        waitBefore[i] = wait;
        leastMs[i] = least;
        leastM[i] = metres;
      }
      least += model.modes.beforeMs[mode] as number;
      this.arriveLeastMs[v] = least;
      const openMs = model.openMs[this.job[v] as number] as number;
      if (this.visits <= LOOKS_AHEAD) wait = Math.max(openMs, wait - (model.modes.beforeMs[mode] as number));
      this.arriveWaitBefore[v] = wait;
      to = place;
    }
  }
}
