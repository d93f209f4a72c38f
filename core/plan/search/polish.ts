import type { StopSignal } from '../../base/index.ts';
import { unevenCost } from '../problem/index.ts';
import type { Choices } from './choices.ts';
import type { Near } from './near.ts';
import { SMALL } from './size.ts';
import { type Change, reckonState, type State, withRoutes } from './state.ts';
import type { Codes, RouteValues } from './values.ts';

/** Positions that are reckoned for each row of visits that is tried elsewhere. */
const TRIED_PLACES = 5;
/** Neighbours beside which a row of visits is tried, and with which one visit is exchanged. */
const TRIED_NEIGHBOURS = 12;
const SWAPPED_NEIGHBOURS = 8;
/** Share of the cost of the routes in question by which a change may be dearer by rule and is still looked at by the labels. */
const MARGIN = 0.01;
/** Gains below this are rounding. nano-dollars */
const LEAST_GAIN = 10;
/** Longest piece that is turned round, and longest row that is moved as a whole. */
const LONGEST_TURN = 12;
const LONGEST_MOVE = 3;

/** How routes are reckoned while a plan is polished. */
export type Measure = {
  /** Cost of a route by itself; the values then know its length. */
  readonly cost: (slot: number, codes: Codes) => number;
  /** Whether routes are looked at by rule before they are reckoned by the labels. */
  readonly labels: boolean;
  readonly signal: StopSignal;
};

/**
 * Improves a plan by small changes that are proved to pay: a row of visits moved elsewhere or done another way, a piece of a route
 * turned round, two visits or two whole routes exchanged. Goes through all of them again until nothing helps or it is told to stop.
 */
export class Polish {
  state: State;
  private readonly values: RouteValues;
  private readonly choices: Choices;
  private readonly near: Near;
  private readonly measure: Measure;
  /** [job]: where it is, -1 where it is left out. */
  private readonly slotOf: Int32Array;

  constructor(state: State, values: RouteValues, choices: Choices, near: Near, measure: Measure) {
    this.state = reckonState(state, values, measure.cost);
    this.values = values;
    this.choices = choices;
    this.near = near;
    this.measure = measure;
    this.slotOf = new Int32Array(choices.table.jobs).fill(-1);
    state.routes.forEach((codes, slot) => void this.noteSlot(codes, slot));
  }

  run(): State {
    if (!Number.isFinite(this.state.cost)) return this.state;
    for (let improved = true; improved && !this.measure.signal.stopped(); ) {
      const before = this.state;
      this.moveRows();
      this.turnPieces();
      this.swapPairs();
      this.exchangeRoutes();
      improved = this.state !== before;
    }
    return this.state;
  }

  /** Replaces routes where the plan gets cheaper by it and can really be driven. */
  private accept(routes: ReadonlyMap<number, Codes>): boolean {
    const { state, values, measure } = this;
    if (measure.labels && !this.isHopeful(routes)) return false;
    const change = new Map<number, Change>();
    let saved = 0;
    for (const [slot, codes] of routes) {
      const cost = measure.cost(slot, codes);
      saved += (state.costs[slot] as number) - cost;
      if (!Number.isFinite(saved)) return false;
      change.set(slot, { codes, cost, paidMs: values.paidMs });
    }
    saved += this.evened(change);
    if (saved <= (measure.labels ? LEAST_GAIN : 0)) return false;
    if (values.table.jobs <= SMALL) {
      saved = 0;
      for (const [slot, { codes }] of change) {
        const cost = values.prove(slot, codes);
        saved += (state.costs[slot] as number) - cost;
        change.set(slot, { codes, cost, paidMs: values.paidMs });
      }
      saved += this.evened(change);
      if (!(saved > 0)) return false;
    }
    this.state = withRoutes(values.table.problem, state, change, state.absent);
    for (const [slot, codes] of routes) this.noteSlot(codes, slot);
    return true;
  }

  /** What days of unlike length cost less after a change of some routes. */
  private evened(change: ReadonlyMap<number, { readonly paidMs: number }>): number {
    const { state, values } = this;
    const { problem } = values.table;
    if (problem.evenDays === undefined) return 0;
    const lengths = state.lengths.slice();
    for (const [slot, { paidMs }] of change) lengths[slot] = paidMs;
    return unevenCost(problem, state.lengths) - unevenCost(problem, lengths);
  }

