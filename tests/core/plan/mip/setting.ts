import type { Station } from '../../../../core/plan/problem/index.ts';
import type { FixedRoute } from '../oracle/route.ts';
import { type Column, Program, type Term } from './program.ts';
import { type Run, runsOf } from './runs.ts';

/** Milliseconds and metres that one unit of a column adds to the day. */
export type Price = { readonly column: Column; readonly ms: number; readonly metres: number };

/** A program of refills while it is being written from the morning to the evening. */
export type Setting = {
  readonly route: FixedRoute;
  readonly program: Program;
  readonly prices: Price[];
  readonly runs: readonly (readonly Run[])[];
  /** For each stock the most that is ever aboard outside the compartments, parts. */
  readonly stockMost: readonly number[];
  /** Levels after what was written last: in each compartment for its next use, and in the rig's stock. */
  readonly levels: { readonly compartments: Column[]; readonly stocks: Column[] };
  /** Where the rinse before a run may be: one column for each refill written so far. */
  readonly rinses: Map<Run, Term[]>;
};

/** A setting in the morning: everything that home holds may be aboard, at no price. */
export function settingOf(route: FixedRoute): Setting {
  const program = new Program();
  const drawn = runsOf(route);
  // Bags beside a hopper hold what it holds, and are used up with it.
  const runs = route.rig.compartments.map(({ pours }, compartment) => drawn[pours?.into ?? compartment] ?? []);
  const home = route.problem.stations[route.rig.home];
  const stockMost = route.problem.stocks.map((_, stock) => mostOf(route, drawn, stock));
  const compartments = route.rig.compartments.map(({ capacityParts }, compartment) => {
    const run = runs[compartment]?.[0];
    const held = run !== undefined && holds(home, run.material.stock);
    return program.whole(held ? Math.min(capacityParts, run.total) : 0);
  });
  const stocks = stockMost.map((most, stock) => program.whole(holds(home, stock) ? most : 0));
  return { route, program, prices: [], runs, stockMost, levels: { compartments, stocks }, rinses: new Map() };
}

/** Nurse tank or bag places, and never more than the whole day uses. */
function mostOf({ problem, rig }: FixedRoute, runs: readonly (readonly Run[])[], stock: number): number {
  const kind = problem.stocks[stock];
  const water = kind?.kind === 'water';
  const used = runs.flat().map((run) => (run.material.stock === stock ? run.total : 0));
  const rinsed = runs.flat().map((run) => (water ? (run.before?.rinseParts ?? 0) : 0));
  const room = water ? rig.nurseParts : rig.bagPlaces * (kind?.bagParts ?? 0);
  return Math.min(
    room,
    [...used, ...rinsed].reduce((sum, each) => sum + each, 0),
  );
}

export function holds(station: Station | null | undefined, stock: number): boolean {
  return (station?.msPerPart[stock] ?? -1) >= 0;
}

/** What the compartment is next used for, at op `op` or later. */
export function runAt(setting: Setting, compartment: number, op: number): Run | undefined {
  return setting.runs[compartment]?.find((run) => run.last >= op);
}

/** Bag places and payload after stock came aboard before op `op`: at any other time both only get easier. */
export function limitLoad(setting: Setting, op: number): void {
  const { route, program, levels } = setting;
  const { problem, rig } = route;
  // Everything fits at once.
  if (route.roomy) return;
  const bags = problem.stocks.flatMap(({ kind, bagParts }, stock): readonly Term[] => {
    if (kind === 'water' || setting.stockMost[stock] === 0) return [];
    const column = program.whole(rig.bagPlaces);
    program.row([term(1, levels.stocks[stock]), [-bagParts, column]], '<=', 0);
    return [[1, column]];
  });
  program.row(bags, '<=', rig.bagPlaces);
  const inCompartments = levels.compartments.flatMap((column, compartment): readonly Term[] => {
    const run = runAt(setting, compartment, op);
    return run === undefined ? [] : [[problem.stocks[run.material.stock]?.weightPerPart ?? 0, column]];
  });
  const inStock = levels.stocks.map((column, stock): Term => [problem.stocks[stock]?.weightPerPart ?? 0, column]);
  program.row([...inCompartments, ...inStock], '<=', rig.cargoLimit);
}

export function term(coefficient: number, column: Column | undefined): Term {
  if (column === undefined) throw new RangeError('no such column');
  return [coefficient, column];
}

/** Terms with every coefficient multiplied. */
export function times(factor: number, terms: readonly Term[]): readonly Term[] {
  return terms.map(([coefficient, column]) => [factor * coefficient, column]);
}
