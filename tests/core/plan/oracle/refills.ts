import type { Station } from '../../../../core/plan/problem/index.ts';
import { type Hold, optionsFor, type Source } from './amounts.ts';
import { drawn } from './needs.ts';
import { dayCost, type FixedRoute, type FlatOp, homePlace, travel } from './route.ts';

/** The cheapest day of a fixed route, with what happens in it in words. */
export type BestDay = { readonly cost: number; readonly story: readonly string[] };

type State = Hold & {
  readonly ms: number;
  readonly m: number;
  readonly place: number;
  readonly breakTaken: boolean;
  readonly story: Story | null;
};
type Story = { readonly words: string; readonly before: Story | null };

type Seen = { readonly ms: number; readonly m: number };
type Search = {
  readonly route: FixedRoute;
  best: number;
  story: Story | null;
  /** Moments at which the same point was reached with the same levels. */
  readonly seen: Map<string, Seen[]>;
};

/**
 * Tries every way to place refills in a fixed order of visits, depth first, and returns the cheapest day below `bound`, or null.
 * A refill may lie before a visit (at a station), after its set-up and between its ops, and where a compartment has run dry.
 */
export function cheapestDay(route: FixedRoute, bound: number): BestDay | null {
  const { problem, rig } = route;
  const search: Search = { route, best: bound, story: null, seen: new Map() };
  const home = problem.stations[rig.home] as Station;
  const empty: Hold = {
    levels: rig.compartments.map(() => 0),
    materials: rig.compartments.map(() => -1),
    stocks: problem.stocks.map(() => 0),
  };
  const morning = optionsFor({ route, hold: empty, at: 0, units: 0, source: { kind: 'home', station: home } });
  // The fullest first: it is mostly the best.
  for (const option of [...morning].sort((left, right) => total(right) - total(left))) {
    const state: State = {
      ...option,
      ms: rig.shiftStartMs + rig.morningMs,
      m: 0,
      place: homePlace(problem, rig),
      breakTaken: rig.breakAfterMs < 0,
      story: { words: `morning ${option.levels} / ${option.stocks}`, before: null },
    };
    onTheWay(search, state, 0, new Set());
  }
  return search.story === null ? null : { cost: search.best, story: told(search.story) };
}

function total(hold: Hold): number {
  return [...hold.levels, ...hold.stocks].reduce((sum, each) => sum + each, 0);
}

function told(story: Story | null): string[] {
  const words: string[] = [];
  for (let each = story; each !== null; each = each.before) words.unshift(each.words);
  return words;
}

/** Before the visit of op `at`: straight there, or by way of a station. */
function onTheWay(search: Search, state: State, at: number, been: ReadonlySet<number>): void {
  const { route } = search;
  if (hopeless(search, state, at, `w${[...been]}`)) return;
  const flat = route.ops[at] as FlatOp;
  const job = route.jobs[flat.visit] as FixedRoute['jobs'][number];
  const leg = travel(route.problem, state.place, job.place);
  arrive(search, { ...state, ms: state.ms + leg.ms, m: state.m + leg.m, place: job.place }, at);
  for (const [number, visited] of stationVisits(search, state, at, 0, been)) {
    onTheWay(search, visited, at, new Set([...been, number]));
  }
}

function arrive(search: Search, state: State, at: number): void {
  const { route } = search;
  const flat = route.ops[at] as FlatOp;
  const job = route.jobs[flat.visit] as FixedRoute['jobs'][number];
  const ready = Math.max(state.ms, job.openMs);
  if (ready > job.closeMs) return;
  const due = !state.breakTaken && state.ms >= route.rig.breakAfterMs;
  const before = (route.modes[flat.visit] as FixedRoute['modes'][number]).beforeMs;
  const ms = ready + (due ? route.rig.breakMs : 0) + before;
  atPoint(search, { ...state, ms, breakTaken: state.breakTaken || due }, at, 0);
}

/** On site with op `at` next, `units` of it done: go on, or refill first. */
function atPoint(search: Search, state: State, at: number, units: number): void {
  if (hopeless(search, state, at, `p${units}`)) return;
  treat(search, state, at, units);
  rigRefill(search, state, at, units);
  const { firstOfVisit } = search.route.ops[at] as FlatOp;
  if (firstOfVisit && units === 0) return;
  tripsFrom(search, state, state.place, at, units, new Set());
}

function rigRefill(search: Search, state: State, at: number, units: number): void {
  const { route } = search;
  for (const option of optionsFor({ route, hold: state, at, units, source: { kind: 'rig' } })) {
    if (same(option, state)) continue;
    const ms = state.ms + option.ms + route.rig.refillMs + (units > 0 ? route.rig.midZoneMs : 0);
    const words = `rig refill at op ${at} after ${units}: ${option.levels} / ${option.stocks}`;
    treat(search, { ...state, ...option, ms, story: { words, before: state.story } }, at, units);
  }
}

function same(left: Hold, right: Hold): boolean {
  return `${left.levels}|${left.materials}|${left.stocks}` === `${right.levels}|${right.materials}|${right.stocks}`;
}

/** From the middle of a stop to one station or more, and back. */
function tripsFrom(
  search: Search,
  state: State,
  back: number,
  at: number,
  units: number,
  been: ReadonlySet<number>,
): void {
  for (const [number, visited] of stationVisits(search, state, at, units, been)) {
    const leg = travel(search.route.problem, visited.place, back);
    const returned = { ...visited, ms: visited.ms + leg.ms, m: visited.m + leg.m, place: back };
    if (!hopeless(search, returned, at, `b${units}`)) {
      treat(search, returned, at, units);
      rigRefill(search, returned, at, units);
    }
    tripsFrom(search, visited, back, at, units, new Set([...been, number]));
  }
}

