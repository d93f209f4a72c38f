import { hoursOfDays, type Mode, type Op, type Problem, type ProblemRig } from '../problem/index.ts';

/** Price of a stock that came from home. */
export const FROM_HOME = -1;
/** Price of a stock that home does not hold and no station has given yet. */
export const NOT_ABOARD = -2;

/** One rig of a problem laid out in flat arrays, for the placing of refills. Indices: c compartment, s stock, k station, m moment. */
export type RigModel = {
  readonly problem: Problem;
  readonly rig: ProblemRig;
  readonly compartments: number;
  readonly stocks: number;
  readonly stations: number;
  readonly places: number;
  readonly home: number;
  readonly homePlace: number;
  readonly capacity: Float64Array;
  readonly fillMs: Float64Array;
  /** [c]: the compartment of the bags that are poured into c, and the one that c is poured into; -1 for none. */
  readonly bagsOf: Int32Array;
  readonly poursInto: Int32Array;
  /** [c]: time per part poured out of c; 0 where c holds no bags. */
  readonly pourMs: Float64Array;
  /** [c]: what c holds together with the bags that are poured into it. */
  readonly store: Float64Array;
  /** Whether a machine carries bags. */
  readonly carriesBags: boolean;
  /** Index of water among the stocks, or -1. */
  readonly water: number;
  /** Parts that fit into the rig: the nurse tank, or all bag places full of this product. */
  readonly stockCapacity: Float64Array;
  readonly bagParts: Float64Array;
  readonly weight: Float64Array;
  readonly homeHolds: Uint8Array;
  /** Whether the day begins with what is aboard, instead of being loaded at home. */
  readonly begins: boolean;
  /** [c]: most that is in a compartment when the day begins, and its material; -1 where it is whatever is used first. */
  readonly homeParts: Float64Array;
  readonly homeMaterial: Int32Array;
  /** [s]: most that the rig carries of a stock when the day begins. */
  readonly homeStock: Float64Array;
  /** [k * stocks + s]: ms per part, or -1. */
  readonly price: Float64Array;
  /** [s]: the dearest price anywhere, and the dearest fill of a compartment that takes it. */
  readonly topPrice: Float64Array;
  readonly topFillMs: Float64Array;
  readonly holds: Int32Array;
  readonly holdsAllDry: Uint8Array;
  /** Whether the rig can hold more than the payload allows. */
  readonly mayOverload: boolean;
  /** [job] on the day: earliest set-up, latest arrival with waiting, latest end of the last op. ms */
  readonly openMs: Float64Array;
  readonly closeMs: Float64Array;
  readonly doneMs: Float64Array;
  readonly moments: MomentModel;
  readonly ops: OpTable;
  readonly modes: ModeTable;
};

/**
 * Moments of loading, told apart by the stocks that have not been taken on since. After a visit to station k the moments of class m
 * belong to class `next[k * count + m]`; the visit itself starts a moment of class 0, in which every stock still counts.
 */
export type MomentModel = {
  readonly count: number;
  /** [m * stocks + s]: 1 where use of s still takes weight off that was aboard at the moment. */
  readonly counts: Uint8Array;
  readonly next: Int32Array;
};

export type OpTable = {
  readonly source: readonly Op[];
  readonly area: Float64Array;
  readonly serviceMs: Float64Array;
  readonly material: Int32Array;
  readonly stock: Int32Array;
  readonly drawStart: Int32Array;
  readonly drawCompartment: Int32Array;
  readonly drawParts: Float64Array;
  readonly machine: Int32Array;
  readonly head: Int32Array;
  readonly swapMs: Float64Array;
  readonly reloadMs: Float64Array;
  /** 1 where a second person does it beside the others of its mode. */
  readonly second: Uint8Array;
};

export type ModeTable = {
  /** [job]: number of its first mode; [jobs]: number of modes. */
  readonly first: Int32Array;
  readonly opStart: Int32Array;
  readonly beforeMs: Float64Array;
  readonly afterMs: Float64Array;
  /** [mode]: 1 where two persons work side by side. */
  readonly shared: Uint8Array;
};

