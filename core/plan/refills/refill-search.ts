import type { Problem, ProblemRig } from '../problem/index.ts';
import { Chain } from './chain.ts';
import { Detours } from './detours.ts';
import { Dominance } from './dominance.ts';
import { BREAK, COST, DONE, GIVEN, Labels, LEAD, PER_STOCK, PRICE, REFILLED, STATIONS, TIME } from './labels.ts';
import { Marks } from './marks.ts';
import { createRigModel, type RigModel } from './model.ts';
import { Outlook } from './outlook.ts';
import { Resets } from './resets.ts';
import type { Dead, RefillEvent, SearchLimits } from './search-limits.ts';
import { Sieve } from './sieve.ts';
import { Steps } from './steps.ts';

/**
 * Dynamic programming along a fixed row of visits: labels hold time, cost and what has been used of every compartment and stock since
 * it could last be filled; a label that another one beats is dropped.
 */
export class RefillSearch {
  readonly model: RigModel;
  readonly chain: Chain;
  readonly labels: Labels;
  readonly steps: Steps;
  /** Labels at the end of the day, best first, and their costs without lateness. */
  finals: number[] = [];
  finalCosts: number[] = [];
  readonly dead: Dead = { visit: -1, kind: 'none', material: -1 };
  /** Visits that a lenient run has reached only after their customers' hours, in order. */
  readonly missed: number[] = [];
  private readonly rig: ProblemRig;
  private readonly dominance: Dominance;
  private readonly detours: Detours;
  private readonly resets: Resets;
  private readonly sieve: Sieve;
  private readonly outlook: Outlook;
  private readonly marks: Marks;
  private active: number[] = [];
  private arrived: number[] = [];
  private pending: number[] = [];
  private stuck: number[] = [];
  private stuckShort: number[] = [];
  private limits: SearchLimits = { beam: 1, latestMs: 0 };
  private rowVisit = 0;

  /** @param day a day whose hours of treating count; -1 for one without */
  constructor(problem: Problem, rig: number, day = -1) {
    this.model = createRigModel(problem, rig, day);
    this.chain = new Chain(this.model);
    this.labels = new Labels(this.model);
    this.steps = new Steps(this.model, this.chain, this.labels);
    this.dominance = new Dominance(this.model, this.chain, this.labels);
    this.detours = new Detours(this.model);
    this.resets = new Resets(this.model, this.chain, this.labels, this.detours, this.dominance);
    this.outlook = new Outlook(this.model, this.chain, this.labels);
    this.sieve = new Sieve(this.labels, this.dominance, this.resets, this.outlook, () => this.died('too-long', -1));
    this.marks = new Marks(this.labels);
    this.rig = this.model.rig;
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
    this.sieve.beam = limits.beam;
    this.sieve.upper = limits.upper ?? Number.POSITIVE_INFINITY;
    this.sieve.latestMs = limits.latestMs;
    this.sieve.cut = false;
    this.dominance.hasty = limits.hasty === true;
    this.dead.visit = -1;
    this.dead.kind = 'none';
    this.finals = [];
    this.finalCosts = [];
    this.missed.length = 0;
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
    const { chain, steps } = this;
    this.rowVisit = v;
    const first = chain.start[v] as number;
    const end = chain.start[v + 1] as number;
    this.arrive(v);
    if (this.arrived.length === 0 && this.limits.lenient === true && this.dead.kind === 'window') {
      this.missed.push(v);
      this.active = this.marks.back(v);
      this.arrive(v);
    }
    this.active = this.sieve.prune(this.arrived, first, first, null);
    for (let i = first; i < end; i += 1) this.doOp(v, i, i === first);
    for (const at of this.active) steps.spend(at, this.model.modes.afterMs[chain.mode[v] as number] as number);
  }

  private arrive(v: number): void {
    const from = v === 0 ? this.model.homePlace : (this.chain.place[v - 1] as number);
    this.arrived = [];
    for (const at of this.active) {
      if (this.model.stations > 1 || v > 0 || this.model.begins) this.goRound(at, v, from);
      this.arriveFrom(at, v, from);
    }
  }

  /** Stations on the way from one stop to the next; `at` itself stays as it is. */
  private goRound(at: number, v: number, from: number): void {
    const { chain, labels, model, detours } = this;
    const to = chain.place[v] as number;
    const i = chain.start[v] as number;
    const short = this.dominance.shortage(at, i) !== 0;
    const second = (labels.data[at + STATIONS] as number) > 0;
    const given = labels.data[at + GIVEN] as number;
    const waits = this.mayWait(at, i, v);
    for (const k of detours.between(from, to)) {
      const held = model.holds[k] as number;
      if ((held & ~given) === 0 || (v === 0 && !second && this.homeGives(held))) continue;
      if (!short && !waits && detours.addedMs(k, from, to) >= this.rig.refillMs && !this.cheapens(at, i, k)) continue;
      const pending = this.steps.pendingChanges(at, i);
      const wet = this.openChanges(at, k, pending);
      for (let part = wet; ; part = (part - 1) & wet) {
        this.callAt(at, v, from, k, (pending & ~wet) | part);
        if (part === 0) break;
      }
    }
  }

