import { rinsedOut } from './ledger.ts';
import { add, type Sum } from './linear.ts';
import { servedAfter } from './part-done.ts';
import type { DayProgramme } from './programme.ts';
import { hopperOf } from './programme-bags.ts';
import type { RefillEvent } from './search-limits.ts';

/**
 * The clock of a day programme: plays the day in the way of `playDay`, with what is not known yet as variables, and demands that
 * windows, hours and the end of the day are kept. In seconds.
 */
export class TimeOfDay {
  readonly variables: number;
  private readonly day: DayProgramme;
  private readonly latestMs: number;
  /** Variables of waits at visits and at the stations of events, -1 for none; and of overtime. */
  private readonly visitWait: Int32Array;
  private readonly stationWait: Int32Array;
  private readonly overtime: number;
  /** Variables of what the second person needs longer than the first: after event e, and after the set-up of visit v. -1 for none. */
  private readonly longerAfter: Int32Array;
  private readonly longerAt: Int32Array;
  /** Work of the first and of the second person since both last came together, and the variable for it; null where one works. */
  private strands: { readonly sums: readonly [Sum, Sum]; readonly longer: number } | null = null;
  private now: Sum = new Float64Array(0);
  private metres = 0;
  private place: number;
  private next = 1;

  constructor(day: DayProgramme, taken: number) {
    this.day = day;
    this.place = day.model.homePlace;
    this.latestMs = this.rig.shiftStartMs + this.rig.shiftMs + this.rig.overtimeMs;
    let count = taken;
    const earliest = this.earliestArrivals();
    const { chain } = day;
    const { stations } = day.model.problem;
    this.visitWait = Int32Array.from(earliest, (ms, v) =>
      (day.model.openMs[chain.job[v] as number] as number) > ms ? count++ : -1,
    );
    this.stationWait = Int32Array.from(day.events, (event) =>
      (stations[event?.station ?? -1]?.openMs ?? 0) > this.rig.shiftStartMs ? count++ : -1,
    );
    this.longerAfter = Int32Array.from(day.events, (event) =>
      event !== null && this.liesBetween(event) ? count++ : -1,
    );
    this.longerAt = Int32Array.from(earliest, (_, v) => (chain.isShared(v) ? count++ : -1));
    this.overtime = count++;
    this.variables = count;
  }

  private get rig() {
    return this.day.model.rig;
  }

  /** Arrivals without refills, waits and breaks. */
  private earliestArrivals(): number[] {
    const { chain, model } = this.day;
    const arrivals: number[] = [];
    let ms = this.rig.shiftStartMs + this.rig.morningMs;
    let place = model.homePlace;
    for (let v = 0; v < chain.visits; v += 1) {
      const to = chain.place[v] as number;
      ms += model.problem.travelMs[place * model.places + to] as number;
      arrivals.push(ms);
      ms = Math.max(ms, model.openMs[chain.job[v] as number] as number);
      const mode = chain.mode[v] as number;
      ms += (model.modes.beforeMs[mode] as number) + (model.modes.afterMs[mode] as number);
      for (let i = chain.start[v] as number; i < (chain.start[v + 1] as number); i += 1)
        ms += chain.workMs[i] as number;
      place = to;
    }
    return arrivals;
  }

  /** Plays the day; returns its cost without that of the variables. nano-dollars */
  play(): number {
    const { day, rig } = this;
    const { chain, linear } = day;
    this.now = linear.sum();
    this.pass(rig.shiftStartMs + rig.morningMs);
    for (let v = 0; v < chain.visits; v += 1) this.visit(v);
    this.drive(day.model.homePlace);
    this.pass(rig.eveningMs);
    this.notAfter(this.latestMs);
    const regular = this.now.slice();
    regular[this.overtime] = -1;
    linear.atMost(regular, (rig.shiftStartMs + rig.shiftMs) / 1000);
    linear.addCost(this.overtime, rig.overtimeCostPerMs / rig.costPerMs);
    for (let j = 0; j < linear.variables; j += 1) linear.addCost(j, Math.max(0, this.now[j] as number));
    const paidMs = (this.now[linear.variables] as number) * 1000 - rig.shiftStartMs;
    return rig.costPerDay + paidMs * rig.costPerMs + this.metres * rig.costPerM;
  }

