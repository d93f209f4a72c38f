import type { RouteModel, Tours } from '../../routing/engine/index.ts';
import type { Near } from './near.ts';
import { BROKEN, PlanModel } from './plan-model.ts';
import { Reckoner } from './reckoner.ts';
import type { Slots } from './slots.ts';
import type { JobTable, RigTable } from './tables.ts';

/** By how much the screen's view of the length of a day is corrected when it proved wrong or right. ms */
const TIGHTEN_MS = 120_000;
const LOOSEN_MS = 10_000;
const MOST_TRUST_MS = 1_800_000;
/** Share of the steps in which an insertion pays for the break that it brings, and how these steps are spread (golden section). */
const BREAK_SHARE = 0.3;
const BREAK_SHARE_OF_FEW = 0.6;
const FEW_SLOTS = 4;
const BREAK_STRIDE = 0.618_033_988_75;

/**
 * The planning problem for the routing engine. A route is a rig's day, a customer is a job + 1, and its way is the mode in which it is
 * done. A route costs what the refill rule of `Reckoner` says, and what its jobs cost for being late. Insertions are compared in
 * constant time by travel, work and a share of the refills, and by the slack that windows and the end of the day leave to a route;
 * the best one is then reckoned by the rule, and taken back where the day does not hold.
 */
export class DayModel extends PlanModel implements RouteModel {
  private readonly travelMs: Int32Array;
  private readonly travelM: Int32Array;
  private readonly rigs: readonly RigTable[];
  private readonly reckoners: readonly Reckoner[];
  private readonly rinseMs: Float64Array;
  private readonly openingCost: Float64Array;
  private readonly stride: number;
  /** [node * stride]: state after each visit; of sentinels, on leaving home. */
  private readonly states: Float64Array;
  /** [node]: place; way there from the node before, and latest arrival less the time of arrival. */
  private readonly place: Int32Array;
  private readonly legMs: Float64Array;
  private readonly legM: Float64Array;
  private readonly arriveMs: Float64Array;
  private readonly slackMs: Float64Array;
  /** [route]: lateness in its cost, whether it holds, changes since it was renewed, and the node after which the last one was. */
  private readonly routeLate: Float64Array;
  private readonly sound: Uint8Array;
  /** [route]: whether it has a break, when its last visit starts, and by how much a day may seem too long for an insertion. */
  private readonly broke: Uint8Array;
  private readonly lastStartMs: Float64Array;
  private readonly trustMs: Float64Array;
  private countsBreaks = false;
  private breakTurn = 0;
  /** Of the days in use after the last step: how many, their mean length, and how many are longer. */
  private usedDays = 0;
  private meanMs = 0;
  private daysAbove = 0;
  private readonly changes: Int32Array;
  private readonly changedAfter: Int32Array;

  constructor(table: JobTable, slots: Slots, near: Near) {
    super(table, slots, near);
    const { problem, jobs } = table;
    const nodes = jobs + 1 + slots.count;
    this.travelMs = problem.travelMs;
    this.travelM = problem.travelM;
    this.rigs = table.rigs;
    this.reckoners = problem.rigs.map((_, rig) => new Reckoner(table, rig));
    this.rinseMs = Float64Array.from(problem.materials, (each) => each.rinseMs);
    this.openingCost = Float64Array.from(
      problem.rigs,
      (rig) => rig.costPerDay + (rig.morningMs + rig.eveningMs) * rig.costPerMs,
    );
    this.stride = this.reckoners.reduce((most, each) => Math.max(most, each.stateSize), 1);
    this.states = new Float64Array(nodes * this.stride);
    this.place = new Int32Array(nodes);
    this.legMs = new Float64Array(nodes);
    this.legM = new Float64Array(nodes);
    this.arriveMs = new Float64Array(nodes);
    this.slackMs = new Float64Array(nodes);
    this.routeLate = new Float64Array(slots.count);
    this.sound = new Uint8Array(slots.count).fill(1);
    this.broke = new Uint8Array(slots.count);
    this.lastStartMs = new Float64Array(slots.count);
    this.trustMs = new Float64Array(slots.count);
    this.changes = new Int32Array(slots.count);
    this.changedAfter = new Int32Array(slots.count);
  }

  bind(tours: Tours): void {
    const { slots, table, place, states, stride } = this;
    this.tours = tours;
    for (let job = 0; job < table.jobs; job += 1) place[job + 1] = table.placeOf[job] as number;
    for (let route = 0; route < slots.count; route += 1) {
      const rig = slots.rigOf[route] as number;
      const sentinel = tours.sentinel(route);
      const reckoner = this.reckoners[rig] as Reckoner;
      place[sentinel] = (this.rigs[rig] as RigTable).homePlace;
      reckoner.leaveHome();
      reckoner.store(states, sentinel * stride);
      this.changedAfter[route] = sentinel;
      this.renew(route);
    }
  }

