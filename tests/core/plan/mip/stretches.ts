import type { Draw, Op } from '../../../../core/plan/problem/index.ts';
import type { Column, Term } from './program.ts';
import { type Setting, term, times } from './setting.ts';

/** How often an op may be broken off: as often as its demand fills a compartment, and once more. */
export function mostSplits(setting: Setting, { draws }: Op): number {
  const { compartments } = setting.route.rig;
  const loads = draws.map(({ compartment, parts }) => parts / (compartments[compartment]?.capacityParts ?? 1));
  return draws.length === 0 ? 0 : Math.ceil(Math.max(...loads)) + 1;
}

/**
 * Columns of what an op has drawn for each of its draws where it is broken off. After x of X ft2 that is ceil(parts * x / X): where no
 * more parts are drawn than there are ft2, one draw alone may take every whole value from 1 to its parts. Two draws hang together by x.
 */
export function brokenOff({ program }: Setting, { draws, areaUnits }: Op): readonly Column[] {
  if (draws.some(({ parts }) => parts > areaUnits)) throw new RangeError('more parts than ft2');
  const columns = draws.map(({ parts }) => program.whole(parts));
  for (const column of columns) program.row([[1, column]], '>=', 1);
  if (columns.length === 1) return columns;
  const units = program.whole(areaUnits - 1);
  draws.forEach(({ parts }, draw) => {
    const above: readonly Term[] = [term(1, columns[draw]), [-parts / areaUnits, units]];
    program.row(above, '>=', 0);
    program.row(above, '<=', (areaUnits - 1) / areaUnits);
  });
  return columns;
}

/** Takes out of the compartments what op `at` draws between two places where it is broken off; null for its beginning or end. */
export function work(setting: Setting, at: number, from: readonly Column[] | null, to: readonly Column[] | null): void {
  setting.route.ops[at]?.op.draws.forEach((draw, index) => {
    workOne(setting, at, draw, from?.[index] ?? null, to?.[index] ?? null);
  });
}

function workOne(setting: Setting, at: number, draw: Draw, from: Column | null, to: Column | null): void {
  const { program, levels, route, runs } = setting;
  const { compartment, parts } = draw;
  const after = program.free(route.rig.compartments[compartment]?.capacityParts ?? 0);
  const drawn: readonly Term[] = [...(to === null ? [] : [term(1, to)]), ...(from === null ? [] : [term(-1, from)])];
  const before = term(-1, levels.compartments[compartment]);
  const poured = pour(setting, compartment);
  program.row([[1, after], before, ...drawn, ...times(-1, poured)], '=', to === null ? -parts : 0);
  levels.compartments[compartment] = after;
  // Nothing left of a run: less could have been filled, which takes no longer and weighs no more.
  if (to !== null || !runs[compartment]?.some((run) => run.last === at)) return;
  const bags = route.rig.compartments.findIndex((each) => each.pours?.into === compartment);
  program.row([[1, after]], '=', 0);
  if (bags >= 0) program.row([term(1, levels.compartments[bags])], '=', 0);
}

/** What goes into a hopper out of the bags beside it while it works; nothing where there are none. */
function pour({ program, levels, route, prices }: Setting, hopper: number): readonly Term[] {
  const { compartments } = route.rig;
  const bags = compartments.findIndex((each) => each.pours?.into === hopper);
  const most = compartments[bags]?.capacityParts ?? 0;
  if (most === 0) return [];
  const parts = program.whole(most);
  const left = program.free(most);
  program.row([[1, left], term(-1, levels.compartments[bags]), [1, parts]], '=', 0);
  levels.compartments[bags] = left;
  prices.push({ column: parts, ms: compartments[bags]?.pours?.msPerPart ?? 0, metres: 0 });
  return [[1, parts]];
}
