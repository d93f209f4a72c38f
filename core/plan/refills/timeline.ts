import type { Material } from '../problem/index.ts';
import { crowdedAt } from './aboard.ts';
import type { Moves } from './amounts.ts';
import { BagLevels, type Pouring } from './bag-levels.ts';
import type { Work } from './busy.ts';
import type { Chain } from './chain.ts';
import { servedAfter } from './part-done.ts';
import type { RefillEvent } from './search-limits.ts';
import { addedMs, leadAfter } from './strands.ts';
import type { Activity, RefillReason } from './types.ts';

/** The day played to the millisecond. Lateness is not in `cost`. */
export type Timeline = {
  readonly activities: readonly Activity[];
  readonly paidMs: number;
  readonly distanceM: number;
  readonly cost: number;
};

export type TimelineFault = {
  readonly kind: 'window-missed' | 'station-closed' | 'too-long' | 'payload';
  readonly visit: number;
};

const NO_REASON: RefillReason = { kind: 'payload' };

/**
 * Plays events and amounts; `reasons` may be left out where only times are asked for. Bags on machines are poured where the hopper
 * has run dry: as much as fits and is used before it is filled again or, where a customer's hours ask for that, only what the op
 * needs, or as the work says.
 */
export function playDay(chain: Chain, work: Work, reasons: readonly RefillReason[] = []): Timeline | TimelineFault {
  const crowded = crowdedAt(chain, work);
  if (crowded >= 0) return { kind: 'payload', visit: crowded };
  const first = new Play(chain, work, 'ahead', reasons).run();
  if (!chain.model.carriesBags) return first;
  const others: readonly Pouring[] = ['as-needed', ...(work.pours === undefined ? [] : [work.pours])];
  return others.reduce<Timeline | TimelineFault>((best, pouring) => {
    const other = new Play(chain, work, pouring, reasons).run();
    return isTimeline(other) && (!isTimeline(best) || other.cost < best.cost) ? other : best;
  }, first);
}

/** Whether a played day kept to all times. */
export function isTimeline(played: Timeline | TimelineFault): played is Timeline {
  return 'activities' in played;
}

type Part<A> = A extends { readonly startMs: number } ? Omit<A, 'startMs' | 'endMs'> : never;

class Play {
  private readonly chain: Chain;
  private readonly events: readonly RefillEvent[];
  private readonly moves: readonly Moves[];
  private readonly reasons: readonly RefillReason[];
  private readonly activities: Activity[] = [];
  private now: number;
  /** The first person's work less the second's since both last came together. ms */
  private lead = 0;
  private distanceM = 0;
  private place: number;
  private nextEvent = 0;
  private rested = false;
  private fault: TimelineFault | null = null;
  private readonly bags: BagLevels | null;

  constructor(chain: Chain, work: Work, pouring: Pouring, reasons: readonly RefillReason[]) {
    this.chain = chain;
    this.events = work.events;
    this.moves = work.moves;
    this.reasons = reasons;
    this.bags = chain.model.carriesBags ? new BagLevels(chain, work, pouring) : null;
    this.place = chain.model.homePlace;
    this.now = this.rig.shiftStartMs;
  }

  private get rig() {
    return this.chain.model.rig;
  }

  run(): Timeline | TimelineFault {
    const { rig, chain } = this;
    const load = this.moves[0] as Moves;
    this.bags?.fill(0);
    this.add(rig.morningMs, { kind: 'morning', fills: load.fills, stock: load.stock });
    for (let v = 0; v < chain.visits && this.fault === null; v += 1) this.visit(v);
    if (this.fault !== null) return this.fault;
    this.drive(chain.model.homePlace);
    this.add(rig.eveningMs, { kind: 'evening' });
    const paidMs = this.now - rig.shiftStartMs;
    if (paidMs > rig.shiftMs + rig.overtimeMs) return { kind: 'too-long', visit: chain.visits - 1 };
    const over = Math.max(0, paidMs - rig.shiftMs);
    const cost = rig.costPerDay + paidMs * rig.costPerMs + over * rig.overtimeCostPerMs + this.distanceM * rig.costPerM;
    return { activities: this.activities, paidMs, distanceM: this.distanceM, cost };
  }

