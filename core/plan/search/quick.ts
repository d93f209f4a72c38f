import type { Op, ProblemRig } from '../problem/index.ts';
import type { JobTable } from './jobs.ts';
import type { Codes } from './values.ts';

type Way = { readonly ms: number; readonly metres: number; readonly station: number };

/**
 * Reckons a route with refills placed by rule, in time proportional to its ops: a compartment that cannot last through an op is
 * filled before it where the rest in it is worth less than a fill inside the op, else where it runs dry; the rig goes to the
 * fill point with the least detour where its stock cannot last through a visit. Never better than the placed optimum where no
 * time of day binds, and close to it; routes that are kept are placed exactly afterwards.
 */
export class QuickReckoner {
  private readonly table: JobTable;
  private readonly rigIndex: number;
  private readonly rig: ProblemRig;
  private readonly home: number;
  private readonly stockLimit: Float64Array;
  private readonly used: Float64Array;
  private readonly given: Float64Array;
  private readonly held: Int32Array;
  private readonly drawn: Float64Array;
  private readonly head: Int32Array;
  private readonly topUpMs: Float64Array;
  private timeMs = 0;
  private metres = 0;
  private tookBreak = false;
  /** The first person's work less the second's since both last came together at a stop; and whether no refill fell into the op. */
  private lead = 0;
  private parted = true;

  constructor(table: JobTable, rigIndex: number) {
    const { problem } = table;
    this.table = table;
    this.rigIndex = rigIndex;
    this.rig = problem.rigs[rigIndex] as ProblemRig;
    this.home = problem.stations[this.rig.home]?.place ?? 0;
    this.stockLimit = stockLimits(table, this.rig);
    const compartments = this.rig.compartments.length;
    this.used = new Float64Array(compartments);
    this.given = new Float64Array(compartments);
    this.held = new Int32Array(compartments);
    this.drawn = new Float64Array(problem.stocks.length);
    this.topUpMs = new Float64Array(problem.stocks.length);
    const machines = problem.jobs.reduce(
      (most, job) => Math.max(most, ...(job.modes[rigIndex] ?? []).flatMap((mode) => mode.ops.map((op) => op.machine))),
      -1,
    );
    this.head = new Int32Array(machines + 1);
  }

  /** Cost without lateness, nano-dollars; infinite where a window is missed, the day too long or a stock not to be had. */
  cost(codes: Codes): number {
    const { rig, table } = this;
    this.start();
    let place = this.home;
    for (const code of codes) {
      const job = table.problem.jobs[Math.trunc(code / table.width)];
      const mode = job?.modes[this.rigIndex]?.[code % table.width];
      if (job === undefined || mode === undefined) return Number.POSITIVE_INFINITY;
      if (!this.arrive(place, job.place, mode.ops)) return Number.POSITIVE_INFINITY;
      if (this.timeMs < job.openMs) this.timeMs = job.openMs;
      if (this.timeMs > job.closeMs) return Number.POSITIVE_INFINITY;
      this.takeBreak();
      this.timeMs += mode.beforeMs;
      this.lead = 0;
      for (const op of mode.ops) if (!this.work(op, job.place)) return Number.POSITIVE_INFINITY;
      this.timeMs += mode.afterMs;
      place = job.place;
    }
    this.drive(place, this.home);
    const paid = this.timeMs + rig.eveningMs - rig.shiftStartMs;
    if (paid > rig.shiftMs + rig.overtimeMs) return Number.POSITIVE_INFINITY;
    const over = Math.max(0, paid - rig.shiftMs);
    return rig.costPerDay + paid * rig.costPerMs + over * rig.overtimeCostPerMs + this.metres * rig.costPerM;
  }

  private start(): void {
    this.timeMs = this.rig.shiftStartMs + this.rig.morningMs;
    this.metres = 0;
    this.tookBreak = this.rig.breakAfterMs < 0;
    this.used.fill(0);
    for (let c = 0; c < this.given.length; c += 1) this.given[c] = this.rig.compartments[c]?.capacityParts ?? 0;
    this.held.fill(-1);
    this.drawn.fill(0);
    this.head.fill(-1);
    this.topUpMs.fill(0);
  }