  linked(customer: number, after: number, before: number, route: number): void {
    this.measure(after, customer);
    this.measure(customer, before);
    this.noteChange(route, after);
  }

  unlinked(_customer: number, after: number, before: number, route: number): void {
    this.measure(after, before);
    this.noteChange(route, after);
  }

  private measure(from: number, to: number): void {
    const at = (this.place[from] as number) * this.table.places + (this.place[to] as number);
    this.legMs[to] = this.travelMs[at] as number;
    this.legM[to] = this.travelM[at] as number;
  }

  private noteChange(route: number, after: number): void {
    this.changes[route] = (this.changes[route] as number) + 1;
    this.changedAfter[route] = after;
  }

  /** Reckons a route anew, from where its only change was, or from its beginning. */
  renew(route: number): void {
    const { tours, states, stride, slots, table } = this;
    const sentinel = tours.sentinel(route);
    const one = this.changes[route] === 1 && this.sound[route] === 1;
    let before = one ? (this.changedAfter[route] as number) : sentinel;
    this.changes[route] = 0;
    const reckoner = this.reckoners[slots.rigOf[route] as number] as Reckoner;
    reckoner.setDay(slots.dayOf[route] as number);
    reckoner.load(states, before * stride);
    let sound = true;
    for (let node = tours.next[before] as number; node !== sentinel; node = tours.next[node] as number) {
      if (!reckoner.visit(this.place[before] as number, (node - 1) * table.width + (tours.way[node] as number))) {
        sound = false;
        break;
      }
      this.arriveMs[node] = reckoner.arrivedMs;
      reckoner.store(states, node * stride);
      before = node;
    }
    const cost = sound ? this.endOf(route, before, reckoner) : Number.POSITIVE_INFINITY;
    this.sound[route] = cost < BROKEN ? 1 : 0;
    this.routeLate[route] = this.latenessOf(route);
    if (cost < BROKEN) this.setRoute(route, cost + (this.routeLate[route] as number), this.paidOf(route, reckoner));
    else this.setRoute(route, BROKEN, 0);
    if (cost < BROKEN) this.renewSlack(route);
  }

  private endOf(route: number, last: number, reckoner: Reckoner): number {
    this.broke[route] = 0;
    if (this.tours.size[route] === 0) return 0;
    this.broke[route] = reckoner.hadBreak ? 1 : 0;
    this.lastStartMs[route] = Math.max(
      this.arriveMs[last] as number,
      this.table.openMs[this.hoursAt(route) + last - 1] as number,
    );
    const cost = reckoner.finish(this.place[last] as number);
    this.arriveMs[this.tours.sentinel(route)] = reckoner.timeMs;
    return cost;
  }

  private paidOf(route: number, reckoner: Reckoner): number {
    return this.tours.size[route] === 0 ? 0 : reckoner.paidMs;
  }

  private latenessOf(route: number): number {
    const { tours, slots } = this;
    const day = slots.dayOf[route] as number;
    const sentinel = tours.sentinel(route);
    let sum = 0;
    for (let node = tours.next[sentinel] as number; node !== sentinel; node = tours.next[node] as number) {
      sum += slots.lateCost[(node - 1) * slots.days + day] as number;
    }
    return sum;
  }

  /** How much later each visit may be reached, as far as windows and the end of the day go. */
  private renewSlack(route: number): void {
    const { tours, table, arriveMs, slackMs } = this;
    const hours = this.hoursAt(route);
    const sentinel = tours.sentinel(route);
    const latestMs = (this.reckoners[this.slots.rigOf[route] as number] as Reckoner).latestMs;
    let slack = latestMs - (tours.size[route] === 0 ? 0 : (arriveMs[sentinel] as number));
    slackMs[sentinel] = slack;
    for (let node = tours.prev[sentinel] as number; node !== sentinel; node = tours.prev[node] as number) {
      const arrive = arriveMs[node] as number;
      const start = Math.max(arrive, table.openMs[hours + node - 1] as number);
      slack =
        Math.min(slack, (table.closeMs[node - 1] as number) - start, this.leftToTreat(route, node)) + start - arrive;
      slackMs[node] = slack;
    }
  }

