import type { Station } from '../../../../core/plan/problem/index.ts';
import type { Column, Term } from './program.ts';
import type { Gap, Run } from './runs.ts';
import { holds, limitLoad, runAt, type Setting, times } from './setting.ts';

/** One source of a refill (null: the rig) and the columns whose sum says whether it is used. */
export type Source = { readonly station: Station | null; readonly used: readonly Term[] };

/** A refill at a gap: at one of several stations, or from the rig. */
export type Event = { readonly gap: Gap; readonly sources: readonly Source[] };

/** Changes of levels that an event makes, one row each, and its price. */
type Change = { readonly compartments: readonly Term[][]; readonly stocks: readonly Term[][] };

/** Writes everything that may be filled and rinsed in an event. */
export function writeEvent(setting: Setting, event: Event): void {
  const { levels, route, stockMost } = setting;
  const change: Change = { compartments: levels.compartments.map(() => []), stocks: levels.stocks.map(() => []) };
  levels.compartments.forEach((_, compartment) => {
    const run = runAt(setting, compartment, event.gap.op);
    if (run === undefined) return;
    if (route.rig.compartments[compartment]?.pours === undefined) rinse(setting, event, run, change);
    for (const source of event.sources) fill(setting, event.gap, source, { compartment, run }, change);
  });
  for (const source of event.sources) takeOn(setting, source, change);
  levels.compartments.forEach((level, compartment) => {
    const most = route.rig.compartments[compartment]?.capacityParts ?? 0;
    levels.compartments[compartment] = after(setting, level, change.compartments[compartment] ?? [], most);
  });
  levels.stocks.forEach((level, stock) => {
    levels.stocks[stock] = after(setting, level, change.stocks[stock] ?? [], stockMost[stock] ?? 0);
  });
  if (event.sources.some(({ station }) => station !== null)) limitLoad(setting, event.gap.op);
}

function after({ program }: Setting, level: Column, change: readonly Term[], most: number): Column {
  if (change.length === 0) return level;
  const column = program.free(most);
  program.row([[1, column], [-1, level], ...times(-1, change)], '=', 0);
  return column;
}

/** Whether the compartment may still hold what it held before this run. */
function isBeforeFirstUse(run: Run, gap: Gap): boolean {
  return gap.op < run.first || (gap.op === run.first && gap.split === 0);
}

/**
 * Between the last use of one material and the first use of the next a compartment is rinsed once. Its time is in the day anyway; what
 * is decided is the event, and with it the water: the rig's own, or the station's where it has some.
 */
function rinse(setting: Setting, { gap, sources }: Event, run: Run, change: Change): void {
  if (run.before === null || !isBeforeFirstUse(run, gap)) return;
  const { program, rinses, route } = setting;
  const water = route.problem.stocks.findIndex((each) => each.kind === 'water');
  const list = rinses.get(run) ?? [];
  rinses.set(run, list);
  for (const { station, used } of sources) {
    const column = program.whole(1);
    program.row([[1, column], ...times(-1, used)], '<=', 0);
    list.push([1, column]);
    if (!holds(station, water)) change.stocks[water]?.push([-run.before.rinseParts, column]);
  }
  const isLastChance = gap.op === run.first && sources.every(({ station }) => station === null);
  if (isLastChance) program.row(list, '=', 1);
}

type Vessel = { readonly compartment: number; readonly run: Run };

function fill(setting: Setting, gap: Gap, { station, used }: Source, vessel: Vessel, change: Change): void {
  const { program, route, prices, rinses } = setting;
  const { compartment, run } = vessel;
  const { stock } = run.material;
  const into = route.rig.compartments[compartment];
  if (into === undefined || (station !== null && !holds(station, stock))) return;
  const most = Math.min(into.capacityParts, run.total);
  const parts = program.whole(most);
  program.row([[1, parts], ...times(-most, used)], '<=', 0);
  if (run.before !== null && isBeforeFirstUse(run, gap)) {
    program.row([[1, parts], ...times(-most, rinses.get(run) ?? [])], '<=', 0);
  }
  change.compartments[compartment]?.push([1, parts]);
  if (station === null) change.stocks[stock]?.push([-1, parts]);
  prices.push({ column: parts, ms: into.fillMsPerPart + (station?.msPerPart[stock] ?? 0), metres: 0 });
}

/** What a station gives to the rig's stock. */
function takeOn({ program, prices, stockMost }: Setting, { station, used }: Source, change: Change): void {
  if (station === null) return;
  stockMost.forEach((most, stock) => {
    if (most === 0 || !holds(station, stock)) return;
    const parts = program.whole(most);
    program.row([[1, parts], ...times(-most, used)], '<=', 0);
    change.stocks[stock]?.push([1, parts]);
    prices.push({ column: parts, ms: station.msPerPart[stock] ?? 0, metres: 0 });
  });
}