  private add(ms: number, part: Part<Activity>): void {
    const startMs = this.now;
    this.now += ms;
    this.activities.push({ ...part, startMs, endMs: this.now } as Activity);
  }

  /** Work of one person, beside what the other one does in the same stretch of the stop. */
  private addWork(i: number, ms: number, part: Part<Activity>): void {
    const second = this.chain.model.ops.second[this.chain.op[i] as number] === 1;
    this.now += addedMs(this.lead, second, ms);
    this.lead = leadAfter(this.lead, second, ms);
    const behind = Math.max(0, second ? this.lead : -this.lead);
    const endMs = this.now - behind;
    this.activities.push({ ...part, startMs: endMs - ms, endMs } as Activity);
  }

  private drive(to: number): void {
    const { problem, places } = this.chain.model;
    if (to === this.place) return;
    const at = this.place * places + to;
    const distanceM = problem.travelM[at] as number;
    this.add(problem.travelMs[at] as number, { kind: 'drive', fromPlace: this.place, toPlace: to, distanceM });
    this.distanceM += distanceM;
    this.place = to;
  }

  private waitUntil(ms: number): void {
    if (ms > this.now) this.add(ms - this.now, { kind: 'wait' });
  }

  private visit(v: number): void {
    const { chain } = this;
    const { modes, ops } = chain.model;
    const first = chain.start[v] as number;
    const end = chain.start[v + 1] as number;
    const mode = chain.mode[v] as number;
    while (this.due(first, 0) && (this.events[this.nextEvent] as RefillEvent).station >= 0) this.refill(v, 0, null);
    this.drive(chain.place[v] as number);
    this.arrive(v, chain.job[v] as number);
    this.add(modes.beforeMs[mode] as number, { kind: 'set-up', visit: v });
    this.lead = 0;
    for (let i = first; i < end; i += 1) {
      const op = i - first;
      const area = ops.area[chain.op[i] as number] as number;
      while (this.due(i, 0)) this.refill(v, op, 0);
      if ((chain.swapMs[i] as number) > 0)
        this.addWork(i, chain.swapMs[i] as number, { kind: 'swap-head', visit: v, op });
      let done = 0;
      while (this.events[this.nextEvent]?.position === i) {
        const to = (this.events[this.nextEvent] as RefillEvent).done;
        this.treat(v, i, done, to);
        done = to;
        while (this.due(i, to)) this.refill(v, op, to);
      }
      this.treat(v, i, done, area);
    }
    if (this.now > (chain.model.doneMs[chain.job[v] as number] as number))
      this.fault ??= { kind: 'window-missed', visit: v };
    this.add(modes.afterMs[mode] as number, { kind: 'pack-up', visit: v });
  }

  private due(position: number, done: number): boolean {
    const event = this.events[this.nextEvent];
    return event !== undefined && event.position === position && event.done === done;
  }

  private arrive(v: number, job: number): void {
    const { rig } = this;
    const { openMs, closeMs } = this.chain.model;
    const due = rig.breakAfterMs >= 0 && !this.rested && this.now >= rig.breakAfterMs;
    this.waitUntil(openMs[job] as number);
    if (this.now > (closeMs[job] as number)) this.fault ??= { kind: 'window-missed', visit: v };
    if (!due) return;
    this.rested = true;
    if (rig.breakMs > 0) this.add(rig.breakMs, { kind: 'break' });
  }

  /** Treats ground of op i, with the bags that are poured on the way. */
  private treat(v: number, i: number, fromUnits: number, toUnits: number): void {
    let done = fromUnits;
    for (const pour of this.bags?.during(i, this.nextEvent, fromUnits, toUnits) ?? []) {
      if (pour.doneUnits > done) this.cover(v, i, done, pour.doneUnits);
      done = pour.doneUnits;
      const { ms, ...what } = pour;
      this.addWork(i, ms, { kind: 'pour', visit: v, ...what, ...this.placeInStop(v, i, done) });
    }
    if (this.bags?.failed === true) this.fault ??= { kind: 'too-long', visit: v };
    if (toUnits > done || fromUnits === toUnits) this.cover(v, i, done, toUnits);
  }

