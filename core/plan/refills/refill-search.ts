import type { Problem, ProblemRig } from '../problem/index.ts';
import { Chain } from './chain.ts';
import { Detours } from './detours.ts';
import { Dominance } from './dominance.ts';
import { Failures } from './failures.ts';
import { COST, DONE, Labels, LEAD, REFILLED, STATIONS, TIME } from './labels.ts';
import { Marks } from './marks.ts';
import { createRigModel, type RigModel } from './model.ts';
import { Outlook } from './outlook.ts';
import { Resets } from './resets.ts';
import type { RefillEvent, SearchLimits } from './search-limits.ts';
import { Sieve } from './sieve.ts';
import { Steps } from './steps.ts';
import { Stores } from './stores.ts';
import { Trips } from './trips.ts';

/**
 * Dynamic programming along a fixed row of visits: labels hold time, cost and what has been used of every compartment and stock since
 * it could last be filled; a label that another one beats is dropped.
 */
export class RefillSearch {
  readonly model: RigModel;
  readonly chain: Chain;
  readonly labels: Labels;
  readonly stores: Stores;
  readonly steps: Steps;
  /** Of the last run. */
  readonly failures = new Failures();
  /** Labels at the end of the day, best first, and their costs without lateness. */
  finals: number[] = [];
  finalCosts: number[] = [];
  private readonly rig: ProblemRig;
  private readonly dominance: Dominance;
  private readonly resets: Resets;
  private readonly sieve: Sieve;
  private readonly outlook: Outlook;
  private readonly marks: Marks;
  private readonly trips: Trips;
  private active: number[] = [];
  private pending: number[] = [];
  private stuck: number[] = [];
  private stuckShort: number[] = [];
  private limits: SearchLimits = { beam: 1, latestMs: 0 };

  /** @param day a day whose hours of treating count; -1 for one without */
  constructor(problem: Problem, rig: number, day = -1) {
    const model = createRigModel(problem, rig, day);
    const chain = new Chain(model);
    const labels = new Labels(model);
    const stores = new Stores(model, chain, labels);
    const steps = new Steps(model, chain, labels, stores);
    const dominance = new Dominance(model, chain, labels);
    const detours = new Detours(model);
    const { failures } = this;
    this.model = model;
    this.chain = chain;
    this.labels = labels;
    this.stores = stores;
    this.steps = steps;
    this.dominance = dominance;
    this.resets = new Resets(model, chain, labels, detours, dominance);
    this.outlook = new Outlook(model, chain, labels);
    this.sieve = new Sieve(labels, dominance, this.resets, this.outlook, () => failures.died('too-long', -1));
    this.marks = new Marks(labels);
    this.trips = new Trips({ model, chain, labels, stores, steps, detours, dominance, failures });
    this.rig = model.rig;
  }

  /** True where the beam cut labels off in the last run, so that its result may not be the best. */
  get cut(): boolean {
    return this.sieve.cut;
  }

  get costPerMs(): number {
    return this.rig.costPerMs;
  }

  /** Runs over the visits; returns the least cost without lateness, or Infinity. */
  run(jobs: ArrayLike<number>, modes: ArrayLike<number>, count: number, limits: SearchLimits): number {
    const { chain, labels, rig } = this;
    this.begin(limits);
    if (limits.marked === true) this.marks.clear();
    chain.load(jobs, modes, count);
    labels.clear();
    const startMs = rig.shiftStartMs + rig.morningMs;
    this.active = [labels.first(chain, startMs, rig.costPerDay + rig.morningMs * rig.costPerMs)];
    return this.goOn(0);
  }

  /**
   * The last run with `marked` once more, with its limits, but without an event: what comes before it stays as it was. No other row may
   * have been loaded since.
   */
  runWithout(event: RefillEvent, limits: SearchLimits): number {
    const visit = this.chain.visitOf[event.position] as number;
    this.begin({ ...limits, without: event });
    this.labels.clear();
    this.active = this.marks.back(visit);
    return this.goOn(visit);
  }

