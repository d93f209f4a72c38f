import type { StopSignal } from '../../base/index.ts';
import type { JobTable } from './jobs.ts';
import type { Choices } from './recreate.ts';
import type { RouteScreen } from './screen.ts';
import { SMALL } from './size.ts';
import { type State, withRoutes } from './state.ts';
import type { Codes, RouteValues } from './values.ts';

/** Positions that are reckoned in full for each job that is tried elsewhere. */
const TRIED_PLACES = 5;
/** Routes that are reckoned by the labels at most while a plan is polished. */
const MOST_LABELLED = 2000;
/** Share of a plan's cost by which a change may be dearer by rule and is still looked at by the labels. */
const MARGIN = 0.002;
/** Gains below this are rounding. nano-dollars */
const LEAST_GAIN = 10;
/** Longest piece that is turned round. */
const LONGEST_TURN = 12;
/** Longest row that is moved as a whole. */
const LONGEST_MOVE = 3;

type Change = ReadonlyMap<number, { readonly codes: Codes; readonly cost: number }>;

/**
 * Improves a plan by small changes that are proved to pay: a row of visits moved elsewhere or done another way, a piece of a route
 * turned round, two visits or two whole routes exchanged. Goes on until nothing helps or it is told to stop.
 */
export function polish(
  table: JobTable,
  values: RouteValues,
  screens: readonly RouteScreen[],
  choices: Choices,
  start: State,
  signal: StopSignal,
): State {
  const rough = descend({ table, values, screens, choices, signal, labels: null }, start);
  if (table.jobs <= SMALL || signal.stopped()) return rough;
  const labels = new LabelCosts(values, MOST_LABELLED);
  const enough: StopSignal = { stopped: () => labels.spent() || signal.stopped() };
  const costs = rough.routes.map((codes, slot) => labels.cost(slot, codes));
  const cost = costs.reduce((sum, each) => sum + each, 0);
  if (!Number.isFinite(cost)) return rough;
  return descend({ table, values, screens, choices, signal: enough, labels }, { ...rough, costs, cost });
}

/** Takes steps that pay for as long as there are any. */
function descend(tools: Tools, start: State): State {
  let state = start;
  for (let improved = true; improved && !tools.signal.stopped(); ) {
    improved = false;
    for (const step of [moveOne, turnOne, swapOne, exchangeRoutes]) {
      for (let next = step(tools, state); next !== null; next = step(tools, state)) {
        state = next;
        improved = true;
        if (tools.signal.stopped()) return state;
      }
    }
  }
  return state;
}

/** Route costs by the labels of the refill programme, up to a number of them. */
class LabelCosts {
  private readonly values: RouteValues;
  private readonly most: number;
  private count = 0;

  constructor(values: RouteValues, most: number) {
    this.values = values;
    this.most = most;
  }

  spent(): boolean {
    return this.count >= this.most;
  }

  cost(slot: number, codes: Codes): number {
    this.count += 1;
    return this.values.labelled(slot, codes);
  }
}

type Tools = {
  readonly table: JobTable;
  readonly values: RouteValues;
  readonly screens: readonly RouteScreen[];
  readonly choices: Choices;
  readonly signal: StopSignal;
  /** Where the states' costs are those of the labels; null where they are reckoned by rule. */
  readonly labels: LabelCosts | null;
};

/** The state with the routes replaced, if it is cheaper by the full reckoning and can really be driven. */
function accept(tools: Tools, state: State, routes: ReadonlyMap<number, Codes>): State | null {
  if (tools.labels !== null) return acceptByLabels(tools, tools.labels, state, routes);
  let gain = 0;
  for (const [slot, codes] of routes) {
    gain += (state.costs[slot] as number) - tools.values.reckon(slot, codes);
    if (!Number.isFinite(gain)) return null;
  }
  if (gain <= 0) return null;
  const change = new Map<number, { readonly codes: Codes; readonly cost: number }>();
  let saved = 0;
  for (const [slot, codes] of routes) {
    const cost = tools.table.jobs > SMALL ? tools.values.reckon(slot, codes) : tools.values.prove(slot, codes);
    saved += (state.costs[slot] as number) - cost;
    change.set(slot, { codes, cost });
  }
  return saved > 0 ? withRoutes(state, change as Change, state.absent) : null;
}

/** The same by the labels, for changes that by rule are not much dearer. */
function acceptByLabels(
  tools: Tools,
  labels: LabelCosts,
  state: State,
  routes: ReadonlyMap<number, Codes>,
): State | null {
  let gain = MARGIN * state.cost;
  for (const [slot, codes] of routes) {
    gain += tools.values.reckon(slot, state.routes[slot] as Codes) - tools.values.reckon(slot, codes);
    if (!(gain > 0)) return null;
  }
  const change = new Map<number, { readonly codes: Codes; readonly cost: number }>();
  let saved = 0;
  for (const [slot, codes] of routes) {
    const cost = labels.cost(slot, codes);
    saved += (state.costs[slot] as number) - cost;
    change.set(slot, { codes, cost });
  }
  return saved > LEAST_GAIN ? withRoutes(state, change as Change, state.absent) : null;
}

function moveOne(tools: Tools, state: State): State | null {
  const { screens } = tools;
  for (const [slot, codes] of state.routes.entries()) {
    for (let length = 1; length <= Math.min(LONGEST_MOVE, codes.length); length += 1) {
      for (let at = 0; at + length <= codes.length; at += 1) {
        if (tools.signal.stopped()) return null;
        const rest = codes.toSpliced(at, length);
        const loaded = (other: number): Codes => (other === slot ? rest : (state.routes[other] as Codes));
        for (const screen of screens) screen.load(loaded(screen.slot));
        const next = tryPlaces(tools, state, slot, rest, codes.slice(at, at + length), loaded);
        if (next !== null) return next;
      }
    }
  }
  return null;
}