  /** The op that is next and what of it is done: after the last unit of one it is the one after it. */
  private placeInStop(v: number, i: number, done: number): { readonly op: number; readonly doneUnits: number } {
    const { chain } = this;
    const op = i - (chain.start[v] as number);
    const isOver = done >= (chain.model.ops.area[chain.op[i] as number] as number);
    return isOver && i + 1 < (chain.start[v + 1] as number) ? { op: op + 1, doneUnits: 0 } : { op, doneUnits: done };
  }

  private cover(v: number, i: number, fromUnits: number, toUnits: number): void {
    const { ops } = this.chain.model;
    const op = this.chain.op[i] as number;
    const area = ops.area[op] as number;
    const service = ops.serviceMs[op] as number;
    const ms = servedAfter(service, toUnits, area) - servedAfter(service, fromUnits, area);
    this.addWork(i, ms, { kind: 'treat', visit: v, op: i - (this.chain.start[v] as number), fromUnits, toUnits });
  }

  /** The next event; `done` is null for a station on the way to the stop. */
  private refill(v: number, op: number, done: number | null): void {
    const { chain } = this;
    const index = this.nextEvent;
    const event = this.events[index] as RefillEvent;
    const moves = this.moves[index + 1] as Moves;
    this.nextEvent += 1;
    this.bags?.fill(index + 1);
    const home = this.place;
    const station = chain.model.problem.stations[event.station];
    let ms = this.transferMs(event, moves, index) + ((done ?? 0) > 0 ? this.rig.midZoneMs : 0);
    if (station === undefined) ms += this.rig.refillMs;
    else {
      this.drive(station.place);
      this.waitUntil(station.openMs);
      ms += station.visitMs;
      const reload = chain.model.ops.reloadMs[chain.op[event.position] as number] as number;
      if (done !== null) ms += reload;
      if (this.now + ms > station.closeMs) this.fault ??= { kind: 'station-closed', visit: v };
    }
    const rinsed = Array.from({ length: chain.model.compartments }, (_, c) => c).filter(
      (c) => ((event.changes >> c) & 1) === 1 && (chain.model.poursInto[c] as number) < 0,
    );
    this.add(ms, {
      kind: 'refill',
      station: event.station,
      visit: v,
      op,
      doneUnits: done ?? 0,
      rinsed,
      fills: moves.fills,
      stock: moves.stock,
      reason: this.reasons[index] ?? NO_REASON,
    });
    this.lead = 0;
    if (done !== null) this.drive(home);
  }

  private transferMs(event: RefillEvent, moves: Moves, index: number): number {
    const { model } = this.chain;
    const price = (s: number): number =>
      event.station < 0 ? 0 : (model.price[event.station * model.stocks + s] as number);
    let ms = 0;
    for (const fill of moves.fills) {
      const { stock } = model.problem.materials[fill.material] as Material;
      ms += fill.parts * ((model.fillMs[fill.compartment] as number) + price(stock));
    }
    for (const fill of moves.stock) ms += fill.parts * price(fill.stock);
    return ms + this.rinseMs(event, index);
  }

  private rinseMs(event: RefillEvent, index: number): number {
    const { chain } = this;
    const C = chain.model.compartments;
    let ms = 0;
    for (let c = 0; event.changes >> c !== 0; c += 1) {
      if (((event.changes >> c) & 1) === 0 || (chain.model.poursInto[c] as number) >= 0) continue;
      ms += chain.model.problem.materials[this.materialBefore(c, index, C)]?.rinseMs ?? 0;
    }
    return ms;
  }

  /** The material that is in compartment c when event `index` comes. */
  private materialBefore(c: number, index: number, C: number): number {
    for (let before = index - 1; before >= 0; before -= 1) {
      const event = this.events[before] as RefillEvent;
      if (((event.changes >> c) & 1) === 1) return this.chain.nextMaterial[event.position * C + c] as number;
    }
    return this.chain.firstMaterial(c);
  }
}
