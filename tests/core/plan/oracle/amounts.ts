import type { Station } from '../../../../core/plan/problem/index.ts';
import { allRuns, type Run, rinsesAhead, shortOf } from './needs.ts';
import type { FixedRoute } from './route.ts';

/** What a rig holds. Materials are -1 where a compartment has been clean since the morning. */
export type Hold = {
  readonly levels: readonly number[];
  readonly materials: readonly number[];
  readonly stocks: readonly number[];
};

/** One way to do a refill: what is held afterwards and the time for rinsing and moving parts. */
export type Option = Hold & { readonly ms: number };

/** Where the parts come from: the morning at home (free), a station, or the rig's own stock. */
export type Source =
  | { readonly kind: 'home'; readonly station: Station }
  | { readonly kind: 'station'; readonly station: Station }
  | { readonly kind: 'rig' };

export type Asking = {
  readonly route: FixedRoute;
  readonly hold: Hold;
  /** The next op and how much of it is done. */
  readonly at: number;
  readonly units: number;
  readonly source: Source;
};

/** What can be filled in one event. */
type Vessel =
  | { readonly kind: 'compartment'; readonly number: number; readonly run: Run; readonly change: boolean }
  | { readonly kind: 'stock'; readonly number: number };

type Draft = {
  readonly levels: number[];
  readonly materials: number[];
  readonly stocks: number[];
  ms: number;
};

/**
 * Every way to do one refill that can be part of a best route: each compartment or stock left alone, filled as far as fits and is
 * still needed, or filled to one of the marks at which an op ends; in every order in which they can compete for a scarce stock,
 * for payload or for bag places.
 */
export function optionsFor(asking: Asking): readonly Option[] {
  const runs = allRuns(asking.route, asking.at, asking.units);
  const vessels = vesselsFor(asking, runs);
  const found = new Map<string, Option>();
  for (const order of ordersOf(asking, vessels)) fillInOrder(asking, runs, order, 0, draftOf(asking.hold), found);
  const options = [...found.values()];
  return asking.route.roomy ? undominated(options) : options;
}

/** Without those that hold no more of anything and take no less time than another one. */
function undominated(options: readonly Option[]): readonly Option[] {
  const figures = options.map((each) => [-each.ms, ...each.levels, ...each.stocks]);
  return options.filter((each, index) => {
    const own = figures[index] as number[];
    return !options.some((other, at) => {
      const theirs = figures[at] as number[];
      if (at === index || !noWorse(theirs, own) || `${other.materials}` !== `${each.materials}`) return false;
      // Of two that are alike in everything the first one stays.
      return at < index || !noWorse(own, theirs);
    });
  });
}

/** True where every figure of the left list is at least that of the right one. */
export function noWorse(left: readonly number[], right: readonly number[]): boolean {
  for (let place = 0; place < right.length; place += 1) {
    if ((left[place] as number) < (right[place] as number)) return false;
  }
  return true;
}

/**
 * Orders in which vessels are filled. Where they compete for something scarce, each one in turn comes last and gets what the others,
 * filled to their marks, leave.
 */
function ordersOf(asking: Asking, vessels: readonly Vessel[]): readonly (readonly Vessel[])[] {
  const { route, hold, source } = asking;
  const stockOf = (vessel: Vessel): number =>
    vessel.kind === 'stock' ? vessel.number : (route.problem.materials[vessel.run.material]?.stock as number);
  const shared = vessels.some((vessel) => {
    const same = vessels.filter((each) => each.kind === 'compartment' && stockOf(each) === stockOf(vessel));
    const wanted = same.reduce((sum, each) => sum + (each.kind === 'compartment' ? each.run.total : 0), 0);
    return same.length > 1 && (source.kind !== 'rig' || (hold.stocks[stockOf(vessel)] as number) < wanted);
  });
  const compete = !route.roomy || (shared && source.kind !== 'home');
  if (!compete || vessels.length < 2) return [vessels];
  return vessels.map((last) => [...vessels.filter((each) => each !== last), last]);
}

