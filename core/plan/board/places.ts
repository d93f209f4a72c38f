import {
  formatClock,
  formatDuration,
  formatMoney,
  MS_PER_SECOND,
  NANO_PER_DOLLAR,
  quantity,
} from '../../units/index.ts';
import { type Insertion, intoSlot, Legs, type PlanFacts } from '../explain/index.ts';
import type { Problem } from '../problem/index.ts';
import type { RouteOutcome } from '../refills/index.ts';
import type { Names } from '../result/index.ts';
import type { LoosePlacer } from './loosely.ts';
import { modesAt } from './outages.ts';
import type { Rows } from './rows.ts';
import type { Place, TaskName } from './types.ts';

/** Places that are really placed, and those that are told. */
const TRIED = 12;
const TOLD = 5;

/** The cheapest places for a job among those that promise most by time; places that break a rule only where no other is found. */
export function placesFor(
  problem: Problem,
  placer: LoosePlacer,
  rows: Rows,
  task: TaskName,
  names: Names,
): readonly Place[] {
  const job = rows.jobWith(task);
  if (job < 0) return [];
  const facts = factsWithout(problem, rows, job);
  const likely = problem.slots
    .flatMap((_, slot) => {
      const modes = modesAt(problem, job, slot);
      return bestOf(intoSlot(facts, job, slot).filter((each) => modes.includes(each.mode)));
    })
    .sort((left, right) => addedMs(facts, left) - addedMs(facts, right))
    .slice(0, TRIED);
  const places = likely.flatMap((each) => placeAt(facts, placer, job, each, names) ?? []);
  const good = places.filter((place) => place.keepsRules);
  return (good.length > 0 ? good : places).sort((left, right) => left.addedUsd - right.addedUsd).slice(0, TOLD);
}

/** The days of the plan without the job itself. */
function factsWithout(problem: Problem, rows: Rows, job: number): PlanFacts {
  const routes = new Map<number, RouteOutcome>();
  problem.slots.forEach((_, slot) => {
    const day = rows.day(slot);
    if (day === undefined) return;
    const visits = rows.row(slot).filter((visit) => visit.job !== job);
    const paidMs = Math.round(day.paidSec * MS_PER_SECOND);
    routes.set(slot, { slot, visits, activities: [], paidMs, distanceM: day.distanceM, cost: 0 });
  });
  return { problem, legs: new Legs(problem), routes };
}

/** The place of least time in each slot where the job is allowed. */
function bestOf(insertions: readonly Insertion[]): readonly Insertion[] {
  const allowed = insertions.filter((each) => each.allowed);
  const [first, ...others] = allowed;
  if (first === undefined) return [];
  return [others.reduce((best, each) => (each.expectedMs < best.expectedMs ? each : best), first)];
}

function addedMs({ routes }: PlanFacts, { slot, expectedMs }: Insertion): number {
  return expectedMs - (routes.get(slot)?.paidMs ?? 0);
}

function placeAt(
  facts: PlanFacts,
  placer: LoosePlacer,
  job: number,
  { slot, position, mode }: Insertion,
  names: Names,
): Place | null {
  const { problem } = facts;
  const visits = facts.routes.get(slot)?.visits ?? [];
  const before = placer.place(slot, visits, 'quick');
  const after = placer.place(slot, visits.toSpliced(position, 0, { job, mode }), 'quick');
  const { rig = -1, day = -1 } = problem.slots[slot] ?? {};
  const { rigId = '', shiftStartMs = 0 } = problem.rigs[rig] ?? {};
  if (before === null || after === null) return null;
  const date = problem.dates[day] ?? '';
  const addedSec = (after.route.paidMs - before.route.paidMs) / MS_PER_SECOND;
  const addedUsd = (after.route.cost - before.route.cost) / NANO_PER_DOLLAR;
  const keepsRules = after.lifted <= before.lifted;
  const previous = visits[position - 1];
  const where =
    previous === undefined ? 'first thing' : `after ${names.property(problem.jobs[previous.job]?.propertyId ?? '')}`;
  const takes = `${signed(addedSec)}, ${formatMoney(quantity(addedUsd))}`;
  const done = formatClock((shiftStartMs + after.route.paidMs) / MS_PER_SECOND);
  const breaks = keepsRules ? '' : '; breaks a rule there';
  return {
    date,
    rigId,
    position,
    addedSec,
    addedUsd,
    keepsRules,
    words: `${names.rig(rigId)}, ${where}: ${takes} more, day done at ${done}${breaks}`,
  };
}

function signed(seconds: number): string {
  return `${seconds < 0 ? 'minus ' : ''}${formatDuration(quantity(Math.abs(seconds)))}`;
}
