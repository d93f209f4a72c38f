import { formatDuration, formatVolume, formatWeight, MS_PER_SECOND, quantity } from '../../units/index.ts';
import type { Mode, Problem } from '../problem/index.ts';
import type { Names, PlanDay } from '../result/index.ts';
import type { LoosePlacer } from './loosely.ts';
import { modesAt } from './outages.ts';
import type { Rows } from './rows.ts';
import type { UseOfRest } from './types.ts';

/** Lawns that are really placed for each rig's day, and those that are told. */
const TRIED = 8;
const TOLD = 4;
const PARTS_PER_UNIT = 100;
/** Less than this is no part tank: half a gallon, or a pound. */
const LEAST_PARTS = { tank: 50, dry: 100 } as const;

type Candidate = {
  readonly job: number;
  readonly mode: number;
  readonly position: number;
  readonly awayMs: number;
  /** Whether everything that it takes is in the part tanks. */
  readonly fits: boolean;
};

/**
 * Lawns left out, or of later days, that would use up the part tanks left at the end of a rig's day: those that take no more than is in
 * there, or, where there are none, those that take all of it and more. The nearest ones to the day's way are tried, and those that fit into
 * the day without breaking a rule are told.
 */
export function usesOfRests(
  problem: Problem,
  placer: LoosePlacer,
  rows: Rows,
  date: string,
  names: Names,
): readonly UseOfRest[] {
  const day = problem.dates.indexOf(date);
  return problem.slots.flatMap((slot, number) => {
    const planned = rows.day(number);
    if (slot.day !== day || planned === undefined) return [];
    const rests = restsOf(problem, slot.rig, planned);
    if (rests.size === 0) return [];
    const near = candidates(problem, rows, number, rests).sort((left, right) => left.awayMs - right.awayMs);
    const told = (fits: boolean): readonly UseOfRest[] =>
      near
        .filter((each) => each.fits === fits)
        .slice(0, TRIED)
        .flatMap((each) => useOf(problem, placer, rows, number, rests, each, names) ?? [])
        .slice(0, TOLD);
    const small = told(true);
    return small.length > 0 ? small : told(false);
  });
}

type Rest = { readonly material: number; readonly parts: number };

/** What each compartment of a rig still holds at the end of its day, by the compartment's number. */
function restsOf(problem: Problem, rig: number, { leftOver }: PlanDay): ReadonlyMap<number, Rest> {
  const owned = problem.rigs[rig]?.compartments ?? [];
  return new Map(
    leftOver.flatMap(({ compartmentId, materialId, volumeGal, weightLb }) => {
      const compartment = owned.findIndex((each) => each.id === compartmentId);
      const material = problem.materials.findIndex((each) => each.id === materialId);
      const parts = Math.round((volumeGal + weightLb) * PARTS_PER_UNIT);
      const least = LEAST_PARTS[owned[compartment]?.kind ?? 'tank'];
      return compartment < 0 || material < 0 || parts < least ? [] : [[compartment, { material, parts }] as const];
    }),
  );
}

function candidates(problem: Problem, rows: Rows, slot: number, rests: ReadonlyMap<number, Rest>): Candidate[] {
  const { rig = -1, day = -1 } = problem.slots[slot] ?? {};
  const places = [...rows.row(slot).map((visit) => problem.jobs[visit.job]?.place ?? 0), problem.rigs[rig]?.depot ?? 0];
  return problem.jobs.flatMap(({ modes, place, dayAllowed }, job) => {
    const planned = problem.slots[rows.slotWith(job)]?.day ?? Number.POSITIVE_INFINITY;
    if (planned <= day || dayAllowed[day] !== 1) return [];
    const usable = modesAt(problem, job, slot).flatMap((mode) => {
      const way = modes[rig]?.[mode];
      return way !== undefined && takesFrom(way, rests) ? [{ mode, fits: isWithin(way, rests) }] : [];
    });
    const way = usable.find((each) => each.fits) ?? usable[0];
    if (way === undefined) return [];
    const ways = places.slice(0, -1).map((from, at) => ({
      position: at + 1,
      awayMs:
        travel(problem, from, place) +
        travel(problem, place, places[at + 1] as number) -
        travel(problem, from, places[at + 1] as number),
    }));
    const best = ways.reduce((least, each) => (each.awayMs < least.awayMs ? each : least), {
      position: 0,
      awayMs: Infinity,
    });
    return [{ job, ...way, ...best }];
  });
}

