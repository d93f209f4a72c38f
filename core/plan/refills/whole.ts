import type { Moves } from './amounts.ts';
import type { Chain } from './chain.ts';
import type { LinearResult } from './linear.ts';
import { DayProgramme } from './programme.ts';
import type { RefillEvent } from './search-limits.ts';

/** Amounts in whole parts for given events, the refills inside ops moved to where they are best. */
export type Settled = {
  readonly events: readonly RefillEvent[];
  readonly moves: readonly Moves[];
  /** What is poured out of bags on machines, by `stintKey`. */
  readonly pours: ReadonlyMap<number, number>;
  /** nano-dollars */
  readonly cost: number;
};

/** How far from a whole number still counts as one. */
const WHOLE = 1e-4;
/** Programmes solved at most to make one day's amounts whole. */
const MOST_BRANCHES = 80;
/** Refills inside ops whose place is tried on either side; of more, all on one side. */
const MOST_SIDES = 3;

/** Least cost of a day with these events, with fractions of parts and units allowed; infinite where there is no such day below `limit`. nano-dollars */
export function leastOf(chain: Chain, events: readonly RefillEvent[], breakVisit: number, limit: number): number {
  const day = new DayProgramme(chain, events, { free: true, breakVisit });
  const result = day.linear.solve(day.valueOf(limit));
  return result === null ? Number.POSITIVE_INFINITY : day.costOf(result.objective);
}

/** The cheapest whole amounts for these events; null where there are none. */
export function settleWhole(chain: Chain, events: readonly RefillEvent[], breakVisit: number): Settled | null {
  const day = new DayProgramme(chain, events, { free: true, breakVisit });
  const result = day.linear.solve();
  if (result === null) return null;
  let best: Settled | null = null;
  for (const row of wholeUnits(day, events, result)) {
    if (!inOrder(row)) continue;
    const settled = wholeParts(chain, row, breakVisit);
    if (settled !== null && (best === null || settled.cost < best.cost)) best = settled;
  }
  return best;
}

/** The events at whole units: where the programme has them between two, at the one or the other. */
function wholeUnits(day: DayProgramme, events: readonly RefillEvent[], result: LinearResult): RefillEvent[][] {
  const units = events.map((event, k) => {
    const left = day.leftAt[k + 1] as number;
    return left < 0 ? event.done : (1 - (result.values[left] as number)) * areaOf(day.chain, event);
  });
  const between = units.flatMap((each, k) => (Math.abs(each - Math.round(each)) > WHOLE ? [k] : []));
  const sides = between.length <= MOST_SIDES ? 1 << between.length : 2;
  return Array.from({ length: sides }, (_, bits) =>
    events.map((event, k) => {
      if (event.done === 0) return event;
      const place = between.indexOf(k);
      const up = between.length <= MOST_SIDES ? (bits >> place) & 1 : bits;
      const whole = place < 0 ? Math.round(units[k] as number) : Math.floor(units[k] as number) + up;
      return { ...event, done: Math.max(1, Math.min(areaOf(day.chain, event) - 1, whole)) };
    }),
  );
}

function inOrder(events: readonly RefillEvent[]): boolean {
  return events.every((event, k) => {
    const before = events[k - 1];
    return before === undefined || before.position < event.position || before.done <= event.done;
  });
}

function areaOf(chain: Chain, event: RefillEvent): number {
  return chain.model.ops.area[chain.op[event.position] as number] as number;
}

