import type { Problem, ProblemRig } from '../problem/index.ts';
import { Chain } from './chain.ts';
import { Detours } from './detours.ts';
import { Dominance } from './dominance.ts';
import {
  BREAK,
  COST,
  DONE,
  DRAWN,
  GIVEN,
  Labels,
  MATERIAL,
  NODE,
  PER_COMPARTMENT,
  PER_STOCK,
  PRICE,
  REFILLED,
  STATIONS,
  TIME,
  USED,
} from './labels.ts';
import { createRigModel, type RigModel } from './model.ts';
import { Steps } from './steps.ts';

/** A refill that was decided: before the rest of the op at a chain position, `done` units of which are treated. */
export type RefillEvent = {
  readonly position: number;
  readonly done: number;
  /** Station, or -1 for the rig. */
  readonly station: number;
  /** Bit c: compartment c is rinsed. */
  readonly changes: number;
};

export type SearchLimits = {
  /** Most labels kept from one op to the next; fewer are faster and may miss the best. */
  readonly beam: number;
  /** End of the longest paid day. */
  readonly latestMs: number;
  /** An event that must not happen, to learn what it saves. */
  readonly without?: RefillEvent;
};

/** Where labels died, and of what; the furthest visit counts. */
export type Dead = {
  visit: number;
  kind: 'none' | 'window' | 'too-long' | 'material' | 'payload' | 'closed';
  material: number;
};

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
  /** True where the beam cut labels off, so that the result may not be the best. */
  cut = false;
  readonly dead: Dead = { visit: -1, kind: 'none', material: -1 };
  private readonly rig: ProblemRig;
  private readonly dominance: Dominance;
  private readonly detours: Detours;
  private active: number[] = [];
  private arrived: number[] = [];
  private pending: number[] = [];
  private stuck: number[] = [];
  private limits: SearchLimits = { beam: 1, latestMs: 0 };
  private rowVisit = 0;
  /** Per compartment and stock: what a used part costs on average in refills to come, for choosing within the beam. */
  private readonly beamPrice: Float64Array;

  constructor(problem: Problem, rig: number) {
    this.model = createRigModel(problem, rig);
    this.chain = new Chain(this.model);
    this.labels = new Labels(this.model);
    this.steps = new Steps(this.model, this.chain, this.labels);
    this.dominance = new Dominance(this.model, this.chain, this.labels);
    this.detours = new Detours(this.model);
    this.rig = problem.rigs[rig] as ProblemRig;
    this.beamPrice = Float64Array.from(this.model.stockCapacity, (size) =>
      size > 0 ? (3 * this.rig.refillMs * this.rig.costPerMs) / size : 0,
    );
  }

  /** Runs over the visits; returns the least cost without lateness, or Infinity. */
  run(jobs: ArrayLike<number>, modes: ArrayLike<number>, count: number, limits: SearchLimits): number {
    const { chain, labels, rig } = this;
    this.limits = limits;
    this.cut = false;
    this.dead.visit = -1;
    this.dead.kind = 'none';
    this.finals = [];
    this.finalCosts = [];
    chain.load(jobs, modes, count);
    labels.clear();
    const startMs = rig.shiftStartMs + rig.morningMs;
    this.active = [labels.first(chain, startMs, rig.costPerDay + rig.morningMs * rig.costPerMs)];
    for (let v = 0; v < count && this.active.length > 0; v += 1) this.visit(v);
    if (this.active.length > 0) this.goHome();
    return this.finalCosts[0] ?? Number.POSITIVE_INFINITY;
  }

  /** The events that lead to a label, in order of time. */
  eventsOf(label: number): RefillEvent[] {
    const { labels } = this;
    const events: RefillEvent[] = [];
    for (let node = labels.data[label + NODE] as number; node >= 0; node = labels.nodeParent[node] as number) {
      events.push({
        position: labels.nodePosition[node] as number,
        done: labels.nodeDone[node] as number,
        station: labels.nodeStation[node] as number,
        changes: labels.nodeChanges[node] as number,
      });
    }
    return events.reverse();
  }

  /** The earliest end of the day that the last run found, whatever it costs. */
  earliestEnd(): number {
    return this.finals.reduce(
      (least, at) => Math.min(least, this.labels.data[at + TIME] as number),
      Number.POSITIVE_INFINITY,
    );
  }

  /** End of the day of the cheapest label. */
  bestEnd(): number {
    const at = this.finals[0];
    return at === undefined ? Number.POSITIVE_INFINITY : (this.labels.data[at + TIME] as number);
  }

  private visit(v: number): void {
    const { chain, steps } = this;
    this.rowVisit = v;
    const from = v === 0 ? this.model.homePlace : (chain.place[v - 1] as number);
    const first = chain.start[v] as number;
    const end = chain.start[v + 1] as number;
    this.arrived = [];
    for (const at of this.active) {
      if (this.model.stations > 1 || v > 0) this.goRound(at, v, from);
      this.arriveFrom(at, v, from);
    }
    this.active = this.prune(this.arrived, first);
    for (let i = first; i < end; i += 1) this.doOp(v, i, i === first);
    for (const at of this.active) steps.spend(at, this.model.modes.afterMs[chain.mode[v] as number] as number);
  }

  /** Stations on the way from one stop to the next; `at` itself stays as it is. */
  private goRound(at: number, v: number, from: number): void {
    const { chain, labels, model, detours } = this;
    const to = chain.place[v] as number;
    const i = chain.start[v] as number;
    const short = this.dominance.runsShort(at, i);
    const second = (labels.data[at + STATIONS] as number) > 0;
    const given = labels.data[at + GIVEN] as number;
    for (let k = 0; k < model.stations; k += 1) {
      const held = model.holds[k] as number;
      if ((held & ~given) === 0 || (v === 0 && !second && this.homeGives(held))) continue;
      if (!short && detours.addedMs(k, from, to) >= this.rig.refillMs && !this.cheapens(at, i, k)) continue;
      if (detours.beaten(k, from, to)) continue;
      this.callAt(at, v, from, k);
    }
  }

  private callAt(at: number, v: number, from: number, k: number): void {
    const i = this.chain.start[v] as number;
    const place = this.detours.placeOf(k);
    this.eachChange(at, i, k, (mask) => {
      const row = this.labels.copy(at);
      this.steps.drive(row, from, place);
      if (!this.station(row, i, k, mask)) return;
      if ((this.labels.data[row + STATIONS] as number) < 2) this.goRound(row, v, place);
      this.arriveFrom(row, v, place);
    });
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

  /** The sets of changes worth making at station k (or -1): dry ones always, wet ones where water is free, else with and without. */
  private eachChange(at: number, i: number, k: number, use: (mask: number) => void): void {
    const pending = this.steps.pendingChanges(at, i);
    if (pending === 0) {
      use(0);
      return;
    }
    const { model } = this;
    const wet = this.steps.wetChanges(at, pending);
    const free = k >= 0 && model.water >= 0 && (((model.holds[k] as number) >> model.water) & 1) === 1;
    if (free || wet === 0) {
      use(pending);
      return;
    }
    for (let part = wet; ; part = (part - 1) & wet) {
      use((pending & ~wet) | part);
      if (part === 0) break;
    }
  }

  private arriveFrom(at: number, v: number, from: number): void {
    const { chain, labels, steps, rig } = this;
    const { data } = labels;
    steps.drive(at, from, chain.place[v] as number);
    const job = this.model.problem.jobs[chain.job[v] as number];
    if (job === undefined) return;
    const due = rig.breakAfterMs >= 0 && data[at + BREAK] === 0 && (data[at + TIME] as number) >= rig.breakAfterMs;
    const early = job.openMs - (data[at + TIME] as number);
    if (early > 0) steps.spend(at, early);
    if ((data[at + TIME] as number) > job.closeMs) {
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

  /** Treats op i with every label, with the events that it takes. */
  private doOp(v: number, i: number, firstOfVisit: boolean): void {
    const { labels, steps } = this;
    const area = this.model.ops.area[this.chain.op[i] as number] as number;
    const out: number[] = [];
    this.pending = this.active;
    this.stuck = [];
    while (this.pending.length > 0) {
      const at = this.takeEarliest();
      const done = labels.data[at + DONE] as number;
      const to = done === 0 && steps.mismatched(at, i) ? 0 : steps.furthest(at, i);
      if (to === area) {
        if (done === 0 && !firstOfVisit && this.reloadsCheaply(v, i)) this.tripOut(at, v, i);
        steps.work(at, i, area);
        labels.data[at + DONE] = 0;
        out.push(at);
        continue;
      }
      if (done > 0 && to === done && this.beatenHere(at, i)) {
        labels.release(at);
        continue;
      }
      if (done === 0 || to === done) this.events(at, v, i, !firstOfVisit || done > 0);
      if (to > done) {
        steps.work(at, i, to);
        this.pending.push(at);
      } else {
        this.diedAt(at, i);
        if (done > 0) this.stuck.push(at);
        else labels.release(at);
      }
    }
    for (const at of this.stuck) labels.release(at);
    this.active = this.prune(out, i + 1);
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
    const { data } = this.labels;
    for (const other of this.stuck) {
      if ((data[other + DONE] as number) < (data[at + DONE] as number)) continue;
      if ((data[other + REFILLED] as number) > (data[at + REFILLED] as number)) continue;
      if ((data[other + STATIONS] as number) > (data[at + STATIONS] as number)) continue;
      if (this.dominance.beats(other, at, i, false)) return true;
    }
    return false;
  }

  /** Refill from the rig and trips to stations before the rest of op i. */
  private events(at: number, v: number, i: number, mayTrip: boolean): void {
    const { labels, steps } = this;
    if (labels.data[at + REFILLED] === 1) return;
    if (!this.banned(at, i, -1)) {
      this.eachChange(at, i, -1, (mask) => {
        const row = labels.copy(at);
        if (steps.refillFromRig(row, i, mask)) this.pending.push(row);
        else labels.release(row);
      });
    }
    if (mayTrip) this.tripOut(at, v, i);
  }

  private tripOut(at: number, v: number, i: number): void {
    const { labels, model, chain, detours, steps } = this;
    if ((labels.data[at + STATIONS] as number) >= 2) return;
    const place = chain.place[v] as number;
    const given = labels.data[at + GIVEN] as number;
    const short = this.dominance.runsShort(at, i);
    const reload = model.ops.reloadMs[chain.op[i] as number] as number;
    for (let k = 0; k < model.stations; k += 1) {
      if (((model.holds[k] as number) & ~given) === 0) continue;
      const added = detours.addedMs(k, place, place) + reload;
      if (!short && added >= this.rig.refillMs && !this.cheapens(at, i, k)) continue;
      if (detours.beaten(k, place, place)) continue;
      this.eachChange(at, i, k, (mask) => {
        const row = labels.copy(at);
        steps.drive(row, place, detours.placeOf(k));
        if (!this.station(row, i, k, mask)) return;
        steps.spend(row, reload);
        steps.drive(row, detours.placeOf(k), place);
        this.pending.push(row);
      });
    }
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

  /** Labels that no other one beats, by time; at most the beam. */
  private prune(list: number[], i: number): number[] {
    if (list.length < 2) return list;
    const { labels, dominance } = this;
    const { data } = labels;
    list.sort(
      (a, b) =>
        (data[a + TIME] as number) - (data[b + TIME] as number) ||
        (data[a + COST] as number) - (data[b + COST] as number),
    );
    const kept: number[] = [];
    const lasting: boolean[] = [];
    for (const at of list) {
      let beaten = false;
      for (let k = 0; k < kept.length && !beaten; k += 1) {
        beaten = dominance.beats(kept[k] as number, at, i, lasting[k] as boolean);
      }
      if (beaten) {
        labels.release(at);
      } else {
        kept.push(at);
        lasting.push(!dominance.runsShort(at, i));
      }
    }
    return kept.length > this.limits.beam ? this.cutToBeam(kept) : kept;
  }

  private cutToBeam(kept: number[]): number[] {
    this.cut = true;
    kept.sort((a, b) => this.outlook(a) - this.outlook(b));
    for (const at of kept.splice(this.limits.beam)) this.labels.release(at);
    return kept;
  }

  /** Cost so far, and a guess at what it takes to make good what has been used. */
  private outlook(at: number): number {
    const { labels, model, rig } = this;
    const { data } = labels;
    let cost = data[at + COST] as number;
    for (let c = 0; c < model.compartments; c += 1) {
      const row = at + labels.compartmentsAt + c * PER_COMPARTMENT;
      if ((data[row + MATERIAL] as number) < 0) continue;
      cost += ((data[row + USED] as number) / (model.capacity[c] as number)) * rig.refillMs * rig.costPerMs * 0.5;
    }
    for (let s = 0; s < model.stocks; s += 1) {
      cost += (data[at + labels.stocksAt + s * PER_STOCK + DRAWN] as number) * (this.beamPrice[s] as number);
    }
    return cost;
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
