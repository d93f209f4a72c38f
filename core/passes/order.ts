import type { PlanePoint } from '../geometry/index.ts';
import type { Cell } from './cells.ts';
import { type Doors, distanceM, doorsOf, turnedWay, type Visit, WAYS, type Way } from './visits.ts';

export type Order = { readonly visits: readonly Visit[]; readonly wasCutShort: boolean };

/** Places tried for runs of cells before the search for a better order stops. */
const MOST_TRIES = 600_000;
const LONGEST_RUN = 3;
/** A change must save more than this, metres. */
const LEAST_GAIN_M = 0.001;

/**
 * In which order, and which way, the cells are driven, by the straight distances between them: first always the nearest,
 * then runs of up to three cells are put elsewhere, forwards or backwards, while that saves way (or-opt; I. Or, Northwestern
 * University, 1976), then the ways through the cells are chosen anew by a dynamic programme, until neither helps. The
 * beginning is free: the trim passes, which come before, are closed and end wherever the swaths begin.
 */
export function orderCells(cells: readonly Cell[]): Order {
  const doors = cells.map(doorsOf);
  let visits = bestWays(nearestFirst(doors), doors);
  const tries = { left: MOST_TRIES };
  for (;;) {
    const moved = moveRuns(visits, cells, doors, tries);
    if (moved === null) break;
    visits = bestWays(moved, doors);
  }
  return { visits, wasCutShort: tries.left <= 0 };
}

function nearestFirst(doors: readonly Doors[]): readonly Visit[] {
  const left = new Set(doors.keys());
  const visits: Visit[] = [];
  let here: PlanePoint | null = null;
  while (left.size > 0) {
    const next: Visit = nearest(doors, left, here);
    left.delete(next.cell);
    visits.push(next);
    here = exitOf(next, doors);
  }
  return visits;
}

function nearest(doors: readonly Doors[], left: ReadonlySet<number>, here: PlanePoint | null): Visit {
  let best: Visit = { cell: left.values().next().value ?? 0, way: 0 };
  let bestM = Number.POSITIVE_INFINITY;
  for (const cell of here === null ? [] : left) {
    for (const way of WAYS) {
      const away = gapM(here, doors[cell]?.entry[way] ?? null);
      if (away >= bestM) continue;
      best = { cell, way };
      bestM = away;
    }
  }
  return best;
}

const entryOf = (visit: Visit | undefined, doors: readonly Doors[]): PlanePoint | null =>
  visit === undefined ? null : (doors[visit.cell]?.entry[visit.way] ?? null);
const exitOf = (visit: Visit | undefined, doors: readonly Doors[]): PlanePoint | null =>
  visit === undefined ? null : (doors[visit.cell]?.exit[visit.way] ?? null);
/** Way between two places; none where one of them is the open end of the sequence. */
const gapM = (from: PlanePoint | null, to: PlanePoint | null): number =>
  from === null || to === null ? 0 : distanceM(from, to);

/** The visits with runs put where they save way; null where none does. */
function moveRuns(
  visits: readonly Visit[],
  cells: readonly Cell[],
  doors: readonly Doors[],
  tries: { left: number },
): readonly Visit[] | null {
  let current = visits;
  for (let length = 1; length <= Math.min(LONGEST_RUN, visits.length - 1); length += 1) {
    for (let from = 0; from + length <= visits.length; from += 1) {
      const moved = moveRun(current, from, length, cells, doors, tries);
      if (moved !== null) current = moved;
      if (tries.left <= 0) return current === visits ? null : current;
    }
  }
  return current === visits ? null : current;
}

/** The visits with one run in its best place; null where it stands there already. */
function moveRun(
  visits: readonly Visit[],
  from: number,
  length: number,
  cells: readonly Cell[],
  doors: readonly Doors[],
  tries: { left: number },
): readonly Visit[] | null {
  const others = [...visits.slice(0, from), ...visits.slice(from + length)];
  const run = visits.slice(from, from + length);
  const forms = formsOf(run, cells);
  const insertedM = (form: readonly Visit[], at: number): number => {
    const before = exitOf(others[at - 1], doors);
    const after = entryOf(others[at], doors);
    const first = entryOf(form[0], doors);
    const last = exitOf(form[form.length - 1], doors);
    return gapM(before, first) + gapM(last, after) - gapM(before, after);
  };
  let bestM = insertedM(run, from) - LEAST_GAIN_M;
  let best: readonly Visit[] | null = null;
  tries.left -= forms.length * (others.length + 1);
  for (let at = 0; at <= others.length; at += 1) {
    for (const form of forms) {
      const cost = insertedM(form, at);
      if (cost >= bestM) continue;
      bestM = cost;
      best = [...others.slice(0, at), ...form, ...others.slice(at)];
    }
  }
  return best;
}

/** A run as it is and backwards; a single cell in each of its ways. */
function formsOf(run: readonly Visit[], cells: readonly Cell[]): readonly (readonly Visit[])[] {
  const [only] = run;
  if (run.length === 1 && only !== undefined) return WAYS.map((way) => [{ cell: only.cell, way }]);
  const back = run.map(({ cell, way }): Visit => ({ cell, way: turnedWay(way, cells[cell]?.length ?? 0) }));
  return [run, back.reverse()];
}

/** The same sequence with the ways through the cells that have the least distance between them. */
function bestWays(sequence: readonly Visit[], doors: readonly Doors[]): readonly Visit[] {
  const origins: (readonly Way[])[] = [];
  let costs: readonly number[] = WAYS.map(() => 0);
  for (const [index, { cell }] of sequence.entries()) {
    const before = sequence[index - 1];
    const step = stepTo(cell, before === undefined ? null : before.cell, doors, costs);
    origins.push(step.map((each) => each.origin));
    costs = step.map((each) => each.costM);
  }
  let way = leastAt(costs);
  const visits: Visit[] = [];
  for (let index = sequence.length - 1; index >= 0; index -= 1) {
    visits.push({ cell: sequence[index]?.cell ?? 0, way });
    way = origins[index]?.[way] ?? 0;
  }
  return visits.reverse();
}

type Step = { readonly costM: number; readonly origin: Way };

/** Per way into a cell the least distance so far, and the way through the cell before that it comes from. */
function stepTo(
  cell: number,
  before: number | null,
  doors: readonly Doors[],
  costs: readonly number[],
): readonly Step[] {
  return WAYS.map((way): Step => {
    if (before === null) return { costM: 0, origin: 0 };
    const entry = entryOf({ cell, way }, doors);
    const sums = WAYS.map((each) => (costs[each] ?? 0) + gapM(exitOf({ cell: before, way: each }, doors), entry));
    const origin = leastAt(sums);
    return { costM: sums[origin] ?? 0, origin };
  });
}

function leastAt(costs: readonly number[]): Way {
  return WAYS.reduce<Way>((best, way) => ((costs[way] ?? 0) < (costs[best] ?? 0) ? way : best), 0);
}