  private begin(limits: SearchLimits): void {
    this.limits = limits;
    this.trips.limits = limits;
    this.sieve.beam = limits.beam;
    this.sieve.upper = limits.upper ?? Number.POSITIVE_INFINITY;
    this.sieve.latestMs = limits.latestMs;
    this.sieve.cut = false;
    this.dominance.hasty = limits.hasty === true;
    this.failures.clear();
    this.finals = [];
    this.finalCosts = [];
  }

  private goOn(visit: number): number {
    const { chain, limits } = this;
    for (let v = visit; v < chain.visits && this.active.length > 0; v += 1) {
      if (limits.marked === true) this.marks.keep(v, this.active);
      this.visit(v);
    }
    if (this.active.length > 0) this.goHome();
    return this.finalCosts[0] ?? Number.POSITIVE_INFINITY;
  }

  /** The events that lead to a label, in order of time. */
  eventsOf(label: number): RefillEvent[] {
    return this.labels.eventsOf(label);
  }

  /** The earliest end of the day that the last run found, whatever it costs. */
  earliestEnd(): number {
    return Math.min(...this.finals.map((at) => this.labels.data[at + TIME] as number));
  }

  /** End of the day of the cheapest label. */
  bestEnd(): number {
    const at = this.finals[0];
    return at === undefined ? Number.POSITIVE_INFINITY : (this.labels.data[at + TIME] as number);
  }

  private visit(v: number): void {
    const { chain, steps, trips, failures } = this;
    failures.visit = v;
    const first = chain.start[v] as number;
    const end = chain.start[v + 1] as number;
    let arrived = trips.arrive(this.active, v);
    if (arrived.length === 0 && this.limits.lenient === true && failures.dead.kind === 'window') {
      failures.missed.push(v);
      this.active = this.marks.back(v);
      arrived = trips.arrive(this.active, v);
    }
    this.active = this.sieve.prune(arrived, first, first, null);
    for (let i = first; i < end; i += 1) this.doOp(v, i, i === first);
    for (const at of this.active) steps.spend(at, this.model.modes.afterMs[chain.mode[v] as number] as number);
  }

  /** Treats op i with every label, with the events that it takes. A large op is done load by load, so that labels can be compared. */
  private doOp(v: number, i: number, firstOfVisit: boolean): void {
    const op = this.chain.op[i] as number;
    const area = this.model.ops.area[op] as number;
    const load = this.loadOf(op, area);
    for (let mark = load; mark < area && this.active.length > 0; mark += load) {
      this.active = this.sieve.prune(this.treatTo(v, i, mark, firstOfVisit), i, i, this.resets.inside(i));
    }
    const last = i + 1 === (this.chain.start[v + 1] as number);
    const treated = this.treatTo(v, i, area, firstOfVisit);
    const out = last ? this.doneInTime(treated, v) : treated;
    for (const at of out) {
      this.labels.data[at + DONE] = 0;
      if (last) this.labels.data[at + LEAD] = 0;
    }
    this.active = this.sieve.prune(out, i + 1, i, this.resets.before(i + 1));
  }

  /** Labels that end the last op of a visit within the hours of treating; the others die, but where all would in a lenient run. */
  private doneInTime(out: number[], v: number): number[] {
    const doneMs = this.model.doneMs[this.chain.job[v] as number] as number;
    if (doneMs === Number.POSITIVE_INFINITY || this.failures.missed.at(-1) === v) return out;
    const kept = out.filter((at) => (this.labels.data[at + TIME] as number) <= doneMs);
    if (kept.length === out.length) return out;
    if (kept.length === 0 && this.limits.lenient === true) {
      this.failures.missed.push(v);
      return out;
    }
    this.failures.died('window', -1);
    for (const at of out) if (!kept.includes(at)) this.labels.release(at);
    return kept;
  }

