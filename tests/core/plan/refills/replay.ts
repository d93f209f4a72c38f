import type { Mode, Op, Problem } from '../../../../core/plan/problem/index.ts';
import type { Activity, RouteOutcome } from '../../../../core/plan/refills/index.ts';

/**
 * Plays the activities of a route once more with explicit levels and lists what is wrong with them. Written for the tests from
 * core/plan/problem/types.ts alone; uses nothing of the refill placer.
 */
export function replay(problem: Problem, outcome: RouteOutcome): readonly string[] {
  return new Replay(problem, outcome).run();
}

type Refill = Extract<Activity, { kind: 'refill' }>;
type Pour = Extract<Activity, { kind: 'pour' }>;
type Treat = Extract<Activity, { kind: 'treat' }>;

class Replay {
  private readonly problem: Problem;
  private readonly outcome: RouteOutcome;
  private readonly faults: string[] = [];
  private readonly levels: number[];
  private readonly held: number[];
  private readonly stock: number[];
  private readonly done = new Map<string, number>();
  private metres = 0;

  constructor(problem: Problem, outcome: RouteOutcome) {
    this.problem = problem;
    this.outcome = outcome;
    this.levels = this.rig.compartments.map(() => 0);
    this.held = this.rig.compartments.map(() => -1);
    this.stock = problem.stocks.map(() => 0);
  }

  private get rigNumber(): number {
    return this.problem.slots[this.outcome.slot]?.rig ?? -1;
  }

  private get rig() {
    const rig = this.problem.rigs[this.rigNumber];
    if (rig === undefined) throw new RangeError('no such rig');
    return rig;
  }

  run(): readonly string[] {
    // When the first and the second person are free.
    const free: [number, number] = [this.rig.shiftStartMs, this.rig.shiftStartMs];
    for (const activity of this.outcome.activities) {
      const one =
        activity.kind === 'treat' || activity.kind === 'swap-head' || activity.kind === 'pour'
          ? this.op(activity).second
            ? 1
            : 0
          : null;
      const now = one === null ? Math.max(...free) : free[one];
      this.check(activity.startMs === now, `${activity.kind} starts at ${activity.startMs}, not ${now}`);
      this.check(activity.endMs >= activity.startMs, `${activity.kind} ends before it starts`);
      if (one === null) free.fill(activity.endMs);
      else free[one] = activity.endMs;
      this.play(activity);
    }
    this.checkEnd(Math.max(...free));
    return this.faults;
  }

  private check(holds: boolean, words: string): void {
    if (!holds) this.faults.push(words);
  }

  private play(activity: Activity): void {
    if (activity.kind === 'morning') {
      for (const fill of activity.fills) this.pour(fill.compartment, fill.material, fill.parts);
      for (const fill of activity.stock) this.stock[fill.stock] = (this.stock[fill.stock] as number) + fill.parts;
      this.checkLoad();
    }
    if (activity.kind === 'set-up')
      this.check(activity.startMs >= (this.hours(activity.visit)?.openMs ?? 0), 'set up too early');
    if (activity.kind === 'treat') {
      const closeMs = this.hours(activity.visit)?.closeMs ?? Number.POSITIVE_INFINITY;
      this.check(activity.endMs <= closeMs, 'treated too late');
    }
    if (activity.kind === 'drive') this.metres += activity.distanceM;
    if (activity.kind === 'refill') this.refill(activity);
    if (activity.kind === 'pour') this.pourBags(activity);
    if (activity.kind === 'treat') this.treat(activity);
  }

  private hours(visit: number) {
    const { day } = this.problem.slots[this.outcome.slot] as Problem['slots'][number];
    return this.problem.jobs[this.outcome.visits[visit]?.job ?? -1]?.treatHours?.[day];
  }

  private pourBags(activity: Pour): void {
    const { rig } = this;
    const { from, into, parts, material } = activity;
    const pours = rig.compartments[from]?.pours;
    const key = `${activity.visit}/${activity.op}`;
    this.check(pours?.into === into, `compartment ${from} is no bags beside ${into}`);
    this.check((this.done.get(key) ?? 0) === activity.doneUnits, `${key} is not at ${activity.doneUnits}`);
    this.check(this.held[from] === material, `the bags hold another material than ${material}`);
    this.check(activity.endMs - activity.startMs === parts * (pours?.msPerPart ?? 0), `${parts} poured too quickly`);
    this.levels[from] = (this.levels[from] as number) - parts;
    this.check((this.levels[from] as number) >= 0, 'bags are poured that are not there');
    this.pour(into, material, parts);
  }

  private refill(activity: Refill): void {
    const { problem, rig } = this;
    const station = problem.stations[activity.station];
    const water = problem.stocks.findIndex((each) => each.kind === 'water');
    let least = station === undefined ? rig.refillMs : station.visitMs;
    if (activity.doneUnits > 0) least += rig.midZoneMs;
    if (station !== undefined && (activity.op > 0 || activity.doneUnits > 0)) least += this.op(activity).reloadMs;
    for (const c of activity.rinsed) {
      const old = problem.materials[this.held[c] as number];
      this.check(old !== undefined, `compartment ${c} is rinsed and held nothing`);
      this.check(this.levels[c] === 0, `compartment ${c} is rinsed with ${this.levels[c]} parts in it`);
      least += old?.rinseMs ?? 0;
      if ((station?.msPerPart[water] ?? -1) < 0) this.take(water, old?.rinseParts ?? 0);
      this.held[c] = -1;
    }
    for (const fill of activity.fills) {
      const stock = problem.materials[fill.material]?.stock ?? -1;
      if (station === undefined) this.take(stock, fill.parts);
      else this.check((station.msPerPart[stock] ?? -1) >= 0, `station ${activity.station} has no stock ${stock}`);
      this.pour(fill.compartment, fill.material, fill.parts);
      least +=
        fill.parts * ((rig.compartments[fill.compartment]?.fillMsPerPart ?? 0) + (station?.msPerPart[stock] ?? 0));
    }
    for (const fill of activity.stock) {
      this.check((station?.msPerPart[fill.stock] ?? -1) >= 0, `no stock ${fill.stock} at ${activity.station}`);
      this.stock[fill.stock] = (this.stock[fill.stock] as number) + fill.parts;
      least += fill.parts * (station?.msPerPart[fill.stock] ?? 0);
    }
    const spent = activity.endMs - activity.startMs;
    this.check(spent === least, `refill takes ${spent} ms instead of ${least}`);
    if (station !== undefined) {
      this.check(activity.startMs >= station.openMs && activity.endMs <= station.closeMs, 'station is closed');
    }
    this.checkLoad();
  }

