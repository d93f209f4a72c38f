import type { ProblemRig } from '../problem/index.ts';
import type { Chain } from './chain.ts';
import type { Detours } from './detours.ts';
import type { Dominance } from './dominance.ts';
import type { Failures } from './failures.ts';
import { BREAK, DONE, GIVEN, type Labels, PER_STOCK, PRICE, REFILLED, STATIONS, TIME } from './labels.ts';
import type { RigModel } from './model.ts';
import type { SearchLimits } from './search-limits.ts';
import type { Steps } from './steps.ts';
import type { Stores } from './stores.ts';

type Tools = {
  readonly model: RigModel;
  readonly chain: Chain;
  readonly labels: Labels;
  readonly stores: Stores;
  readonly steps: Steps;
  readonly detours: Detours;
  readonly dominance: Dominance;
  readonly failures: Failures;
};

/** Where labels go and what they take on there: the ways to a stop, by stations or straight; trips out of a stop; refills from the rig. */
export class Trips {
  limits: SearchLimits = { beam: 1, latestMs: 0 };
  private readonly model: RigModel;
  private readonly rig: ProblemRig;
  private readonly chain: Chain;
  private readonly labels: Labels;
  private readonly stores: Stores;
  private readonly steps: Steps;
  private readonly detours: Detours;
  private readonly dominance: Dominance;
  private readonly failures: Failures;
  private arrived: number[] = [];

  constructor({ model, chain, labels, stores, steps, detours, dominance, failures }: Tools) {
    this.model = model;
    this.rig = model.rig;
    this.chain = chain;
    this.labels = labels;
    this.stores = stores;
    this.steps = steps;
    this.detours = detours;
    this.dominance = dominance;
    this.failures = failures;
  }

  /** Every label on its ways to visit v: those that are there in time, with what the rig does before work begins. */
  arrive(active: readonly number[], v: number): number[] {
    const from = v === 0 ? this.model.homePlace : (this.chain.place[v - 1] as number);
    this.arrived = [];
    for (const at of active) {
      if (this.model.stations > 1 || v > 0 || this.model.begins) this.goRound(at, v, from);
      this.arriveFrom(at, v, from);
    }
    return this.arrived;
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
      const pending = this.stores.pendingChanges(at, i);
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
      if (!this.banned(row, i, k)) this.failures.died('closed', -1);
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
    return free ? 0 : this.stores.wetChanges(at, pending);
  }

  private arriveFrom(at: number, v: number, from: number): void {
    const { chain, labels, steps, rig } = this;
    const { data } = labels;
    steps.drive(at, from, chain.place[v] as number);
    const job = chain.job[v] as number;
    const due = rig.breakAfterMs >= 0 && data[at + BREAK] === 0 && (data[at + TIME] as number) >= rig.breakAfterMs;
    const early = (this.model.openMs[job] as number) - (data[at + TIME] as number);
    if (early > 0) steps.spend(at, early);
    if ((data[at + TIME] as number) > (this.model.closeMs[job] as number) && this.failures.missed.at(-1) !== v) {
      this.failures.died('window', -1);
      labels.release(at);
      return;
    }
    if (due) {
      steps.spend(at, rig.breakMs);
      data[at + BREAK] = 1;
    }
    if ((data[at + TIME] as number) + (chain.arriveLeastMs[v] as number) > this.limits.latestMs) {
      this.failures.died('too-long', -1);
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

  /**
   * What may be done before an op that could do without: a trip that costs more later, or anything before a wait; and before two
   * persons begin, what would else bring both together in the middle of the stop.
   */
  beforehand(at: number, v: number, i: number, firstOfVisit: boolean, out: number[]): void {
    if (this.mayWait(at, i, -1) || (firstOfVisit && this.stores.runsShort(at, v)))
      this.events(at, v, i, !firstOfVisit, out);
    else if (!firstOfVisit && this.reloadsCheaply(v, i)) this.tripOut(at, v, i, out);
  }

  /** Whether a stop to come may be reached before it opens. `arriving`: the visit that is next, or -1 at op i itself. */
  private mayWait(at: number, i: number, arriving: number): boolean {
    const { chain } = this;
    const wait = chain.waitBefore[i] as number;
    if (arriving < 0) return (this.labels.data[at + TIME] as number) < wait;
    return (this.labels.data[at + TIME] as number) < Math.max(wait, chain.arriveWaitBefore[arriving] as number);
  }

  /** Refill from the rig and trips to stations before the rest of op i. */
  events(at: number, v: number, i: number, mayTrip: boolean, out: number[]): void {
    const { labels, stores, steps } = this;
    if (labels.data[at + REFILLED] === 1) return;
    if (!this.banned(at, i, -1)) {
      const pending = stores.pendingChanges(at, i);
      const wet = this.openChanges(at, -1, pending);
      for (let part = wet; ; part = (part - 1) & wet) {
        const row = labels.copy(at);
        if (steps.refillFromRig(row, i, (pending & ~wet) | part)) out.push(row);
        else labels.release(row);
        if (part === 0) break;
      }
    }
    if (mayTrip) this.tripOut(at, v, i, out);
  }

  private tripOut(at: number, v: number, i: number, out: number[]): void {
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
      const pending = this.stores.pendingChanges(at, i);
      const wet = this.openChanges(at, k, pending);
      for (let part = wet; ; part = (part - 1) & wet) {
        this.tripTo(at, i, k, (pending & ~wet) | part, place, reload, out);
        if (part === 0) break;
      }
    }
  }

  private tripTo(at: number, i: number, k: number, mask: number, place: number, reload: number, out: number[]): void {
    const { labels, steps, detours } = this;
    const row = labels.copy(at);
    steps.drive(row, place, detours.placeOf(k));
    if (!this.station(row, i, k, mask)) return;
    steps.spend(row, reload);
    steps.drive(row, detours.placeOf(k), place);
    out.push(row);
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
}