function draftOf(hold: Hold): Draft {
  return { levels: [...hold.levels], materials: [...hold.materials], stocks: [...hold.stocks], ms: 0 };
}

function vesselsFor(asking: Asking, runs: readonly (readonly Run[])[]): readonly Vessel[] {
  const { route, hold, source } = asking;
  const vessels: Vessel[] = [];
  runs.forEach((list, number) => {
    // Bags beside a hopper are for what it is used for next.
    const hopper = route.rig.compartments[number]?.pours?.into;
    const run = hopper === undefined ? list[0] : runs[hopper]?.[0];
    if (run === undefined) return;
    const stock = route.problem.materials[run.material]?.stock as number;
    const available = source.kind === 'rig' ? (hold.stocks[stock] as number) > 0 : held(source.station, stock);
    const holds = hold.materials[number] as number;
    const change = hopper === undefined && holds >= 0 && holds !== run.material;
    if (available) vessels.push({ kind: 'compartment', number, run, change });
  });
  if (source.kind === 'rig') return vessels;
  route.problem.stocks.forEach((stock, number) => {
    const room = stock.kind === 'water' ? route.rig.nurseParts : route.rig.bagPlaces;
    if (room > 0 && held(source.station, number)) vessels.push({ kind: 'stock', number });
  });
  return vessels;
}

function held(station: Station, stock: number): boolean {
  return (station.msPerPart[stock] ?? -1) >= 0;
}

function fillInOrder(
  asking: Asking,
  runs: readonly (readonly Run[])[],
  order: readonly Vessel[],
  index: number,
  draft: Draft,
  found: Map<string, Option>,
): void {
  const vessel = order[index];
  if (vessel === undefined) {
    found.set(`${draft.levels}|${draft.materials}|${draft.stocks}|${draft.ms}`, draft);
    return;
  }
  if (!mustFill(asking)) fillInOrder(asking, runs, order, index + 1, draft, found);
  const after = vessel.kind === 'compartment' && vessel.change ? rinsed(asking, draft, vessel.number) : draft;
  if (after === null) return;
  if (vessel.kind === 'compartment' && ofAnother(asking, vessel, after)) {
    if (mustFill(asking)) fillInOrder(asking, runs, order, index + 1, draft, found);
    return;
  }
  const wanted =
    vessel.kind === 'compartment'
      ? compartmentAims(asking, runs, vessel, after)
      : stockAims(asking, runs, vessel, after);
  const limit = mostParts(asking, vessel, after);
  const amounts = new Set(wanted.map((parts) => Math.min(parts, limit)).filter((parts) => parts > 0));
  if (amounts.size === 0 && mustFill(asking)) fillInOrder(asking, runs, order, index + 1, draft, found);
  for (const parts of amounts) {
    fillInOrder(asking, runs, order, index + 1, poured(asking, vessel, after, parts), found);
  }
}

/** True for bags while their hopper still holds something else, or while bags of something else are there. */
function ofAnother({ route }: Asking, vessel: Vessel & { readonly kind: 'compartment' }, draft: Draft): boolean {
  const hopper = route.rig.compartments[vessel.number]?.pours?.into;
  if (hopper === undefined) return false;
  const inHopper = draft.materials[hopper] as number;
  const inBags = draft.materials[vessel.number] as number;
  const left = (draft.levels[vessel.number] as number) > 0 && inBags !== vessel.run.material;
  return left || (inHopper >= 0 && inHopper !== vessel.run.material);
}

/** True where leaving the vessel alone is never better: at home with room for everything. */
function mustFill({ route, source }: Asking): boolean {
  return source.kind === 'home' && route.roomy;
}