function travel({ travelMs, placeIds }: Problem, from: number, to: number): number {
  return travelMs[from * placeIds.length + to] ?? 0;
}

/** Whether something of what is left would be used. */
function takesFrom(mode: Mode, rests: ReadonlyMap<number, Rest>): boolean {
  return mode.ops.some(({ draws, material }) =>
    draws.some(({ compartment }) => rests.get(compartment)?.material === material),
  );
}

function isWithin(mode: Mode, rests: ReadonlyMap<number, Rest>): boolean {
  const taken = new Map<number, number>();
  const draws = mode.ops.flatMap((op) => op.draws.map((draw) => ({ ...draw, material: op.material })));
  for (const { compartment, parts, material } of draws) {
    if (rests.get(compartment)?.material !== material) return false;
    taken.set(compartment, (taken.get(compartment) ?? 0) + parts);
  }
  return draws.length > 0 && [...taken].every(([compartment, parts]) => parts <= (rests.get(compartment)?.parts ?? 0));
}

function useOf(
  problem: Problem,
  placer: LoosePlacer,
  rows: Rows,
  slot: number,
  rests: ReadonlyMap<number, Rest>,
  { job, mode, position, awayMs }: Candidate,
  names: Names,
): UseOfRest | null {
  const { rig = -1, day = -1 } = problem.slots[slot] ?? {};
  const before = rows.day(slot);
  const loose = placer.place(slot, rows.row(slot).toSpliced(position, 0, { job, mode }), 'quick');
  const task = problem.tasks[problem.jobs[job]?.tasks[0] ?? -1];
  const way = problem.jobs[job]?.modes[rig]?.[mode];
  if (loose === null || loose.lifted > 0 || before === undefined || task === undefined || way === undefined)
    return null;
  const { propertyId, zoneId, treatmentId, step } = task;
  const moreSec = loose.route.paidMs / MS_PER_SECOND - before.paidSec;
  const planned = problem.slots[rows.slotWith(job)]?.day;
  const amounts = amountWords(problem, rig, way, rests, names);
  return {
    date: problem.dates[day] ?? '',
    rigId: problem.rigs[rig]?.rigId ?? '',
    task: { propertyId, zoneId, treatmentId, step },
    position,
    plannedOn: planned === undefined ? '' : (problem.dates[planned] ?? ''),
    words: `${names.property(propertyId)} takes ${amounts}; ${duration(Math.max(0, moreSec))} more, ${duration(awayMs / MS_PER_SECOND)} of it out of the way`,
  };
}

function amountWords(
  problem: Problem,
  rig: number,
  mode: Mode,
  rests: ReadonlyMap<number, Rest>,
  names: Names,
): string {
  const taken = new Map<number, number>();
  for (const { compartment, parts } of mode.ops.flatMap((op) => op.draws))
    taken.set(compartment, (taken.get(compartment) ?? 0) + parts);
  return [...taken]
    .flatMap(([compartment, parts]): readonly string[] => {
      const rest = rests.get(compartment)?.parts;
      if (rest === undefined) return [];
      const { id = '', kind = 'tank' } = problem.rigs[rig]?.compartments[compartment] ?? {};
      const said = (amount: number): string =>
        kind === 'tank'
          ? formatVolume(quantity(amount / PARTS_PER_UNIT))
          : formatWeight(quantity(amount / PARTS_PER_UNIT));
      const left = `the ${said(rest)} left in ${names.compartment(id)}`;
      return [parts <= rest ? `${said(parts)} of ${left}` : `all of ${left}, and ${said(parts - rest)} more`];
    })
    .join(' and ');
}

function duration(seconds: number): string {
  return formatDuration(quantity(seconds));
}