/** Tries a row of visits at the roughly best places of every slot; a single visit also in its other modes. */
function tryPlaces(
  tools: Tools,
  state: State,
  from: number,
  rest: Codes,
  row: Codes,
  loaded: (slot: number) => Codes,
): State | null {
  const { table, screens } = tools;
  const first = row[0] as number;
  const job = Math.trunc(first / table.width);
  const places: { slot: number; at: number; code: number; cost: number }[] = [];
  for (const { slot, codes } of tools.choices[job] ?? []) {
    if (row.length > 1 && !rowAllowed(tools, row, slot)) continue;
    const screen = screens[slot] as RouteScreen;
    for (const code of row.length > 1 ? [first] : codes) {
      for (let at = 0; at <= screen.codes.length; at += 1) {
        const cost = screen.insertion(code, at);
        if (Number.isFinite(cost)) places.push({ slot, at, code, cost });
      }
    }
  }
  places.sort((left, right) => left.cost - right.cost);
  for (const { slot, at, code } of places.slice(0, TRIED_PLACES)) {
    const codes = loaded(slot).toSpliced(at, 0, ...(row.length > 1 ? row : [code]));
    const routes = new Map([[from, rest]]);
    routes.set(slot, codes);
    const next = accept(tools, state, routes);
    if (next !== null) return next;
  }
  return null;
}

function rowAllowed(tools: Tools, row: Codes, slot: number): boolean {
  return row.every((code) => {
    const job = Math.trunc(code / tools.table.width);
    return (tools.choices[job] ?? []).some((each) => each.slot === slot && each.codes.includes(code));
  });
}

function turnOne(tools: Tools, state: State): State | null {
  for (const [slot, codes] of state.routes.entries()) {
    for (let from = 0; from < codes.length - 1; from += 1) {
      for (let to = from + 2; to <= Math.min(codes.length, from + LONGEST_TURN); to += 1) {
        if (tools.signal.stopped()) return null;
        const turned = [...codes.slice(0, from), ...codes.slice(from, to).reverse(), ...codes.slice(to)];
        const next = accept(tools, state, new Map([[slot, turned]]));
        if (next !== null) return next;
      }
    }
  }
  return null;
}

/** Exchanges two near visits, in one route or between two. */
function swapOne(tools: Tools, state: State): State | null {
  const { table } = tools;
  const spots = new Map<number, { readonly slot: number; readonly at: number }>();
  state.routes.forEach((codes, slot) => {
    codes.forEach((code, at) => void spots.set(Math.trunc(code / table.width), { slot, at }));
  });
  for (const [job, spot] of spots) {
    for (let k = 1; k < Math.min(table.jobs, 8); k += 1) {
      if (tools.signal.stopped()) return null;
      const other = table.near[job * table.jobs + k] as number;
      const spotOfOther = spots.get(other);
      if (spotOfOther === undefined || other < job) continue;
      const next = accept(tools, state, swapped(tools, state, spot, spotOfOther));
      if (next !== null) return next;
    }
  }
  return null;
}

type Spot = { readonly slot: number; readonly at: number };

function swapped(tools: Tools, state: State, one: Spot, two: Spot): ReadonlyMap<number, Codes> {
  const left = (state.routes[one.slot] as Codes)[one.at] as number;
  const right = (state.routes[two.slot] as Codes)[two.at] as number;
  if (one.slot === two.slot) {
    return new Map([[one.slot, (state.routes[one.slot] as Codes).with(one.at, right).with(two.at, left)]]);
  }
  const routes = new Map<number, Codes>();
  const leftThere = sameWay(tools, left, two.slot);
  const rightThere = sameWay(tools, right, one.slot);
  if (leftThere === null || rightThere === null) return routes;
  routes.set(one.slot, (state.routes[one.slot] as Codes).with(one.at, rightThere));
  routes.set(two.slot, (state.routes[two.slot] as Codes).with(two.at, leftThere));
  return routes;
}

/** Hands the whole routes of two slots over to each other; one of them may be empty. */
function exchangeRoutes(tools: Tools, state: State): State | null {
  for (let one = 0; one < state.routes.length; one += 1) {
    for (let two = one + 1; two < state.routes.length; two += 1) {
      if (tools.signal.stopped()) return null;
      const there = handedOver(tools, state.routes[one] as Codes, two);
      const here = handedOver(tools, state.routes[two] as Codes, one);
      if (there === null || here === null || there.length + here.length === 0) continue;
      const routes = new Map([
        [one, here],
        [two, there],
      ]);
      const next = accept(tools, state, routes);
      if (next !== null) return next;
    }
  }
  return null;
}

/** A route as another slot would drive it; null where it cannot do one of the jobs. */
function handedOver(tools: Tools, codes: Codes, slot: number): Codes | null {
  const there = codes.map((code) => sameWay(tools, code, slot));
  return there.every((each) => each !== null) ? there : null;
}

/** A code for the same job in another slot: its own mode where there is one, else the first. */
function sameWay(tools: Tools, code: number, slot: number): number | null {
  const job = Math.trunc(code / tools.table.width);
  const codes = (tools.choices[job] ?? []).find((each) => each.slot === slot)?.codes ?? [];
  return codes.includes(code) ? code : (codes[0] ?? null);
}