/**
 * Lays out one rig. Work: proportional to its modes; done once per rig and problem, and again for days with hours of treating.
 *
 * @param day a day whose hours of treating count; -1 for one without
 */
export function createRigModel(problem: Problem, rig: number, day = -1): RigModel {
  const source = problem.rigs[rig];
  if (source === undefined) throw new RangeError(`no rig ${rig}`);
  const { stocks, stations } = problem;
  const home = stations[source.home];
  if (home === undefined) throw new RangeError(`no station ${source.home}`);
  const price = Float64Array.from(stations.flatMap((station) => stocks.map((_, s) => station.msPerPart[s] ?? -1)));
  const modeList = problem.jobs.map((job) => job.modes[rig] ?? []);
  const poursInto = source.compartments.map((each) => each.pours?.into ?? -1);
  const bagsOf = source.compartments.map((_, c) => poursInto.indexOf(c));
  return {
    problem,
    rig: source,
    compartments: source.compartments.length,
    stocks: stocks.length,
    stations: stations.length,
    places: problem.placeIds.length,
    home: source.home,
    homePlace: source.depot,
    capacity: Float64Array.from(source.compartments.map((each) => each.capacityParts)),
    fillMs: Float64Array.from(source.compartments.map((each) => each.fillMsPerPart)),
    bagsOf: Int32Array.from(bagsOf),
    poursInto: Int32Array.from(poursInto),
    pourMs: Float64Array.from(source.compartments.map((each) => each.pours?.msPerPart ?? 0)),
    store: Float64Array.from(
      source.compartments.map(
        (each, c) => each.capacityParts + (source.compartments[bagsOf[c] ?? -1]?.capacityParts ?? 0),
      ),
    ),
    carriesBags: poursInto.some((each) => each >= 0),
    water: stocks.findIndex((each) => each.kind === 'water'),
    stockCapacity: Float64Array.from(
      stocks.map((each) => (each.kind === 'water' ? source.nurseParts : source.bagPlaces * each.bagParts)),
    ),
    bagParts: Float64Array.from(stocks.map((each) => each.bagParts)),
    weight: Float64Array.from(stocks.map((each) => each.weightPerPart)),
    homeHolds: Uint8Array.from(
      stocks.map((_, s) => (source.begins !== undefined || (home.msPerPart[s] ?? -1) >= 0 ? 1 : 0)),
    ),
    ...beginning(problem, source),
    price,
    topPrice: Float64Array.from(
      stocks.map((_, s) => stations.reduce((top, each) => Math.max(top, each.msPerPart[s] ?? 0), 0)),
    ),
    topFillMs: Float64Array.from(stocks, (stock) =>
      Math.max(
        0,
        ...source.compartments
          .filter((c) => (c.kind === 'tank') === (stock.kind === 'water'))
          .map((c) => c.fillMsPerPart),
      ),
    ),
    holds: Int32Array.from(stations.map((each) => holdsMask(each.msPerPart))),
    holdsAllDry: Uint8Array.from(
      stations.map((each) =>
        stocks.every((stock, s) => stock.kind === 'water' || (each.msPerPart[s] ?? -1) >= 0) ? 1 : 0,
      ),
    ),
    ...hoursOn(problem, day),
    mayOverload: heaviest(problem, source) > source.cargoLimit,
    moments: momentModel(
      stocks.length,
      stations.map((each) => holdsMask(each.msPerPart)),
    ),
    ...flattenModes(problem, modeList),
  };
}

function hoursOn(problem: Problem, day: number): Pick<RigModel, 'openMs' | 'closeMs' | 'doneMs'> {
  const { rowOf, openMs, closeMs, doneMs } = hoursOfDays(problem);
  const jobs = problem.jobs.length;
  const from = (rowOf[day] ?? 0) * jobs;
  const row = (all: Float64Array): Float64Array => all.slice(from, from + jobs);
  return { openMs: row(openMs), closeMs: row(closeMs), doneMs: row(doneMs) };
}