  /** Whether two persons work at the visit in which an event lies. */
  private liesBetween(event: RefillEvent): boolean {
    const { chain } = this.day;
    return chain.isShared(chain.visitOf[event.position] as number);
  }

  private pass(ms: number): void {
    const n = this.day.linear.variables;
    this.now[n] = (this.now[n] as number) + ms / 1000;
  }

  private drive(to: number): void {
    const { problem, places } = this.day.model;
    if (to === this.place) return;
    const at = this.place * places + to;
    this.pass(problem.travelMs[at] as number);
    this.metres += problem.travelM[at] as number;
    this.place = to;
  }

  private notAfter(ms: number): void {
    this.day.linear.atMost(this.now, ms / 1000);
  }

  private notBefore(ms: number): void {
    this.day.linear.atLeast(this.now, ms / 1000);
  }

  private wait(variable: number, openMs: number): void {
    if (variable < 0) return;
    this.now[variable] = 1;
    this.notBefore(openMs);
  }

  private visit(v: number): void {
    const { day } = this;
    const { chain, model } = day;
    const { modes } = model;
    const first = chain.start[v] as number;
    const mode = chain.mode[v] as number;
    while (this.onTheWay(first)) this.refill(first);
    this.drive(chain.place[v] as number);
    this.arrive(v);
    this.pass(modes.beforeMs[mode] as number);
    this.goOn(this.longerAt[v] as number);
    for (let i = first; i < (chain.start[v + 1] as number); i += 1) this.work(i);
    this.comeTogether();
    const doneMs = model.doneMs[chain.job[v] as number] as number;
    if (doneMs < this.latestMs) this.notAfter(doneMs);
    this.pass(modes.afterMs[mode] as number);
  }

  /** From here on two persons work side by side, if there is a variable for it. */
  private goOn(longer: number): void {
    const { linear } = this.day;
    this.strands = longer < 0 ? null : { sums: [linear.sum(), linear.sum()], longer };
  }

  /** The stretch lasts as long as the longer strand. */
  private comeTogether(): void {
    if (this.strands === null) return;
    const { linear } = this.day;
    const { sums, longer } = this.strands;
    const [first, second] = sums;
    add(this.now, first, 1);
    this.now[longer] = 1;
    const left = first.slice();
    left[longer] = 1;
    add(left, second, -1);
    linear.atLeast(left);
    this.strands = null;
  }

  /** Where the time of op i counts: the day, or the strand of its person. */
  private clockOf(i: number): Sum {
    const { chain, model } = this.day;
    return this.strands?.sums[model.ops.second[chain.op[i] as number] as 0 | 1] ?? this.now;
  }

  private onTheWay(first: number): boolean {
    const event = this.day.events[this.next];
    return event?.position === first && event.done === 0 && event.station >= 0;
  }

  private arrive(v: number): void {
    const { day, rig } = this;
    const { breakVisit } = day.options;
    if (rig.breakAfterMs >= 0) {
      if (breakVisit < 0 || v < breakVisit) this.notAfter(rig.breakAfterMs - 1);
      else if (v === breakVisit) this.notBefore(rig.breakAfterMs);
    }
    const job = day.chain.job[v] as number;
    const closeMs = day.model.closeMs[job] as number;
    this.wait(this.visitWait[v] as number, day.model.openMs[job] as number);
    if (closeMs < this.latestMs) this.notAfter(closeMs);
    if (v === breakVisit) this.pass(rig.breakMs);
  }