  /** Drives to a visit; by way of a fill point where the stock aboard does not last through the visit. */
  private arrive(from: number, to: number, ops: readonly Op[]): boolean {
    const short = this.shortOf(ops);
    if (short < 0) {
      this.drive(from, to);
      return true;
    }
    const way = this.detour(from, to, short);
    const round = this.detour(to, to, short);
    if (way === null || round === null) return false;
    const direct = this.travel(from, to);
    if (way.ms - direct > round.ms && this.couldStart(ops)) {
      this.drive(from, to);
      return true;
    }
    this.timeMs += way.ms;
    this.metres += way.metres;
    this.supply(way.station);
    return true;
  }

  /** A stock that the ops of a visit use up, or -1. */
  private shortOf(ops: readonly Op[]): number {
    const { problem } = this.table;
    for (let stock = 0; stock < this.drawn.length; stock += 1) {
      let need = this.drawn[stock] as number;
      for (const op of ops) {
        for (const draw of op.draws) {
          if (problem.materials[op.material]?.stock !== stock) continue;
          need += Math.max(0, draw.parts - (this.given[draw.compartment] as number));
        }
      }
      if (need > (this.stockLimit[stock] as number)) return stock;
    }
    return -1;
  }

  /** True where the first op finds at least something in its compartment. */
  private couldStart(ops: readonly Op[]): boolean {
    const draw = ops[0]?.draws[0];
    return (
      draw === undefined ||
      (this.used[draw.compartment] as number) < (this.rig.compartments[draw.compartment]?.capacityParts ?? 0) / 2
    );
  }

  private work(op: Op, place: number): boolean {
    const ms = this.swapMs(op) + op.serviceMs;
    const sign = op.second ? -1 : 1;
    const before = sign * this.lead;
    this.lead = sign * (before + ms);
    // The stop has lasted as long as the longer of the two persons' work.
    const added = Math.max(0, before + ms) - Math.max(0, before);
    this.timeMs += added;
    this.parted = true;
    for (const draw of op.draws) if (!this.use(op, draw.compartment, draw.parts, place)) return false;
    if (this.parted) return true;
    // A refill brings both together, at worst before anything of the op is done.
    this.timeMs += ms - added;
    this.lead = 0;
    return true;
  }

  /** Time to fit the head of an op. */
  private swapMs(op: Op): number {
    if (op.machine < 0 || op.head < 0) return 0;
    const fitted = this.head[op.machine] as number;
    this.head[op.machine] = op.head;
    return fitted >= 0 && fitted !== op.head ? op.swapMs : 0;
  }

  /** Draws parts out of a compartment, with the refills that this takes. */
  private use(op: Op, c: number, parts: number, place: number): boolean {
    const { rig } = this;
    const stock = this.table.problem.materials[op.material]?.stock ?? 0;
    const capacity = rig.compartments[c]?.capacityParts ?? 0;
    if (capacity <= 0) return parts <= 0;
    this.change(op, c, stock);
    let left = parts;
    const rest = capacity - (this.used[c] as number);
    if (
      left > rest &&
      rest * rig.refillMs < rig.midZoneMs * capacity &&
      !this.fill(c, stock, Math.min(capacity, left), op, place, false)
    )
      return false;
    for (;;) {
      const room = capacity - (this.used[c] as number);
      const step = Math.min(left, room);
      this.draw(c, stock, step);
      left -= step;
      if (left <= 0) return true;
      if (!this.fill(c, stock, Math.min(capacity, left), op, place, true)) return false;
    }
  }

  private change(op: Op, c: number, stock: number): void {
    const before = this.held[c] as number;
    if (before === op.material) return;
    this.held[c] = op.material;
    if (before < 0) return;
    const material = this.table.problem.materials[before];
    this.parted = false;
    this.timeMs += this.rig.refillMs + (material?.rinseMs ?? 0);
    this.drawn[stock] = (this.drawn[stock] as number) + (material?.rinseParts ?? 0);
    this.used.fill(0);
    this.given[c] = 0;
  }

