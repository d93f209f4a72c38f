import { allRuns, drawn, type Run, shortOf } from './needs.ts';
import { endPlace, type FixedRoute, type FlatOp, homePlace, travel } from './route.ts';

type Hold = {
  readonly levels: readonly number[];
  readonly materials: readonly number[];
  readonly stocks: readonly number[];
};

/** Time inside the refills, and for the way to a station and back. */
export type LeastRefills = { readonly ms: number; readonly detourMs: number; readonly detourM: number };

/**
 * Time and metres that refills still take at least from a point on: what is not aboard has to be poured, changes have to be rinsed,
 * no event pours more than a compartment holds, and what the rig has not got has to be fetched.
 */
export function leastRefills(route: FixedRoute, at: number, units: number, hold: Hold): LeastRefills {
  const { problem, rig } = route;
  const runs = allRuns(route, at, units);
  let [pouring, events] = [0, 0];
  runs.forEach((list, compartment) => {
    const one = leastOf(route, list, compartment, hold);
    pouring += one.ms;
    events = Math.max(events, one.events);
  });
  const inside = leastInside(route, at, units, hold);
  events = Math.max(events, inside);
  const fetching = leastFetching(route, runs, at, hold);
  const visit = Math.min(...problem.stations.map((each) => each.visitMs));
  const eventMs = Math.max(events * Math.min(rig.refillMs, visit), fetching.needed ? visit : 0);
  return {
    ms: pouring + eventMs + inside * rig.midZoneMs + fetching.ms,
    detourMs: fetching.detourMs,
    detourM: fetching.detourM,
  };
}

/** Refills that have to fall inside an op, because no compartment holds as much as the op draws. */
function leastInside(route: FixedRoute, at: number, units: number, hold: Hold): number {
  const { ops } = route;
  let inside = 0;
  for (let index = at; index < ops.length; index += 1) {
    const { op } = ops[index] as FlatOp;
    let most = 0;
    for (const draw of op.draws) {
      const beside = route.bags[draw.compartment] as number;
      const capacity = capacityOf(route, draw.compartment) + capacityOf(route, beside);
      const begun = index === at && units > 0;
      const need = begun ? draw.parts - drawn(op, draw.parts, units) : draw.parts;
      const held = begun ? (hold.levels[draw.compartment] as number) + (hold.levels[beside] ?? 0) : capacity;
      most = Math.max(most, Math.ceil(Math.max(0, need - held) / capacity));
    }
    inside += most;
  }
  return inside;
}

function capacityOf({ rig }: FixedRoute, compartment: number): number {
  return rig.compartments[compartment]?.capacityParts ?? 0;
}

function leastOf(
  route: FixedRoute,
  list: readonly Run[],
  compartment: number,
  hold: Hold,
): { ms: number; events: number } {
  const vessel = route.rig.compartments[compartment] as FixedRoute['rig']['compartments'][number];
  let [ms, events] = [0, 0];
  let held = hold.materials[compartment] as number;
  list.forEach((run, index) => {
    const bags = route.bags[compartment] as number;
    const inBags = index === 0 && hold.materials[bags] === run.material ? (hold.levels[bags] as number) : 0;
    const level = (index === 0 && held === run.material ? (hold.levels[compartment] as number) : 0) + inBags;
    const missing = Math.max(0, run.total - level);
    ms += missing * vessel.fillMsPerPart;
    events += Math.ceil(missing / (vessel.capacityParts + capacityOf(route, bags)));
    if (held >= 0 && held !== run.material) ms += route.problem.materials[held]?.rinseMs ?? 0;
    held = run.material;
  });
  return { ms, events };
}