/** The compartment emptied and clean; null where the rig has no water for it. */
function rinsed(asking: Asking, draft: Draft, compartment: number): Draft | null {
  const { problem } = asking.route;
  const material = problem.materials[draft.materials[compartment] as number];
  const water = problem.stocks.findIndex((each) => each.kind === 'water');
  const ownWater = asking.source.kind === 'rig' || !held(asking.source.station, water);
  const next = { ...draftOf(draft), ms: draft.ms + (material?.rinseMs ?? 0) };
  for (const emptied of [compartment, asking.route.bags[compartment] as number]) {
    if (emptied < 0) continue;
    next.levels[emptied] = 0;
    next.materials[emptied] = -1;
  }
  if (!ownWater) return next;
  next.stocks[water] = (next.stocks[water] ?? 0) - (material?.rinseParts ?? 0);
  return (next.stocks[water] as number) < 0 ? null : next;
}

/** A tank is filled to a mark, to the odd part of one, to all that is needed, or (at a station) with what the rig's own stock does not cover. */
function compartmentAims(
  asking: Asking,
  runs: readonly (readonly Run[])[],
  vessel: Vessel & { readonly kind: 'compartment' },
  draft: Draft,
): number[] {
  const capacity = asking.route.rig.compartments[vessel.number]?.capacityParts as number;
  const hopper = asking.route.rig.compartments[vessel.number]?.pours?.into ?? -1;
  const beside = Math.max(hopper, asking.route.bags[vessel.number] as number);
  const level = draft.levels[vessel.number] as number;
  const sums = mustCount(asking, draft, vessel.run) ? vessel.run.marks.map((mark) => mark.sum) : [];
  // Also what is left over of a mark when later loads are full ones: then the last of them ends exactly there.
  const odds = sums.map((sum) => ((sum - 1) % capacity) + 1);
  const marks = [...new Set([...sums, ...odds, vessel.run.total])];
  const alone = hopper < 0 ? marks.map((sum) => Math.min(sum, capacity) - level) : [];
  // A hopper and the bags beside it are filled together to a mark, or each one for itself to its top.
  const inOther = beside < 0 ? 0 : (draft.levels[beside] as number);
  const together = beside < 0 ? [] : marks.map((sum) => Math.min(sum - inOther, capacity) - level);
  const aims = [...alone, ...together];
  if (asking.source.kind !== 'station') return aims;
  const stock = asking.route.problem.materials[vessel.run.material]?.stock as number;
  const short = shortOf(asking.route, runs, draft.levels, draft.materials, stock, asking.route.ops.length - 1);
  return [...aims, short - (draft.stocks[stock] as number)];
}

/**
 * How a stock is filled: to the end of one of the ops or to all that is needed, with the water for any of the rinses to come.
 */
function stockAims(
  asking: Asking,
  runs: readonly (readonly Run[])[],
  vessel: Vessel & { readonly kind: 'stock' },
  draft: Draft,
): number[] {
  const { route } = asking;
  const water = route.problem.stocks[vessel.number]?.kind === 'water';
  const rinses = water ? rinsesAhead(route, runs, draft.materials) : [];
  const last = route.ops.length - 1;
  const counted = asking.source.kind === 'home' ? !route.roomy : !route.generous;
  const ends = counted ? route.ops.map((_, index) => index).slice(asking.at) : [last];
  const level = draft.stocks[vessel.number] as number;
  const extras = counted ? subsetSums(rinses) : [rinses.reduce((sum, each) => sum + each, 0), 0];
  const needs = ends.map((end) => shortOf(route, runs, draft.levels, draft.materials, vessel.number, end));
  // As with compartments: a need, or its odd part when later loads of this stock are full ones.
  const room = mostAtOnce(route, vessel.number);
  const odds = counted && room > 0 ? needs.map((need) => ((need - 1) % room) + 1) : [];
  const aims = [...new Set([...needs, ...odds])];
  return aims.flatMap((aim) => extras.map((extra) => aim + extra - level));
}

/** Most of a stock that the rig takes at once, parts. */
function mostAtOnce(route: FixedRoute, stock: number): number {
  const { problem, rig } = route;
  const kind = problem.stocks[stock];
  return kind?.kind === 'water' ? rig.nurseParts : rig.bagPlaces * (kind?.bagParts ?? 0);
}

