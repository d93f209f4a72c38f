import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { Visit } from '../../../../core/plan/refills/index.ts';

/**
 * A day by rule of thumb: full at home; treat until a compartment is dry; then fill everything from the rig if its stock still gives
 * something, else make a trip to the nearest station with that stock and fill everything there. Bags on the machine go into a dry hopper
 * before anything else, as many as fit. For problems with one mix and one dry
 * product, so that nothing is ever rinsed. A day that can be done, and so never cheaper than the best one.
 *
 * @returns cost in nano-dollars; null where the rule gets stuck or the day is too long
 */
export function greedyCost(problem: Problem, visits: readonly Visit[]): number | null {
  const day = new Greedy(problem, visits);
  return day.run();
}

class Greedy {
  private readonly problem: Problem;
  private readonly visits: readonly Visit[];
  private readonly level: number[];
  private readonly stock: number[];
  /** Parts still to be used from each compartment. */
  private readonly need: number[];
  private ms: number;
  private metres = 0;
  private place: number;
  private readonly heads = new Map<number, number>();

  constructor(problem: Problem, visits: readonly Visit[]) {
    this.problem = problem;
    this.visits = visits;
    this.ms = this.rig.morningMs;
    this.place = problem.stations[this.rig.home]?.place ?? 0;
    this.need = this.rig.compartments.map((_, c) =>
      this.ops().reduce(
        (sum, op) => sum + op.draws.reduce((all, d) => all + (d.compartment === c ? d.parts : 0), 0),
        0,
      ),
    );
    this.level = this.rig.compartments.map((each, c) => Math.min(each.capacityParts, this.need[c] as number));
    this.rig.compartments.forEach((_, c) => {
      this.level[c] = (this.level[c] as number) + this.bagRoom(c);
    });
    this.stock = problem.stocks.map((_, s) => this.stockRoom(s));
  }

  private get rig() {
    const rig = this.problem.rigs[0];
    if (rig === undefined) throw new RangeError('no rig');
    return rig;
  }

  private mode(visit: Visit) {
    const mode = this.problem.jobs[visit.job]?.modes[0]?.[visit.mode];
    if (mode === undefined) throw new RangeError('no mode');
    return mode;
  }

  private ops() {
    return this.visits.flatMap((visit) => this.mode(visit).ops);
  }

  /** What the rig's stock takes: as much as is still needed beyond what the compartments hold, and fits. */
  private stockRoom(s: number): number {
    const { problem, rig } = this;
    const stock = problem.stocks[s];
    const beyond = rig.compartments.reduce((sum, _, c) => {
      return this.stockOf(c) === s ? sum + (this.need[c] as number) - (this.level[c] as number) : sum;
    }, 0);
    return Math.min(beyond, stock?.kind === 'water' ? rig.nurseParts : rig.bagPlaces * (stock?.bagParts ?? 0));
  }

  /** What the bags on the machine take beside what is in their hopper; 0 for everything else. */
  private bagRoom(c: number): number {
    const { pours, capacityParts = 0 } = this.rig.compartments[c] ?? {};
    if (pours === undefined) return 0;
    const beyond = (this.need[pours.into] as number) - (this.level[pours.into] as number);
    return Math.max(0, Math.min(capacityParts, beyond) - (this.level[c] as number));
  }

  /** Bags poured into a dry hopper; false where there are none. */
  private pour(hopper: number): boolean {
    const bags = this.rig.compartments.findIndex((each) => each.pours?.into === hopper);
    const room = (this.rig.compartments[hopper]?.capacityParts ?? 0) - (this.level[hopper] as number);
    const parts = Math.min(room, this.level[bags] ?? 0);
    if (parts <= 0) return false;
    this.level[hopper] = (this.level[hopper] as number) + parts;
    this.level[bags] = (this.level[bags] as number) - parts;
    this.ms += parts * (this.rig.compartments[bags]?.pours?.msPerPart ?? 0);
    return true;
  }

  private stockOf(c: number): number {
    return this.rig.compartments[c]?.kind === 'tank' ? 0 : 1;
  }

  run(): number | null {
    const { rig } = this;
    for (const visit of this.visits) {
      this.drive(this.problem.jobs[visit.job]?.place ?? 0);
      const mode = this.mode(visit);
      this.ms += mode.beforeMs;
      for (const op of mode.ops) if (!this.work(op)) return null;
      this.ms += mode.afterMs;
    }
    this.drive(this.problem.stations[rig.end]?.place ?? 0);
    this.ms += rig.eveningMs;
    if (this.ms > rig.shiftMs + rig.overtimeMs) return null;
    const over = Math.max(0, this.ms - rig.shiftMs) * rig.overtimeCostPerMs;
    return rig.costPerDay + this.ms * rig.costPerMs + over + this.metres * rig.costPerM;
  }