/** What stations have to give because it is not aboard, and the shortest way to one. */
function leastFetching(
  route: FixedRoute,
  runs: readonly (readonly Run[])[],
  at: number,
  hold: Hold,
): { readonly needed: boolean } & LeastRefills {
  const { problem } = route;
  let [ms, metres, detourMs, needed] = [0, 0, 0, false];
  problem.stocks.forEach((_, stock) => {
    const short =
      shortOf(route, runs, hold.levels, hold.materials, stock, route.ops.length - 1) - (hold.stocks[stock] as number);
    if (short <= 0) return;
    const flows = problem.stations.map((each) => each.msPerPart[stock] as number).filter((each) => each >= 0);
    const way = detour(route, at, stock);
    needed = true;
    ms += short * (flows.length === 0 ? 1e12 : Math.min(...flows));
    detourMs = Math.max(detourMs, way.ms);
    metres = Math.max(metres, way.m);
  });
  return { needed, ms, detourMs, detourM: metres };
}

/** Least added travel for going by a station that holds the stock, on any leg or from any stop that is left. */
function detour(route: FixedRoute, at: number, stock: number): { readonly ms: number; readonly m: number } {
  const known = route.detours.get(at * 100 + stock);
  if (known !== undefined) return known;
  const { problem, rig, ops, jobs } = route;
  const first = (ops[at] as FlatOp).visit;
  const places = [...jobs.slice(Math.max(0, first - 1)).map((job) => job.place), endPlace(problem, rig)];
  if (first === 0) places.unshift(homePlace(problem, rig));
  let [ms, m] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const consider = (from: number, to: number): void => {
    for (const station of problem.stations) {
      if ((station.msPerPart[stock] ?? -1) < 0) continue;
      const [out, on, direct] = [
        travel(problem, from, station.place),
        travel(problem, station.place, to),
        travel(problem, from, to),
      ];
      ms = Math.min(ms, Math.max(0, out.ms + on.ms - direct.ms));
      m = Math.min(m, Math.max(0, out.m + on.m - direct.m));
    }
  };
  places.forEach((place, index) => {
    consider(place, place);
    const next = places[index + 1];
    if (next !== undefined) consider(place, next);
  });
  // From the middle of a chain of stations anything may be near.
  const found = { ms: Number.isFinite(ms) ? ms : 0, m: Number.isFinite(m) ? m : 0 };
  route.detours.set(at * 100 + stock, found);
  return found;
}

/** The same for a day that has not begun: as if everything that fits had been loaded at home. */
export function leastOfDay(route: FixedRoute): { readonly ms: number; readonly m: number } {
  const { problem, rig } = route;
  const runs = allRuns(route, 0, 0);
  const materials = runs.map((list) => list[0]?.material ?? -1);
  const levels = runs.map((list, index) =>
    Math.min(list[0]?.total ?? 0, rig.compartments[index]?.capacityParts as number),
  );
  rig.compartments.forEach(({ pours, capacityParts }, index) => {
    if (pours === undefined) return;
    materials[index] = materials[pours.into] as number;
    levels[index] = Math.min(capacityParts, (runs[pours.into]?.[0]?.total ?? 0) - (levels[pours.into] as number));
  });
  const stocks = problem.stocks.map((stock) =>
    stock.kind === 'water' ? rig.nurseParts : rig.bagPlaces * stock.bagParts,
  );
  const least = leastRefills(route, 0, 0, { levels, materials, stocks });
  const over = overweight(route, runs);
  return { ms: Math.max(least.ms + least.detourMs, over), m: least.detourM };
}

/** Time to fetch what the payload does not let the rig carry from the start. */
function overweight(route: FixedRoute, runs: readonly (readonly Run[])[]): number {
  const { problem, rig } = route;
  let weight = 0;
  let perWeight = Number.POSITIVE_INFINITY;
  runs.forEach((list) => {
    for (const run of list) {
      const stock = problem.materials[run.material]?.stock as number;
      const unit = problem.stocks[stock]?.weightPerPart as number;
      weight += run.total * unit;
      for (const station of problem.stations) {
        const flow = station.msPerPart[stock] as number;
        if (flow >= 0) perWeight = Math.min(perWeight, flow / unit);
      }
    }
  });
  const over = weight - rig.cargoLimit;
  if (over <= 0 || !Number.isFinite(perWeight)) return 0;
  return over * perWeight + Math.min(...problem.stations.map((each) => each.visitMs));
}