  /** The op at position i with its refills. */
  private work(i: number): void {
    const { day } = this;
    const { ops } = day.model;
    const op = day.chain.op[i] as number;
    const n = day.linear.variables;
    while (this.day.events[this.next]?.position === i && this.day.events[this.next]?.done === 0) this.refill(i);
    const clock = this.clockOf(i);
    clock[n] = (clock[n] as number) + (day.chain.swapMs[i] as number) / 1000;
    this.pour(i);
    while (this.day.events[this.next]?.position === i) {
      const e = this.next;
      this.addServed(i, e, 1);
      this.refill(i);
      this.pour(i);
      this.addServed(i, e, -1);
    }
    const last = this.clockOf(i);
    last[n] = (last[n] as number) + (ops.serviceMs[op] as number) / 1000;
  }

  /** Bags poured while work goes on at position i. */
  private pour(i: number): void {
    const { day } = this;
    const variable = day.pours.variable(i, this.next - 1);
    if (variable < 0) return;
    const bags = day.model.bagsOf[hopperOf(day.chain, i)] as number;
    this.clockOf(i)[variable] = (day.model.pourMs[bags] as number) / 1000;
  }

  /** Time of op i up to event e, which lies inside it. */
  private addServed(i: number, e: number, times: number): void {
    const { day } = this;
    const { ops } = day.model;
    const op = day.chain.op[i] as number;
    const service = ops.serviceMs[op] as number;
    const left = day.leftAt[e] as number;
    const n = day.linear.variables;
    const clock = this.clockOf(i);
    const done = (day.events[e] as RefillEvent).done;
    const ms = left >= 0 ? service : servedAfter(service, done, ops.area[op] as number);
    if (left >= 0) clock[left] = (clock[left] as number) - (times * service) / 1000;
    clock[n] = (clock[n] as number) + (times * ms) / 1000;
  }

  private refill(i: number): void {
    const { day, rig } = this;
    const { chain, model } = day;
    const e = this.next;
    const event = day.events[e] as RefillEvent;
    const station = model.problem.stations[event.station];
    const onTheWay = event.done === 0 && chain.start[chain.visitOf[i] as number] === i;
    const back = this.place;
    this.next += 1;
    this.comeTogether();
    if (station === undefined) this.pass(rig.refillMs);
    else {
      this.drive(station.place);
      this.wait(this.stationWait[e] as number, station.openMs);
      this.pass(station.visitMs + (onTheWay ? 0 : (model.ops.reloadMs[chain.op[i] as number] as number)));
    }
    this.pass((event.done > 0 ? rig.midZoneMs : 0) + this.rinseMs(e, event));
    this.transfer(e, event);
    if (station !== undefined) {
      if (station.closeMs < this.latestMs) this.notAfter(station.closeMs);
      if (!onTheWay) this.drive(back);
    }
    if (station === undefined || !onTheWay) this.goOn(this.longerAfter[e] as number);
  }

  private rinseMs(e: number, event: RefillEvent): number {
    const { day } = this;
    let ms = 0;
    for (let c = 0; event.changes >> c !== 0; c += 1) {
      if (((event.changes >> c) & 1) === 0 || (day.model.poursInto[c] as number) >= 0) continue;
      ms += rinsedOut(day.chain, day.ledger, e, c).rinseMs;
    }
    return ms;
  }

  /** Time for what is moved at event e. */
  private transfer(e: number, event: RefillEvent): void {
    const { day } = this;
    const { model } = day;
    const { now } = this;
    const price = (s: number): number =>
      event.station < 0 ? 0 : (model.price[event.station * model.stocks + s] as number);
    for (let c = 0; c < model.compartments; c += 1) {
      const fill = day.fillAt[e * model.compartments + c] as number;
      const run = day.runOf(e, c);
      if (fill >= 0 && run !== undefined) now[fill] = ((model.fillMs[c] as number) + price(run.stock)) / 1000;
    }
    for (let s = 0; s < model.stocks; s += 1) {
      const buy = day.buyAt[e * model.stocks + s] as number;
      if (buy >= 0) now[buy] = price(s) / 1000;
    }
  }
}