function subsetSums(parts: readonly number[]): number[] {
  let sums = [0];
  for (const each of parts.slice(0, 5)) sums = [...new Set([...sums, ...sums.map((sum) => sum + each)])];
  return sums;
}

/**
 * True where loads smaller than "as much as fits and is needed" can be better: where size matters in general (see `generous`), at a
 * station while the rig still has some of its own, and where the rig's own is scarce.
 */
function mustCount({ route, source, at, units }: Asking, draft: Draft, run: Run): boolean {
  if (source.kind === 'home') return !route.roomy;
  const stock = route.problem.materials[run.material]?.stock as number;
  if (!route.generous) return true;
  if (source.kind === 'station') return (draft.stocks[stock] as number) > 0;
  if ((draft.stocks[stock] as number) >= run.total) return false;
  // Scarce, and another compartment or a later run wants some of it too.
  const rivals = allRuns(route, at, units).flat();
  return rivals.some((each) => each !== run && route.problem.materials[each.material]?.stock === stock);
}

/** Most parts that may go in: room, scarce stock, payload, bag places. */
function mostParts(asking: Asking, vessel: Vessel, draft: Draft): number {
  const { route, source } = asking;
  const { problem, rig } = route;
  if (vessel.kind === 'compartment') {
    const stock = problem.materials[vessel.run.material]?.stock as number;
    const room = (rig.compartments[vessel.number]?.capacityParts as number) - (draft.levels[vessel.number] as number);
    if (source.kind === 'rig') return Math.min(room, draft.stocks[stock] as number);
    return Math.min(room, payloadRoom(asking, stock, draft));
  }
  const level = draft.stocks[vessel.number] as number;
  const kind = problem.stocks[vessel.number]?.kind;
  const room = kind === 'water' ? rig.nurseParts - level : bagRoom(asking, vessel.number, draft) - level;
  return Math.min(room, payloadRoom(asking, vessel.number, draft));
}

function payloadRoom({ route }: Asking, stock: number, draft: Draft): number {
  const { problem, rig } = route;
  const weightOf = (number: number): number => problem.stocks[number]?.weightPerPart ?? 0;
  let weight = 0;
  draft.stocks.forEach((parts, number) => {
    weight += parts * weightOf(number);
  });
  draft.levels.forEach((parts, number) => {
    const material = problem.materials[draft.materials[number] as number];
    if (material !== undefined) weight += parts * weightOf(material.stock);
  });
  return Math.floor((rig.cargoLimit - weight) / weightOf(stock));
}

/** The level that the bag places left by the other dry stocks allow. */
function bagRoom({ route }: Asking, stock: number, draft: Draft): number {
  let places = route.rig.bagPlaces;
  route.problem.stocks.forEach((each, number) => {
    if (each.kind === 'dry' && number !== stock) places -= Math.ceil((draft.stocks[number] as number) / each.bagParts);
  });
  return places * (route.problem.stocks[stock]?.bagParts ?? 0);
}

function poured(asking: Asking, vessel: Vessel, draft: Draft, parts: number): Draft {
  const { route, source } = asking;
  const next = draftOf(draft);
  next.ms = draft.ms;
  const stock =
    vessel.kind === 'stock' ? vessel.number : (route.problem.materials[vessel.run.material]?.stock as number);
  if (vessel.kind === 'compartment') {
    next.levels[vessel.number] = (next.levels[vessel.number] as number) + parts;
    next.materials[vessel.number] = vessel.run.material;
    if (source.kind === 'rig') next.stocks[stock] = (next.stocks[stock] as number) - parts;
    if (source.kind !== 'home') next.ms += parts * (route.rig.compartments[vessel.number]?.fillMsPerPart as number);
  } else next.stocks[stock] = (next.stocks[stock] as number) + parts;
  if (source.kind === 'station') next.ms += parts * (source.station.msPerPart[stock] as number);
  return next;
}
