import type { Slots } from './slots.ts';
import type { JobTable } from './tables.ts';
import type { Codes } from './values.ts';

/** What may go where, for changes to routes that are rows of codes. */
export class Choices {
  readonly table: JobTable;
  readonly slots: Slots;
  /** [slot]: visits at the beginning of its route that stay as they are. */
  readonly kept: Int32Array;

  constructor(table: JobTable, slots: Slots, kept: Int32Array) {
    this.table = table;
    this.slots = slots;
    this.kept = kept;
  }

  jobOf(code: number): number {
    return Math.trunc(code / this.table.width);
  }

  placeOf(code: number): number {
    return this.table.placeOf[this.jobOf(code)] as number;
  }

  /** Modes in which a job may be done in a slot; 0 where it may not be there at all. */
  modes(job: number, slot: number): number {
    const { slots, table } = this;
    if (slots.dayAllowed[job * slots.days + (slots.dayOf[slot] as number)] === 0) return 0;
    const pinned = slots.pinned[job] as number;
    if (pinned >= 0 && pinned !== slot) return 0;
    return table.rigs[slots.rigOf[slot] as number]?.modes[job] ?? 0;
  }

  /** The visit nearest to a position that neither its order nor its job binds to the slot; the position itself where all are bound. */
  nearestFree(slot: number, codes: Codes, at: number): number {
    const free = (index: number): boolean =>
      index >= (this.kept[slot] as number) &&
      index < codes.length &&
      (this.slots.pinned[this.jobOf(codes[index] as number)] as number) < 0;
    for (let off = 0; off < codes.length; off += 1) {
      if (free(at - off)) return at - off;
      if (free(at + off)) return at + off;
    }
    return at;
  }

  /** A code for the same job in another slot: in the same mode where there is such a one, else the first; -1 where it cannot be. */
  there(code: number, slot: number): number {
    const job = this.jobOf(code);
    const modes = this.modes(job, slot);
    if (modes === 0) return -1;
    return code % this.table.width < modes ? code : job * this.table.width;
  }

  /** A row of visits as another slot would do it; null where it cannot do one of them. */
  row(codes: Codes, slot: number): Codes | null {
    const row = codes.map((code) => this.there(code, slot));
    return row.includes(-1) ? null : row;
  }

  /** Travel that a row of visits adds before position `at` of a route. nano-dollars */
  travelAdded(slot: number, codes: Codes, at: number, row: Codes): number {
    const before = this.placeAt(slot, codes, at - 1);
    const after = this.placeAt(slot, codes, at);
    const first = this.placeOf(row[0] as number);
    const last = this.placeOf(row[row.length - 1] as number);
    const direct = codes.length === 0 ? 0 : this.leg(slot, before, after);
    return this.leg(slot, before, first) + this.leg(slot, last, after) - direct;
  }

  /** Whether a route without any refill, wait or break ends in time and meets its windows. */
  hasTime(slot: number, codes: Codes): boolean {
    const { table } = this;
    const of = table.rigs[this.slots.rigOf[slot] as number];
    if (of === undefined) return false;
    const { rig, homePlace } = of;
    const hours = (table.rowOf[this.slots.dayOf[slot] as number] as number) * table.jobs;
    let time = rig.shiftStartMs + rig.morningMs;
    let from = homePlace;
    for (const code of codes) {
      const job = this.jobOf(code);
      const place = table.placeOf[job] as number;
      time += table.problem.travelMs[from * table.places + place] as number;
      time = Math.max(time, table.openMs[hours + job] as number);
      if (time > (table.closeMs[job] as number)) return false;
      time += of.workMs[code] as number;
      if (time - (of.afterMs[code] as number) > (table.doneMs[hours + job] as number)) return false;
      from = place;
    }
    time += table.problem.travelMs[from * table.places + homePlace] as number;
    return time + rig.eveningMs <= rig.shiftStartMs + rig.shiftMs + rig.overtimeMs;
  }

  private placeAt(slot: number, codes: Codes, at: number): number {
    const code = codes[at];
    return code === undefined
      ? (this.table.rigs[this.slots.rigOf[slot] as number]?.homePlace ?? 0)
      : this.placeOf(code);
  }

  private leg(slot: number, from: number, to: number): number {
    const { problem, places } = this.table;
    const rig = problem.rigs[this.slots.rigOf[slot] as number];
    const at = from * places + to;
    return (
      (problem.travelMs[at] as number) * (rig?.costPerMs ?? 0) + (problem.travelM[at] as number) * (rig?.costPerM ?? 0)
    );
  }
}