/** Branch and bound over what is not whole, the cheaper side first. */
function wholeParts(chain: Chain, events: readonly RefillEvent[], breakVisit: number): Settled | null {
  const day = new DayProgramme(chain, events, { free: false, breakVisit });
  const pours = day.pours.stints.map((each) => each.variable);
  const whole = [...day.fillAt, ...day.buyAt, ...day.bagsAt, ...pours].filter((each) => each >= 0);
  let best: { values: Float64Array; objective: number } | null = null;
  let branches = 0;
  const branch = (): void => {
    branches += 1;
    const result = branches > MOST_BRANCHES ? null : day.linear.solve();
    if (result === null || (best !== null && result.objective >= best.objective - 1e-6)) return;
    const split = whole.find(
      (j) => Math.abs((result.values[j] as number) - Math.round(result.values[j] as number)) > WHOLE,
    );
    if (split === undefined) {
      best = result;
      return;
    }
    const floor = Math.floor(result.values[split] as number);
    for (const up of [false, true]) {
      const mark = day.linear.mark();
      const bound = day.linear.sum();
      bound[split] = 1;
      if (up) day.linear.atLeast(bound, floor + 1);
      else day.linear.atMost(bound, floor);
      branch();
      day.linear.forget(mark);
    }
  };
  branch();
  const found = best as { values: Float64Array; objective: number } | null;
  if (found === null) return null;
  const { values, objective } = found;
  return { events, moves: movesOf(day, values), pours: day.pours.parts(values), cost: day.costOf(objective) };
}

/** The amounts, without what would be left at the end of a run or of the day: that is taken off the last fills before. */
function movesOf(day: DayProgramme, values: Float64Array): Moves[] {
  const { compartments: C, stocks: S } = day.model;
  const whole = (variable: number): number => (variable < 0 ? 0 : Math.round(values[variable] as number));
  const fills = Float64Array.from(day.fillAt, whole);
  const bought = Float64Array.from(day.buyAt, whole);
  day.ledger.runs.forEach((run, r) => void trimRun(day, fills, values, r, run.compartment));
  for (let s = 0; s < S; s += 1) trimStock(day, fills, bought, s);
  return day.events.map((_, e) => ({
    fills: Array.from({ length: C }, (__, compartment) => ({
      compartment,
      material: day.runOf(e, compartment)?.material ?? -1,
      parts: fills[e * C + compartment] as number,
    })).filter((fill) => fill.parts > 0),
    stock: Array.from({ length: S }, (__, stock) => ({ stock, parts: bought[e * S + stock] as number })).filter(
      (fill) => fill.parts > 0,
    ),
  }));
}

function trimRun(day: DayProgramme, fills: Float64Array, values: Float64Array, r: number, c: number): void {
  const { ledger, model } = day;
  const events = [...day.events.keys()].filter((e) => ledger.runAt[e * model.compartments + c] === r);
  const at = events.map((e) => e * model.compartments + c);
  const used = events.reduce((sum, e) => sum + (ledger.stretches[e]?.used[c] ?? 0), 0);
  // Bags give what is poured, and their hopper that much less.
  const into = model.poursInto[c] as number;
  const poured = day.pours.during(day.chain, events, into >= 0 ? into : c, values);
  const given = into >= 0 ? poured : used - poured;
  trim(fills, at, at.reduce((sum, k) => sum + (fills[k] as number), 0) - given);
}

function trimStock(day: DayProgramme, fills: Float64Array, bought: Float64Array, s: number): void {
  const { model } = day;
  let left = 0;
  day.events.forEach((event, e) => {
    left += bought[e * model.stocks + s] as number;
    if (s === model.water) left -= day.rinsedFromRig(e);
    if (event?.station !== -1) return;
    for (let c = 0; c < model.compartments; c += 1)
      if (day.runOf(e, c)?.stock === s) left -= fills[e * model.compartments + c] as number;
  });
  trim(
    bought,
    [...day.events.keys()].map((e) => e * model.stocks + s),
    left,
  );
}

/** Takes `left` parts off the amounts at these places, the last ones first. */
function trim(amounts: Float64Array, at: readonly number[], left: number): void {
  let rest = left;
  for (const k of at.toReversed()) {
    const less = Math.max(0, Math.min(rest, amounts[k] as number));
    amounts[k] = (amounts[k] as number) - less;
    rest -= less;
  }
}
