import type { Station } from '../../../../core/plan/problem/index.ts';
import { type Hold, noWorse, optionsFor, type Source } from './amounts.ts';
import { leastRefills } from './bounds.ts';
import { allRuns, drawn } from './needs.ts';
import { Queue } from './queue.ts';
import { dayCost, endPlace, type FixedRoute, type FlatOp, homePlace, personOf, travel } from './route.ts';

/** The cheapest day of a fixed route, with what happens in it in words. */
export type BestDay = { readonly cost: number; readonly story: readonly string[] };

type State = Hold & {
  readonly ms: number;
  readonly m: number;
  readonly place: number;
  readonly breakTaken: boolean;
  /** Since when both persons have worked side by side, and how long each of them. ms */
  readonly togetherMs: number;
  readonly busy: readonly [first: number, second: number];
  readonly story: Story | null;
};
type Story = { readonly words: string; readonly before: Story | null };

/**
 * A point of the day from which it can go on in several ways: on the way to a stop, on site before an op, dry in the middle of one,
 * at a station on a trip from a stop, or back from it; or the day's end.
 */
type Node = {
  readonly kind: 'way' | 'site' | 'dry' | 'trip' | 'back' | 'end';
  readonly state: State;
  readonly at: number;
  readonly units: number;
  /** Stations been to in this chain. */
  readonly been: readonly number[];
  /** Place to come back to from a trip. */
  readonly back: number;
  /** Least cost of a whole day that goes through here. */
  readonly least: number;
};

type Search = {
  readonly route: FixedRoute;
  readonly bound: number;
  readonly queue: Queue<Node>;
  /** Times, metres (both negative) and levels with which a point was reached. */
  readonly seen: Map<string, number[][]>;
};

/**
 * Tries every way to place refills in a fixed order of visits, always going on from where the least cost of the whole day is lowest,
 * and returns the cheapest day below `bound`, or null. A refill may lie before a visit (at a station), after its set-up and between
 * its ops, and where a compartment has run dry.
 */
export function cheapestDay(route: FixedRoute, bound: number): BestDay | null {
  const { problem, rig } = route;
  const search: Search = { route, bound, queue: new Queue(), seen: new Map() };
  const home = problem.stations[rig.home] as Station;
  const empty: Hold = {
    levels: rig.compartments.map(() => 0),
    materials: rig.compartments.map(() => -1),
    stocks: problem.stocks.map(() => 0),
  };
  for (const option of optionsFor({ route, hold: empty, at: 0, units: 0, source: { kind: 'home', station: home } })) {
    const state: State = {
      ...option,
      ms: rig.shiftStartMs + rig.morningMs,
      m: 0,
      place: homePlace(problem, rig),
      breakTaken: rig.breakAfterMs < 0,
      togetherMs: 0,
      busy: [0, 0],
      story: { words: `morning ${option.levels} / ${option.stocks}`, before: null },
    };
    push(search, 'way', state, 0, 0);
  }
  for (let node = search.queue.pop(); node !== undefined; node = search.queue.pop()) {
    if (node.kind === 'end') return { cost: node.least, story: told(node.state.story) };
    expand(search, node);
  }
  return null;
}

function expand(search: Search, node: Node): void {
  const { state, at, units, been, back } = node;
  switch (node.kind) {
    case 'way':
      onTheWay(search, state, at, been);
      break;
    case 'site':
      treat(search, state, at, units);
      refillHere(search, state, at, units);
      pourHere(search, 'site', state, at, units);
      break;
    case 'dry':
      treat(search, state, at, units);
      refillHere(search, state, at, units);
      pourHere(search, 'dry', state, at, units);
      break;
    case 'trip':
      tripsFrom(search, state, back, at, units, been);
      break;
    case 'back':
      treat(search, state, at, units);
      rigRefill(search, state, at, units);
      pourHere(search, units > 0 ? 'dry' : 'site', state, at, units);
      break;
    case 'end':
      break;
  }
}

function told(story: Story | null): string[] {
  const words: string[] = [];
  for (let each = story; each !== null; each = each.before) words.unshift(each.words);
  return words;
}