  private noteSlot(codes: Codes, slot: number): void {
    for (const code of codes) this.slotOf[this.choices.jobOf(code)] = slot;
  }

  /** Whether a change is by rule not much dearer. */
  private isHopeful(routes: ReadonlyMap<number, Codes>): boolean {
    const { state, values } = this;
    let gain = 0;
    const change = new Map<number, { readonly paidMs: number }>();
    for (const [slot, codes] of routes) {
      const before = values.reckon(slot, state.routes[slot] as Codes);
      const shorter = values.paidMs;
      gain += MARGIN * (state.costs[slot] as number);
      gain += before - values.reckon(slot, codes);
      if (Number.isNaN(gain) || gain === Number.NEGATIVE_INFINITY) return false;
      // By rule a day may be longer than it is: what counts is by how much it changes.
      change.set(slot, { paidMs: (state.lengths[slot] as number) + values.paidMs - shorter });
    }
    return gain + this.evened(change) > 0;
  }

  private moveRows(): void {
    const { choices, measure } = this;
    for (const slot of this.state.routes.keys()) {
      for (let length = 1; length <= LONGEST_MOVE; length += 1) {
        for (let at = choices.kept[slot] as number; at + length <= this.routeOf(slot).length; at += 1) {
          if (measure.signal.stopped()) return;
          this.moveRow(slot, at, length);
        }
      }
    }
  }

  private routeOf(slot: number): Codes {
    return this.state.routes[slot] as Codes;
  }

  /** Tries a row of visits at the best places by travel beside its neighbours; a single visit also in its other modes. */
  private moveRow(slot: number, at: number, length: number): boolean {
    const { choices } = this;
    const codes = this.routeOf(slot);
    const row = codes.slice(at, at + length);
    const rest = codes.toSpliced(at, length);
    const places = this.placesFor(row, slot, rest)
      .sort((left, right) => left.added - right.added)
      .slice(0, TRIED_PLACES);
    for (const place of places) {
      const target = place.slot === slot ? rest : this.routeOf(place.slot);
      for (const there of this.waysOf(row, place.slot)) {
        if (place.slot === slot && place.at === at && there.every((code, k) => code === row[k])) continue;
        const routes = new Map([[slot, rest]]);
        routes.set(place.slot, target.toSpliced(place.at, 0, ...there));
        if (this.accept(routes)) return true;
      }
    }
    // Another way of doing it where it is.
    if (length > 1) return false;
    const job = choices.jobOf(row[0] as number);
    for (let mode = 0; mode < choices.modes(job, slot); mode += 1) {
      const code = job * choices.table.width + mode;
      if (code !== row[0] && this.accept(new Map([[slot, codes.with(at, code)]]))) return true;
    }
    return false;
  }

  private waysOf(row: Codes, slot: number): readonly Codes[] {
    const { choices } = this;
    if (row.length > 1) {
      const there = choices.row(row, slot);
      return there === null ? [] : [there];
    }
    const job = choices.jobOf(row[0] as number);
    return Array.from({ length: choices.modes(job, slot) }, (_, mode) => [job * choices.table.width + mode]);
  }

  private placesFor(
    row: Codes,
    from: number,
    rest: Codes,
  ): { readonly slot: number; readonly at: number; readonly added: number }[] {
    const { choices, state } = this;
    const places: { slot: number; at: number; added: number }[] = [];
    const consider = (slot: number, codes: Codes, at: number): void => {
      if (at < (choices.kept[slot] as number)) return;
      places.push({ slot, at, added: choices.travelAdded(slot, codes, at, row) });
    };
    for (let at = choices.kept[from] as number; at <= rest.length; at += 1) consider(from, rest, at);
    for (const job of this.neighboursOf(row)) {
      const slot = this.slotOf[job] as number;
      if (slot < 0 || slot === from || choices.row(row, slot) === null) continue;
      const codes = state.routes[slot] as Codes;
      const at = codes.findIndex((code) => choices.jobOf(code) === job);
      if (at < 0) continue;
      consider(slot, codes, at);
      consider(slot, codes, at + 1);
    }
    const kinds = new Set<number>();
    for (const [slot, codes] of state.routes.entries()) {
      const kind = choices.slots.kindOf[slot] as number;
      if (codes.length > 0 || kinds.has(kind) || choices.row(row, slot) === null) continue;
      kinds.add(kind);
      consider(slot, codes, 0);
    }
    return places;
  }

