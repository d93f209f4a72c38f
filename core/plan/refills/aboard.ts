import type { Problem, ProblemRig } from '../problem/index.ts';
import type { Work } from './busy.ts';
import type { Chain } from './chain.ts';
import { keepLedger } from './ledger.ts';
import type { Activity, CompartmentFill, StockFill } from './types.ts';

/**
 * The activities of a rig that begins with something aboard, with all of it: placing takes up only what the work uses. What is there besides takes up
 * room, so that later fills are smaller by it, until it is rinsed out. Times stay as they are, so such a day may take a little less.
 */
export function withAllAboard(problem: Problem, rig: ProblemRig, activities: readonly Activity[]): readonly Activity[] {
  const { begins } = rig;
  if (begins === undefined) return activities;
  const fills = begins.parts.flatMap((parts, compartment): CompartmentFill[] =>
    parts > 0 ? [{ compartment, material: begins.materials[compartment] ?? -1, parts }] : [],
  );
  const stock = begins.stockParts.flatMap((parts, at): StockFill[] => (parts > 0 ? [{ stock: at, parts }] : []));
  /** Parts beside those that the placed day counts on. */
  const spare = begins.parts.slice();
  const spareStock = begins.stockParts.slice();
  const less = (kept: number[], at: number, parts: number): number => {
    const taken = Math.min(parts, kept[at] ?? 0);
    kept[at] = (kept[at] ?? 0) - taken;
    return parts - taken;
  };
  return activities.map((activity): Activity => {
    if (activity.kind === 'morning') {
      for (const each of activity.fills) less(spare, each.compartment, each.parts);
      for (const each of activity.stock) less(spareStock, each.stock, each.parts);
      return { ...activity, fills, stock };
    }
    if (activity.kind !== 'refill') return activity;
    for (const compartment of activity.rinsed) spare[compartment] = 0;
    const smaller = activity.fills.map((each) => ({ ...each, parts: less(spare, each.compartment, each.parts) }));
    if (activity.station < 0) {
      activity.fills.forEach((each, index) => {
        const at = problem.materials[each.material]?.stock ?? -1;
        spareStock[at] = (spareStock[at] ?? 0) + each.parts - (smaller[index]?.parts ?? 0);
      });
    }
    const bought = activity.stock.map((each) => ({ ...each, parts: less(spareStock, each.stock, each.parts) }));
    const some = (each: { readonly parts: number }): boolean => each.parts > 0;
    return { ...activity, fills: smaller.filter(some), stock: bought.filter(some) };
  });
}

/**
 * The visit at or before which a rig that began with something aboard takes on too much at a station, with what it does not use still there; -1 for
 * none. Placing by itself counts only what is used.
 */
export function crowdedAt(chain: Chain, { events, moves }: Work): number {
  const { model } = chain;
  const { problem, rig } = model;
  if (rig.begins === undefined) return -1;
  const { stretches } = keepLedger(chain, events);
  const spare = rig.begins.parts.slice();
  const spareStock = rig.begins.stockParts.slice();
  const parts = rig.begins.parts.slice();
  const stock = rig.begins.stockParts.slice();
  const heavy = rig.begins.parts.map((_, c) => problem.materials[chain.firstMaterial(c)]?.stock ?? -1);
  const give = (list: number[], at: number, more: number): void => {
    list[at] = (list[at] ?? 0) + more;
  };
  for (let e = 0; e <= events.length; e += 1) {
    const event = events[e - 1];
    const fromRig = event !== undefined && event.station < 0;
    for (let c = 0; event !== undefined && event.changes >> c !== 0; c += 1) {
      if (((event.changes >> c) & 1) === 0) continue;
      parts[c] = 0;
      spare[c] = 0;
    }
    for (const { compartment: c, material, parts: wanted } of moves[e]?.fills ?? []) {
      const saved = Math.min(wanted, spare[c] ?? 0);
      const from = problem.materials[material]?.stock ?? -1;
      spare[c] = (spare[c] ?? 0) - saved;
      heavy[c] = from;
      if (event === undefined) continue;
      give(parts, c, wanted - saved);
      if (!fromRig) continue;
      give(stock, from, saved - wanted);
      give(spareStock, from, saved);
    }
    for (const { stock: s, parts: wanted } of moves[e]?.stock ?? []) {
      const saved = Math.min(wanted, spareStock[s] ?? 0);
      spareStock[s] = (spareStock[s] ?? 0) - saved;
      if (event !== undefined) give(stock, s, wanted - saved);
    }
    if (event !== undefined && !fromRig && isTooMuch(problem, rig, parts, heavy, stock)) {
      return chain.visitOf[event.position] as number;
    }
    stretches[e]?.used.forEach((used, c) => {
      give(parts, c, -used);
    });
  }
  return -1;
}

function isTooMuch(
  { stocks }: Problem,
  rig: ProblemRig,
  parts: readonly number[],
  stockOf: readonly number[],
  stock: readonly number[],
): boolean {
  const bags = stocks.reduce(
    (sum, each, s) => sum + (each.kind === 'dry' ? Math.ceil(Math.max(0, stock[s] ?? 0) / each.bagParts) : 0),
    0,
  );
  const weigh = (amount: number, s: number): number => Math.max(0, amount) * (stocks[s]?.weightPerPart ?? 0);
  const weight =
    stock.reduce((sum, each, s) => sum + weigh(each, s), 0) +
    parts.reduce((sum, each, c) => sum + weigh(each, stockOf[c] ?? -1), 0);
  return bags > rig.bagPlaces || weight > rig.cargoLimit;
}