  private callAt(at: number, v: number, from: number, k: number, mask: number): void {
    const i = this.chain.start[v] as number;
    const place = this.detours.placeOf(k);
    const row = this.labels.copy(at);
    this.steps.drive(row, from, place);
    if (!this.station(row, i, k, mask)) return;
    if ((this.labels.data[row + STATIONS] as number) < 2) this.goRound(row, v, place);
    this.arriveFrom(row, v, place);
  }

  private station(row: number, i: number, k: number, mask: number): boolean {
    if (this.banned(row, i, k) || !this.steps.visitStation(row, i, k, mask)) {
      if (!this.banned(row, i, k)) this.died('closed', -1);
      this.labels.release(row);
      return false;
    }
    return true;
  }

  private banned(row: number, i: number, station: number): boolean {
    const without = this.limits.without;
    return (
      without !== undefined &&
      without.position === i &&
      without.station === station &&
      without.done === this.labels.data[row + DONE]
    );
  }

  private homeGives(held: number): boolean {
    if (this.model.begins) return false;
    for (let s = 0; s < this.model.stocks; s += 1) {
      if (((held >> s) & 1) === 1 && this.model.homeHolds[s] === 0) return false;
    }
    return true;
  }

  /** Whether station k gives something for less than what the label would pay for it. */
  private cheapens(at: number, i: number, k: number): boolean {
    const { model, labels, chain } = this;
    for (let s = 0; s < model.stocks; s += 1) {
      const price = model.price[k * model.stocks + s] as number;
      if (price < 0 || (chain.stockParts[i * model.stocks + s] as number) === 0) continue;
      if ((labels.data[at + labels.stocksAt + s * PER_STOCK + PRICE] as number) > price) return true;
    }
    return false;
  }

  /** Of the pending changes, those that may better wait: that need water which is not free at station k (-1: the rig). */
  private openChanges(at: number, k: number, pending: number): number {
    if (pending === 0) return 0;
    const { model } = this;
    const free = k >= 0 && model.water >= 0 && (((model.holds[k] as number) >> model.water) & 1) === 1;
    return free ? 0 : this.steps.wetChanges(at, pending);
  }