  /** Ground that one load of the compartment that is soonest empty covers. */
  private loadOf(op: number, area: number): number {
    const { ops, store } = this.model;
    let load = area;
    for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1) {
      const parts = ops.drawParts[draw] as number;
      const size = store[ops.drawCompartment[draw] as number] as number;
      if (parts > size) load = Math.min(load, Math.max(1, Math.floor((area * size) / parts)));
    }
    return load;
  }

  /** Takes every active label to `mark` units of op i. */
  private treatTo(v: number, i: number, mark: number, firstOfVisit: boolean): number[] {
    const { labels, stores, steps, trips } = this;
    const out: number[] = [];
    this.pending = this.active;
    this.stuck = [];
    this.stuckShort = [];
    while (this.pending.length > 0) {
      const at = this.takeEarliest();
      const done = labels.data[at + DONE] as number;
      const to = done === 0 && stores.mismatched(at, i) ? 0 : stores.furthest(at, i);
      if (to >= mark && this.lastsThrough(i, to, done)) {
        if (done === 0) trips.beforehand(at, v, i, firstOfVisit, this.pending);
        steps.work(at, i, mark);
        out.push(at);
        continue;
      }
      if (done > 0 && to === done && this.beatenHere(at, i)) {
        labels.release(at);
        continue;
      }
      if (done === 0 || to === done) trips.events(at, v, i, !firstOfVisit || done > 0, this.pending);
      if (to > done) {
        steps.work(at, i, Math.min(to, mark));
        if (to >= mark) out.push(at);
        else this.pending.push(at);
      } else {
        this.diedAt(at, i);
        if (done > 0) this.keepStuck(at, i);
        else labels.release(at);
      }
    }
    for (const at of this.stuck) labels.release(at);
    return out;
  }

  /** Whether nothing has to be decided before the mark: events lie where a compartment is empty, or before an op that it cannot finish. */
  private lastsThrough(i: number, to: number, done: number): boolean {
    return done > 0 || to === (this.model.ops.area[this.chain.op[i] as number] as number);
  }

  private keepStuck(at: number, i: number): void {
    this.stuck.push(at);
    this.stuckShort.push(this.dominance.shortage(at, i));
  }

  private takeEarliest(): number {
    const { pending } = this;
    const { data } = this.labels;
    let best = pending.length - 1;
    for (let k = best - 1; k >= 0; k -= 1) {
      if ((data[(pending[k] as number) + TIME] as number) < (data[(pending[best] as number) + TIME] as number))
        best = k;
    }
    const at = pending[best] as number;
    pending[best] = pending[pending.length - 1] as number;
    pending.pop();
    return at;
  }

  /** Whether a label that stopped inside this op earlier, no less far on, is as good. */
  private beatenHere(at: number, i: number): boolean {
    const { labels, dominance, resets } = this;
    const { data } = labels;
    const reset = resets.inside(i);
    const waitMs = this.outlook.waitMs(i, i);
    for (let k = 0; k < this.stuck.length; k += 1) {
      const other = this.stuck[k] as number;
      if ((data[other + DONE] as number) < (data[at + DONE] as number)) continue;
      if ((data[other + REFILLED] as number) > (data[at + REFILLED] as number)) continue;
      if ((data[other + STATIONS] as number) > (data[at + STATIONS] as number)) continue;
      if (dominance.beats(other, at, i, this.stuckShort[k] as number, waitMs)) return true;
      if (reset !== null && resets.beats(other, at, i, reset, waitMs)) return true;
    }
    return false;
  }

  private goHome(): void {
    const { chain, labels, steps, rig } = this;
    const from = chain.visits === 0 ? this.model.homePlace : (chain.place[chain.visits - 1] as number);
    const ends: { at: number; cost: number }[] = [];
    this.failures.visit = chain.visits;
    for (const at of this.active) {
      steps.drive(at, from, this.model.homePlace);
      steps.spend(at, rig.eveningMs);
      const end = labels.data[at + TIME] as number;
      if (end > this.limits.latestMs) {
        this.failures.died('too-long', -1);
        continue;
      }
      const over = Math.max(0, end - rig.shiftStartMs - rig.shiftMs);
      ends.push({ at, cost: (labels.data[at + COST] as number) + over * rig.overtimeCostPerMs });
    }
    ends.sort((a, b) => a.cost - b.cost);
    this.finals = ends.map((each) => each.at);
    this.finalCosts = ends.map((each) => each.cost);
  }

  private diedAt(at: number, i: number): void {
    const { failures, stores } = this;
    const material = this.model.ops.material[this.chain.op[i] as number] as number;
    const isHeavy = !stores.mismatched(at, i) && stores.limitAt(at, i).kind === 'payload';
    failures.died(isHeavy ? 'payload' : 'material', material);
  }
}