  private draw(c: number, stock: number, parts: number): void {
    this.used[c] = (this.used[c] as number) + parts;
    const free = Math.min(parts, this.given[c] as number);
    this.given[c] = (this.given[c] as number) - free;
    const more = parts - free;
    this.drawn[stock] = (this.drawn[stock] as number) + more;
    this.timeMs += more * (this.rig.compartments[c]?.fillMsPerPart ?? 0) + more * (this.topUpMs[stock] as number);
  }

  /** A refill from the rig, or a trip to a fill point where the rig has too little left. */
  private fill(c: number, stock: number, wanted: number, op: Op, place: number, inside: boolean): boolean {
    const aboard = (this.stockLimit[stock] as number) - (this.drawn[stock] as number) + (this.given[c] as number);
    this.timeMs += inside ? this.rig.midZoneMs : 0;
    this.parted = false;
    if (aboard >= wanted) {
      this.timeMs += this.rig.refillMs;
      this.used.fill(0);
      return true;
    }
    const trip = this.detour(place, place, stock);
    if (trip === null) return false;
    this.timeMs += trip.ms + op.reloadMs;
    this.metres += trip.metres;
    this.supply(trip.station);
    return true;
  }

  /** The quickest way by a fill point that holds the stock. */
  private detour(from: number, to: number, stock: number): Way | null {
    let best: Way | null = null;
    for (const [index, station] of this.table.problem.stations.entries()) {
      if ((station.msPerPart[stock] ?? -1) < 0) continue;
      const ms = this.travel(from, station.place) + this.travel(station.place, to) + station.visitMs;
      if (best !== null && best.ms <= ms) continue;
      best = { ms, metres: this.distance(from, station.place) + this.distance(station.place, to), station: index };
    }
    return best;
  }

  private supply(station: number): void {
    const { problem } = this.table;
    const at = problem.stations[station];
    this.used.fill(0);
    for (let stock = 0; stock < this.drawn.length; stock += 1) {
      const ms = at?.msPerPart[stock] ?? -1;
      if (ms < 0) continue;
      this.topUpMs[stock] = ms;
      this.drawn[stock] = -this.compartmentParts(stock);
    }
    for (let c = 0; c < this.given.length; c += 1) {
      const stock = problem.materials[this.held[c] as number]?.stock ?? 0;
      // What goes into a compartment here is paid for as it is used, like what goes into the rig's stock.
      if ((at?.msPerPart[stock] ?? -1) >= 0) this.given[c] = 0;
    }
  }

  /** What the compartments that hold a stock can take beside the rig's own store. */
  private compartmentParts(stock: number): number {
    let parts = 0;
    for (let c = 0; c < this.held.length; c += 1) {
      const of = this.table.problem.materials[this.held[c] as number]?.stock;
      if (of === stock) parts += this.rig.compartments[c]?.capacityParts ?? 0;
    }
    return parts;
  }

  private takeBreak(): void {
    if (this.tookBreak || this.timeMs < this.rig.breakAfterMs) return;
    this.timeMs += this.rig.breakMs;
    this.tookBreak = true;
  }

  private drive(from: number, to: number): void {
    this.timeMs += this.travel(from, to);
    this.metres += this.distance(from, to);
  }

  private travel(from: number, to: number): number {
    return this.table.problem.travelMs[from * this.table.places + to] as number;
  }

  private distance(from: number, to: number): number {
    return this.table.problem.travelM[from * this.table.places + to] as number;
  }
}

/** What the rig's store of each stock holds, the payload taken into account. parts */
function stockLimits(table: JobTable, rig: ProblemRig): Float64Array {
  const { stocks } = table.problem;
  const vessels = rig.compartments.reduce(
    (sum, each) => sum + each.capacityParts * (each.kind === 'tank' ? 834 : 100),
    0,
  );
  const free = Math.max(0, rig.cargoLimit - vessels);
  return Float64Array.from(stocks, (stock) => {
    const room = stock.kind === 'water' ? rig.nurseParts : rig.bagPlaces * stock.bagParts;
    return Math.min(room, Math.floor(free / stock.weightPerPart));
  });
}