  /** Where the hours of a route's day begin in the table. */
  private hoursAt(route: number): number {
    return (this.table.rowOf[this.slots.dayOf[route] as number] as number) * this.table.jobs;
  }

  /** By how much the last op of a visit may end later, as far as hours of treating go. */
  private leftToTreat(route: number, node: number): number {
    const doneMs = this.table.doneMs[this.hoursAt(route) + node - 1] as number;
    if (doneMs === Number.POSITIVE_INFINITY) return doneMs;
    const { afterMs } = this.rigs[this.slots.rigOf[route] as number] as RigTable;
    return doneMs - ((this.states[node * this.stride] as number) - (afterMs[this.codeOf(node)] as number));
  }

  /** Asked after each insertion: so what the screen lets through is trusted less where it proved too hopeful. */
  holds(route: number): boolean {
    const holds = this.sound[route] === 1;
    const trust = this.trustMs[route] as number;
    this.trustMs[route] = holds
      ? Math.min(MOST_TRUST_MS, trust + LOOSEN_MS)
      : Math.max(-MOST_TRUST_MS, trust - TIGHTEN_MS);
    return holds;
  }

  admits(customer: number, route: number): boolean {
    const { slots } = this;
    const job = customer - 1;
    if (slots.dayAllowed[job * slots.days + (slots.dayOf[route] as number)] === 0 || this.sound[route] === 0)
      return false;
    const pinned = slots.pinned[job] as number;
    if (pinned >= 0 && pinned !== route) return false;
    return ((this.rigs[slots.rigOf[route] as number] as RigTable).modes[job] as number) > 0;
  }

  /** Travel, work with a share of the refills, lateness and the opening of a day: a close guess, not always less than the price. */
  bound(customer: number, after: number): number {
    const { tours, table, place, slots } = this;
    const route = tours.routeOf[after] as number;
    const before = tours.next[after] as number;
    const rigIndex = slots.rigOf[route] as number;
    const { rig, leastVisitMs } = this.rigs[rigIndex] as RigTable;
    const at = place[customer] as number;
    const there = (place[after] as number) * table.places + at;
    const onward = at * table.places + (place[before] as number);
    const ms = this.msAdded(customer, after, before, leastVisitMs[customer - 1] as number);
    const metres = (this.travelM[there] as number) + (this.travelM[onward] as number) - (this.legM[before] as number);
    const late = slots.lateCost[(customer - 1) * slots.days + (slots.dayOf[route] as number)] as number;
    const opening = after === before ? (this.openingCost[rigIndex] as number) : 0;
    return ms * rig.costPerMs + metres * rig.costPerM + late + opening + this.unevenAdded(route, ms);
  }

  private msAdded(customer: number, after: number, before: number, visitMs: number): number {
    const { travelMs, place, table } = this;
    const at = place[customer] as number;
    return (
      (travelMs[(place[after] as number) * table.places + at] as number) +
      (travelMs[at * table.places + (place[before] as number)] as number) -
      (this.legMs[before] as number) +
      visitMs
    );
  }

  /** What days of unlike length cost more if one gets longer, at the mean of the last step; less where it is below that. */
  private unevenAdded(route: number, addedMs: number): number {
    const { evenDays } = this.table.problem;
    if (evenDays === undefined || this.usedDays === 0) return 0;
    const before = this.lengths[route] as number;
    const { rig } = this.rigs[this.slots.rigOf[route] as number] as RigTable;
    const after = before === 0 ? rig.morningMs + rig.eveningMs + addedMs : before + addedMs;
    const days = before === 0 ? this.usedDays + 1 : this.usedDays;
    const risen = (this.meanMs * this.usedDays + after - before) / days - this.meanMs;
    const above = Math.max(0, after - this.meanMs) - Math.max(0, before - this.meanMs);
    return evenDays.costPerMs * (above - this.daysAbove * risen);
  }