/** Every station not been to in this chain, with every way to use it. */
function* stationVisits(
  search: Search,
  state: State,
  at: number,
  units: number,
  been: ReadonlySet<number>,
): Generator<readonly [number, State]> {
  const { route } = search;
  const { op, firstOfVisit } = route.ops[at] as FlatOp;
  const middle = !firstOfVisit || units > 0;
  const extra = (middle ? op.reloadMs : 0) + (units > 0 ? route.rig.midZoneMs : 0);
  for (const [number, station] of route.problem.stations.entries()) {
    if (been.has(number)) continue;
    const leg = travel(route.problem, state.place, station.place);
    const start = Math.max(state.ms + leg.ms, station.openMs);
    const source: Source = { kind: 'station', station };
    if (start + route.rig.eveningMs - route.rig.shiftStartMs > route.rig.shiftMs + route.rig.overtimeMs) continue;
    for (const option of optionsFor({ route, hold: state, at, units, source })) {
      if (same(option, state)) continue;
      const ms = start + station.visitMs + extra + option.ms;
      if (ms > station.closeMs) continue;
      const words = `${station.fillPointId} at op ${at} after ${units}: ${option.levels} / ${option.stocks}`;
      const story = { words, before: state.story };
      yield [number, { ...state, ...option, ms, m: state.m + leg.m, place: station.place, story }];
    }
  }
}

/** Treats until the op is done or a compartment is dry. */
function treat(search: Search, state: State, at: number, units: number): void {
  const { op, swapMs } = search.route.ops[at] as FlatOp;
  if (op.draws.some((draw) => state.materials[draw.compartment] !== op.material)) return;
  const reached = Math.min(
    op.areaUnits,
    ...op.draws.map((draw) => reach(op, draw.parts, units, state.levels[draw.compartment] as number)),
  );
  if (reached <= units) return;
  const levels = [...state.levels];
  for (const draw of op.draws) {
    const parts = drawn(op, draw.parts, reached) - drawn(op, draw.parts, units);
    levels[draw.compartment] = (levels[draw.compartment] as number) - parts;
  }
  const ms = state.ms + (units === 0 ? swapMs : 0) + spent(op.serviceMs, op.areaUnits, units, reached);
  const next = { ...state, levels, ms };
  if (reached < op.areaUnits) {
    dryPoint(search, next, at, reached);
    return;
  }
  leaveOp(search, next, at);
}

/** Furthest mark that a level reaches from `units` on. */
function reach(op: FlatOp['op'], parts: number, units: number, level: number): number {
  return Math.floor(((level + drawn(op, parts, units)) * op.areaUnits) / parts);
}

function spent(serviceMs: number, areaUnits: number, from: number, to: number): number {
  const after = (units: number): number => Math.floor((serviceMs * units) / areaUnits);
  return after(to) - after(from);
}

function dryPoint(search: Search, state: State, at: number, units: number): void {
  if (hopeless(search, state, at, `d${units}`)) return;
  rigRefill(search, state, at, units);
  tripsFrom(search, state, state.place, at, units, new Set());
}

function leaveOp(search: Search, state: State, at: number): void {
  const { route } = search;
  const { visit, lastOfVisit } = route.ops[at] as FlatOp;
  if (!lastOfVisit) {
    atPoint(search, state, at + 1, 0);
    return;
  }
  const packed = { ...state, ms: state.ms + (route.modes[visit] as FixedRoute['modes'][number]).afterMs };
  if (at + 1 < route.ops.length) onTheWay(search, packed, at + 1, new Set());
  else goHome(search, packed);
}

function goHome(search: Search, state: State): void {
  const { route } = search;
  const leg = travel(route.problem, state.place, homePlace(route.problem, route.rig));
  const paid = state.ms + leg.ms + route.rig.eveningMs - route.rig.shiftStartMs;
  const cost = dayCost(route, paid, state.m + leg.m);
  if (cost >= search.best) return;
  search.best = cost;
  search.story = state.story;
}

/** True where the rest of the day cannot beat the best one, or the same point was reached before no later and no further. */
function hopeless(search: Search, state: State, at: number, point: string): boolean {
  const { route, seen } = search;
  if (least(route, state, at, point) >= search.best) return true;
  // An earlier arrival can lose where a break is still to come, so that then only equal times compare.
  const clock = state.breakTaken ? '' : `${state.ms}`;
  const key = `${at}${point}|${state.place}|${state.breakTaken}${clock}|${state.levels}|${state.materials}|${state.stocks}`;
  const before = seen.get(key) ?? [];
  if (before.some((each) => each.ms <= state.ms && each.m <= state.m)) return true;
  seen.set(key, [...before, { ms: state.ms, m: state.m }]);
  return false;
}

/** Least cost of a day that goes on from here: nothing but driving, working and the evening. */
function least(route: FixedRoute, state: State, at: number, point: string): number {
  const { op, visit } = route.ops[at] as FlatOp;
  let ms = state.ms + (route.restMs[at] as number);
  let metres = state.m + (route.restM[at] as number);
  if (point.startsWith('w')) {
    const leg = travel(route.problem, state.place, (route.jobs[visit] as FixedRoute['jobs'][number]).place);
    ms += leg.ms + (route.modes[visit] as FixedRoute['modes'][number]).beforeMs;
    metres += leg.m;
  } else {
    const units = Number(point.slice(1));
    ms -= spent(op.serviceMs, op.areaUnits, 0, units);
    if (units > 0) ms -= (route.ops[at] as FlatOp).swapMs;
  }
  return dayCost(route, ms - route.rig.shiftStartMs, metres);
}
