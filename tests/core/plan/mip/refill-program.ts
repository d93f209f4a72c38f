import { type FixedRoute, homePlace, travel } from '../oracle/route.ts';
import { type Source, writeEvent } from './events.ts';
import type { Column, Program, Term } from './program.ts';
import { type Gap, type Path, pathsAt } from './runs.ts';
import { limitLoad, type Price, type Setting, settingOf, times } from './setting.ts';
import { brokenOff, mostSplits, work } from './stretches.ts';

/** A program and how its columns make a day. */
export type RefillProgram = {
  readonly program: Program;
  readonly prices: readonly Price[];
  /** The day without a refill but with every rinse: how many there are does not depend on the refills. */
  readonly baseMs: number;
  readonly baseMetres: number;
};

/**
 * The refills of a fixed route as a mixed-integer program. Written from docs/methods/planning.md alone; knows
 * nothing of the refill placer.
 *
 * While it works, a hopper may take up bags that ride beside it.
 *
 * At every gap (before each op, and several times inside it) lie one path by up to two different stations and then one refill from the
 * rig. Whole columns: the path taken, the refill, the parts moved in each event into every compartment and into the rig's stock, the
 * event of each rinse, and the parts of an op drawn before each refill inside it. Not in it: times of day, and so neither windows nor
 * hours of stations nor breaks.
 */
export function refillProgram(route: FixedRoute): RefillProgram {
  const setting = settingOf(route);
  limitLoad(setting, 0);
  route.ops.forEach((_, at) => {
    writeOp(setting, at);
  });
  const base = baseOf(setting);
  writeCost(setting, base.baseMs);
  return { program: setting.program, prices: setting.prices, ...base };
}

function baseOf({ route, runs }: Setting): { readonly baseMs: number; readonly baseMetres: number } {
  const { problem, rig, jobs, modes } = route;
  const way = travel(problem, homePlace(problem, rig), jobs[0]?.place ?? -1);
  const drawnOn = runs.filter((_, compartment) => rig.compartments[compartment]?.pours === undefined);
  const rinseMs = drawnOn.flat().reduce((sum, run) => sum + (run.before?.rinseMs ?? 0), 0);
  return {
    baseMs: rig.morningMs + way.ms + (modes[0]?.beforeMs ?? 0) + (route.restMs[0] ?? 0) + rinseMs,
    baseMetres: way.m + (route.restM[0] ?? 0),
  };
}

function writeOp(setting: Setting, at: number): void {
  const { route, program } = setting;
  const op = route.ops[at]?.op;
  if (op === undefined) throw new RangeError('no such op');
  writeGap(setting, { op: at, split: 0 });
  let from: readonly Column[] | null = null;
  let usedBefore: readonly Term[] | null = null;
  for (let split = 1; split <= mostSplits(setting, op); split += 1) {
    const to = brokenOff(setting, op);
    work(setting, at, from, to);
    const used = writeGap(setting, { op: at, split });
    // The first of several gaps inside an op are used first: without this every day could be written in many ways.
    if (usedBefore !== null) program.row([...used, ...times(-2, usedBefore)], '<=', 0);
    [from, usedBefore] = [to, used];
  }
  work(setting, at, from, null);
}

/** Writes all that may happen at a gap. Returns terms whose sum is 1 or 2 where anything does, else 0. */
function writeGap(setting: Setting, gap: Gap): readonly Term[] {
  const { program, route, prices } = setting;
  const paths = pathsAt(route, gap).map((path) => ({ path, column: program.whole(1) }));
  for (const { path, column } of paths) prices.push({ column, ms: path.ms, metres: path.metres });
  const rig = program.whole(1);
  prices.push({ column: rig, ms: route.rig.refillMs + (gap.split > 0 ? route.rig.midZoneMs : 0), metres: 0 });
  const taken = paths.map(({ column }): Term => [1, column]);
  program.row(taken, '<=', 1);
  for (const place of [0, 1]) writeEvent(setting, { gap, sources: stationsAt(route, paths, place) });
  writeEvent(setting, { gap, sources: [{ station: null, used: [[1, rig]] }] });
  return [...taken, [1, rig]];
}

type Choice = { readonly path: Path; readonly column: Column };

/** The stations that may come first (place 0) or second on a path. */
function stationsAt({ problem }: FixedRoute, paths: readonly Choice[], place: number): readonly Source[] {
  return problem.stations.flatMap((station, number) => {
    const used = paths.flatMap(({ path, column }): readonly Term[] =>
      path.stations[place] === number ? [[1, column]] : [],
    );
    return used.length === 0 ? [] : [{ station, used }];
  });
}

/** Pay, overtime and distance in seconds of regular pay: figures of a size that suits the solver. */
function writeCost({ program, prices, route }: Setting, baseMs: number): void {
  const { rig } = route;
  const seconds = prices.map(({ column, ms }): Term => [ms / 1000, column]);
  program.row(seconds, '<=', (rig.shiftMs + rig.overtimeMs - baseMs) / 1000);
  const over = program.free(Number.POSITIVE_INFINITY);
  program.row([...seconds, [-1, over]], '<=', (rig.shiftMs - baseMs) / 1000);
  program.cost(...seconds, [rig.overtimeCostPerMs / rig.costPerMs, over]);
  const perMetre = rig.costPerM / rig.costPerMs / 1000;
  program.cost(...prices.map(({ column, metres }): Term => [metres * perMetre, column]));
}

/** Cost of a day in nano-dollars as the program reckons it: seconds of regular pay beyond the day without refills and without overtime. */
export function secondsOf({ baseMs, baseMetres }: RefillProgram, { rig, lateCost }: FixedRoute, cost: number): number {
  const base = rig.costPerDay + lateCost + baseMs * rig.costPerMs + baseMetres * rig.costPerM;
  return (cost - base) / rig.costPerMs / 1000;
}
