import type { ProblemRig } from '../problem/index.ts';
import type { JobTable } from './jobs.ts';
import type { Codes } from './values.ts';

/**
 * Judges insertions into one route in constant time each, without placing refills: travel, work, a share of the refills for what
 * is used, rinses at a change of mix, overtime, windows and the length of the day. Rough on purpose; what it proposes is
 * reckoned in full afterwards.
 */
export class RouteScreen {
  readonly slot: number;
  readonly rigIndex: number;
  readonly day: number;
  readonly rig: ProblemRig;
  codes: Codes = [];
  /** Time by which the day may be longer than the rough reckoning allows; falls when that proves too hopeful. */
  slackMs = 0;
  private readonly table: JobTable;
  private readonly homePlace: number;
  /** [position]: when the rig can leave the visit before it (0: home), and the latest arrival at the visit there (last: home). */
  private leave = new Float64Array(8);
  private latest = new Float64Array(8);
  private endMs = 0;

  constructor(table: JobTable, slot: number) {
    const { problem } = table;
    const { rig, day } = problem.slots[slot] ?? { rig: 0, day: 0 };
    this.table = table;
    this.slot = slot;
    this.rigIndex = rig;
    this.day = day;
    this.rig = problem.rigs[rig] as ProblemRig;
    this.homePlace = problem.stations[this.rig.home]?.place ?? 0;
    this.load([]);
  }

  /** Takes up a route. Work: proportional to its length. */
  load(codes: Codes): void {
    const { rig } = this;
    this.codes = codes;
    const count = codes.length;
    if (this.leave.length < count + 2) {
      this.leave = new Float64Array(count * 2 + 2);
      this.latest = new Float64Array(count * 2 + 2);
    }
    let time = rig.shiftStartMs + rig.morningMs;
    this.leave[0] = time;
    for (let at = 0; at < count; at += 1) {
      const code = codes[at] as number;
      const job = Math.trunc(code / this.table.width);
      time = Math.max(time + this.travel(this.placeAt(at - 1), this.placeAt(at)), this.table.openMs[job] as number);
      time += this.visitMs(code) + this.changeMs(at - 1, code);
      this.leave[at + 1] = time;
    }
    this.endMs = count === 0 ? time : time + this.travel(this.placeAt(count - 1), this.homePlace);
    let latest = this.latestHome();
    this.latest[count] = latest;
    for (let at = count - 1; at >= 0; at -= 1) {
      const code = codes[at] as number;
      const job = Math.trunc(code / this.table.width);
      latest = Math.min(
        latest - this.travel(this.placeAt(at), this.placeAt(at + 1)) - this.visitMs(code),
        this.table.closeMs[job] as number,
      );
      this.latest[at] = latest;
    }
  }

  /** Added cost of a visit before position `at`; infinite where it does not fit. */
  insertion(code: number, at: number): number {
    const { table, rig } = this;
    const visit = this.visitMs(code);
    if (visit < 0) return Number.POSITIVE_INFINITY;
    const job = Math.trunc(code / table.width);
    const place = table.placeOf[job] as number;
    const before = this.placeAt(at - 1);
    const after = this.placeAt(at);
    const arrive = Math.max((this.leave[at] as number) + this.travel(before, place), table.openMs[job] as number);
    if (arrive > (table.closeMs[job] as number)) return Number.POSITIVE_INFINITY;
    const done = arrive + visit + this.changeMs(at - 1, code);
    if (done + this.travel(place, after) > (this.latest[at] as number)) return Number.POSITIVE_INFINITY;
    const empty = this.codes.length === 0;
    const direct = empty ? 0 : this.travel(before, after);
    const addedMs =
      this.travel(before, place) + this.travel(place, after) - direct + visit + this.changesAdded(at, code);
    const addedM = this.metres(before, place) + this.metres(place, after) - (empty ? 0 : this.metres(before, after));
    const late = table.problem.jobs[job]?.lateCost[this.day] ?? 0;
    const start = empty ? rig.costPerDay + (rig.morningMs + rig.eveningMs) * rig.costPerMs : 0;
    return addedMs * rig.costPerMs + addedM * rig.costPerM + this.overtime(addedMs) + late + start;
  }

  /** What taking the visit at a position out would save in travel and work. */
  removal(at: number): number {
    const { rig } = this;
    const place = this.placeAt(at);
    const before = this.placeAt(at - 1);
    const after = this.placeAt(at + 1);
    const ms = this.travel(before, place) + this.travel(place, after) - this.travel(before, after);
    return (ms + this.visitMs(this.codes[at] as number)) * rig.costPerMs;
  }

  private overtime(addedMs: number): number {
    const end = this.rig.shiftStartMs + this.rig.shiftMs - this.rig.eveningMs;
    const over = Math.max(0, this.endMs + addedMs - end) - Math.max(0, this.endMs - end);
    return over * this.rig.overtimeCostPerMs;
  }

  private latestHome(): number {
    const { rig } = this;
    const latest = rig.shiftStartMs + rig.shiftMs + rig.overtimeMs - rig.eveningMs;
    // A day that is over before the break would begin has none.
    const breakMs = rig.breakAfterMs >= 0 && latest - rig.breakMs > rig.breakAfterMs ? rig.breakMs : 0;
    return latest - breakMs + this.slackMs;
  }

  private visitMs(code: number): number {
    return this.table.visitMs[this.rigIndex * this.table.jobs * this.table.width + code] as number;
  }

  /** Place of the visit at a position; home before the first and after the last. */
  private placeAt(at: number): number {
    const code = this.codes[at];
    return code === undefined ? this.homePlace : (this.table.placeOf[Math.trunc(code / this.table.width)] as number);
  }

  private travel(from: number, to: number): number {
    return this.table.problem.travelMs[from * this.table.places + to] as number;
  }

  private metres(from: number, to: number): number {
    return this.table.problem.travelM[from * this.table.places + to] as number;
  }

  private changesAdded(at: number, code: number): number {
    const next = this.codes[at];
    if (next === undefined) return this.changeMs(at - 1, code);
    return this.changeMs(at - 1, code) + this.change(code, next) - this.changeMs(at - 1, next);
  }

  private changeMs(before: number, code: number): number {
    const previous = this.codes[before];
    return previous === undefined ? 0 : this.change(previous, code);
  }

  /** Rinse and refill between two visits whose tanks hold different mixes. */
  private change(previous: number, code: number): number {
    const base = this.rigIndex * this.table.jobs * this.table.width;
    const last = this.table.lastMix[base + previous] as number;
    const first = this.table.firstMix[base + code] as number;
    if (last < 0 || first < 0 || last === first) return 0;
    return (this.table.problem.materials[last]?.rinseMs ?? 0) + this.rig.refillMs;
  }
}
