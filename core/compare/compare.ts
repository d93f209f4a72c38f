import type { Fleet } from '../book/index.ts';
import type { Plan } from '../plan/result/index.ts';

/** Kinds of time that a paid day is made of. */
export const TIME_KINDS = ['treating', 'driving', 'refilling', 'at stops', 'at the shop', 'waiting'] as const;
/** One of `TIME_KINDS`. */
export type TimeKind = (typeof TIME_KINDS)[number];

/** What one fleet makes of a round. */
export type FleetResult = {
  readonly fleetId: string;
  readonly name: string;
  readonly rigDays: number;
  /** Dates on which any rig is out, and the last of them; '' where there is none. */
  readonly dates: number;
  readonly lastDate: string;
  readonly stops: number;
  readonly paidSec: number;
  readonly overtimeSec: number;
  /** The paid time by kind, both persons of a crew of two counted once. seconds */
  readonly timeSec: Readonly<Record<TimeKind, number>>;
  readonly distanceM: number;
  readonly refills: number;
  readonly fillPointVisits: number;
  readonly costUsd: number;
  /** What the fleet costs a season besides. */
  readonly fixedUsd: number;
  /** Work that no rig of the fleet can do or that found no place, one entry a property. */
  readonly left: readonly { readonly propertyId: string; readonly name: string; readonly why: readonly string[] }[];
};

/** One row of the comparison: what it is, its figure for each fleet, and the second less the first. */
export type Difference = {
  readonly what:
    | 'rig days'
    | 'dates'
    | 'paid'
    | 'overtime'
    | 'driven'
    | 'refills'
    | 'fill points'
    | 'left out'
    | 'cost';
  readonly first: number;
  readonly second: number;
  readonly more: number;
};

/** What each figure is called, on screens and sheets. */
export const DIFFERENCE_WORDS: Readonly<Record<Difference['what'], string>> = {
  'rig days': 'rig days',
  dates: 'dates with a rig out',
  paid: 'paid hours',
  overtime: 'of them overtime',
  driven: 'driven',
  refills: 'refills',
  'fill points': 'of them at fill points',
  'left out': 'lawns left out',
  cost: 'cost without product',
};

/** Two fleets on the same round. */
export type Comparison = {
  readonly first: FleetResult;
  readonly second: FleetResult;
  readonly differences: readonly Difference[];
  /** Second less first for so many rounds like this one and a season's fixed costs. */
  readonly seasonUsd: {
    readonly rounds: number;
    readonly running: number;
    readonly fixed: number;
    readonly all: number;
  };
  /** True where the fleets do not do the same work: money then says nothing by itself. */
  readonly workDiffers: boolean;
};

/** What the plan of a fleet comes to; see `FleetResult` for the units. */
export function fleetResult(fleet: Pick<Fleet, 'id' | 'name' | 'fixedPerSeason'>, plan: Plan): FleetResult {
  const dates = [...new Set(plan.days.map((day) => day.date))].toSorted();
  const left = new Map<string, { name: string; why: Set<string> }>();
  for (const { propertyId, propertyName, reasons } of plan.unplaced) {
    const entry = left.get(propertyId) ?? { name: propertyName, why: new Set() };
    for (const { words } of reasons) entry.why.add(words);
    left.set(propertyId, entry);
  }
  return {
    fleetId: fleet.id,
    name: fleet.name,
    rigDays: plan.days.length,
    dates: dates.length,
    lastDate: dates.at(-1) ?? '',
    stops: plan.totals.stops,
    paidSec: plan.totals.paidSec,
    overtimeSec: plan.totals.overtimeSec,
    timeSec: timesOf(plan),
    distanceM: plan.totals.distanceM,
    refills: plan.totals.refills,
    fillPointVisits: plan.totals.fillPointVisits,
    costUsd: plan.totals.costUsd,
    fixedUsd: fleet.fixedPerSeason,
    left: [...left].map(([propertyId, { name, why }]) => ({ propertyId, name, why: [...why] })),
  };
}

/**
 * Paid time by kind. What a second person does beside the first is no time of its own: at a stop the time from its beginning to its end that
 * is not spent on anything else is spent treating.
 */
function timesOf(plan: Plan): Record<TimeKind, number> {
  const times: Record<TimeKind, number> = {
    treating: 0,
    driving: 0,
    refilling: 0,
    'at stops': 0,
    'at the shop': 0,
    waiting: 0,
  };
  for (const day of plan.days) {
    let other = 0;
    for (const { kind, startSec, endSec } of day.activities) {
      const into = KIND_OF[kind];
      if (into === null) continue;
      times[into] += endSec - startSec;
      other += endSec - startSec;
    }
    times.treating += day.paidSec - other;
  }
  return times;
}

const KIND_OF: Readonly<Record<Plan['days'][number]['activities'][number]['kind'], TimeKind | null>> = {
  morning: 'at the shop',
  drive: 'driving',
  wait: 'waiting',
  break: 'waiting',
  'set-up': 'at stops',
  'swap-head': null,
  treat: null,
  refill: 'refilling',
  pour: null,
  'pack-up': 'at stops',
  evening: 'at the shop',
};

/**
 * Holds two fleets against each other.
 *
 * @param rounds how many rounds like this one a season has
 */
export function compareFleets(first: FleetResult, second: FleetResult, rounds: number): Comparison {
  const row = (what: Difference['what'], of: (result: FleetResult) => number): Difference => ({
    what,
    first: of(first),
    second: of(second),
    more: of(second) - of(first),
  });
  const running = rounds * (second.costUsd - first.costUsd);
  const fixed = second.fixedUsd - first.fixedUsd;
  const leftBy = (result: FleetResult): string => [...result.left.map((each) => each.propertyId)].toSorted().join(' ');
  return {
    first,
    second,
    differences: [
      row('rig days', (each) => each.rigDays),
      row('dates', (each) => each.dates),
      row('paid', (each) => each.paidSec),
      row('overtime', (each) => each.overtimeSec),
      row('driven', (each) => each.distanceM),
      row('refills', (each) => each.refills),
      row('fill points', (each) => each.fillPointVisits),
      row('left out', (each) => each.left.length),
      row('cost', (each) => each.costUsd),
    ],
    seasonUsd: { rounds, running, fixed, all: running + fixed },
    workDiffers: leftBy(first) !== leftBy(second),
  };
}