  /**
   * What the visit adds in its best mode as far as can be told in constant time: travel, work with a share of the refills, rinses at a
   * change of mix, overtime, lateness, the opening of a day and, in some steps, the break that it would bring; infinite where it does
   * not keep its window or those after it.
   */
  price(customer: number, after: number, bound: number): number {
    const { tours, table, place, slots } = this;
    const route = tours.routeOf[after] as number;
    const before = tours.next[after] as number;
    const rigIndex = slots.rigOf[route] as number;
    const of = this.rigs[rigIndex] as RigTable;
    const at = place[customer] as number;
    const leave = this.states[after * this.stride] as number;
    const arrive = leave + (this.travelMs[(place[after] as number) * table.places + at] as number);
    const job = customer - 1;
    if (arrive > (table.closeMs[job] as number)) return Number.POSITIVE_INFINITY;
    const hours = this.hoursAt(route);
    const start = Math.max(arrive, table.openMs[hours + job] as number);
    const doneMs = table.doneMs[hours + job] as number;
    const onward = this.travelMs[at * table.places + (place[before] as number)] as number;
    const latest = this.latestAt(route, after, before);
    const least = of.leastVisitMs[job] as number;
    const leastMs = this.msAdded(customer, after, before, least);
    const uneven = this.unevenAdded(route, leastMs);
    const addedMs = (bound - uneven) / of.rig.costPerMs;
    let best = Number.POSITIVE_INFINITY;
    for (let mode = 0; mode < (of.modes[job] as number); mode += 1) {
      const code = job * table.width + mode;
      const changes = this.changesAdded(of, code, after, before);
      if (start + (of.visitMs[code] as number) + changes + onward > latest) continue;
      if (start + (of.workMs[code] as number) - (of.afterMs[code] as number) > doneMs) continue;
      const plain = (of.visitMs[code] as number) - least + changes;
      const more = plain + this.breakAdded(of, route, start, addedMs + plain);
      const over = this.overtimeAdded(of, route, addedMs + more);
      const cost =
        bound +
        more * of.rig.costPerMs +
        over * of.rig.overtimeCostPerMs +
        (this.unevenAdded(route, leastMs + more) - uneven);
      if (cost >= best) continue;
      best = cost;
      this.way = mode;
    }
    return best;
  }

  /** Latest arrival at the node after a new visit, with what the screen has proved to misjudge on this route. */
  private latestAt(route: number, after: number, before: number): number {
    if (after === before) return (this.reckoners[this.slots.rigOf[route] as number] as Reckoner).latestMs;
    return (this.arriveMs[before] as number) + (this.slackMs[before] as number) + (this.trustMs[route] as number);
  }

  /** Rinses and refills at changes of mix that a visit between two nodes adds. */
  private changesAdded(of: RigTable, code: number, after: number, before: number): number {
    const left = this.codeOf(after);
    const right = this.codeOf(before);
    return this.changeMs(of, left, code) + this.changeMs(of, code, right) - this.changeMs(of, left, right);
  }

  /** Code of the visit at a node; -1 at a sentinel. */
  private codeOf(node: number): number {
    return node > this.customers ? -1 : (node - 1) * this.table.width + (this.tours.way[node] as number);
  }

  private changeMs(of: RigTable, left: number, right: number): number {
    if (left < 0 || right < 0) return 0;
    const last = of.lastMix[left] as number;
    const first = of.firstMix[right] as number;
    if (last < 0 || first < 0 || last === first) return 0;
    return (this.rinseMs[last] as number) + of.rig.refillMs;
  }

  /**
   * The break, where the day so far ends before it and would no longer. Days that are being filled anew must not shrink from it, and
   * days that could do without should: so it counts in some steps.
   */
  private breakAdded(of: RigTable, route: number, startMs: number, addedMs: number): number {
    if (!this.countsBreaks || of.rig.breakAfterMs < 0 || this.broke[route] === 1) return 0;
    const last = (this.lastStartMs[route] as number) + addedMs;
    const begins = startMs >= of.rig.breakAfterMs || (this.tours.size[route] !== 0 && last >= of.rig.breakAfterMs);
    return begins ? of.rig.breakMs : 0;
  }

  private overtimeAdded(of: RigTable, route: number, addedMs: number): number {
    if (this.tours.size[route] === 0) return 0;
    const { rig } = of;
    const end = (this.arriveMs[this.tours.sentinel(route)] as number) + addedMs;
    return Math.max(0, Math.min(addedMs, end - (rig.shiftStartMs + rig.shiftMs - rig.eveningMs)));
  }

  /** After each step: the mean day as it now is, and whether the next step counts breaks. */
  settle(): void {
    if (this.table.problem.evenDays !== undefined) this.noteMean();
    this.breakTurn = (this.breakTurn + BREAK_STRIDE) % 1;
    this.countsBreaks = this.breakTurn < (this.slots.count <= FEW_SLOTS ? BREAK_SHARE_OF_FEW : BREAK_SHARE);
  }

  private noteMean(): void {
    let sum = 0;
    let used = 0;
    for (const each of this.lengths) {
      sum += each;
      if (each > 0) used += 1;
    }
    this.usedDays = used;
    this.meanMs = sum / Math.max(1, used);
    this.daysAbove = 0;
    for (const each of this.lengths) if (each > this.meanMs) this.daysAbove += 1;
  }
}