  private drive(to: number): void {
    const cell = this.place * this.problem.placeIds.length + to;
    this.ms += this.problem.travelMs[cell] as number;
    this.metres += this.problem.travelM[cell] as number;
    this.place = to;
  }

  private work(op: ReturnType<Greedy['ops']>[number]): boolean {
    const fitted = this.heads.get(op.machine);
    if (op.machine >= 0) this.heads.set(op.machine, op.head);
    let done = 0;
    for (;;) {
      const reached = this.reach(op, done);
      for (const draw of op.draws) {
        const used = Math.ceil((draw.parts * reached) / op.areaUnits) - Math.ceil((draw.parts * done) / op.areaUnits);
        this.level[draw.compartment] = (this.level[draw.compartment] as number) - used;
        this.need[draw.compartment] = (this.need[draw.compartment] as number) - used;
      }
      if (reached === op.areaUnits) break;
      const stuck = reached === done && done > 0 && this.full(op);
      if (stuck || !this.refill(op, reached)) return false;
      done = reached;
    }
    this.ms += op.serviceMs + (op.machine >= 0 && fitted !== undefined && fitted !== op.head ? op.swapMs : 0);
    return true;
  }

  private full(op: ReturnType<Greedy['ops']>[number]): boolean {
    return op.draws.every(
      (draw) => this.level[draw.compartment] === this.rig.compartments[draw.compartment]?.capacityParts,
    );
  }

  /** The last whole unit that the levels allow. */
  private reach(op: ReturnType<Greedy['ops']>[number], done: number): number {
    return op.draws.reduce((least, draw) => {
      const held = (this.level[draw.compartment] as number) + Math.ceil((draw.parts * done) / op.areaUnits);
      return Math.min(least, Math.floor((held * op.areaUnits) / draw.parts));
    }, op.areaUnits);
  }

  private refill(op: ReturnType<Greedy['ops']>[number], done: number): boolean {
    const { rig } = this;
    const dry = op.draws.find((draw) => {
      const next = Math.ceil((draw.parts * (done + 1)) / op.areaUnits) - Math.ceil((draw.parts * done) / op.areaUnits);
      return (this.level[draw.compartment] as number) < next;
    });
    if (dry === undefined) return false;
    if (this.pour(dry.compartment)) return true;
    if (done > 0) this.ms += rig.midZoneMs;
    if ((this.stock[this.stockOf(dry.compartment)] as number) > 100) {
      this.ms += rig.refillMs;
      this.fill(null);
      return true;
    }
    return this.trip(this.stockOf(dry.compartment), op.reloadMs);
  }

  private trip(stock: number, reloadMs: number): boolean {
    const P = this.problem.placeIds.length;
    const back = this.place;
    const way = (place: number): number => this.problem.travelMs[back * P + place] as number;
    const nearest = this.problem.stations
      .filter((each) => (each.msPerPart[stock] ?? -1) >= 0)
      .sort((left, right) => way(left.place) - way(right.place))[0];
    if (nearest === undefined) return false;
    this.drive(nearest.place);
    this.ms += nearest.visitMs + reloadMs;
    this.fill(nearest.msPerPart);
    this.drive(back);
    return true;
  }

  /** Fills all compartments; from a station also the stock. */
  private fill(prices: readonly number[] | null): void {
    this.rig.compartments.forEach((each, c) => {
      const s = this.stockOf(c);
      const price = prices?.[s] ?? (prices === null ? 0 : -1);
      if (price < 0) return;
      const bags = each.pours !== undefined;
      const room = bags
        ? this.bagRoom(c)
        : Math.min(each.capacityParts, this.need[c] as number) - (this.level[c] as number);
      const parts = prices === null ? Math.min(room, this.stock[s] as number) : room;
      if (parts <= 0) return;
      if (prices === null) this.stock[s] = (this.stock[s] as number) - parts;
      this.level[c] = (this.level[c] as number) + parts;
      this.ms += parts * (each.fillMsPerPart + price);
    });
    this.problem.stocks.forEach((_, s) => {
      const price = prices?.[s] ?? -1;
      if (price < 0) return;
      const more = this.stockRoom(s) - (this.stock[s] as number);
      if (more <= 0) return;
      this.stock[s] = (this.stock[s] as number) + more;
      this.ms += more * price;
    });
  }
}
