import type { Care, RouteOutcome, Visit } from '../refills/index.ts';
import { RefillPlacer } from '../refills/index.ts';
import { Reckoner } from './reckoner.ts';
import { routeKeys } from './route-keys.ts';
import { SMALL } from './size.ts';
import { costOf, type State } from './state.ts';
import type { JobTable } from './tables.ts';

/** Labels kept from op to op while the search compares routes; the routes that are kept are placed in full. */
const BEAM = 16;
/** Routes remembered at most. */
const MOST_REMEMBERED = 300_000;

/** A route of the search: codes of its visits in order. Never changed once made. */
export type Codes = readonly number[];

/** Cost of a route without lateness, and how long its paid day is. */
type Known = { readonly cost: number; readonly paidMs: number };

const IMPOSSIBLE: Known = { cost: Number.POSITIVE_INFINITY, paidMs: 0 };

/**
 * What routes cost. Small problems have every route reckoned by the labels of ../refills; larger ones by rule while the search runs.
 * Remembers what it has seen.
 */
export class RouteValues {
  readonly table: JobTable;
  /** Length of the paid day of the route that was reckoned or proved last; 0 of an empty one, and where it cannot be done. ms */
  paidMs = 0;
  private readonly placer: RefillPlacer;
  private readonly remembered = new Map<string, Known>();
  private readonly proved = new Map<string, Known>();
  private readonly careful = new Map<string, Known>();
  private readonly key: (rig: number, codes: Codes) => string;
  private readonly late: readonly Float64Array[];
  private readonly reckoners: readonly Reckoner[];

  constructor(table: JobTable) {
    this.table = table;
    this.key = routeKeys(table.jobs * table.width);
    this.placer = new RefillPlacer(table.problem);
    this.late = table.problem.jobs.map((job) => job.lateCost);
    this.reckoners = table.problem.rigs.map((_, rig) => new Reckoner(table, rig));
  }

  /** Cost of a route as the search reckons it, lateness included; infinite where it cannot be done. nano-dollars */
  reckon(slot: number, codes: Codes): number {
    if (codes.length === 0) return this.nothing();
    if (this.table.jobs <= SMALL) return this.labelled(slot, codes);
    const { rig, day } = this.slotOf(slot);
    return this.byRule(rig, day, codes) + this.lateness(day, codes);
  }

  private byRule(rig: number, day: number, codes: Codes): number {
    const { rigs, placeOf, width } = this.table;
    const reckoner = this.reckoners[rig] as Reckoner;
    reckoner.setDay(day);
    reckoner.leaveHome();
    let place = rigs[rig]?.homePlace ?? 0;
    this.paidMs = 0;
    for (const code of codes) {
      if (!reckoner.visit(place, code)) return Number.POSITIVE_INFINITY;
      place = placeOf[Math.trunc(code / width)] as number;
    }
    const cost = reckoner.finish(place);
    if (Number.isFinite(cost)) this.paidMs = reckoner.paidMs;
    return cost;
  }

  private nothing(): number {
    this.paidMs = 0;
    return 0;
  }

  /** The same by the labels of the refill programme, whatever the size of the problem. */
  labelled(slot: number, codes: Codes): number {
    if (codes.length === 0) return this.nothing();
    const late = this.lateness(this.slotOf(slot).day, codes);
    const key = this.keyOf(slot, codes);
    let known = this.remembered.get(key);
    if (known === undefined) {
      known = this.labels(slot, codes);
      if (this.remembered.size >= MOST_REMEMBERED) this.remembered.clear();
      this.remembered.set(key, known);
    }
    this.paidMs = known.paidMs;
    return known.cost + late;
  }

  /** A route by the labels of the refill programme. */
  private labels(slot: number, codes: Codes): Known {
    const { rig } = this.slotOf(slot);
    const { width } = this.table;
    const jobs = codes.map((code) => Math.trunc(code / width));
    const modes = codes.map((code) => code % width);
    const cost = this.placer.estimate(slot, jobs, modes, codes.length, BEAM);
    if (!Number.isFinite(cost)) return IMPOSSIBLE;
    return { cost, paidMs: this.placer.lastEndMs(slot) - (this.table.problem.rigs[rig]?.shiftStartMs ?? 0) };
  }

  /** Cost of a route as it will really be driven: every time of day played through. */
  prove(slot: number, codes: Codes): number {
    if (codes.length === 0) return this.nothing();
    const { day } = this.slotOf(slot);
    const key = this.keyOf(slot, codes);
    let known = this.proved.get(key);
    if (known === undefined) {
      known = this.placed(slot, codes, 'quick');
      if (this.proved.size >= MOST_REMEMBERED) this.proved.clear();
      this.proved.set(key, known);
      if (known === IMPOSSIBLE) this.remembered.set(key, IMPOSSIBLE);
    }
    this.paidMs = known.paidMs;
    return known.cost + this.lateness(day, codes);
  }

  /** Cost of a plan with every route placed with all care; infinite where one cannot be driven. nano-dollars */
  carefulCost(state: State): number {
    const costs: number[] = [];
    const lengths: number[] = [];
    state.routes.forEach((codes, slot) => {
      if (codes.length === 0) return;
      const { day } = this.slotOf(slot);
      const key = this.keyOf(slot, codes);
      const known = this.careful.get(key) ?? this.placed(slot, codes, 'careful');
      this.careful.set(key, known);
      costs.push(known.cost + this.lateness(day, codes));
      lengths.push(known.paidMs);
    });
    return costOf(this.table.problem, costs, lengths);
  }

  private placed(slot: number, codes: Codes, care: Care): Known {
    const outcome = this.place(slot, codes, care);
    if (outcome === null) return IMPOSSIBLE;
    return { cost: outcome.cost - this.lateness(this.slotOf(slot).day, codes), paidMs: outcome.paidMs };
  }

  /** The route with everything decided; null where it cannot be done. */
  place(slot: number, codes: Codes, care: Care): RouteOutcome | null {
    const placement = this.placer.place(slot, this.visits(codes), care);
    return placement.kind === 'placed' ? placement.outcome : null;
  }

  /** Position of the visit that a route fails at; the last one where the day is too long. -1 where it can be driven. */
  failsAt(slot: number, codes: Codes): number {
    const placement = this.placer.place(slot, this.visits(codes), 'quick');
    if (placement.kind === 'placed') return -1;
    const { fault } = placement;
    return 'visit' in fault ? Math.min(Math.max(0, fault.visit), codes.length - 1) : codes.length - 1;
  }

  private visits(codes: Codes): readonly Visit[] {
    const { width } = this.table;
    return codes.map((code) => ({ job: Math.trunc(code / width), mode: code % width }));
  }

  private lateness(day: number, codes: Codes): number {
    let sum = 0;
    for (const code of codes) sum += this.late[Math.trunc(code / this.table.width)]?.[day] ?? 0;
    return sum;
  }

  /** Routes of one rig cost the same on all days but those with hours of treating. */
  private keyOf(slot: number, codes: Codes): string {
    const { rig, day } = this.slotOf(slot);
    return this.key((this.table.rowOf[day] as number) * this.reckoners.length + rig, codes);
  }

  private slotOf(slot: number): { readonly rig: number; readonly day: number } {
    return this.table.problem.slots[slot] ?? { rig: 0, day: 0 };
  }
}