  private treat(activity: Treat): void {
    const op = this.op(activity);
    const key = `${activity.visit}/${activity.op}`;
    this.check((this.done.get(key) ?? 0) === activity.fromUnits, `${key} goes on at ${activity.fromUnits}`);
    this.done.set(key, activity.toUnits);
    const share = (parts: number, units: number): number => Math.ceil((parts * units) / op.areaUnits);
    for (const draw of op.draws) {
      const used = share(draw.parts, activity.toUnits) - share(draw.parts, activity.fromUnits);
      this.check(this.held[draw.compartment] === op.material || used === 0, `${key} finds the wrong material`);
      this.levels[draw.compartment] = (this.levels[draw.compartment] as number) - used;
      this.check((this.levels[draw.compartment] as number) >= 0, `compartment ${draw.compartment} runs below empty`);
    }
    const served = (units: number): number => Math.floor((op.serviceMs * units) / op.areaUnits);
    const spent = activity.endMs - activity.startMs;
    this.check(spent === served(activity.toUnits) - served(activity.fromUnits), `${key} takes ${spent} ms`);
  }

  private op(at: { readonly visit: number; readonly op: number }): Op {
    const op = this.mode(at.visit).ops[at.op];
    if (op === undefined) throw new RangeError('no such op');
    return op;
  }

  private mode(number: number): Mode {
    const visit = this.outcome.visits[number];
    const mode = this.problem.jobs[visit?.job ?? -1]?.modes[this.rigNumber]?.[visit?.mode ?? -1];
    if (mode === undefined) throw new RangeError('no such visit');
    return mode;
  }

  private pour(c: number, material: number, parts: number): void {
    const before = this.held[c] as number;
    const swapped = this.rig.compartments[c]?.pours !== undefined && this.levels[c] === 0;
    this.check(before === -1 || before === material || swapped, `compartment ${c} is filled with another material`);
    this.held[c] = material;
    this.levels[c] = (this.levels[c] as number) + parts;
    this.check(
      (this.levels[c] as number) <= (this.rig.compartments[c]?.capacityParts ?? 0),
      `compartment ${c} overflows`,
    );
  }

  private take(stock: number, parts: number): void {
    if (parts === 0) return;
    this.stock[stock] = (this.stock[stock] as number) - parts;
    this.check((this.stock[stock] as number) >= 0, `stock ${stock} runs below empty`);
  }

  /** Nurse tank, bag places and payload. */
  private checkLoad(): void {
    const { problem, rig } = this;
    let weight = 0;
    let bags = 0;
    problem.stocks.forEach((stock, s) => {
      const parts = this.stock[s] as number;
      weight += parts * stock.weightPerPart;
      if (stock.kind === 'dry') bags += Math.ceil(parts / stock.bagParts);
      else this.check(parts <= rig.nurseParts, 'the nurse tank overflows');
    });
    this.levels.forEach((parts, c) => {
      const stock = problem.stocks[problem.materials[this.held[c] as number]?.stock ?? -1];
      weight += parts * (stock?.weightPerPart ?? 0);
    });
    rig.compartments.forEach(({ pours }, c) => {
      const hopper = this.held[pours?.into ?? -1] ?? -1;
      const mixed = pours !== undefined && (this.levels[c] as number) > 0 && hopper >= 0 && hopper !== this.held[c];
      this.check(!mixed, `bags ${c} are of another product than their hopper`);
    });
    this.check(bags <= rig.bagPlaces, `${bags} bags on ${rig.bagPlaces} places`);
    this.check(weight <= rig.cargoLimit, `${weight} aboard, ${rig.cargoLimit} allowed`);
  }

  private checkEnd(now: number): void {
    const { rig, outcome, problem } = this;
    const paid = now - rig.shiftStartMs;
    outcome.visits.forEach((_, v) => {
      this.mode(v).ops.forEach((op, o) => {
        this.check(this.done.get(`${v}/${o}`) === op.areaUnits, `op ${o} of visit ${v} is not finished`);
      });
    });
    this.check(
      this.levels.every((parts) => parts === 0) && this.stock.every((parts) => parts === 0),
      'something is left',
    );
    this.check(outcome.paidMs === paid && paid <= rig.shiftMs + rig.overtimeMs, `paid day of ${paid} ms`);
    this.check(outcome.distanceM === this.metres, 'distance differs');
    const day = problem.slots[outcome.slot]?.day ?? 0;
    const late = outcome.visits.reduce((sum, { job }) => sum + (problem.jobs[job]?.lateCost[day] ?? 0), 0);
    const over = Math.max(0, paid - rig.shiftMs) * rig.overtimeCostPerMs;
    const cost = rig.costPerDay + paid * rig.costPerMs + over + this.metres * rig.costPerM + late;
    this.check(Math.abs(cost - outcome.cost) <= 1, `costs ${cost}, says ${outcome.cost}`);
  }
}