/** Before the visit of op `at`: straight there, or by way of a station. */
function onTheWay(search: Search, state: State, at: number, been: readonly number[]): void {
  const { route } = search;
  const flat = route.ops[at] as FlatOp;
  const job = route.jobs[flat.visit] as FixedRoute['jobs'][number];
  const leg = travel(route.problem, state.place, job.place);
  arrive(search, { ...state, ms: state.ms + leg.ms, m: state.m + leg.m, place: job.place }, at);
  for (const [number, visited] of stationVisits(search, state, at, 0, been)) {
    push(search, 'way', visited, at, 0, [...been, number]);
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
  push(search, 'site', together({ ...state, ms, breakTaken: state.breakTaken || due }), at, 0);
}

/** Every refill that can be made on site or from it; before the first op of a visit a station would have been gone to on the way. */
function refillHere(search: Search, state: State, at: number, units: number): void {
  rigRefill(search, state, at, units);
  const { firstOfVisit } = search.route.ops[at] as FlatOp;
  if (!firstOfVisit || units > 0) tripsFrom(search, state, state.place, at, units, []);
}

/**
 * Bags on the machine poured into the hopper that the op draws on: to one of the marks at which an op ends, to all that is needed, or
 * as much as fits.
 */
function pourHere(search: Search, kind: 'site' | 'dry', state: State, at: number, units: number): void {
  const { route } = search;
  const { op } = route.ops[at] as FlatOp;
  for (const { compartment: hopper } of op.draws) {
    const bags = route.bags[hopper] as number;
    if (bags < 0 || state.materials[bags] !== op.material || state.materials[hopper] !== op.material) continue;
    const [level, left] = [state.levels[hopper] as number, state.levels[bags] as number];
    const run = allRuns(route, at, units)[hopper]?.[0];
    const room = (route.rig.compartments[hopper]?.capacityParts ?? 0) - level;
    const wanted = [...(run?.marks.map((mark) => mark.sum - level) ?? []), room];
    const amounts = new Set(wanted.map((parts) => Math.min(parts, room, left)).filter((parts) => parts > 0));
    for (const parts of amounts) {
      const levels = [...state.levels];
      levels[hopper] = level + parts;
      levels[bags] = left - parts;
      const busy: [number, number] = [...state.busy];
      busy[0] += parts * (route.rig.compartments[bags]?.pours?.msPerPart ?? 0);
      const story = { words: `${parts} poured at op ${at} after ${units}`, before: state.story };
      push(search, kind, { ...state, levels, busy, ms: state.togetherMs + Math.max(...busy), story }, at, units);
    }
  }
}

function rigRefill(search: Search, state: State, at: number, units: number): void {
  const { route } = search;
  for (const option of optionsFor({ route, hold: state, at, units, source: { kind: 'rig' } })) {
    if (same(option, state)) continue;
    const ms = state.ms + option.ms + route.rig.refillMs + (units > 0 ? route.rig.midZoneMs : 0);
    const words = `rig refill at op ${at} after ${units}: ${option.levels} / ${option.stocks}`;
    treat(search, together({ ...state, ...option, ms, story: { words, before: state.story } }), at, units);
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
  been: readonly number[],
): void {
  for (const [number, visited] of stationVisits(search, state, at, units, been)) {
    const leg = travel(search.route.problem, visited.place, back);
    const returned = { ...visited, ms: visited.ms + leg.ms, m: visited.m + leg.m, place: back };
    push(search, 'back', together(returned), at, units);
    push(search, 'trip', visited, at, units, [...been, number], back);
  }
}

/** Every station not been to in this chain, with every way to use it. */
function* stationVisits(
  search: Search,
  state: State,
  at: number,
  units: number,
  been: readonly number[],
): Generator<readonly [number, State]> {
  const { route } = search;
  const { op, firstOfVisit } = route.ops[at] as FlatOp;
  const middle = !firstOfVisit || units > 0;
  const extra = (middle ? op.reloadMs : 0) + (units > 0 ? route.rig.midZoneMs : 0);
  for (const [number, station] of route.problem.stations.entries()) {
    if (been.includes(number)) continue;
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
  const work = (units === 0 ? swapMs : 0) + spent(op.serviceMs, op.areaUnits, units, reached);
  const next = { ...state, levels, ...beside(state, op, work) };
  if (reached < op.areaUnits) push(search, 'dry', next, at, reached);
  else leaveOp(search, next, at);
}

/** The clock after one person's work: a stretch that both work in lasts as long as the one who needs longer. */
function beside(state: State, op: FlatOp['op'], work: number): Pick<State, 'ms' | 'busy'> {
  const busy: [number, number] = [...state.busy];
  busy[personOf(op)] += work;
  return { busy, ms: state.togetherMs + Math.max(...busy) };
}

/** Both are at the rig. */
function together(state: State): State {
  return { ...state, togetherMs: state.ms, busy: [0, 0] };
}

/** Furthest mark that a level reaches from `units` on. */
function reach(op: FlatOp['op'], parts: number, units: number, level: number): number {
  return Math.floor(((level + drawn(op, parts, units)) * op.areaUnits) / parts);
}

function spent(serviceMs: number, areaUnits: number, from: number, to: number): number {
  const after = (units: number): number => Math.floor((serviceMs * units) / areaUnits);
  return after(to) - after(from);
}

function leaveOp(search: Search, state: State, at: number): void {
  const { route } = search;
  const { visit, lastOfVisit } = route.ops[at] as FlatOp;
  if (!lastOfVisit) {
    push(search, 'site', state, at + 1, 0);
    return;
  }
  if (state.ms > (route.doneMs[visit] as number)) return;
  const packed = together({ ...state, ms: state.ms + (route.modes[visit] as FixedRoute['modes'][number]).afterMs });
  if (at + 1 < route.ops.length) push(search, 'way', packed, at + 1, 0);
  else goHome(search, packed, at);
}

function goHome(search: Search, state: State, at: number): void {
  const { route, queue, bound } = search;
  const leg = travel(route.problem, state.place, endPlace(route.problem, route.rig));
  const paid = state.ms + leg.ms + route.rig.eveningMs - route.rig.shiftStartMs;
  const least = dayCost(route, paid, state.m + leg.m);
  if (least < bound) queue.push({ kind: 'end', state, at, units: 0, been: [], back: -1, least });
}

/** Keeps a point for later unless the day cannot beat the bound from there, or it was reached before and no worse. */
function push(
  search: Search,
  kind: Node['kind'],
  state: State,
  at: number,
  units: number,
  been: readonly number[] = [],
  back = -1,
): void {
  const { route, seen, bound, queue } = search;
  const least = leastCost(route, { kind, state, at, units, been, back });
  if (least >= bound) return;
  // An earlier arrival can lose where a break is still to come, so that then only equal times compare.
  const clock = state.breakTaken ? '' : `${state.ms}`;
  // More aboard is no worse where there is room for everything; else only equal levels compare.
  const levels = route.roomy ? '' : `${state.levels}|${state.stocks}`;
  // Who has done more can matter for as long as the stop lasts.
  const ahead = state.busy[0] - state.busy[1];
  const shared = route.modes[(route.ops[at] as FlatOp).visit]?.ops.some((op) => op.second) === true ? `${ahead}` : '';
  const key = `${kind}${at}|${shared}|${units}|${been}|${state.place}|${clock}|${state.materials}|${levels}`;
  const own = [-state.ms, -state.m, ...state.levels, ...state.stocks];
  const before = seen.get(key) ?? [];
  if (before.some((each) => noWorse(each, own))) return;
  before.push(own);
  seen.set(key, before);
  queue.push({ kind, state, at, units, been, back, least });
}

/** Least cost of a day that goes on from here: driving, working, the evening and the least that refills take. */
function leastCost(route: FixedRoute, node: Omit<Node, 'least'>): number {
  const { kind, state, at, units, been, back } = node;
  const { op, visit, swapMs, addsMs } = route.ops[at] as FlatOp;
  const refills = leastRefills(route, at, units, state);
  let ms = state.ms + (route.restMs[at] as number) + refills.ms;
  let metres = state.m + (route.restM[at] as number);
  if (kind === 'way') {
    const leg = travel(route.problem, state.place, (route.jobs[visit] as FixedRoute['jobs'][number]).place);
    ms += leg.ms + (route.modes[visit] as FixedRoute['modes'][number]).beforeMs;
    metres += leg.m;
  } else {
    ms -= Math.min(addsMs, spent(op.serviceMs, op.areaUnits, 0, units) + (units > 0 ? swapMs : 0));
    if (kind === 'trip') {
      const leg = travel(route.problem, state.place, back);
      ms += leg.ms;
      metres += leg.m;
    }
  }
  // In a chain of stations the next one may lie anywhere: then no detour is certain.
  if (been.length === 0) {
    ms += refills.detourMs;
    metres += refills.detourM;
  }
  return dayCost(route, ms - route.rig.shiftStartMs, metres);
}