function beginning({ stocks }: Problem, { begins, compartments, nurseParts, bagPlaces }: ProblemRig) {
  return {
    begins: begins !== undefined,
    homeParts: Float64Array.from(compartments, (each, c) => begins?.parts[c] ?? each.capacityParts),
    homeMaterial: Int32Array.from(compartments, (_, c) => begins?.materials[c] ?? -1),
    homeStock: Float64Array.from(
      stocks,
      (each, s) => begins?.stockParts[s] ?? (each.kind === 'water' ? nurseParts : bagPlaces * each.bagParts),
    ),
  };
}

function holdsMask(msPerPart: readonly number[]): number {
  return msPerPart.reduce((mask, each, s) => (each >= 0 ? mask | (1 << s) : mask), 0);
}

/** Weight with every compartment, the nurse tank and all bag places full. */
function heaviest(problem: Problem, rig: ProblemRig): number {
  const most = (weights: readonly number[]): number => Math.max(0, ...weights);
  const water = most(problem.stocks.filter((each) => each.kind === 'water').map((each) => each.weightPerPart));
  const dry = most(problem.stocks.filter((each) => each.kind === 'dry').map((each) => each.weightPerPart));
  const bag = most(problem.stocks.map((each) => each.weightPerPart * each.bagParts));
  const vessels = rig.compartments.reduce((sum, each) => sum + each.capacityParts * Math.max(water, dry), 0);
  return vessels + rig.nurseParts * water + rig.bagPlaces * bag;
}

/** All sets of stocks that can still count after some row of station visits. */
function momentModel(stocks: number, holds: readonly number[]): MomentModel {
  const full = 2 ** stocks - 1;
  const sets = [full];
  // Sets that are added on the way are gone through too.
  for (const set of sets) {
    for (const held of holds) {
      const left = set & ~held;
      if (!sets.includes(left)) sets.push(left);
    }
  }
  return {
    count: sets.length,
    counts: Uint8Array.from(sets.flatMap((set) => Array.from({ length: stocks }, (_, s) => (set >> s) & 1))),
    next: Int32Array.from(holds.flatMap((held) => sets.map((set) => sets.indexOf(set & ~held)))),
  };
}

function flattenModes(problem: Problem, modeList: readonly (readonly Mode[])[]): { ops: OpTable; modes: ModeTable } {
  const modes = modeList.flat();
  const ops = modes.flatMap((mode) => mode.ops);
  let firstMode = 0;
  const first = [0, ...modeList.map((list) => (firstMode += list.length))];
  let firstOp = 0;
  const opStart = [0, ...modes.map((mode) => (firstOp += mode.ops.length))];
  let firstDraw = 0;
  const drawStart = [0, ...ops.map((op) => (firstDraw += op.draws.length))];
  const draws = ops.flatMap((op) => op.draws);
  return {
    ops: {
      source: ops,
      area: Float64Array.from(ops.map((op) => op.areaUnits)),
      serviceMs: Float64Array.from(ops.map((op) => op.serviceMs)),
      material: Int32Array.from(ops.map((op) => op.material)),
      stock: Int32Array.from(ops.map((op) => problem.materials[op.material]?.stock ?? -1)),
      drawStart: Int32Array.from(drawStart),
      drawCompartment: Int32Array.from(draws.map((draw) => draw.compartment)),
      drawParts: Float64Array.from(draws.map((draw) => draw.parts)),
      machine: Int32Array.from(ops.map((op) => op.machine)),
      head: Int32Array.from(ops.map((op) => op.head)),
      swapMs: Float64Array.from(ops.map((op) => op.swapMs)),
      reloadMs: Float64Array.from(ops.map((op) => op.reloadMs)),
      second: Uint8Array.from(ops.map((op) => (op.second ? 1 : 0))),
    },
    modes: {
      first: Int32Array.from(first),
      opStart: Int32Array.from(opStart),
      beforeMs: Float64Array.from(modes.map((mode) => mode.beforeMs)),
      afterMs: Float64Array.from(modes.map((mode) => mode.afterMs)),
      shared: Uint8Array.from(modes.map((mode) => (mode.ops.some((op) => op.second) ? 1 : 0))),
    },
  };
}