  private arriveFrom(at: number, v: number, from: number): void {
    const { chain, labels, steps, rig } = this;
    const { data } = labels;
    steps.drive(at, from, chain.place[v] as number);
    const job = chain.job[v] as number;
    const due = rig.breakAfterMs >= 0 && data[at + BREAK] === 0 && (data[at + TIME] as number) >= rig.breakAfterMs;
    const early = (this.model.openMs[job] as number) - (data[at + TIME] as number);
    if (early > 0) steps.spend(at, early);
    if ((data[at + TIME] as number) > (this.model.closeMs[job] as number) && this.missed.at(-1) !== v) {
      this.died('window', -1);
      labels.release(at);
      return;
    }
    if (due) {
      steps.spend(at, rig.breakMs);
      data[at + BREAK] = 1;
    }
    if ((data[at + TIME] as number) + (chain.arriveLeastMs[v] as number) > this.limits.latestMs) {
      this.died('too-long', -1);
      labels.release(at);
      return;
    }
    steps.spend(at, this.model.modes.beforeMs[chain.mode[v] as number] as number);
    data[at + DONE] = 0;
    data[at + STATIONS] = 0;
    data[at + GIVEN] = 0;
    data[at + REFILLED] = 0;
    this.arrived.push(at);
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
    if (doneMs === Number.POSITIVE_INFINITY || this.missed.at(-1) === v) return out;
    const kept = out.filter((at) => (this.labels.data[at + TIME] as number) <= doneMs);
    if (kept.length === out.length) return out;
    if (kept.length === 0 && this.limits.lenient === true) {
      this.missed.push(v);
      return out;
    }
    this.died('window', -1);
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
    const { labels, steps } = this;
    const out: number[] = [];
    this.pending = this.active;
    this.stuck = [];
    this.stuckShort = [];
    while (this.pending.length > 0) {
      const at = this.takeEarliest();
      const done = labels.data[at + DONE] as number;
      const to = done === 0 && steps.mismatched(at, i) ? 0 : steps.furthest(at, i);
      if (to >= mark && this.lastsThrough(i, to, done)) {
        if (done === 0) this.beforehand(at, v, i, firstOfVisit);
        steps.work(at, i, mark);
        out.push(at);
        continue;
      }
      if (done > 0 && to === done && this.beatenHere(at, i)) {
        labels.release(at);
        continue;
      }
      if (done === 0 || to === done) this.events(at, v, i, !firstOfVisit || done > 0);
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

  /**
   * What may be done before an op that could do without: a trip that costs more later, or anything before a wait; and before two
   * persons begin, what would else bring both together in the middle of the stop.
   */
  private beforehand(at: number, v: number, i: number, firstOfVisit: boolean): void {
    if (this.mayWait(at, i, -1) || (firstOfVisit && this.steps.runsShort(at, v))) this.events(at, v, i, !firstOfVisit);
    else if (!firstOfVisit && this.reloadsCheaply(v, i)) this.tripOut(at, v, i);
  }

  /** Whether a stop to come may be reached before it opens. `arriving`: the visit that is next, or -1 at op i itself. */
  private mayWait(at: number, i: number, arriving: number): boolean {
    const { chain } = this;
    const wait = chain.waitBefore[i] as number;
    if (arriving < 0) return (this.labels.data[at + TIME] as number) < wait;
    return (this.labels.data[at + TIME] as number) < Math.max(wait, chain.arriveWaitBefore[arriving] as number);
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

  /** Refill from the rig and trips to stations before the rest of op i. */
  private events(at: number, v: number, i: number, mayTrip: boolean): void {
    const { labels, steps } = this;
    if (labels.data[at + REFILLED] === 1) return;
    if (!this.banned(at, i, -1)) {
      const pending = steps.pendingChanges(at, i);
      const wet = this.openChanges(at, -1, pending);
      for (let part = wet; ; part = (part - 1) & wet) {
        const row = labels.copy(at);
        if (steps.refillFromRig(row, i, (pending & ~wet) | part)) this.pending.push(row);
        else labels.release(row);
        if (part === 0) break;
      }
    }
    if (mayTrip) this.tripOut(at, v, i);
  }

  private tripOut(at: number, v: number, i: number): void {
    const { labels, model, chain, detours } = this;
    if ((labels.data[at + STATIONS] as number) >= 2) return;
    const place = chain.place[v] as number;
    const given = labels.data[at + GIVEN] as number;
    const short = this.dominance.shortage(at, i) !== 0;
    const reload = model.ops.reloadMs[chain.op[i] as number] as number;
    const waits = this.mayWait(at, i, -1);
    for (const k of detours.between(place, place)) {
      if (((model.holds[k] as number) & ~given) === 0) continue;
      const added = detours.addedMs(k, place, place) + reload;
      if (!short && !waits && added >= this.rig.refillMs && !this.cheapens(at, i, k)) continue;
      const pending = this.steps.pendingChanges(at, i);
      const wet = this.openChanges(at, k, pending);
      for (let part = wet; ; part = (part - 1) & wet) {
        this.tripTo(at, i, k, (pending & ~wet) | part, place, reload);
        if (part === 0) break;
      }
    }
  }

  private tripTo(at: number, i: number, k: number, mask: number, place: number, reload: number): void {
    const { labels, steps, detours } = this;
    const row = labels.copy(at);
    steps.drive(row, place, detours.placeOf(k));
    if (!this.station(row, i, k, mask)) return;
    steps.spend(row, reload);
    steps.drive(row, detours.placeOf(k), place);
    this.pending.push(row);
  }

  /** Whether a trip before op i costs less than one before a later op of the visit, so that it may be worth going early. */
  private reloadsCheaply(v: number, i: number): boolean {
    const { chain, model } = this;
    const reload = model.ops.reloadMs[chain.op[i] as number] as number;
    for (let later = i + 1; later < (chain.start[v + 1] as number); later += 1) {
      if ((model.ops.reloadMs[chain.op[later] as number] as number) > reload) return true;
    }
    return false;
  }

  private goHome(): void {
    const { chain, labels, steps, rig } = this;
    const from = chain.visits === 0 ? this.model.homePlace : (chain.place[chain.visits - 1] as number);
    const ends: { at: number; cost: number }[] = [];
    this.rowVisit = chain.visits;
    for (const at of this.active) {
      steps.drive(at, from, this.model.homePlace);
      steps.spend(at, rig.eveningMs);
      const end = labels.data[at + TIME] as number;
      if (end > this.limits.latestMs) {
        this.died('too-long', -1);
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
    const op = this.chain.op[i] as number;
    const material = this.model.ops.material[op] as number;
    if (this.steps.mismatched(at, i)) this.died('material', material);
    else this.died(this.steps.limitAt(at, i).kind === 'payload' ? 'payload' : 'material', material);
  }

  private died(kind: Dead['kind'], material: number): void {
    const { dead } = this;
    const rank = kind === 'closed' ? 0 : 1;
    if (this.rowVisit < dead.visit) return;
    if (this.rowVisit === dead.visit && dead.kind !== 'none' && dead.kind !== 'closed' && rank === 0) return;
    dead.visit = this.rowVisit;
    dead.kind = kind;
    dead.material = material;
  }
}