  private neighboursOf(row: Codes): ReadonlySet<number> {
    const { near, width } = this.near;
    const jobs = new Set<number>();
    for (const code of [row[0] as number, row[row.length - 1] as number]) {
      const start = (this.choices.jobOf(code) + 1) * width;
      for (let rank = 1; rank < Math.min(width, TRIED_NEIGHBOURS + 1); rank += 1) {
        jobs.add((near[start + rank] as number) - 1);
      }
    }
    return jobs;
  }

  private turnPieces(): void {
    for (const slot of this.state.routes.keys()) {
      for (let from = this.choices.kept[slot] as number; from < this.routeOf(slot).length - 1; from += 1) {
        for (let to = from + 2; to <= Math.min(this.routeOf(slot).length, from + LONGEST_TURN); to += 1) {
          if (this.measure.signal.stopped()) return;
          const codes = this.routeOf(slot);
          const turned = [...codes.slice(0, from), ...codes.slice(from, to).reverse(), ...codes.slice(to)];
          this.accept(new Map([[slot, turned]]));
        }
      }
    }
  }

  /** Exchanges two near visits, in one route or between two. */
  private swapPairs(): void {
    const { near, width } = this.near;
    const { table } = this.choices;
    let spots = this.spots();
    for (let job = 0; job < table.jobs; job += 1) {
      for (let rank = 1; rank < Math.min(width, SWAPPED_NEIGHBOURS); rank += 1) {
        if (this.measure.signal.stopped()) return;
        const other = (near[(job + 1) * width + rank] as number) - 1;
        const [one, two] = [spots[job], spots[other]];
        if (one === undefined || two === undefined || other < job) continue;
        const routes = this.swapped(one, two);
        if (routes !== null && this.accept(routes)) spots = this.spots();
      }
    }
  }

  /** [job]: where it is, where it may be moved. */
  private spots(): readonly (Spot | undefined)[] {
    const { choices } = this;
    const spots: (Spot | undefined)[] = Array.from({ length: choices.table.jobs });
    this.state.routes.forEach((codes, slot) => {
      codes.forEach((code, at) => {
        if (at >= (choices.kept[slot] as number)) spots[choices.jobOf(code)] = { slot, at };
      });
    });
    return spots;
  }

  private swapped(one: Spot, two: Spot): ReadonlyMap<number, Codes> | null {
    const left = this.routeOf(one.slot)[one.at] as number;
    const right = this.routeOf(two.slot)[two.at] as number;
    if (one.slot === two.slot) {
      return new Map([[one.slot, this.routeOf(one.slot).with(one.at, right).with(two.at, left)]]);
    }
    const leftThere = this.choices.there(left, two.slot);
    const rightThere = this.choices.there(right, one.slot);
    if (leftThere < 0 || rightThere < 0) return null;
    return new Map([
      [one.slot, this.routeOf(one.slot).with(one.at, rightThere)],
      [two.slot, this.routeOf(two.slot).with(two.at, leftThere)],
    ]);
  }

  /** Hands the whole routes of two slots over to each other; one of them may be empty. */
  private exchangeRoutes(): void {
    const { choices, measure } = this;
    const { kindOf } = choices.slots;
    for (let one = 0; one < this.state.routes.length; one += 1) {
      for (let two = one + 1; two < this.state.routes.length; two += 1) {
        if (measure.signal.stopped()) return;
        if (kindOf[one] === kindOf[two] || (choices.kept[one] as number) + (choices.kept[two] as number) > 0) continue;
        if (this.routeOf(one).length + this.routeOf(two).length === 0) continue;
        const there = choices.row(this.routeOf(one), two);
        const here = choices.row(this.routeOf(two), one);
        if (there === null || here === null) continue;
        this.accept(
          new Map([
            [one, here],
            [two, there],
          ]),
        );
      }
    }
  }
}

type Spot = { readonly slot: number; readonly at: number };
