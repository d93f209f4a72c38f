import type { PlanePoint } from '../geometry/index.ts';
import type { Cell } from './cells.ts';
import { type Doors, distanceM, doorsOf, type Visit, WAYS, type Way } from './visits.ts';

export type Order = { readonly visits: readonly Visit[]; readonly wasCutShort: boolean };

/** Single steps of the dynamic programme over all tries before the search for a better order stops. */
const MOST_STEPS = 1_500_000;
const LONGEST_MOVE = 3;
/** A change must save more than this, metres. */
const LEAST_GAIN_M = 0.001;

/**
 * In which order, and which way, the cells are driven, by the straight distances between them: first always the nearest,
 * then runs of up to three cells are put elsewhere while that saves way (or-opt; I. Or, Northwestern University, 1976), the
 * ways chosen anew by a dynamic programme each time. The
 * beginning is free: the trim passes, which come before, are closed and end wherever the swaths begin.
 */
export function orderCells(cells: readonly Cell[]): Order {
  const doors = cells.map(doorsOf);
  let sequence = nearestFirst(doors);
  let best = bestWays(sequence, doors);
  let steps = 0;
  let isImproving = sequence.length > 2;
  while (isImproving) {
    isImproving = false;
    for (const candidate of moves(sequence)) {
      steps += WAYS.length * WAYS.length * sequence.length;
      if (steps > MOST_STEPS) return { visits: best.visits, wasCutShort: true };
      const tried = bestWays(candidate, doors);
      if (!(tried.wayM < best.wayM - LEAST_GAIN_M)) continue;
      sequence = candidate;
      best = tried;
      isImproving = true;
      break;
    }
  }
  return { visits: best.visits, wasCutShort: false };
}

function nearestFirst(doors: readonly Doors[]): readonly number[] {
  const left = new Set(doors.keys());
  const sequence: number[] = [];
  let here: PlanePoint | null = null;
  while (left.size > 0) {
    const next: Visit = nearest(doors, left, here);
    left.delete(next.cell);
    sequence.push(next.cell);
    here = doors[next.cell]?.exit[next.way] ?? here;
  }
  return sequence;
}

function nearest(doors: readonly Doors[], left: ReadonlySet<number>, here: PlanePoint | null): Visit {
  let best: Visit = { cell: left.values().next().value ?? 0, way: 0 };
  if (here === null) return best;
  let bestM = Number.POSITIVE_INFINITY;
  for (const cell of left) {
    for (const way of WAYS) {
      const entry = doors[cell]?.entry[way];
      const away = entry === undefined ? Number.POSITIVE_INFINITY : distanceM(here, entry);
      if (away >= bestM) continue;
      best = { cell, way };
      bestM = away;
    }
  }
  return best;
}

/** Every sequence in which a run of cells stands elsewhere, forwards or backwards. */
function* moves(sequence: readonly number[]): Generator<readonly number[]> {
  for (let length = 1; length <= Math.min(LONGEST_MOVE, sequence.length - 1); length += 1) {
    for (let from = 0; from + length <= sequence.length; from += 1) {
      const run = sequence.slice(from, from + length);
      const others = [...sequence.slice(0, from), ...sequence.slice(from + length)];
      for (let to = 0; to <= others.length; to += 1) {
        if (to !== from) yield [...others.slice(0, to), ...run, ...others.slice(to)];
        if (length > 1) yield [...others.slice(0, to), ...run.toReversed(), ...others.slice(to)];
      }
    }
  }
}

type Ways = { readonly visits: readonly Visit[]; readonly wayM: number };

/** The ways through the cells of a sequence with the least distance between them. */
function bestWays(sequence: readonly number[], doors: readonly Doors[]): Ways {
  const origins: Way[][] = [];
  let costs: number[] = WAYS.map(() => 0);
  let before: Doors | null = null;
  for (const cell of sequence) {
    const here = doors[cell];
    if (here === undefined) continue;
    const step = stepTo(here, before, costs);
    origins.push(step.origins);
    costs = step.costs;
    before = here;
  }
  const wayM = Math.min(...costs);
  let way = WAYS.find((each) => costs[each] === wayM) ?? 0;
  const visits: Visit[] = [];
  for (let index = sequence.length - 1; index >= 0; index -= 1) {
    visits.push({ cell: sequence[index] ?? 0, way });
    way = origins[index]?.[way] ?? 0;
  }
  return { visits: visits.reverse(), wayM };
}

function stepTo(
  here: Doors,
  before: Doors | null,
  costs: readonly number[],
): { readonly costs: number[]; readonly origins: Way[] } {
  const origins: Way[] = [];
  const next = here.entry.map((entry) => {
    let origin: Way = 0;
    let least = before === null ? 0 : Number.POSITIVE_INFINITY;
    for (const way of before === null ? [] : WAYS) {
      const exit = before?.exit[way];
      const cost = exit === undefined ? Number.POSITIVE_INFINITY : (costs[way] ?? 0) + distanceM(exit, entry);
      if (cost >= least) continue;
      least = cost;
      origin = way;
    }
    origins.push(origin);
    return least;
  });
  return { costs: next, origins };
}
